#!/usr/bin/env python3
"""Twisted strip of 12 x 1.1 x 0.32 as a solid of high order, apart from our code (NumPy, SciPy).

Prints the deflections of the middle of its free end under a unit force along its width and along its thickness there.
Hexahedra with polynomials of degree p through the exact geometry, full integration; E = 29e6, nu = 0.22.
    p 4, 2 x 1 x 8 elements:   5.41776e-3  1.75285e-3
    p 5, 2 x 1 x 10 elements:  5.42190e-3  1.75320e-3
"""

import numpy as np
import scipy.sparse as sparse
import scipy.sparse.linalg as solver
from numpy.polynomial import polynomial
from numpy.polynomial.legendre import leggauss

LENGTH, WIDTH, THICKNESS, E, NU = 12.0, 1.1, 0.32, 29e6, 0.22


def deflections(p, parts):
    line = np.cos(np.pi * np.arange(p, -1, -1) / p)
    points, weights = leggauss(p + 1)
    coefficients = np.linalg.inv(polynomial.polyvander(line, p))
    shape = polynomial.polyvander(points, p) @ coefficients
    slope = np.array([polynomial.polyval(points, polynomial.polyder(c)) for c in coefficients.T]).T
    places = [np.unique(np.concatenate([((line + 1) / 2 + k) / n for k in range(n)]).round(14)) for n in parts]
    a, b, c = np.meshgrid(*places, indexing="ij")
    turn, across, above = np.pi / 2 * c, WIDTH * (a - 0.5), THICKNESS * (b - 0.5)
    x = across * np.cos(turn) - above * np.sin(turn)
    z = across * np.sin(turn) + above * np.cos(turn)
    position = np.stack([x, LENGTH * c, z], -1).reshape(-1, 3)
    number = np.arange(a.size).reshape(a.shape)
    factors = [(slope, shape, shape), (shape, slope, shape), (shape, shape, slope)]
    own = (p + 1) ** 3
    natural = np.array([np.einsum("ai,bj,ck->abcijk", *each).reshape(own, own) for each in factors])
    weight = np.einsum("a,b,c->abc", weights, weights, weights).ravel()
    lame, shear = E * NU / ((1 + NU) * (1 - 2 * NU)), E / (2 * (1 + NU))
    law = np.diag([2 * shear] * 3 + [shear] * 3)
    law[:3, :3] += lame
    rows, columns, values = [], [], []
    for i, j, k in np.ndindex(*parts):
        nodes = number[p * i : p * i + p + 1, p * j : p * j + p + 1, p * k : p * k + p + 1].ravel()
        jacobian = np.einsum("dqn,nx->qdx", natural, position[nodes])
        gradient = np.einsum("qxd,dqn->qxn", np.linalg.inv(jacobian), natural)
        strain = np.zeros((own, 6, 3 * own))
        for m in range(3):
            strain[:, m, m::3] = gradient[:, m]
        for m, (r, s) in zip((3, 4, 5), ((0, 1), (1, 2), (0, 2))):
            strain[:, m, r::3], strain[:, m, s::3] = gradient[:, s], gradient[:, r]
        volume = weight * np.abs(np.linalg.det(jacobian))
        stress = np.einsum("ab,qbj,q->qaj", law, strain, volume, optimize=True)
        freedoms = (3 * nodes[:, None] + np.arange(3)).ravel()
        rows.append(np.repeat(freedoms, 3 * own))
        columns.append(np.tile(freedoms, 3 * own))
        values.append(np.einsum("qai,qaj->ij", strain, stress, optimize=True).ravel())
    order = 3 * number.size
    entries = (np.concatenate(values), (np.concatenate(rows), np.concatenate(columns)))
    stiffness = sparse.csc_matrix(entries, shape=(order, order))
    face = np.einsum("ai,bj->abij", shape, shape).reshape(-1, (p + 1) ** 2).T @ np.outer(weights, weights).ravel()
    force = np.zeros((order, 2))
    for i, j in np.ndindex(*parts[:2]):
        nodes = number[p * i : p * i + p + 1, p * j : p * j + p + 1, -1].ravel()
        force[3 * nodes + 2, 0] += face / (4 * parts[0] * parts[1])
        force[3 * nodes, 1] += face / (4 * parts[0] * parts[1])
    held = (3 * number[:, :, 0].ravel()[:, None] + np.arange(3)).ravel()
    free = np.setdiff1d(np.arange(order), held)
    motion = np.zeros((order, 2))
    motion[free] = solver.splu(stiffness[free][:, free]).solve(force[free])
    tip = np.argmin(np.linalg.norm(position - [0, LENGTH, 0], axis=1))
    return motion[3 * tip + 2, 0], motion[3 * tip, 1]


if __name__ == "__main__":
    for p, parts in [(4, (2, 1, 8)), (5, (2, 1, 10))]:
        print(p, parts, *(f"{value:.5e}" for value in deflections(p, parts)))
