#!/usr/bin/env python3
"""Ride or run on 91 gradients x 9 grounds for two set-ups, in numpy: the yardstick for gear-math's map.

The same model as gear-math's `verdict_map`, written independently and vectorised over every ground, gradient and
moved input. Prints the best time of a whole map in milliseconds and the sums of its ratios, by which the two
programs are seen to compute the same thing; `--csv` prints the map itself instead.

Needs numpy. Run: python3 tests/bench/ride_or_run_numpy.py [--csv]
"""

import sys
import time

import numpy as np

GRAVITY = 9.81
RUNNING = (155.4, -30.4, -43.3, 46.3, 19.5, 3.6)
WALKING = (280.5, -58.7, -76.8, 51.9, 19.6, 2.5)

# Rolling coefficient, foot factor, friction: tarmac to loose sand, and one of the user's own.
GROUNDS = np.array([
    (0.008, 1.00, 0.65),
    (0.014, 1.10, 0.45),
    (0.030, 1.10, 0.50),
    (0.050, 1.25, 0.30),
    (0.080, 1.50, 0.35),
    (0.150, 1.80, 0.30),
    (0.045, 1.20, 0.55),
    (0.150, 1.50, 0.45),
    (0.060, 1.35, 0.40),
])
GRADIENTS = np.arange(91) * 0.005
# Rings, sprockets.
SET_UPS = (
    ((44, 31), (11, 12, 13, 14, 16, 18, 20, 22, 25, 28, 32)),
    ((40,), (10, 11, 12, 13, 15, 17, 19, 21, 24, 28, 33)),
)
RIDER = {"body": 64.0, "kit": 2.0, "power": 230.0, "efficiency": 0.23, "standing": 1.5}
BIKE = {"mass": 9.0, "efficiency": 0.96, "load": 1.2, "wheel": 2.1}
AIR = {"drag_area": 0.40, "density": 1.20, "foot_drag": 0.01}
CADENCE = {"lowest": 50.0, "highest": 120.0, "preferred": 80.0}
LEGS = {"peak": 1000.0, "optimal": 115.0, "usable": 0.5}
STANCE = {"wheelbase": 1.02, "height": 1.05, "rear": 0.55, "peak": 1.0}
BALANCE = 1.2

# One row per moved input: efficiency, load, extra on foot, cost on foot, rolling.
MOVED = np.array([
    (0.00, 0.0, 1.0, 1.00, 1.0),
    (-0.02, 0.0, 1.0, 1.00, 1.0),
    (0.02, 0.0, 1.0, 1.00, 1.0),
    (0.00, -0.2, 1.0, 1.00, 1.0),
    (0.00, 0.3, 1.0, 1.00, 1.0),
    (0.00, 0.0, 1.0, 0.92, 1.0),
    (0.00, 0.0, 1.0, 1.08, 1.0),
    (0.00, 0.0, 0.5, 1.00, 1.0),
    (0.00, 0.0, 1.5, 1.00, 1.0),
    (0.00, 0.0, 1.0, 1.00, 0.7),
    (0.00, 0.0, 1.0, 1.00, 1.3),
])


def cubic_speed(cubic, linear, power):
    """Positive root of cubic v^3 + linear v = power."""
    p = linear / cubic
    s = np.sqrt(p / 3)
    return 2 * s * np.sinh(np.arcsinh(1.5 * (power / cubic) / (p * s)) / 3)


def ride_speed(rolling, sine, cosine):
    mass = RIDER["body"] + RIDER["kit"] + BIKE["mass"]
    force = mass * GRAVITY * (sine + rolling * cosine)
    air = 0.5 * AIR["density"] * AIR["drag_area"]
    return cubic_speed(air, force, BIKE["efficiency"] * RIDER["power"])


def foot_speed(energy, run, walk, transition, economical):
    """Speed on foot; `run` and `walk` are joules per metre for the whole person with the bike."""
    drag = AIR["foot_drag"] * RIDER["body"]
    running = cubic_speed(drag, run, energy)
    walking = cubic_speed(drag, walk, energy)
    bend = (run - walk) / (transition - economical) ** 2
    v = np.broadcast_to(transition, running.shape).copy()
    for _ in range(8):
        hurry = v - economical
        cost = walk + bend * hurry * hurry + drag * v * v
        growth = 2 * bend * hurry + 2 * drag * v
        v -= (cost * v - energy) / (cost + v * growth)
    walked = np.where(walking <= economical, walking, v)
    return np.where(running >= transition, running, walked)


def bands():
    """Riding speed and the ratio foot over ride, low, reference and high: arrays of grounds x gradients."""
    sine = GRADIENTS / np.sqrt(1 + GRADIENTS**2)
    cosine = 1 / np.sqrt(1 + GRADIENTS**2)
    transition = np.maximum(0.8, 2.1 - 1.3 / 30 * np.degrees(np.arctan(GRADIENTS)))
    economical = np.maximum(0.45, 1 - 1.4 * GRADIENTS)
    efficiency, load, extra, person, rolling = (column[:, None, None] for column in MOVED.T)
    energy = RIDER["power"] / (RIDER["efficiency"] + efficiency) - RIDER["standing"] * RIDER["body"]
    burden = person * (RIDER["body"] + RIDER["kit"] + (BIKE["load"] + load) * BIKE["mass"])
    added = extra * (GROUNDS[:, 1, None] - 1)
    run = np.polyval(RUNNING, GRADIENTS) + added * RUNNING[5]
    walk = np.minimum(run, np.polyval(WALKING, GRADIENTS) + added * WALKING[5])
    foot = foot_speed(energy, run * burden, walk * burden, transition, economical)
    ride = ride_speed(rolling * GROUNDS[:, 0, None], sine, cosine)
    ratio = foot / ride
    change = np.log(ratio[1:] / ratio[0])
    high = ratio[0] * np.exp(np.sqrt((np.maximum(change, 0) ** 2).sum(axis=0)))
    low = ratio[0] / np.exp(np.sqrt((np.minimum(change, 0) ** 2).sum(axis=0)))
    return ride[0], low, ratio[0], high


def held_speed(ride, set_up):
    """Speed kept up in the gear nearest to the preferred cadence; where all spin too fast, in the tallest."""
    rings, sprockets = set_up
    metres = np.sort([BIKE["wheel"] * ring / sprocket for ring in rings for sprocket in sprockets])
    cadence = 60 * ride[..., None] / metres
    turns = cadence >= max(CADENCE["lowest"], strong_enough())
    usable = turns & (cadence <= CADENCE["highest"])
    spun_out = turns.any(axis=-1) & ~usable.any(axis=-1)
    tallest = metres[np.maximum(turns.sum(axis=-1) - 1, 0)]
    return np.where(spun_out, CADENCE["highest"] * tallest / 60, ride), metres[0]


def strong_enough():
    """Slowest cadence at which the legs give the power."""
    asked = RIDER["power"] / (LEGS["usable"] * LEGS["peak"])
    return LEGS["optimal"] * (1 - np.sqrt(1 - asked)) if asked <= 1 else np.inf


def verdicts(ride, low, high, set_up):
    """0 ride, 1 on foot, 2 on foot because a limit holds, 3 too close to call."""
    held, lowest = held_speed(ride, set_up)
    floor = max(CADENCE["lowest"], strong_enough()) * lowest / 60
    lean = STANCE["height"] / STANCE["wheelbase"]
    rolling, _, friction = (column[:, None] for column in GROUNDS.T)
    grip = friction * (STANCE["rear"] - rolling * lean) / (STANCE["peak"] * (1 - friction * lean)) - rolling
    forced = (ride < floor) | (ride < BALANCE) | (GRADIENTS > grip)
    slowed = ride / held
    told = np.where(high * slowed < 1, 0, np.where(low * slowed > 1, 1, 3))
    return np.where(forced, 2, told)


def whole_map():
    ride, low, reference, high = bands()
    return low, reference, high, [verdicts(ride, low, high, set_up) for set_up in SET_UPS]


def best_of(runs):
    best = float("inf")
    for _ in range(runs):
        start = time.perf_counter()
        whole_map()
        best = min(best, time.perf_counter() - start)
    return best


def main():
    low, reference, high, maps = whole_map()
    if "--csv" in sys.argv:
        print("ground,gradient,low,reference,high,verdict_a,verdict_b")
        for ground, gradient in np.ndindex(reference.shape):
            at = ground, gradient
            print(f"{ground},{GRADIENTS[gradient]:.3f},{low[at]:.9f},{reference[at]:.9f},{high[at]:.9f},"
                  f"{maps[0][at]},{maps[1][at]}")
        return
    print(f"sums: low {low.sum():.6f}, reference {reference.sum():.6f}, high {high.sum():.6f}, "
          f"verdicts {maps[0].sum()} and {maps[1].sum()}")
    print(f"numpy {np.__version__}: {1e3 * best_of(50):.3f} ms per map")


if __name__ == "__main__":
    main()
