#!/usr/bin/env python3
"""Growth of wear waves from the physical model, apart from our code (NumPy, SciPy).

Slopes of scuff are central differences of the brush, the free speed is found by brentq, and each wave is the solution of one
linear system in all unknowns: rib loads, rise and camber of the hub, and how the wheel's travel follows in both states
of driving. Prints the values that crates/tread/tests/all/growth.rs keeps.
"""

import numpy as np
from scipy.optimize import brentq, minimize_scalar

# A dual wheel with the tread of the tests of the crate; a side force over load, to and fro, wears it.
RADIUS, STIFFNESS, RATED = 0.51, 1.1e6, 30e3
WIDTH, RIBS, CROWN, DEPTH, SHEAR, PRESSURE, FRICTION, USUAL = 0.3, 5, 0.002, 0.016, 1.2e6, 760e3, 0.8, 0.03
CENTERS = (0.165, -0.165)
SPIN, DAMPING_TIME = 20.0, 1e-3
PER_LOAD = 0.5 * SHEAR / DEPTH * RATED / (PRESSURE**2 * WIDTH)


def brush(slip):
    """Force over load."""
    psi = min(PER_LOAD * slip / (3 * FRICTION), 1)
    return FRICTION * (3 * psi - 3 * psi**2 + psi**3)


def forward_force(load, radius, travel, side):
    forward = (radius - travel) / travel
    sliding = np.hypot(forward, side)
    return load * brush(sliding * travel / radius) * forward / sliding if sliding else 0.0


def energy(load, radius, travel, side):
    sliding = np.hypot((radius - travel) / travel, side)
    return load * brush(sliding * travel / radius) * sliding


def share(offsets, total):
    """Mean deflection at which one-sided springs of unit stiffness carry a total."""
    span = total + 1 + 2 * np.abs(offsets).max()
    return brentq(lambda mean: np.maximum(mean + offsets, 0).sum() - total, -span, span, xtol=1e-16, rtol=1e-15)


def face(load, camber, toe):
    """Places, loads and radii of the ribs; travel free of the duty; travel and side slip of both states of driving."""
    on_tire = WIDTH * ((np.arange(RIBS) + 0.5) / RIBS - 0.5)
    crown = CROWN * (2 * on_tire / WIDTH) ** 2
    lower = np.array(CENTERS) * camber
    tires = STIFFNESS * np.maximum(share(lower, load / STIFFNESS) + lower, 0)
    rib = STIFFNESS / RIBS
    deflections = []
    for own in tires:
        offsets = on_tire * camber - crown
        deflections.append(np.maximum(share(offsets, own / rib) + offsets, 0))
    deflection = np.concatenate(deflections)
    loads, radii = rib * deflection, RADIUS - np.tile(crown, len(CENTERS)) - deflection / 3
    states = []
    slip = brentq(lambda slip: brush(slip) - USUAL, 0, 0.5, xtol=1e-17, rtol=1e-15)
    for side in (np.tan(toe), np.tan(toe) - slip, np.tan(toe) + slip):
        sum_of = lambda travel: sum(forward_force(*each, travel, side) for each in zip(loads, radii))
        on_road = radii[loads > 0]
        states.append((brentq(sum_of, on_road.min(), on_road.max(), xtol=1e-16, rtol=1e-15), side))
    places = np.concatenate([center + on_tire for center in CENTERS])
    return places, loads, radii, states[0][0], states[1:]


def slope(value, at, i, step):
    up, down = list(at), list(at)
    up[i] += step
    down[i] -= step
    return (value(*up) - value(*down)) / (2 * step)


def growth(pose, count, speed, compliance):
    """Eigenvalues of the growth of one hub, 1/m of mean tread worn, and its frequency, Hz."""
    places, loads, radii, travel, states = face(*pose)
    omega = count * speed / travel
    n = len(places)
    rib = STIFFNESS / RIBS * (1 + 1j * omega * DAMPING_TIME) * (loads > 0)
    contact = RATED / (PRESSURE * WIDTH) * np.sqrt(loads * RIBS / RATED)
    phase = 0.5 * count * contact / travel
    felt = np.where(phase > 0, np.sin(phase) / np.where(phase > 0, phase, 1), 1)
    shape = np.stack([np.ones(n), -places], 1)
    mean = sum(0.5 * energy(f, r, *state) for f, r in zip(loads, radii) for state in states) / n
    # Unknowns: n rib loads, 2 motions, 1 travel for each state.
    system, right = np.zeros((n + 4, n + 4), complex), np.zeros((n + 4, n), complex)
    system[:n, :n] = np.eye(n)
    system[:n, n : n + 2] = rib[:, None] * shape
    right[:n] = np.diag(rib * felt)
    system[n : n + 2, n : n + 2] = np.eye(2)
    system[n : n + 2, :n] = -compliance(omega) @ shape.T
    by = {}
    for s, (own, side) in enumerate(states):
        row = n + 2 + s
        inertia = 1j * omega * SPIN * speed / travel**3
        for r in range(n):
            at = (loads[r], radii[r], own, side)
            x = [slope(forward_force, at, i, step) for i, step in ((0, 1e-3 * max(loads[r], 1)), (1, 1e-9), (2, 1e-9))]
            e = [slope(energy, at, i, step) for i, step in ((0, 1e-3 * max(loads[r], 1)), (1, 1e-9), (2, 1e-9))]
            by[r, s] = e
            # The radius of a rib: two thirds of the wave and a third of its rise.
            system[row, r] -= x[0]
            system[row, n : n + 2] -= x[1] * shape[r] / 3
            right[row, r] += x[1] * 2 / 3 * felt[r]
            system[row, row] += -x[2]
        system[row, row] += inertia
    solved = np.linalg.solve(system, right)
    wear = np.zeros((n, n), complex)
    for (r, s), e in by.items():
        radius = shape[r] @ solved[n : n + 2] / 3
        radius[r] += 2 / 3 * felt[r]
        wear[r] += 0.5 * felt[r] * (e[0] * solved[r] + e[1] * radius + e[2] * solved[n + 2 + s])
    return np.linalg.eigvals(-wear / mean), omega / (2 * np.pi)


def hub(omega):
    """A hub of 500 kg and 60 kg m² on springs and dampers that couple its rise and camber."""
    mass = np.diag([500.0, 60.0])
    stiffness = np.array([[3e5, 1e5], [1e5, 2e6]])
    damping = np.array([[8e3, 5e2], [5e2, 1e3]])
    return np.linalg.inv(stiffness + 1j * omega * damping - omega**2 * mass)


def leveling(camber, rib, load, toe):
    """Wear gained by a higher spot of a rib, hub and turning held; the least over the tires."""
    _, loads, radii, _, states = face(load, camber, toe)
    found = []
    for r in range(rib, len(loads), RIBS):
        sums = 0.0
        for state in states:
            at = (loads[r], radii[r], *state)
            sums += STIFFNESS / RIBS * slope(energy, at, 0, 1e-3 * max(loads[r], 1)) + 2 / 3 * slope(energy, at, 1, 1e-9)
        found.append(sums)
    return min(found)


def main():
    print("one mass: c, band Hz, least Re H/k_t and where")
    m, kt, ks = 300.0, 2e6, 2e5
    for c in (0.0, 4e3, 8e3, 16e3):
        h = lambda f: (ks - m * (2 * np.pi * f) ** 2 + 2j * np.pi * f * c) / (ks + kt - m * (2 * np.pi * f) ** 2 + 2j * np.pi * f * c)
        signs = lambda f: (ks - m * (2 * np.pi * f) ** 2) * (ks + kt - m * (2 * np.pi * f) ** 2) + (2 * np.pi * f * c) ** 2
        middle = minimize_scalar(signs, bounds=(1, 14), method="bounded").x
        band = brentq(signs, 0.1, middle), brentq(signs, middle, 20)
        least = minimize_scalar(lambda f: h(f).real, bounds=band, method="bounded", options={"xatol": 1e-12}) if c else None
        print(f"  {c:8.0f} {band[0]:.6f} {band[1]:.6f}", f"{least.fun:.6f} {least.x:.4f}" if least else "")
    print("one dual wheel, count, speed: frequency, the eigenvalue that grows fastest")
    for pose, count, speed in (((40e3, -0.01, 0.001), 7, 25.0), ((40e3, -0.01, 0.001), 3, 29.0), ((55e3, 0.004, -0.002), 12, 22.0)):
        values, frequency = growth(pose, count, speed, hub)
        fastest = values[np.argmax(values.real)]
        slowest = values[np.argmin(values.real)]
        print(f"  {pose} {count} {speed}: {frequency:.8f} {fastest:.6f} {slowest:.6f}")
    print("critical camber of a flatter tread (crown 0.2 mm, usual side force 0.05), inner and outer shoulder, 40e3 N, toe 0.001:")
    globals().update(CROWN=0.0002, USUAL=0.05)
    for rib, side in ((0, -1), (RIBS - 1, 1)):
        grid = np.linspace(0, 0.05, 101)
        own = lambda lean: leveling(side * lean, rib, 40e3, 0.001)
        turns = next(i for i, lean in enumerate(grid) if own(lean) < 0)
        print(f"  {side * brentq(own, grid[turns - 1], grid[turns], xtol=1e-14):.8f}")


if __name__ == "__main__":
    main()
