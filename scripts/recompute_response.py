#!/usr/bin/env python3
"""Frequency response of a small asymmetric axle and of a rolling vehicle, for tests/reference/scipy_response.rs.

    python3 -m venv venv && venv/bin/pip install numpy scipy
    venv/bin/python scripts/recompute_response.py > tests/reference/scipy_response.json

Stiffness from recompute_axle.py and mass from recompute_modes.py, dampers at tires and seats, the road moving
the far end of each tire's spring and damper; one dense complex solve at each frequency, with the sign e^{iwt}. The
vehicle of recompute_vehicle.py answers with the loads of both wheels to a road under the left one.

SI throughout. The axle and its numbers are invented.
"""

import json
import platform

import numpy as np
import scipy
import recompute_vehicle
from recompute_axle import BEAMS, NAMES, SPRINGS, arm_matrix, assemble, beam_parts, freedoms
from recompute_modes import assemble_mass
from scipy.linalg import solve

FREQUENCIES = [0.5, 1.7, 4.0, 9.0, 12.5, 17.0, 31.0, 60.0, 140.0]

VEHICLE_FREQUENCIES = [0.5, 1.0, 1.3, 1.7, 2.5, 5.0, 9.0, 11.0, 13.0, 20.0, 40.0]

# Index of the tire among the springs, damping along Z at its contact.
TIRES = [(3, 900.0), (4, 700.0)]
# Index of the seat among the springs, damping along Z at its point.
SEATS = [(1, 9.0e3), (2, 12.0e3)]
# Beam whose bending moment about local 3 is taken at its start.
BEAM = 2


def rise(spring):
    """Upward motion of a spring's point for each freedom."""
    b = np.zeros(6 * len(NAMES))
    node, arm = SPRINGS[spring][:2]
    b[freedoms(node)] = arm_matrix(arm)[2]
    return b


def moment():
    local, turn, _ = beam_parts(BEAMS[BEAM])
    row = np.zeros(6 * len(NAMES))
    row[freedoms(*BEAMS[BEAM][:2])] = -(local @ turn)[5]
    return row


def vehicle_answer(frequency):
    mass, stiffness, _, _, tires = recompute_vehicle.matrices()
    w = 2 * np.pi * frequency
    push = recompute_vehicle.TIRE + 1j * w * recompute_vehicle.TIRE_DAMPING
    x = solve(stiffness + 1j * w * recompute_vehicle.whole_damping() - w**2 * mass, push * tires[0])
    loads = [push * (road - tire @ x) for road, tire in zip((1.0, 0.0), tires)]
    return {"frequency": frequency, "loads": [[z.real, z.imag] for z in loads]}


def main():
    stiffness, mass = assemble()[0], assemble_mass()
    damping = sum(c * np.outer(rise(spring), rise(spring)) for spring, c in TIRES + SEATS)
    left, right = freedoms("left wheel")[3], freedoms("right spindle")[3]
    answers = []
    for frequency in FREQUENCIES:
        w = 2 * np.pi * frequency
        dynamic = stiffness + 1j * w * damping - w**2 * mass
        by_input = []
        for tire, c in TIRES:
            push = SPRINGS[tire][4][2, 2] + 1j * w * c
            x = solve(dynamic, rise(tire) * push)
            loads = []
            for other, other_c in TIRES:
                road = 1.0 if other == tire else 0.0
                loads.append((SPRINGS[other][4][2, 2] + 1j * w * other_c) * (road - rise(other) @ x))
            outputs = [x[left], x[right], *loads, moment() @ x]
            by_input.append([[z.real, z.imag] for z in outputs])
        answers.append({"frequency": frequency, "left_road": by_input[0], "right_road": by_input[1]})
    kept = {
        "made_by": "scripts/recompute_response.py",
        "python": platform.python_version(),
        "numpy": np.__version__,
        "scipy": scipy.__version__,
        "outputs": ["left rotation", "right rotation", "left load", "right load", "moment"],
        "answers": answers,
        "vehicle": [vehicle_answer(frequency) for frequency in VEHICLE_FREQUENCIES],
    }
    print(json.dumps(kept, indent=1))


if __name__ == "__main__":
    main()
