"""Times the static sweep of studies/five-dimensions.toml in NumPy on designs that axlebow has solved.

Usage: sweep.py FILE.csv, the study's rows; from standard input the microseconds that axlebow takes for a design. Checks
that camber changes agree to 1e-9 of themselves, then prints both times and their ratio. Written as a good user would who
knows this axle: half of it by symmetry, only the nodes that are needed, all designs of a block in one array, one call of
`numpy.linalg.solve` for a block with all right-hand sides.
"""

import csv
import sys
import time

import numpy as np

GRAVITY, E, NU, RHO = 9.80665, 200e9, 0.3, 7850.0
G = E / (2 * (1 + NU))
TUBE_HALF, STEPS = 0.84, [(0.14, 0.092), (0.10, 0.072)]
INNER, OUTER, FACE = 0.957, 1.067, 0.984
RADIAL, AXIAL, BRAKE = 1e9, 4e8, 1e7
HUB_MASS, WHEEL_MASS, SPACING, RADIUS, TIRE = 85.0, 190.0, 0.33, 0.49, 875e3
SEAT_WIDTH, COMPOSITE, WALL = 0.18, 0.99, 2.1e-8
AHEAD, ABOVE, BEHIND, SPRING, BUSH, BUSH_AXIAL = 0.5, 0.04, 0.38, 120e3, 20e6, 5e6
BLOCK = 500


def section(od, wall):
    """Area, second moment and Cowper's shear coefficient of a round tube or bar."""
    inside = od - 2 * wall
    area = np.pi * wall * (od - wall)
    m2 = (inside / od) ** 2
    shear = 6 * (1 + NU) * (1 + m2) ** 2 / ((7 + 6 * NU) * (1 + m2) ** 2 + (20 + 12 * NU) * m2)
    return area, area * (od**2 + inside**2) / 16, shear


def arm(y=0.0, x=0.0, z=0.0):
    """Motion of a point at (x, y, z) from a node by the node's motion."""
    a = np.eye(6)
    a[0, 4], a[0, 5] = z, -y
    a[1, 3], a[1, 5] = -z, x
    a[2, 3], a[2, 4] = y, -x
    return a


def beam(length, area, second, shear, factor):
    """Stiffness of the start of beams along Y with their ends held: arrays over designs."""
    axial, twist = factor * length / (E * area), factor * length / (G * 2 * second)
    b0, b1, b2 = (factor * length**n / (n * E * second) for n in (1, 2, 3))
    shift = b2 + factor * length / (shear * G * area)
    determinant = shift * b0 - b1**2
    k = np.zeros(determinant.shape + (6, 6))
    k[:, 0, 0] = k[:, 2, 2] = b0 / determinant
    k[:, 3, 3] = k[:, 5, 5] = shift / determinant
    k[:, 2, 3] = k[:, 3, 2] = b1 / determinant
    k[:, 0, 5] = k[:, 5, 0] = -b1 / determinant
    k[:, 1, 1], k[:, 4, 4] = 1 / axial, 1 / twist
    return k


def add_coupling(k, one, other, stiffness, near, far):
    """Adds a stiffness at a point between two nodes through the arms from both."""
    a, b = slice(6 * one, 6 * one + 6), slice(6 * other, 6 * other + 6)
    k[:, a, a] += near.T @ stiffness @ near
    k[:, b, b] += np.swapaxes(far, -1, -2) @ stiffness @ far
    cross = near.T @ stiffness @ far
    k[:, a, b] -= cross
    k[:, b, a] -= np.swapaxes(cross, -1, -2)


def seat_stiffness(turning):
    """Trailing arm with bush and spring, then the wall in series about X."""
    at = lambda x, z, rates: arm(x=x, z=z).T @ np.diag(rates) @ arm(x=x, z=z)
    k = at(AHEAD, ABOVE, [BUSH, BUSH_AXIAL, BUSH, 0, 0, 0]) + at(-BEHIND, 0.0, [0, 0, SPRING, 0, 0, 0])
    k = np.repeat(k[None], len(turning), axis=0)
    k[:, 3, 3] += turning
    column = k[:, :, 3].copy()
    factor = WALL / (1 + WALL * column[:, 3])
    return k - factor[:, None, None] * column[:, :, None] * column[:, None, :]


def arms(lengths):
    """Arms along Y from the end of each beam back to its start."""
    a = np.repeat(np.eye(6)[None], len(lengths), axis=0)
    a[:, 0, 5], a[:, 2, 3] = lengths, -lengths
    return a


def solved(od, at, turning, load, wall):
    """Camber change, bare mass and largest fiber stress at nodes of a block of designs."""
    count, half = len(od), 0.5 * SEAT_WIDTH
    tube = section(od, wall)
    bars = [section(np.full(count, d), np.full(count, d / 2)) for _, d in STEPS]
    places = [np.zeros(count), at - half, at, at + half]
    places += [np.full(count, y) for y in (TUBE_HALF, INNER, TUBE_HALF + STEPS[0][0], OUTER, TUBE_HALF + STEPS[0][0] + STEPS[1][0])]
    sections = [tube] * 4 + [bars[0], bars[0], bars[1], bars[1]]
    hub, size = 9, 60
    k, f = np.zeros((count, size, size)), np.zeros((count, size, 3))
    stiffnesses, mass = [], np.zeros(count)
    for i, (area, second, shear) in enumerate(sections):
        length = places[i + 1] - places[i]
        stiffness = beam(length, area, second, shear, 1 - COMPOSITE if i in (1, 2) else 1.0)
        stiffnesses.append(stiffness)
        add_coupling(k, i, i + 1, stiffness, np.eye(6), arms(length))
        weight = RHO * area * length
        mass += 2 * weight
        for node, sign in ((i, -1.0), (i + 1, 1.0)):
            f[:, 6 * node + 2, 2] -= 0.5 * GRAVITY * weight
            f[:, 6 * node + 3, 2] += sign * GRAVITY * weight * length / 12
    seat = slice(12, 18)
    k[:, seat, seat] += seat_stiffness(turning)
    bearing = np.diag([RADIAL, AXIAL, RADIAL, 0, 0, 0.0])
    add_coupling(k, hub, 5, bearing[None], arm(y=INNER - FACE), np.eye(6)[None])
    add_coupling(k, hub, 7, bearing[None], arm(y=OUTER - FACE), np.eye(6)[None])
    add_coupling(k, hub, 5, np.diag([0, 0, 0, 0, BRAKE, 0.0])[None], np.eye(6), np.eye(6)[None])
    tires = np.array([0.5 * SPACING, -0.5 * SPACING])
    lift = 6 * hub + 2
    for column, y in enumerate(tires):
        f[:, lift, column], f[:, lift + 1, column] = 1.0, y
    f[:, lift, 2] -= GRAVITY * (HUB_MASS + WHEEL_MASS)
    f[:, lift + 1, 2] -= GRAVITY * HUB_MASS * (0.5 * (INNER + OUTER) - FACE)
    free = np.setdiff1d(np.arange(size), [1, 3, 5])
    u = np.zeros((count, size, 3))
    u[:, free] = np.linalg.solve(k[:, free[:, None], free], f[:, free])
    rise = u[:, lift, None, :] + tires[None, :, None] * u[:, lift + 1, None, :]
    road = np.zeros((count, 3, 3))
    road[:, :2, :2] = rise[:, :, :2] + np.eye(2) / TIRE
    road[:, :2, 2], road[:, 2, :2] = 1.0, 1.0
    right = np.concatenate([-rise[:, :, 2], 0.5 * load[:, None]], axis=1)
    forces = np.linalg.solve(road, right[:, :, None])[:, :, 0]
    motion = (u[:, :, :2] * forces[:, None, :2]).sum(axis=2) + u[:, :, 2]
    camber = -motion[:, lift + 1]
    stress = np.zeros(count)
    for i, (area, second, _) in enumerate(sections):
        length = places[i + 1] - places[i]
        start, end = motion[:, 6 * i : 6 * i + 6], motion[:, 6 * i + 6 : 6 * i + 12]
        force = (stiffnesses[i] @ (start - (arms(length) @ end[:, :, None])[:, :, 0])[:, :, None])[:, :, 0]
        moment = np.hypot(force[:, 3], force[:, 5])
        outside = od if i < 4 else STEPS[(i - 4) // 2][1]
        stress = np.maximum(stress, moment * 0.5 * outside / second + np.abs(force[:, 1]) / area)
    return camber, mass, stress


def main():
    with open(sys.argv[1]) as file:
        rows = [row for row in csv.DictReader(line for line in file if not line.startswith("#")) if not row["reason"]]
    keys = ["tube.od (m)", "seat[0].at (m)", "seat[0].rotational_stiffness (N m/rad)", "loads.rated_load (N)"]
    designs = np.array([[float(row[key]) for key in keys + ["tube.wall (m)"]] for row in rows])
    camber = np.array([float(row["left_camber_change_rad"]) for row in rows])
    mass = np.array([float(row["axle_mass_kg"]) for row in rows])
    ours = float(sys.stdin.read())
    start = time.process_time()
    blocks = [solved(*designs[i : i + BLOCK].T) for i in range(0, len(designs), BLOCK)]
    theirs = 1e6 * (time.process_time() - start) / len(designs)
    own_camber, own_mass, _ = (np.concatenate(column) for column in zip(*blocks))
    apart = np.abs(own_camber / camber - 1).max(), np.abs(own_mass / mass - 1).max()
    print(f"{len(designs)} designs: camber changes agree to {apart[0]:.1e}, masses to {apart[1]:.1e}")
    if max(apart) > 1e-9:
        sys.exit("the two do not solve the same axle")
    print(f"NumPy {np.__version__}: {theirs:.1f} us a design, axlebow {ours:.2f}: ratio {theirs / ours:.1f}")


if __name__ == "__main__":
    main()
