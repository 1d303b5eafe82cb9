#!/usr/bin/env python3
"""Three beams by integrating their differential equations, without elements (NumPy, SciPy).

The state (w, theta, M, V) obeys w' = theta - V/kGA, theta' = M/EI + kappa, M' = V, V' = q - k w - omega^2 rho A w, with
rotary inertia M' = V - omega^2 rho I theta. Each stretch between places where something happens is integrated by an
eighth-order Runge-Kutta method to 1e-12; what is unknown at the start follows from the conditions at supports and end.

Prints what `crates/beam/tests/all/recomputed.rs` compares:
    tapered tube, three supports: w(0.5), M(0), force of the spring
    step on a foundation, hotter below: w(0), w(1.4), M(1.4), theta(2.0)
    stepped tube with a mass: three frequencies, bending only and with shear and rotary inertia
"""

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

E, NU, RHO = 205e9, 0.29, 7850.0
G = E / (2 * (1 + NU))


def tube(od, wall):
    """A, I and Cowper's shear coefficient of a round tube."""
    bore = od - 2 * wall
    m = (bore / od) ** 2
    kappa = 6 * (1 + NU) * (1 + m) ** 2 / ((7 + 6 * NU) * (1 + m) ** 2 + (20 + 12 * NU) * m)
    return np.pi / 4 * (od**2 - bore**2), np.pi / 64 * (od**4 - bore**4), kappa


def integrate(stretch, state, shear=True, omega=0.0):
    """State at the end of a stretch (from, to, section(y), q(y), k, kappa), with or without its loads."""
    start, end, section, q, k, curvature = stretch

    def slope(y, u):
        area, i, coefficient = section(y)
        w, theta, moment, force = u
        flexibility = 1 / (coefficient * G * area) if shear else 0.0
        rotary = RHO * i * omega**2 if shear else 0.0
        return [
            theta - force * flexibility,
            moment / (E * i) + curvature,
            force - rotary * theta,
            q(y) - k * w + omega**2 * RHO * area * w,
        ]

    return solve_ivp(slope, (start, end), state, method="DOP853", rtol=1e-12, atol=1e-16).y[:, -1]


def affine(march):
    """u(end) = A u(start) + b of a march, by its values for no and for unit starts."""
    b = march(np.zeros(4), True)
    return np.column_stack([march(unit, False) for unit in np.eye(4)]), b


def unloaded(stretch):
    return (*stretch[:3], lambda y: 0.0, stretch[4], 0.0)


def tapered_on_three_supports():
    """Clamp at 0, spring of 4e6 N/m at 0.7, pin at 1.2; 127 x 12.7 to 90 x 8 mm; -20 to -5 kN/m; 15 kN down at 0.3."""
    section = lambda y: tube(0.127 + (0.090 - 0.127) * y / 1.2, 0.0127 + (0.008 - 0.0127) * y / 1.2)
    q = lambda y: -20e3 + 15e3 * y / 1.2
    stretches = [(a, b, section, q, 0.0, 0.0) for a, b in [(0, 0.3), (0.3, 0.5), (0.5, 0.7), (0.7, 1.2)]]

    def march(state, loaded, last=4):
        u = np.array(state, float)
        for number, stretch in enumerate(stretches[:last]):
            if number == 1 and loaded:
                u[3] -= 15e3
            if number == 3:
                u[3] -= 4e6 * u[0]
            u = integrate(stretch if loaded else unloaded(stretch), u)
        return u

    a, b = affine(march)
    free = [2, 3]  # M and V at the clamp; at the pin w = 0 and M = 0
    start = np.zeros(4)
    start[free] = np.linalg.solve(a[np.ix_([0, 2], free)], -b[[0, 2]])
    return march(start, True, 2)[0], start[2], -4e6 * march(start, True, 3)[0]


def step_on_a_foundation():
    """Free at 0, pinned at 2.0; tube 100 x 10 to 1.4, then 80 x 6 mm; k = 2 MN/m2 to 1.4; kappa = 1e-3/m; 2 kN/m up."""
    thick, thin = tube(0.100, 0.010), tube(0.080, 0.006)
    q = lambda y: 2e3
    stretches = [(0, 1.4, lambda y: thick, q, 2e6, 1e-3), (1.4, 2.0, lambda y: thin, q, 0.0, 1e-3)]

    def march(state, loaded, last=2):
        u = np.array(state, float)
        for stretch in stretches[:last]:
            u = integrate(stretch if loaded else unloaded(stretch), u, shear=False)
        return u

    a, b = affine(march)
    free = [0, 1]  # w and theta at the free start; at the pin w = 0 and M = 0
    start = np.zeros(4)
    start[free] = np.linalg.solve(a[np.ix_([0, 2], free)], -b[[0, 2]])
    middle = march(start, True, 1)
    return start[0], middle[0], middle[2], march(start, True)[1]


def frequencies_of_a_stepped_tube(shear):
    """Clamp at 0; tube 127 x 12.7 to 0.8, then 90 x 10 mm to 1.5 m with 40 kg and 0.3 kg m2 on its end; pin at 0.8."""
    root, tip = tube(0.127, 0.0127), tube(0.090, 0.010)
    none = lambda y: 0.0

    def determinant(f):
        omega = 2 * np.pi * f
        ends = []
        for unit in ([0, 0, 1, 0], [0, 0, 0, 1]):
            u = integrate((0, 0.8, lambda y: root, none, 0, 0), np.array(unit, float) * 1e4, shear, omega)
            ends.append(u)
        # The pin takes a force R: unknowns are M, V at the clamp and R; w = 0 at 0.8, M and V balance the mass at the end.
        ends.append(np.array([0, 0, 0, 1e4]))
        after = [integrate((0.8, 1.5, lambda y: tip, none, 0, 0), u, shear, omega) for u in ends]
        # Force on the mass: V up, so V = -omega^2 m w; moment -M, so M = omega^2 J theta.
        rows = [
            [u[0] for u in ends],
            [(u[3] + omega**2 * 40.0 * u[0]) / 1e4 for u in after],
            [(u[2] - omega**2 * 0.3 * u[1]) / 1e4 for u in after],
        ]
        return np.linalg.det(np.array(rows))

    found, grid = [], np.linspace(2, 900, 300)
    values = [determinant(f) for f in grid]
    for a, b, u, v in zip(grid, grid[1:], values, values[1:]):
        if u * v < 0 and len(found) < 3:
            found.append(brentq(determinant, a, b, xtol=1e-11, rtol=1e-13))
    return found


def main():
    show = lambda values: " ".join(f"{value:.10e}" for value in values)
    print("tapered tube      ", show(tapered_on_three_supports()))
    print("step on foundation", show(step_on_a_foundation()))
    print("stepped, bending  ", show(frequencies_of_a_stepped_tube(False)))
    print("stepped, shear    ", show(frequencies_of_a_stepped_tube(True)))


if __name__ == "__main__":
    main()
