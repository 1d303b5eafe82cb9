#!/usr/bin/env python3
"""Natural modes of a small asymmetric axle and of a rolling vehicle, for tests/reference/scipy_modes.rs.

    python3 -m venv venv && venv/bin/pip install numpy scipy
    venv/bin/python scripts/recompute_modes.py > tests/reference/scipy_modes.json

Stiffness from recompute_axle.py; consistent mass of each beam from the printed polynomials with shear and
rotary inertia (J. S. Przemieniecki, Theory of Matrix Structural Analysis, McGraw-Hill 1968, sec. 11.5; from
memory) and not from the Rust; rigid bodies by their energy; one dense generalized eigenproblem. The vehicle of
recompute_vehicle.py has a body, the roll spring and damper of the rest of the vehicle and seats that turn energy into
heat: four modes with their damping.

SI throughout. The axle and its numbers are invented.
"""

import json
import platform

import numpy as np
import scipy
import recompute_vehicle
from recompute_axle import BEAMS, NAMES, PLACES, arm_matrix, assemble, freedoms, local_axes
from scipy.integrate import quad
from scipy.linalg import block_diag, eigh

MODES = 12

# Mass and rotary inertia per length about local 1, 2, 3 of each beam (kg/m, kg m).
MASSES = [
    (42.0, 0.036, 0.018, 0.018),
    (35.8, 0.118, 0.059, 0.059),
    (35.8, 0.118, 0.059, 0.059),
    (31.0, 0.165, 0.071, 0.094),
    (31.0, 0.165, 0.071, 0.094),
    (44.5, 0.040, 0.020, 0.020),
]

# Node, arm to the center, mass, inertia about the center.
BODIES = [
    ("left wheel", [0.01, -0.05, 0.02], 185.0, [[9.0, 0.3, -0.2], [0.3, 15.0, 0.4], [-0.2, 0.4, 8.5]]),
    ("right spindle", [-0.02, -0.06, 0.01], 140.0, [[7.0, 0.0, 0.0], [0.0, 12.0, 0.0], [0.0, 0.0, 7.0]]),
    ("center", [0.15, 0.0, 0.08], 60.0, [[0.0] * 3] * 3),
]


def shear_parameter(section, l, ei, ga):
    if not callable(section):
        return 12 * section[ei] / (section[ga] * l**2)
    bend = quad(lambda x: 1 / section(x)[ei], 0, 1, epsabs=0, epsrel=1e-13)[0]
    shear = quad(lambda x: 1 / section(x)[ga], 0, 1, epsabs=0, epsrel=1e-13)[0]
    return 12 * shear / (bend * l**2)


def plane_mass(m, rotary, l, phi):
    """Printed 4 x 4 matrix on deflection and rotation of the start, then of the end."""
    a = 13 / 35 + 7 * phi / 10 + phi**2 / 3
    b = (11 / 210 + 11 * phi / 120 + phi**2 / 24) * l
    c = 9 / 70 + 3 * phi / 10 + phi**2 / 6
    d = (13 / 420 + 3 * phi / 40 + phi**2 / 24) * l
    e = (1 / 105 + phi / 60 + phi**2 / 120) * l**2
    f = (1 / 140 + phi / 60 + phi**2 / 120) * l**2
    moving = np.array([[a, b, c, -d], [b, e, d, -f], [c, d, a, -b], [-d, -f, -b, e]])
    g = (1 / 10 - phi / 2) * l
    h = (2 / 15 + phi / 6 + phi**2 / 3) * l**2
    i = (1 / 30 + phi / 6 - phi**2 / 6) * l**2
    turning = np.array([[6 / 5, g, -6 / 5, g], [g, h, -g, -i], [-6 / 5, -g, 6 / 5, -g], [g, -i, -g, h]])
    return (m * l * moving + rotary / l * turning) / (1 + phi) ** 2


def beam_mass(section, l, m, polar, about_2, about_3):
    mass = np.zeros((12, 12))
    for i, per_length in ((0, m), (3, polar)):
        mass[np.ix_([i, i + 6], [i, i + 6])] += per_length * l / 6 * np.array([[2, 1], [1, 2]])
    for v, r, sign, rotary, ei, ga in ((1, 5, 1, about_3, "ei3", "ga2"), (2, 4, -1, about_2, "ei2", "ga3")):
        turn = np.diag([1, sign, 1, sign])
        block = plane_mass(m, rotary, l, shear_parameter(section, l, ei, ga))
        mass[np.ix_([v, r, v + 6, r + 6], [v, r, v + 6, r + 6])] += turn @ block @ turn
    return mass


def assemble_mass():
    mass = np.zeros((6 * len(NAMES),) * 2)
    for (start, end, section, _), per_length in zip(BEAMS, MASSES):
        axes = local_axes(PLACES[start], PLACES[end])
        turn = block_diag(axes, axes, axes, axes)
        local = beam_mass(section, np.linalg.norm(PLACES[end] - PLACES[start]), *per_length)
        where = freedoms(start, end)
        mass[np.ix_(where, where)] += turn.T @ local @ turn
    for node, arm, m, inertia in BODIES:
        to_center = arm_matrix(arm)
        where = freedoms(node)
        mass[np.ix_(where, where)] += to_center.T @ block_diag(m * np.eye(3), np.array(inertia)) @ to_center
    return mass


def main():
    stiffness, mass = assemble()[0], assemble_mass()
    # The reciprocal problem: its largest values, the lowest frequencies, come out to the last digits.
    reciprocals, shapes = eigh(mass, stiffness)
    modes = []
    for i in range(MODES):
        shape = shapes[:, -1 - i]
        shape = shape / np.sqrt(shape @ mass @ shape)
        shape = shape * np.sign(shape[np.argmax(np.abs(shape))])
        frequency = 1 / (2 * np.pi * np.sqrt(reciprocals[-1 - i]))
        motions = {name: shape[freedoms(name)].tolist() for name in NAMES}
        modes.append({"frequency": frequency, "shape": motions})
    kept = {
        "made_by": "scripts/recompute_modes.py",
        "python": platform.python_version(),
        "numpy": np.__version__,
        "scipy": scipy.__version__,
        "modes": modes,
        "vehicle": [{"frequency": omega / (2 * np.pi), "damping_ratio": zeta}
                    for omega, _, zeta, _ in recompute_vehicle.modes()],
    }
    print(json.dumps(kept, indent=1))


if __name__ == "__main__":
    main()
