#!/usr/bin/env python3
"""An axle on road and body in one dense frame, apart from our code, for crates/axle/tests/all/ground.rs.

    python3 -m venv venv && venv/bin/pip install numpy scipy
    venv/bin/python scripts/recompute_ground.py

The Rust solves the axle for unit forces at its hubs and puts road and body around it in ten equations. Here tires, seats
and the body are members of the frame, in one unsymmetric matrix (forces along the road go by the unknown tire loads).
Beam matrices are those of recompute_axle.py. Prints, for each case, tire loads (outer and inner, left and right; N) and the camber and toe changes of both wheels (rad). The axle is that of the tests (`example::axle`), invented.
"""

import numpy as np
import recompute_axle as frame

frame.E, frame.NU = 200e9, 0.3
frame.G = frame.E / (2 * (1 + frame.NU))
G, RHO = 9.80665, 7850.0
LOAD, HEIGHT, RADIUS, KZ, SPACING, TILT = 89e3, 1.9, 0.49, 0.9e6, 0.33, 0.92
HUB_MASS, WHEEL_MASS = 75.0, 150.0

TUBE, THICK, THIN = (0.127, 0.127 - 2 * 0.0127), (0.09, 0.0), (0.07, 0.0)
STRETCHES = [(0.0, 0.48, TUBE), (0.48, 0.8, TUBE), (0.8, 0.84, THICK), (0.84, 0.89, THICK), (0.89, 0.95, THIN),
             (0.95, 1.01, THIN)]
LINE = sorted({s * y for a, b, _ in STRETCHES for y in (a, b) for s in (1, -1)})
NODES = [("line", y) for y in LINE] + [("hub", 0.92), ("hub", -0.92), ("body", 0.0)]
N = 6 * len(NODES)


def freedoms(kind, y):
    number = next(i for i, (own, at) in enumerate(NODES) if own == kind and abs(at - y) < 1e-9)
    return 6 * number + np.arange(6)


def point(kind, y, arm):
    """6 x N: motion of a point on a rigid arm from a node."""
    t = np.zeros((6, N))
    t[:, freedoms(kind, y)] = frame.arm_matrix(np.array(arm))
    return t


def area(section):
    return np.pi / 4 * (section[0] ** 2 - section[1] ** 2)


def mass():
    return (sum(2 * (b - a) * area(s) * RHO for a, b, s in STRETCHES) + 2 * (HUB_MASS + WHEEL_MASS))


def solve(side=0.0, braking=0.0, camber=(0.0, 0.0)):
    k, p = np.zeros((N, N)), np.zeros(N)
    field = np.array([braking, -side, -1.0]) * G  # force per mass that the axle feels
    turn = np.kron(np.eye(4), np.array([[0, 1, 0], [0, 0, 1], [1, 0, 0]]))  # local 1, 2, 3 are Y, Z, X
    for start, end in zip(LINE, LINE[1:]):
        section = next(s for a, b, s in STRETCHES if a - 1e-9 <= abs(start + end) / 2 <= b + 1e-9)
        length, where = end - start, np.concatenate([freedoms("line", start), freedoms("line", end)])
        k[np.ix_(where, where)] += turn.T @ frame.uniform_matrix(frame.tube(*section), length) @ turn
        q = field * area(section) * RHO
        couple = np.array([q[2], 0, -q[0]]) * length**2 / 12
        p[where] += np.concatenate([q * length / 2, couple, q * length / 2, -couple])
    tires = []
    for sign, lean in ((1, camber[0]), (-1, camber[1])):
        hub = ("hub", sign * TILT)
        for y, brake in ((0.84, 1e7), (0.95, 0.0)):
            gap = point(*hub, [0, sign * (y - TILT), 0]) - point("line", sign * y, [0, 0, 0])
            k += gap.T @ np.diag([1e9, 4e8, 1e9, 0, brake, 0]) @ gap
        seat = point("line", sign * 0.48, [0, 0, 0]) - point("body", 0.0, [0, sign * 0.48, 0])
        k += seat.T @ np.diag([8e6, 4e6, 1.5e6, 200e3, 60e3, 80e3]) @ seat
        for y, m in ((0.895, HUB_MASS), (TILT, WHEEL_MASS)):
            p += point(*hub, [0, sign * (y - TILT), 0])[:3].T @ (m * field)
        for out in (SPACING / 2, -SPACING / 2):
            contact = point(*hub, [0, sign * out, -RADIUS])
            rise = -lean * out
            along = contact[2] + side * contact[1] - braking * contact[0]
            # Load KZ (-u - rise), with its forces along the road.
            k += KZ * np.outer(along, contact[2])
            p -= KZ * rise * along
            tires.append((contact[2], rise))
    body = freedoms("body", 0.0)
    unsprung, above = mass() * G, HEIGHT - RADIUS
    sprung = LOAD - unsprung
    p[body[2]] -= sprung
    p[body[3]] += above * side * sprung
    k[body[3], body[3]] -= above * sprung
    free = np.array([i for i in range(N) if i not in set(body[[0, 1, 4, 5]])])
    u = np.zeros(N)
    u[free] = np.linalg.solve(k[np.ix_(free, free)], p[free])
    loads = [KZ * (-up @ u - rise) for up, rise in tires]
    left, right = u[freedoms("hub", TILT)], u[freedoms("hub", -TILT)]
    tilt, swing = (left[2] - right[2]) / (2 * TILT), -(left[0] - right[0]) / (2 * TILT)
    angles = [-(left[3] - tilt), right[3] - tilt, -(left[5] - swing), right[5] - swing]
    return [*loads, *angles]


def main():
    for name, case in (
        ("side-load", dict(side=0.2)),
        ("braking", dict(braking=0.5, camber=(-0.02, 0.0))),
        ("rated-load", dict(camber=(-0.0087, -0.0087))),
    ):
        print(name, ", ".join(f"{value:.10e}" for value in solve(**case)))


if __name__ == "__main__":
    main()
