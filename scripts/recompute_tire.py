#!/usr/bin/env python3
"""Works tire faces out again, apart from our code, with Python's standard library alone.

Tires are springs under their own centers; loads of tires, and of the ribs of each, by bisection of the mean deflection. Shear by adding up bristles, each sheared as it runs through the contact and
held to friction, in place of the closed form of the brush; energy as that force by its slip. The free speed by bisection.
Prints tests/reference/recomputed_tire.json.
"""

import json
import math

TREAD = dict(width=0.224, ribs=5, crown=0.003, depth=0.014, shear_modulus=1.4e6, abradability=0.9, inflation=7.2e5,
             friction=0.75, usual_side_force=0.025)
CARCASS = dict(radius=0.512, stiffness=8.5e5, rated_load=2.2e4)
FACES = [
    dict(places=[0.0], load=2.4e4, camber=-0.012, toe=0.003),
    dict(places=[0.165, -0.165], load=4.4e4, camber=-0.0095, toe=-0.0015),
    dict(places=[0.165, -0.165], load=1.5e4, camber=0.04, toe=0.03),
]
BRISTLES = 4000


def bisect(function, low, high):
    """Where a falling function is zero."""
    for _ in range(200):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if function(middle) > 0 else (low, middle)
    return 0.5 * (low + high)


def shear(stiffness, limit, slip):
    """Shear force of a rib whose small-slip stiffness and friction limit are given, by bristles over a contact of length 1."""
    each, force = 1.0 / BRISTLES, 0.0
    for i in range(BRISTLES):
        x = (i + 0.5) * each
        # A bristle is sheared by 2 C slip x; the pressure is a parabola that carries the load.
        force += min(2.0 * stiffness * slip * x, limit * 6.0 * x * (1.0 - x)) * each
    return force


def face(case):
    t, c = TREAD, CARCASS
    on_tire = [(-0.5 + (i + 0.5) / t["ribs"]) * t["width"] for i in range(t["ribs"])]
    ribs = [(y, t["crown"] * (2 * y / t["width"]) ** 2) for y in on_tire]

    def pressed(offsets, stiffness, load):
        """Loads of springs on one plate, each lower by its offset and pushing only."""
        loads = lambda mean: [stiffness * max(0.0, mean + offset) for offset in offsets]
        return loads(bisect(lambda mean: load - sum(loads(mean)), -0.3, 0.3))

    lean, k = case["camber"], c["stiffness"] / t["ribs"]
    tires = pressed([place * lean for place in case["places"]], c["stiffness"], case["load"])
    loads = [load for tire in tires for load in pressed([y * lean - crown for y, crown in ribs], k, tire)]
    deflection = [load / k for load in loads]
    ribs = ribs * len(tires)
    per_load = 0.5 * t["shear_modulus"] / t["depth"] * c["rated_load"] / (t["inflation"] ** 2 * t["width"])
    radii = [c["radius"] - crown - d / 3 for (_, crown), d in zip(ribs, deflection)]

    def rib(radius, r0, side, load):
        forward = (radius - r0) / r0
        sliding = math.hypot(forward, side)
        force = shear(per_load * load, t["friction"] * load, sliding * r0 / radius)
        return (force * forward / sliding if sliding else 0.0), force * sliding

    usual = t["usual_side_force"] / per_load
    energies = [0.0] * len(ribs)
    free = []
    touching = [r for r, load in zip(radii, loads) if load > 0]
    for side in (math.tan(case["toe"]) - usual, math.tan(case["toe"]) + usual):
        total = lambda r0: sum(rib(r, r0, side, load)[0] for r, load in zip(radii, loads) if load > 0)
        # Tens of thousands of bristles for each look: fewer halvings are enough.
        low, high = min(touching), max(touching)
        for _ in range(45):
            middle = 0.5 * (low + high)
            low, high = (middle, high) if total(middle) > 0 else (low, middle)
        free.append(0.5 * (low + high))
        for i, (r, load) in enumerate(zip(radii, loads)):
            energies[i] += 0.5 * (rib(r, free[-1], side, load)[1] if load > 0 else 0.0)
    return dict(case, rolling_radius=sum(free) / 2, load_of_ribs=loads, energy_of_ribs=energies)


print(json.dumps(dict(tread=TREAD, carcass=CARCASS, faces=[face(case) for case in FACES]), indent=2))
