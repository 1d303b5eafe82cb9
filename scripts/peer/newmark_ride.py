"""Times Newmark's average acceleration in NumPy and SciPy on the chain of crates/fe/examples/ride_speed.rs.

Reads that example's line `order half-bandwidth laws milliseconds displacement` from standard input and prints both
times and their ratio. Written as a good user would: the banded matrix is factored once, the one-sided springs are
solved in the space of their own directions, and each step is a few calls on whole vectors.
"""

import sys
import time

import numpy as np
import scipy
from scipy.linalg import cho_solve_banded, cholesky_banded
from scipy.sparse import dia_array

STEP, STEPS = 1e-3, 10_000
STIFFNESS, DAMPING = 1e5, 100.0


def band(order, width, value):
    """Lower band: row m holds the entries m below the diagonal."""
    lower = np.zeros((width + 1, order))
    lower[0] = value
    for below in range(1, width + 1):
        column = np.arange(order - below)
        share = ((3 * (column + below) + 7 * column) % 11) / 11.0
        lower[below, : order - below] = -0.2 * value / width * share
    return lower


def symmetric(lower):
    """Sparse symmetric matrix of a lower band."""
    width, order = lower.shape[0] - 1, lower.shape[1]
    below = dia_array((lower, -np.arange(width + 1)), shape=(order, order)).tocsr()
    return (below + below.T - dia_array((lower[:1], [0]), shape=(order, order))).tocsr()


def pressing(free, known_rate, base, base_rate, touching, compliance):
    """Forces of the one-sided springs: x = free + G f(x), Newton's method on pieces that are straight."""
    x = free.copy()
    rate_per_x = 2.0 / STEP
    for _ in range(25):
        force = STIFFNESS * (base - x) + DAMPING * (base_rate - (rate_per_x * x - known_rate))
        on = touching & (force > 0.0)
        force = np.where(on, force, 0.0)
        residual = x - free - compliance @ force
        if np.all(np.abs(residual) <= 1e-10 * (np.abs(x) + np.abs(free) + np.abs(compliance) @ force) + 1e-300):
            return force
        change = np.where(on, STIFFNESS + rate_per_x * DAMPING, 0.0)
        x -= np.linalg.solve(np.eye(len(x)) + compliance * change, residual)
    raise RuntimeError("the one-sided springs did not settle")


def ride(order, width, laws):
    """Displacement in the middle of the chain after ten seconds from rest."""
    stiffness, mass = band(order, width, 1e6), band(order, width, 1.0)
    place = 30 + 60 * np.arange(laws)
    turns = 12.0 + np.arange(laws)
    c = 4.0 / STEP**2
    factor = (cholesky_banded(stiffness + c * mass, lower=True), True)
    unit = np.zeros((order, laws))
    unit[place, np.arange(laws)] = 1.0
    answers = cho_solve_banded(factor, unit)
    compliance = answers[place]
    mass_rows = symmetric(mass)
    u, v, a = np.zeros(order), np.zeros(order), np.zeros(order)
    # Bases start at height 0 with a speed that the dampers do not feel: a spring that just touches is open.
    touching = np.zeros(laws, dtype=bool)
    for step in range(1, STEPS + 1):
        angle = turns * (step * STEP)
        base, base_rate = 0.01 * np.sin(angle), 0.01 * turns * np.cos(angle)
        known = cho_solve_banded(factor, mass_rows @ (c * u + (4.0 / STEP) * v + a), check_finite=False)
        known_rate = (2.0 / STEP) * u[place] + v[place]
        force = pressing(known[place], known_rate, base, base_rate, touching, compliance)
        w = known + answers @ force
        a_next = c * (w - u) - (4.0 / STEP) * v - a
        v = v + 0.5 * STEP * (a + a_next)
        u, a = w, a_next
        touching = base - u[place] > 0.0
    return u[order // 2]


def main():
    words = sys.stdin.readline().split()
    order, width, laws = (int(word) for word in words[:3])
    ours, expected = (float(word) for word in words[3:5])
    best = float("inf")
    for _ in range(3):
        start = time.perf_counter()
        found = ride(order, width, laws)
        best = min(best, 1e3 * (time.perf_counter() - start))
    # The same scheme on the same pieces: what is left is rounding, grown over a thousand contacts.
    if abs(found - expected) > 1e-6 * max(abs(expected), 1e-3):
        sys.exit(f"displacements differ at the end: {found} and {expected}")
    print(f"\n10 s at 1 kHz, {order} unknowns, half-band {width}, {laws} one-sided springs, milliseconds, one thread")
    print(f"(SciPy {scipy.__version__}, NumPy {np.__version__}; both end at {found:.9e})")
    print(f"{'ours':>9} {'NumPy/SciPy':>12} {'ratio':>7}")
    print(f"{ours:>9.1f} {best:>12.0f} {best / ours:>7.1f}")


main()
