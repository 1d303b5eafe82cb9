"""Beams without shear by a general finite-element library (scikit-fem, cubic Hermite elements) beside ours.

Takes beam files of studies/textbook, reads them with Python's own TOML reader, solves them with the library, and prints both largest
deflections or first frequencies with their difference. `scripts/peer/beams_by_skfem.py [PROGRAM]`; needs scikit-fem and SciPy.
"""

import json
import subprocess
import sys
import tomllib
from pathlib import Path

import numpy as np
from scipy.sparse.linalg import eigsh
from skfem import Basis, BilinearForm, ElementLineHermite, LinearForm, MeshLine, condense, solve
from skfem.helpers import dd, ddot

ROOT = Path(__file__).resolve().parents[2]
PROGRAM = sys.argv[1] if len(sys.argv) > 1 else str(ROOT / "target/debug/axlebow")
STATIC = ["cantilever-end-force", "cantilever-uniform-load", "supported-center-force", "supported-uniform-load", "clamped-center-force"]
VIBRATING = ["modes-supported", "modes-cantilever", "modes-clamped", "modes-clamped-pinned"]
UNITS = {"m": 1.0, "mm": 1e-3, "in": 0.0254, "lbf": 4.4482216152605, "N": 1.0, "kN": 1e3, "psi": 6894.757293168, "Pa": 1.0,
         "MPa": 1e6, "GPa": 1e9, "mm2": 1e-6, "mm4": 1e-12, "kg/m3": 1.0, "lbf/in": 4.4482216152605 / 0.0254, "lbf/ft": 4.4482216152605 / 0.3048,
         "N/m": 1.0, "kN/m": 1e3, "in4": 0.0254**4, "in2": 0.0254**2}


def value(text):
    """A quantity in SI."""
    number, unit = text.split(maxsplit=1)
    return float(number) * UNITS[unit]


def section(own):
    """Second moment and area."""
    if own["shape"] == "values":
        return value(own["second_moment"]), value(own["area"])
    od, wall = value(own["od"]), value(own["wall"])
    bore = od - 2 * wall
    return np.pi / 64 * (od**4 - bore**4), np.pi / 4 * (od**2 - bore**2)


def system(beam):
    """Basis with stiffness, mass and held degrees of freedom."""
    length = sum(value(span["length"]) for span in beam["span"])
    second_moment, area = section(beam["span"][0]["section"])
    modulus = value(beam["material"]["elastic_modulus"])
    density = value(beam["material"].get("density", "7850 kg/m3"))
    basis = Basis(MeshLine(np.linspace(0.0, length, 65)), ElementLineHermite())
    stiffness = BilinearForm(lambda u, v, w: modulus * second_moment * ddot(dd(u), dd(v))).assemble(basis)
    mass = BilinearForm(lambda u, v, w: density * area * u * v).assemble(basis)
    held = []
    for support in beam.get("support", []):
        node = int(round(value(support["at"]) / length * 64))
        held.append(basis.nodal_dofs[0, node])
        if support["kind"] == "fixed":
            held.append(basis.nodal_dofs[1, node])
    return length, basis, stiffness, mass, np.array(held)


def loads(beam, basis, length):
    """The load vector."""
    forces = np.zeros(basis.N)
    for load in beam["load"]:
        if load["kind"] == "force":
            node = int(round(value(load["at"]) / length * 64))
            forces[basis.nodal_dofs[0, node]] += value(load["force"])
        else:
            per_length = value(load["per_length"])
            forces += LinearForm(lambda v, w: per_length * v).assemble(basis)
    return forces


def ours(name):
    """Our document of a beam file."""
    run = subprocess.run([PROGRAM, "beam", str(ROOT / f"studies/textbook/{name}.toml"), "--json"], capture_output=True, check=True, text=True)
    return json.loads(run.stdout)


def main():
    """Prints a row for each beam; fails where they differ by more than 1e-6."""
    worst = 0.0
    for name in STATIC + VIBRATING:
        beam = tomllib.loads((ROOT / f"studies/textbook/{name}.toml").read_text(encoding="utf-8"))
        length, basis, stiffness, mass, held = system(beam)
        document = ours(name)
        if name in STATIC:
            moved = solve(*condense(stiffness, loads(beam, basis, length), D=held))
            theirs = moved[basis.nodal_dofs[0]]
            own = max((station["deflection_m"] for station in document["static"]["stations"]), key=abs)
            pairs = [(own, max(theirs, key=abs))]
        else:
            free = np.setdiff1d(np.arange(basis.N), held)
            k, m = stiffness.tocsc()[free][:, free], mass.tocsc()[free][:, free]
            frequencies = np.sqrt(eigsh(k, 3, m, sigma=0.0, return_eigenvectors=False)) / (2 * np.pi)
            modes = [mode["frequency_hz"] for mode in document["vibration"]["modes"]]
            pairs = list(zip(modes, sorted(frequencies)))
        for own, their in pairs:
            apart = own / their - 1.0
            worst = max(worst, abs(apart))
            print(f"{name:24} ours {own:14.8g} skfem {their:14.8g} apart {apart:+.1e}")
    print(f"largest difference {worst:.1e}")
    return 1 if worst > 1e-6 else 0


if __name__ == "__main__":
    sys.exit(main())
