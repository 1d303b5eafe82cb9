"""A rigid axle under a vehicle body that heaves and rolls, for the recomputations of modes, response and ride.

Four freedoms: rise and roll of the axle, rise and roll of the body about the axle's height. Tires and seats are
springs and dampers at their places; the rest of the vehicle is a spring and a damper against roll of the body, whose
weight rolls it further. Seats
turn a part of each cycle's energy into heat: in each natural mode by a viscous damper that takes as much from it.

SI throughout. The vehicle and its numbers are invented.
"""

import numpy as np
from scipy.linalg import eigh

LOAD, GRAVITY = 89e3, 9.80665
# Tube with a bar for a spindle at each end.
OUTSIDE, WALL, LENGTH, BAR, SPINDLE, DENSITY = 0.127, 0.0127, 1.6, 0.09, 0.21, 7850.0
HUB, HUB_AT, WHEEL, WHEEL_AT = 75.0, 0.5 * (0.84 + 0.95), 150.0, 0.92
TIRE, TIRE_DAMPING = 0.9e6, 700.0
SEAT_AT, SEAT, SEAT_ABOUT_X, SEAT_DAMPING, SEAT_LOSS = 0.48, 2.4e5, 2.0e5, 9.0e3, 0.1
BODY_ABOVE_AXLE, BODY_RADIUS = 1.9 - 0.49, 0.8
ROLL_STIFFNESS, ROLL_DAMPING = 6.0e5, 2.0e4


def bar_between(inside, outside, start, end):
    """Mass and moment of inertia about X of a round bar along Y."""
    area = np.pi / 4 * (outside**2 - inside**2)
    mass = DENSITY * area * (end - start)
    about_middle = mass * ((outside**2 + inside**2) / 16 + (end - start) ** 2 / 12)
    return np.array([mass, about_middle + mass * (0.5 * (start + end)) ** 2])


def matrices():
    """Mass, stiffness, damping without that of the seats' heat, stiffness of the seats; left and right tire."""
    half = LENGTH / 2
    axle = bar_between(OUTSIDE - 2 * WALL, OUTSIDE, -half, half) + 2 * bar_between(0.0, BAR, half, half + SPINDLE)
    axle = axle + 2 * np.array([HUB, HUB * HUB_AT**2]) + 2 * np.array([WHEEL, WHEEL * WHEEL_AT**2])
    body = LOAD / GRAVITY - axle[0]
    mass = np.diag([*axle, body, body * (BODY_RADIUS**2 + BODY_ABOVE_AXLE**2)])
    tires = [np.array([1.0, y, 0.0, 0.0]) for y in (WHEEL_AT, -WHEEL_AT)]
    seats = [np.array([1.0, y, -1.0, -y]) for y in (SEAT_AT, -SEAT_AT)]
    turn, roll = np.array([0.0, 1.0, 0.0, -1.0]), np.array([0.0, 0.0, 0.0, 1.0])
    square = lambda a: np.outer(a, a)
    of_seats = sum(SEAT * square(a) for a in seats) + 2 * SEAT_ABOUT_X * square(turn)
    stiffness = of_seats + sum(TIRE * square(a) for a in tires) + ROLL_STIFFNESS * square(roll)
    # Roll carries the body's weight sideways.
    stiffness = stiffness - body * GRAVITY * BODY_ABOVE_AXLE * square(roll)
    damping = sum(SEAT_DAMPING * square(a) for a in seats) + sum(TIRE_DAMPING * square(a) for a in tires)
    return mass, stiffness, damping + ROLL_DAMPING * square(roll), of_seats, tires


def modes():
    """Angular frequency, shape of modal mass 1, damping ratio and loss factor of each mode."""
    mass, stiffness, damping, of_seats, _ = matrices()
    squares, shapes = eigh(stiffness, mass)
    found = []
    for square, shape in zip(squares, shapes.T):
        omega = np.sqrt(square)
        loss = SEAT_LOSS * (shape @ of_seats @ shape) / square
        found.append((omega, shape, (shape @ damping @ shape) / (2 * omega) + loss / 2, loss))
    return found


def whole_damping():
    """Damping with the seats' heat."""
    mass, _, damping, _, _ = matrices()
    return damping + sum(loss * omega * np.outer(mass @ shape, mass @ shape) for omega, shape, _, loss in modes())
