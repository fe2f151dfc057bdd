"""A body for a free form of which the water and three outside sizes are known.

It is as long, wide and high as the form and holds as much. Where the form fills under
π/4 of its box, its level sections are ellipses that shrink towards the bottom by a power
law; where it fills more, it stands upright on an outline between ellipse and rectangle.
Against the shapes a kitchen has, its area is within 12 % (tested).
"""

import math
from collections.abc import Callable
from functools import cache
from itertools import pairwise

from demould.mise.shape import FreeForm

LEVELS = 48
SIDES = 64
AREA_WITHIN = 0.12

_UPRIGHT = math.pi / 4


def _fill(shape: FreeForm) -> float:
    room = shape.length_mm * shape.width_mm * shape.height_mm
    return 1000 * shape.water_ml / room


@cache
def free_rise(shape: FreeForm) -> tuple[tuple[float, float], ...]:
    """Scale of the level section and share of the height, from the bottom up.

    Between the levels it grows evenly; it holds the water within 0.05 %.
    """
    fill = _fill(shape)
    if fill >= _UPRIGHT:
        return ((1.0, 0.0), (1.0, 1.0))
    power = _halved(lambda one: _UPRIGHT * _held(_levels(one)) - fill, 0.2, 400.0)
    return _levels(power)


def _levels(power: float) -> tuple[tuple[float, float], ...]:
    """Close together towards the bottom, where the body is roundest."""
    ups = [(step / LEVELS) ** 2 for step in range(LEVELS + 1)]
    return tuple(((1 - (1 - up) ** power) ** (1 / power), up) for up in ups)


def _held(levels: tuple[tuple[float, float], ...]) -> float:
    return sum(
        (high - low) * (one * one + one * other + other * other) / 3
        for (one, low), (other, high) in pairwise(levels)
    )


@cache
def free_outline(shape: FreeForm) -> tuple[tuple[float, float], ...]:
    """Corners of the outline in a square from -1 to 1; none where it is an ellipse."""
    fill = _fill(shape)
    if fill <= _UPRIGHT:
        return ()
    power = _halved(lambda one: _polygon(_corners(one)) / 4 - fill, 2.0, 400.0)
    return _corners(power)


def _corners(power: float) -> tuple[tuple[float, float], ...]:
    turns = [2 * math.pi * step / SIDES for step in range(SIDES)]
    found = [
        (_bent(math.cos(turn), power), _bent(math.sin(turn), power)) for turn in turns
    ]
    return (*found, found[0])


def _bent(value: float, power: float) -> float:
    value = 0.0 if abs(value) < 1e-15 else value
    return math.copysign(abs(value) ** (2 / power), value)


def _polygon(corners: tuple[tuple[float, float], ...]) -> float:
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairwise(corners)) / 2


def _halved(short: Callable[[float], float], low: float, high: float) -> float:
    """Where a rising function crosses 0, or the end that comes nearest."""
    for _ in range(60):
        middle = (low + high) / 2
        if short(middle) < 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2
