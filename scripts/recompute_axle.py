#!/usr/bin/env python3
"""A small asymmetric axle solved without any of our code, for tests/reference/scipy_axle.rs.

    python3 -m venv venv && venv/bin/pip install numpy scipy
    venv/bin/python scripts/recompute_axle.py > tests/reference/scipy_axle.json

Dense three-dimensional Timoshenko frame, written from the textbook matrices (J. S. Przemieniecki,
Theory of Matrix Structural Analysis, McGraw-Hill 1968, sec. 5.6) and not from the Rust:

- a uniform beam is the printed 12 x 12 matrix; a tapered one is the inverse of its tip flexibility,
  integrated adaptively;
- sections are integrated over their height; shear coefficients are Cowper's (1966);
- springs and rigid arms enter by their energy; one dense symmetric solve.

SI throughout. The axle and its numbers are invented.
"""

import json
import platform

import numpy as np
import scipy
from scipy.integrate import quad
from scipy.linalg import block_diag, solve

E, NU = 205e9, 0.29
G = E / (2 * (1 + NU))

# --- sections: EA, GJ, EI about local 2 and 3, kGA along local 2 and 3 ------------------------------
# A beam along Y with up = Z has local 1 = Y, 2 = Z, 3 = X.


def rounded_integral(b, h, r, power):
    """Integral of z^power over a filled rectangle b (X) by h (Z) with corner radius r."""

    def width(z):
        depth = abs(z) - (h / 2 - r)
        return b if depth <= 0 else b - 2 * (r - np.sqrt(max(r * r - depth * depth, 0.0)))

    half = quad(lambda z: z**power * width(z), 0, h / 2, points=[h / 2 - r], epsabs=0, epsrel=1e-13, limit=400)
    return 2 * half[0]


def box(b, h, t, r):
    bi, hi, ri = b - 2 * t, h - 2 * t, max(r - t, 0.0)
    bm, hm, rm = b - t, h - t, max(r - t / 2, 0.0)
    area = rounded_integral(b, h, r, 0) - rounded_integral(bi, hi, ri, 0)
    i_x = rounded_integral(b, h, r, 2) - rounded_integral(bi, hi, ri, 2)
    i_z = rounded_integral(h, b, r, 2) - rounded_integral(hi, bi, ri, 2)
    enclosed = rounded_integral(bm, hm, rm, 0)
    length = 2 * (bm - 2 * rm) + 2 * (hm - 2 * rm) + 2 * np.pi * rm
    return rigidity(area, 4 * enclosed**2 * t / length, i_x, i_z, cowper_box(bm, hm), cowper_box(hm, bm))


def cowper_box(b, h):
    """Equal walls; b lies across the shear force."""
    m, n = b / h, b / h
    top = 10 * (1 + NU) * (1 + 3 * m) ** 2
    below = np.polyval([90, 150, 72, 12], m) + NU * np.polyval([90, 135, 66, 11], m)
    return top / (below + 10 * n**2 * ((3 + NU) * m + 3 * m**2))


def tube(outside, inside):
    m = inside / outside
    area = np.pi / 4 * (outside**2 - inside**2)
    i = np.pi / 64 * (outside**4 - inside**4)
    s = (1 + m**2) ** 2
    k = 6 * (1 + NU) * s / ((7 + 6 * NU) * s + (20 + 12 * NU) * m**2)
    return rigidity(area, 2 * i, i, i, k, k)


def rigidity(area, j, i_x, i_z, k_z, k_x):
    return dict(ea=E * area, gj=G * j, ei2=E * i_z, ei3=E * i_x, ga2=k_z * G * area, ga3=k_x * G * area)


# --- members -----------------------------------------------------------------------------------------


def uniform_matrix(s, l):
    """Przemieniecki's 12 x 12 stiffness with shear, local axes, freedoms u1 u2 u3 r1 r2 r3 at each end."""
    k = np.zeros((12, 12))
    for i, rate in ((0, s["ea"] / l), (3, s["gj"] / l)):
        k[np.ix_([i, i + 6], [i, i + 6])] += rate * np.array([[1, -1], [-1, 1]])
    for v, r, sign, ei, ga in ((1, 5, 1, s["ei3"], s["ga2"]), (2, 4, -1, s["ei2"], s["ga3"])):
        phi = 12 * ei / (ga * l**2)
        c = ei / ((1 + phi) * l**3)
        block = c * np.array(
            [
                [12, 6 * l, -12, 6 * l],
                [6 * l, (4 + phi) * l**2, -6 * l, (2 - phi) * l**2],
                [-12, -6 * l, 12, -6 * l],
                [6 * l, (2 - phi) * l**2, -6 * l, (4 + phi) * l**2],
            ]
        )
        turn = np.diag([1, sign, 1, sign])
        k[np.ix_([v, r, v + 6, r + 6], [v, r, v + 6, r + 6])] += turn @ block @ turn
    return k


def varying_matrix(section_at, l):
    """12 x 12 stiffness from the tip flexibility of the member held at its start."""

    def integral(name, power):
        # Distance to the tip, from which the moments of tip forces grow.
        return quad(lambda x: (l - x) ** power / section_at(x / l)[name], 0, l, epsabs=0, epsrel=1e-13)[0]

    f = np.zeros((6, 6))
    f[0, 0], f[3, 3] = integral("ea", 0), integral("gj", 0)
    for v, r, sign, ei, ga in ((1, 5, 1, "ei3", "ga2"), (2, 4, -1, "ei2", "ga3")):
        f[v, v] = integral(ei, 2) + integral(ga, 0)
        f[r, r] = integral(ei, 0)
        f[v, r] = f[r, v] = sign * integral(ei, 1)
    tip = np.linalg.inv(f)
    # The start balances the tip: force and moment at the start for each tip force.
    balance = -arm_matrix(np.array([l, 0, 0])).T
    b = np.vstack([balance, np.eye(6)])
    return b @ tip @ b.T


def skew(a):
    return np.array([[0, -a[2], a[1]], [a[2], 0, -a[0]], [-a[1], a[0], 0]])


def arm_matrix(arm):
    """Motion of the end of a rigid arm from that of its node."""
    t = np.eye(6)
    t[:3, 3:] = -skew(arm)
    return t


def local_axes(start, end):
    one = (end - start) / np.linalg.norm(end - start)
    two = np.array([0, 0, 1.0])
    two = two - one * (one @ two)
    two /= np.linalg.norm(two)
    return np.array([one, two, np.cross(one, two)])


# --- the axle ------------------------------------------------------------------------------------------

NODES = {
    "left wheel": [0.0, 1.12, -0.02],
    "left spindle": [0.0, 1.05, 0.0],
    "left tube end": [0.0, 0.90, 0.0],
    "left seat": [0.0, 0.52, 0.0],
    "center": [0.0, 0.05, 0.0],
    "right seat": [0.0, -0.48, 0.0],
    "right tube end": [0.0, -0.86, 0.0],
    "right spindle": [0.004, -1.02, 0.006],
}
NAMES = list(NODES)
PLACES = {name: np.array(place) for name, place in NODES.items()}

TUBE = tube(0.127, 0.127 - 2 * 0.0127)
BOX = box(0.120, 0.150, 0.008, 0.016)
BAR = tube(0.085, 0.0)


def spindle(share):
    return tube(0.070 + share * (0.095 - 0.070), 0.0)


BEAMS = [
    ("left spindle", "left tube end", spindle, [0, 0, 0]),
    ("left tube end", "left seat", TUBE, [0, 0, 0]),
    ("left seat", "center", TUBE, [40.0, 25.0, -350.0]),
    ("center", "right seat", BOX, [-15.0, 10.0, -280.0]),
    ("right seat", "right tube end", BOX, [0, 0, 0]),
    ("right tube end", "right spindle", BAR, [0, 0, 0]),
]

BEARING = np.diag([4.0e8, 9.0e7, 5.0e8, 6.0e5, 2.0e5, 5.0e5])
BEARING[2, 3] = BEARING[3, 2] = 4.0e6
BEARING[0, 5] = BEARING[5, 0] = -3.0e6

# near node, arm; far node (or the ground), arm; stiffness at the common point
SPRINGS = [
    ("left spindle", [0, 0.03, 0], "left wheel", [0, -0.04, 0.02], BEARING),
    ("left seat", [0.03, 0, 0.10], None, None, np.diag([2.0e6, 3.0e6, 4.0e6, 2.0e4, 1.5e4, 3.0e4])),
    ("right seat", [-0.02, 0.01, 0.11], None, None, np.diag([2.5e6, 1.0e6, 3.2e6, 5.0e4, 0.8e4, 1.0e4])),
    ("left wheel", [0.0, 0.02, -0.48], None, None, np.diag([0.0, 3.0e5, 9.0e5, 0, 0, 0])),
    ("right spindle", [0.0, -0.05, -0.50], None, None, np.diag([0.0, 2.5e5, 8.0e5, 0, 0, 0])),
]

# node, arm, force, moment
LOADS = [
    ("left wheel", [0.0, 0.02, -0.48], [1200.0, -3500.0, 42000.0], [0, 0, 0]),
    ("right spindle", [0.0, -0.05, -0.50], [-800.0, 2500.0, 36000.0], [0, 0, 0]),
    ("left wheel", [0, 0, 0], [0, 0, 0], [0.0, 3000.0, 150.0]),
    ("center", [0.05, 0.0, -0.02], [500.0, 0.0, -9000.0], [0, 0, 0]),
]


def freedoms(*names):
    return np.concatenate([6 * NAMES.index(name) + np.arange(6) for name in names])


def beam_parts(beam):
    """Local stiffness, turn into local axes, and equivalent local end loads."""
    start, end, section, load = beam
    axes = local_axes(PLACES[start], PLACES[end])
    l = np.linalg.norm(PLACES[end] - PLACES[start])
    k = varying_matrix(section, l) if callable(section) else uniform_matrix(section, l)
    q = axes @ np.array(load, dtype=float)
    half, turn = q * l / 2, np.array([0, -q[2], q[1]]) * l**2 / 12
    return k, block_diag(axes, axes, axes, axes), np.concatenate([half, turn, half, -turn])


def spring_parts(spring):
    near, near_arm, far, far_arm, stiffness = spring
    if far is None:
        return freedoms(near), arm_matrix(near_arm), stiffness
    return freedoms(near, far), np.hstack([arm_matrix(near_arm), -arm_matrix(far_arm)]), stiffness


def assemble():
    k, p = np.zeros((6 * len(NAMES),) * 2), np.zeros(6 * len(NAMES))
    for beam in BEAMS:
        local, turn, load = beam_parts(beam)
        where = freedoms(beam[0], beam[1])
        k[np.ix_(where, where)] += turn.T @ local @ turn
        p[where] += turn.T @ load
    for spring in SPRINGS:
        where, to_point, stiffness = spring_parts(spring)
        k[np.ix_(where, where)] += to_point.T @ stiffness @ to_point
    for node, arm, force, moment in LOADS:
        p[freedoms(node)] += arm_matrix(arm).T @ np.array([*force, *moment], dtype=float)
    return k, p


def main():
    k, p = assemble()
    u = solve(k, p, assume_a="pos")
    u += solve(k, p - k @ u, assume_a="pos")  # one step of refinement
    cuts = {}
    for beam in BEAMS:
        local, turn, load = beam_parts(beam)
        on_start = (local @ turn @ u[freedoms(beam[0], beam[1])] - load)[:6]
        cuts[f"{beam[0]} to {beam[1]}"] = (-on_start).tolist()
    springs = []
    for spring in SPRINGS:
        where, to_point, stiffness = spring_parts(spring)
        springs.append((stiffness @ to_point @ u[where]).tolist())
    kept = {
        "made_by": "scripts/recompute_axle.py",
        "python": platform.python_version(),
        "numpy": np.__version__,
        "scipy": scipy.__version__,
        "displacements": {name: u[freedoms(name)].tolist() for name in NAMES},
        "cuts_at_beam_starts": cuts,
        "spring_forces": springs,
    }
    print(json.dumps(kept, indent=1))


if __name__ == "__main__":
    main()
