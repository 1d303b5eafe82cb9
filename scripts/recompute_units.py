#!/usr/bin/env python3
"""Unit factors of SciPy's constants, whose digits stand in crates/units/tests/all/factors.rs. Needs SciPy."""

from scipy import constants

NAMES = "inch foot yard mile pound oz slug pound_force kilogram_force psi mph kmh g degree".split()

print("scipy", __import__("scipy").__version__)
for name in NAMES:
    print(f"{name:15} {getattr(constants, name)!r}")
