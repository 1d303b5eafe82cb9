"""Times SciPy on the matrices of crates/fe/examples/banded_speed.rs and prints both and their ratio.

Reads that example's lines `order half-bandwidth columns microseconds` from standard input.
"""

import sys
import time

import numpy as np
import scipy
from scipy.linalg import solveh_banded
from scipy.linalg.lapack import dpbsv


def band(order, width):
    """Lower band as LAPACK has it: row m holds the entries m below the diagonal."""
    lower = np.zeros((width + 1, order), order="F")
    lower[0] = 2.0 * width
    for below in range(1, width + 1):
        column = np.arange(order - below)
        lower[below, : order - below] = ((3 * (column + below) + 7 * column) % 11) / 11.0 - 0.5
    return lower


def shortest(order, run):
    """Shortest time of one run in microseconds."""
    best = float("inf")
    for _ in range(min(max(2_000_000 // order, 100), 5000)):
        start = time.perf_counter()
        run()
        best = min(best, time.perf_counter() - start)
    return best * 1e6


def main():
    print(f"Factor and solve, best of many runs, one thread, microseconds (SciPy {scipy.__version__}, NumPy {np.__version__})")
    print(f"{'unknowns':>8} {'half-band':>9} {'columns':>7} {'ours':>9} {'solveh_banded':>14} {'dpbsv':>9} {'solveh_banded/ours':>19} {'dpbsv/ours':>11}")
    for line in sys.stdin:
        order, width, count = (int(word) for word in line.split()[:3])
        ours, sample = (float(word) for word in line.split()[3:5])
        lower = band(order, width)
        right = np.ones((order, count), order="F")
        solution = solveh_banded(lower, right, lower=True)
        if abs(solution[order // 2, 0] - sample) > 1e-12 * abs(sample):
            sys.exit(f"solutions differ at {order}: {solution[order // 2, 0]} and {sample}")
        scipy_time = shortest(order, lambda: solveh_banded(lower, right, lower=True, check_finite=False))
        lapack_time = shortest(order, lambda: dpbsv(lower, right, lower=1))
        print(
            f"{order:>8} {width:>9} {count:>7} {ours:>9.1f} {scipy_time:>14.1f} {lapack_time:>9.1f}"
            f" {scipy_time / ours:>19.1f} {lapack_time / ours:>11.1f}"
        )


main()
