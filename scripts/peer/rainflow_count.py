"""Times two Python rainflow counters on the history of crates/strength/examples/rainflow_speed.rs and prints all with ratios.

Reads that example's line `points seconds cubes cycles` from standard input. The peers count fewer points, as they are slow; all
are given as points a second. The packages `rainflow` (pure Python, ASTM E1049) and `fatpack` (NumPy) come from the package
registry; one that does not install is left out.
"""

import sys
import time

import numpy as np


def history(points):
    t = np.arange(points, dtype=float)
    return 90.0 * np.sin(0.37 * t) * np.cos(0.0113 * t) + 30.0 * np.sin(1.1 * t)


def by_rainflow(values):
    import rainflow

    counted = list(rainflow.extract_cycles(values))
    return sum(count for _, _, count, _, _ in counted), sum(count * span**3 for span, _, count, _, _ in counted)


def by_fatpack(values):
    import fatpack

    # Resolution of its own; whole ranges only, the residue counted once more behind itself.
    ranges = fatpack.find_rainflow_ranges(values, k=4096)
    return len(ranges), float((ranges**3).sum())


def main():
    points, seconds, cubes, cycles = (float(word) for word in sys.stdin.readline().split())
    print(f"ours: {points / seconds / 1e6:.1f} million points a second ({cycles:.1f} cycles, sum of range³ {cubes:.6e} MPa³)")
    for name, count, share in [("rainflow", by_rainflow, 20), ("fatpack", by_fatpack, 1)]:
        values = history(int(points) // share)
        try:
            start = time.perf_counter()
            found, sum_of_cubes = count(values)
            taken = time.perf_counter() - start
        except ImportError:
            print(f"{name}: not installed")
            continue
        rate = len(values) / taken
        print(
            f"{name}: {rate / 1e6:.2f} million points a second, {points / seconds / rate:.0f} to 1 "
            f"({found * share:.1f} cycles, sum of range³ {sum_of_cubes * share:.6e} MPa³, scaled from {len(values)} points)"
        )


if __name__ == "__main__":
    main()
