"""The figure of the moving force: how much more a beam on two supports bends under a force that drives over it than under one that
stands, over its speed, and undamped beside damped by 5 %.

The curve is that of M. Olsson, "On the fundamental moving load problem", Journal of Sound and Vibration 145 (1991) 299-307, and of
L. Frýba, Vibration of Solids and Structures under Moving Loads, 1972, chapter 1. The values held against are Frýba's series, summed
here, and those that Olsson prints at half the critical speed and at it (from memory).

`pip install ./crates/python` from the checkout, then `python studies/python/moving_force.py [FILE.csv]`.
"""

import csv
import sys
from pathlib import Path

import axlebow
import numpy as np

BEAM = Path(__file__).resolve().parents[2] / "studies/textbook/moving-force.toml"
CRITICAL = 40.0
RATIOS = np.linspace(0.05, 1.0, 20)
PRINTED = {0.5: 1.705, 1.0: 1.548}


def computed(ratio: float, damping: float) -> float:
    """Amplification by finite elements at a share of the critical speed."""
    changes = {"moving.speed": f"{ratio * CRITICAL} m/s", "moving.damping": str(damping)}
    return axlebow.beam(BEAM, set=changes)["moving_force"]["amplification"]


def series(ratio: float, terms: int = 100) -> float:
    """Amplification by Frýba's series, undamped, while the force is on the beam."""
    n = np.arange(1, terms + 1)[:, None]
    theta = np.linspace(0.0, np.pi, 20001)[None, :]
    ratio = ratio * (1.0 - 1e-6)  # at 1 a term of the series is 0/0
    sums = np.sin(n * np.pi / 2) / (n**2 * (n**2 - ratio**2)) * (np.sin(n * theta) - ratio / n * np.sin(n**2 * theta / ratio))
    return 96.0 / np.pi**4 * sums.sum(axis=0).max()


def main() -> None:
    """Prints a row for each speed and how far both are apart."""
    rows = [(ratio, computed(ratio, 0.0), series(ratio), computed(ratio, 0.05)) for ratio in RATIOS]
    for ratio, own, closed, damped in rows:
        print(f"v/v_cr {ratio:5.2f}   {own:7.4f}   series {closed:7.4f}   damped {damped:7.4f}")
    apart = max(abs(own / closed - 1.0) for _, own, closed, _ in rows)
    print(f"finite elements and series differ by {apart:.1e} at most")
    for ratio, printed in PRINTED.items():
        print(f"at {ratio} of the critical speed: {computed(ratio, 0.0):.4f}, printed {printed}")
    if len(sys.argv) > 1:
        with open(sys.argv[1], "w", newline="", encoding="utf-8") as file:
            table = csv.writer(file)
            table.writerow(["speed_ratio", "amplification", "series", "amplification_damped"])
            table.writerows(rows)


if __name__ == "__main__":
    main()
