#!/usr/bin/env python3
"""Works tire faces out again, apart from our code, with NumPy and SciPy, from the formulas alone.

Tires are springs under their own centers, stiffer with inflation and lower with radius; ribs of each are springs under a
crowned tread that leans by its camber and by what the side force tilts it; the sidewalls' load goes to the shoulders. All
deflections by root finding. Shear by adding up bristles, each sheared as it runs through the contact and held to friction,
in place of the closed form of the brush; energy as that force by its slip. The speed at which the forward forces are what the
duty asks for by root finding, for every part of the duty to either side.
Prints tests/reference/recomputed_tire_face.json.
"""

import json

import numpy as np
from scipy.optimize import brentq

TREAD = dict(width=0.224, ribs=5, crown=0.003, depth=0.014, shear_modulus=1.4e6, abradability=0.9, inflation=7.2e5,
             sidewall_share=0.18, friction=0.75)
CARCASS = dict(radius=0.512, stiffness=8.5e5, rated_load=2.2e4, tilt=3.4e-6)
SIDE_ONLY = [[1.0, 0.025, 0.0]]
MIXED = [[0.7, 0.02, 0.03], [0.2, 0.08, 0.0], [0.1, 0.04, -0.15]]
FACES = [
    dict(tires=[[0.0, 7.2e5, 0.512]], load=2.4e4, camber=-0.012, toe=0.003, duty=SIDE_ONLY, driven=False),
    dict(tires=[[0.0, 5.2e5, 0.512]], load=2.2e4, camber=0.0, toe=-0.004, duty=MIXED, driven=False),
    dict(tires=[[0.165, 7.2e5, 0.514], [-0.165, 6.0e5, 0.510]], load=4.4e4, camber=-0.0095, toe=-0.0015, duty=MIXED,
         driven=True),
    dict(tires=[[0.165, 7.2e5, 0.512], [-0.165, 9.0e5, 0.512]], load=1.5e4, camber=0.04, toe=0.03, duty=MIXED,
         driven=False),
]
BRISTLES = 4000
PLACES = (np.arange(BRISTLES) + 0.5) / BRISTLES


def shear(stiffness, limit, slip):
    """Shear force of a rib by bristles over a contact of length 1: each is sheared by 2 C slip x; the pressure is a parabola."""
    return float(np.mean(np.minimum(2.0 * stiffness * slip * PLACES, limit * 6.0 * PLACES * (1.0 - PLACES))))


def springs(offsets, stiffnesses, load):
    """Loads of springs on one plate, each lower by its offset and pushing only, and the plate's deflection."""
    offsets, stiffnesses = np.asarray(offsets), np.asarray(stiffnesses)
    loads = lambda mean: stiffnesses * np.maximum(0.0, mean + offsets)
    mean = brentq(lambda mean: loads(mean).sum() - load, -0.3, 0.3, xtol=1e-17, rtol=1e-15)
    return loads(mean), mean


def face(case):
    t, c = TREAD, CARCASS
    n, width = t["ribs"], t["width"]
    y = (-0.5 + (np.arange(n) + 0.5) / n) * width
    crown = t["crown"] * (2 * y / width) ** 2
    shoulder = (np.abs(y) + 0.5 * width / n - 0.3 * width).clip(0.0, width / n) / (width / n)
    share, rated = t["sidewall_share"], c["rated_load"]
    per_load = 0.5 * t["shear_modulus"] / t["depth"] * rated / (t["inflation"] ** 2 * width)
    stiffness = lambda p: c["stiffness"] * (share + (1 - share) * p / t["inflation"])

    def ribs(tire, load, camber, side):
        """Radii and loads of the ribs of a tire under a side slip."""
        _, p, radius = tire
        push = np.sign(side) * shear(per_load * load, t["friction"] * load, abs(side))
        length = rated / (t["inflation"] * width) * np.sqrt(load / rated)
        push -= per_load * load * length / (6 * c["radius"]) * camber
        lean = camber + c["tilt"] * push
        k = stiffness(p) / n
        _, mean = springs(y * lean - crown, np.full(n, k), load)
        deflection = np.maximum(0.0, mean + y * lean - crown)
        sidewalls = share * rated * (load / stiffness(p) / (rated / c["stiffness"])) ** 2
        deeper = sidewalls / (k * shoulder.sum())
        loads, _ = springs(y * lean - crown + deeper * shoulder, np.full(n, k), load)
        return radius - crown - deflection / 3, loads

    def energies(tires, camber, toe):
        lower = [place * camber + radius - c["radius"] for place, _, radius in tires]
        tire_loads, _ = springs(lower, [stiffness(p) for _, p, _ in tires], case["load"])

        def stood(side):
            each = [ribs(tire, load, camber, side) for tire, load in zip(tires, tire_loads) if load > 0]
            return [np.concatenate(part) for part in zip(*each)]

        def rib(radius, r0, side, load):
            forward = (radius - r0) / r0
            sliding = np.hypot(forward, side)
            force = shear(per_load * load, t["friction"] * load, sliding * r0 / radius)
            return (force * forward / sliding if sliding else 0.0), force * sliding

        def speed(radii, loads, side, asked):
            total = lambda r0: sum(rib(r, r0, side, load)[0] for r, load in zip(radii, loads) if load > 0) - asked
            low, high = radii.min() * 0.85, radii.max() * 1.15
            return brentq(total, low, high, xtol=1e-15, rtol=1e-14)

        sums = 0.0
        for part, side, forward in case["duty"]:
            asked = (forward if case["driven"] else min(forward, 0.0)) * tire_loads.sum()
            slip = 3 * t["friction"] / per_load * (1 - np.cbrt(1 - side / t["friction"]))
            for way in (-1, 1):
                aside = np.tan(toe) + way * slip
                radii, loads = stood(aside)
                r0 = speed(radii, loads, aside, asked)
                each = [rib(r, r0, aside, load)[1] if load > 0 else 0.0 for r, load in zip(radii, loads)]
                sums = sums + 0.5 * part * np.array(each)
        radii, loads = stood(np.tan(toe))
        return sums, loads, speed(radii, loads, np.tan(toe), 0.0)

    energy, loads, radius = energies(case["tires"], case["camber"], case["toe"])
    rated_tires = [[place, t["inflation"], c["radius"]] for place, _, _ in case["tires"]]
    upright, _, _ = energies(rated_tires, 0.0, 0.0)
    return dict(case, rolling_radius=radius, load_of_ribs=list(loads), energy_of_ribs=list(energy),
                upright_energy_of_ribs=list(upright))


print(json.dumps(dict(tread=TREAD, carcass=CARCASS, faces=[face(case) for case in FACES]), indent=2))
