"""Runs a program and prints its seconds, peak memory and microseconds of one core for each of so many designs.

Usage: run_timed.py DESIGNS FILE PROGRAM ARGUMENT...; FILE gets the microseconds.
"""

import resource
import subprocess
import sys
import time

designs, file, program = int(sys.argv[1]), sys.argv[2], sys.argv[3:]
start = time.perf_counter()
subprocess.run(program, check=True, stdout=subprocess.DEVNULL)
seconds = time.perf_counter() - start
usage = resource.getrusage(resource.RUSAGE_CHILDREN)
core = usage.ru_utime + usage.ru_stime
microseconds = 1e6 * core / designs
print(f"{designs} designs: {seconds:.2f} s, {usage.ru_maxrss / 1024:.0f} MB, {core:.2f} s of one core", end=": ")
print(f"{microseconds:.2f} us a design")
with open(file, "w") as out:
    out.write(f"{microseconds}\n")
