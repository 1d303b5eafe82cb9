#!/usr/bin/env python3
"""Recomputes the fit that crates/study/tests/all/fit.rs holds against SciPy: a cantilever on a rotational spring.

Unknowns are logarithms, errors are relative weights (absolute_sigma=False), the interval is Student's t.
"""
import numpy as np
from scipy.optimize import curve_fit
from scipy.stats import t

FORCE, LENGTH, ERROR = 20e3, 1.5, 0.1e-3
x = np.arange(1, 9) * LENGTH / 8
offsets = np.array([3, -5, 8, -2, -9, 6, 4, -7]) * 1e-5


def deflection(x, log_bending, log_seat):
    bending, seat = np.exp(log_bending), np.exp(log_seat)
    return FORCE * (x**2 * (3 * LENGTH - x) / (6 * bending) + LENGTH * x / seat)


read = deflection(x, np.log(1.9e6), np.log(2.9e6)) + offsets
start = np.log([1.5e6, 3.5e6])
fitted, covariance = curve_fit(deflection, x, read, start, sigma=np.full(8, ERROR), xtol=1e-14, ftol=1e-14, gtol=1e-14)
half = t.ppf(0.975, 6) * np.sqrt(np.diag(covariance))
for value, reach in zip(fitted, half):
    print(f"{np.exp(value):.9e} {np.exp(value - reach):.9e} {np.exp(value + reach):.9e}")
print(f"correlation {covariance[0, 1] / np.sqrt(covariance[0, 0] * covariance[1, 1]):.9f}")
