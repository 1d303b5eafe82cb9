"""How the lean of the demo's thin trailer tube falls with its wall, and what the wall weighs: a study of one's own in Python.

Demonstration data, invented. `pip install ./crates/python` from the checkout, then `python studies/python/lean_by_wall.py`.
"""

from pathlib import Path

import axlebow
import numpy as np

ROOT = Path(__file__).resolve().parents[2]
THIN = ROOT / "models/trailer-152-thin-dual.toml"
WALLS = np.linspace(8.0, 16.0, 9)


def of_wall(wall: float) -> tuple[float, float]:
    """Lean of the left wheel (deg) and mass of the bare axle (kg) with a wall (mm)."""
    axle = axlebow.flex(THIN, case="rated-load", set={"tube.wall": f"{wall} mm"})
    return np.degrees(axle["cases"][0]["wheels"]["left"]["camber_change_rad"]), axle["axle_mass_kg"]


def main() -> None:
    """Prints a row for each wall, and the power of the wall by which the lean falls."""
    rows = np.array([of_wall(wall) for wall in WALLS])
    for wall, (lean, mass) in zip(WALLS, rows):
        print(f"{wall:5.1f} mm {lean:7.3f} deg {mass:6.1f} kg")
    power = np.polyfit(np.log(WALLS), np.log(-rows[:, 0]), 1)[0]
    print(f"the lean goes with the wall to the power {power:.2f}")


if __name__ == "__main__":
    main()
