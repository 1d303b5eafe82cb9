#!/usr/bin/env python3
"""Prints lines of two spectra by SciPy, for crates/axle/tests/all/spectrum.rs. Needs NumPy and SciPy."""

import numpy as np
from scipy.signal import periodogram, welch

STEP = 1e-3


def history(count):
    i = np.arange(count, dtype=float)
    t = STEP * i
    return (
        t
        + np.sin(2 * np.pi * 7.3 * t)
        + 0.5 * np.cos(2 * np.pi * 41.0 * t)
        + 0.1 * np.sin(i * i * 0.37)
    )


_, long = welch(history(9001), fs=1 / STEP, window="hann", nperseg=2048, noverlap=1024, detrend="constant")
_, short = periodogram(history(2001), fs=1 / STEP, window="boxcar", detrend="constant")
for name, density, lines in [
    ("SCIPY_WELCH", long, [0, 1, 15, 84, 300, 1024]),
    ("SCIPY_PERIODOGRAM", short, [1, 2, 15, 82, 300, 1000]),
]:
    rows = ", ".join(f"({line}, {density[line]:.12e})" for line in lines)
    print(f"const {name}: [(usize, f64); {len(lines)}] = [{rows}];")
