#!/usr/bin/env python3
"""A bouncing wheel under a sprung mass and a rolling vehicle, for tests/reference/scipy_ride.rs.

    python3 -m venv venv && venv/bin/pip install numpy scipy
    venv/bin/python scripts/recompute_ride.py > tests/reference/scipy_ride.json

A wheel on a damped tire that can leave the road, a sprung mass on a spring, a damper of two slopes and a bump
stop; the road has two bumps. The equations are written out and integrated by DOP853 from contact change to
contact change, which are events of the integration, and restarted at the corners of the road. The vehicle of
recompute_vehicle.py drives over a bump under its left wheel.

SI throughout. The vehicle and its numbers are invented.
"""

import json
import platform

import numpy as np
import recompute_vehicle
import scipy
from scipy.integrate import solve_ivp

WHEEL, BODY, GRAVITY = 250.0, 2000.0, 9.81
TIRE, TIRE_DAMPING = 1.0e6, 600.0
SPRING, COMPRESSION, EXTENSION = 2.0e5, 4.0e3, 1.2e4
STOP, CLEARANCE = 2.0e6, 0.12
BUMPS = [(0.1, 0.1, 0.10), (0.9, 0.08, 0.07)]  # start, duration, height
END, EVERY = 1.5, 0.05
# The vehicle's bump: height, length, and how it is met.
HEIGHT, LENGTH, CONTACT, SPEED, RUN_UP = 0.01, 1.0, 0.2, 10.0, 1.0


def road(t):
    for start, duration, height in BUMPS:
        if start <= t <= start + duration:
            w = 2 * np.pi / duration
            return 0.5 * height * (1 - np.cos(w * (t - start))), 0.5 * height * w * np.sin(w * (t - start))
    return 0.0, 0.0


def suspension(delta, rate):
    damper = (COMPRESSION if rate > 0 else EXTENSION) * rate
    return SPRING * delta + damper + STOP * max(0.0, delta - CLEARANCE)


def tire(t, state, touching):
    z, z_rate = road(t)
    delta, rate = z - state[0], z_rate - state[2]
    return max(0.0, TIRE * delta + TIRE_DAMPING * rate) if touching else 0.0


def rates(t, state, touching):
    u, body, v, body_v = state
    between = suspension(u - body, v - body_v)
    a = (tire(t, state, touching) - between) / WHEEL - GRAVITY
    return [v, body_v, a, between / BODY - GRAVITY]


def gap(t, state, touching):
    return road(t)[0] - state[0]


def ride():
    u = -(WHEEL + BODY) * GRAVITY / TIRE
    # Below the clearance of the stop: checked below.
    sag = BODY * GRAVITY / SPRING
    assert sag < CLEARANCE
    state, t, touching = np.array([u, u - sag, 0.0, 0.0]), 0.0, True
    corners = sorted({END} | {edge for s, d, _ in BUMPS for edge in (s, s + d)})
    times = np.arange(0, round(END / EVERY) + 1) * EVERY
    samples, changes, most = {0.0: state}, [], 0.0
    while t < END:
        gap.terminal, gap.direction = True, -1 if touching else 1
        until = min(corner for corner in corners if corner > t)
        want = [float(x) for x in times if t < x <= until]
        run = solve_ivp(rates, (t, until), state, method="DOP853", events=gap, args=(touching,),
                        rtol=1e-12, atol=1e-13, max_step=1e-3, dense_output=True)
        samples.update({x: run.sol(x) for x in want if x <= run.t[-1]})
        most = max(most, max(run.y[0] - run.y[1]))
        t, state = float(run.t[-1]), run.y[:, -1]
        if run.status == 1:
            touching = not touching
            changes.append({"time": t, "touches": touching})
    return samples, changes, most


def felt(x):
    """Mean height of a whole cosine wave over the contact, and its slope."""

    def height(x):
        x = np.clip(x, 0.0, LENGTH)
        return 0.5 * HEIGHT * (1 - np.cos(2 * np.pi * x / LENGTH))

    def area(x):
        x = np.clip(x, 0.0, LENGTH)
        return 0.5 * HEIGHT * (x - LENGTH / (2 * np.pi) * np.sin(2 * np.pi * x / LENGTH))

    ends = x + 0.5 * CONTACT, x - 0.5 * CONTACT
    return (area(ends[0]) - area(ends[1])) / CONTACT, (height(ends[0]) - height(ends[1])) / CONTACT


def vehicle_ride():
    mass, stiffness, _, _, tires = recompute_vehicle.matrices()
    damping, rest = recompute_vehicle.whole_damping(), recompute_vehicle.LOAD / 2

    def loads(t, state):
        z, slope = felt(SPEED * t - RUN_UP)
        roads = (z, SPEED * slope), (0.0, 0.0)
        return [recompute_vehicle.TIRE * (z - tire @ state[:4]) + recompute_vehicle.TIRE_DAMPING * (rate - tire @ state[4:])
                for (z, rate), tire in zip(roads, tires)]

    def rates(t, state):
        left, right = loads(t, state)
        inner = stiffness - recompute_vehicle.TIRE * sum(np.outer(tire, tire) for tire in tires)
        inner_damping = damping - recompute_vehicle.TIRE_DAMPING * sum(np.outer(tire, tire) for tire in tires)
        force = left * tires[0] + right * tires[1] - inner @ state[:4] - inner_damping @ state[4:]
        return [*state[4:], *np.linalg.solve(mass, force)]

    times = np.arange(0, 41) * EVERY
    run = solve_ivp(rates, (0, times[-1]), np.zeros(8), method="DOP853", t_eval=times, rtol=1e-10, atol=1e-12, max_step=1e-3)
    assert all(rest + load > 0 for t, y in zip(run.t, run.y.T) for load in loads(t, y))
    return [{"time": float(t), "loads": [rest + load for load in loads(t, y)], "roll": float(y[1])} for t, y in zip(run.t, run.y.T)]


def main():
    samples, changes, most = ride()
    assert most > CLEARANCE, "the bump stop has to take part"
    kept = {
        "python": platform.python_version(),
        "numpy": np.__version__,
        "scipy": scipy.__version__,
        "vehicle": vehicle_ride(),
        "contacts": changes,
        "samples": [{"time": t, "state": list(map(float, samples[t]))} for t in sorted(samples)],
    }
    print(json.dumps(kept, indent=1))


main()
