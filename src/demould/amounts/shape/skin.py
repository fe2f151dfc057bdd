"""Where the faces of a body run in space: points on them, and the body lifted to its place.

A body is given by its meridian, the half length and half width of its level sections
from the middle of the bottom to the rim of the open side, and by the outline that all
those sections have: an ellipse or a rectangle.
"""

import math
from functools import cache
from typing import Literal, NamedTuple, assert_never

import numpy as np
from numpy.typing import NDArray

from demould.amounts.shape.section import Drawn, as_drawn, height_mm
from demould.mise.shape import (
    Box,
    CutEllipsoid,
    Cylinder,
    HalfSphere,
    Oval,
    Shape,
    Trough,
)

Floats = NDArray[np.float64]
Outline = Literal["ellipse", "rectangle"]

ARC_STEPS = 128


class Skin(NamedTuple):
    """The faces of a body.

    `meridian` has shape (n, 3): half length, half width, height over the cavity's
    bottom. [mm] Between its points it runs straight.
    """

    meridian: Floats
    outline: Outline


@cache
def skin_of(shape: Shape, *, lidded: bool = False) -> Skin:
    """Give the faces that the mould shaped; the open side as well where `lidded`."""
    drawn = as_drawn(shape)
    meridian = _meridian(drawn)
    if lidded:
        meridian = np.vstack([meridian, [0.0, 0.0, height_mm(drawn)]])
    flat = isinstance(drawn, Box | Trough)
    return Skin(meridian, "rectangle" if flat else "ellipse")


def _meridian(shape: Drawn) -> Floats:
    match shape:
        case HalfSphere(diameter_mm=d):
            turn = np.linspace(0, math.pi / 2, ARC_STEPS)
            across = d / 2 * np.sin(turn)
            return np.stack([across, across, d / 2 * (1 - np.cos(turn))], axis=1)
        case CutEllipsoid(half_height_mm=c, cut_mm=k):
            turn = np.linspace(0, math.acos(-k / c), ARC_STEPS)
            a, b = shape.half_length_mm, shape.half_width_mm
            flat, up = np.sin(turn), 1 - np.cos(turn)
            return np.stack([a * flat, b * flat, c * up], axis=1)
        case Cylinder(diameter_mm=d, height_mm=h):
            return _upright((d, d), (d, d), h)
        case Oval(height_mm=h):
            small = shape.small_length_mm, shape.small_width_mm
            return _upright(small, (shape.length_mm, shape.width_mm), h)
        case Box(length_mm=length, width_mm=w, height_mm=h):
            return _upright((length, w), (length, w), h)
        case Trough(length_mm=length, width_mm=w, height_mm=h):
            turn = np.linspace(0, math.pi / 2, ARC_STEPS)
            chord, up = w / 2 * np.sin(turn), w / 2 * (1 - np.cos(turn))
            bow = np.stack([np.full_like(turn, length / 2), chord, up], axis=1)
            return np.vstack([bow, [length / 2, w / 2, h]])
        case _:
            assert_never(shape)


def _upright(
    low: tuple[float, float], high: tuple[float, float], tall: float
) -> Floats:
    return np.array(
        [
            (0.0, 0.0, 0.0),
            (low[0] / 2, low[1] / 2, 0.0),
            (high[0] / 2, high[1] / 2, tall),
        ]
    )


def standing(skin: Skin, at_mm: float, *, turned_over: bool = False) -> Skin:
    """Lift a body to its place in the cavity, turned over if it lies so."""
    moved = skin.meridian.copy()
    if turned_over:
        moved[:, 2] = moved[:, 2].max() - moved[:, 2]
    moved[:, 2] += at_mm
    return Skin(moved, skin.outline)


def points(skin: Skin, along: Floats, around: Floats) -> Floats:
    """Points of a skin, shape (..., 3) [mm].

    `along` runs 0 to 1 down the meridian by its length, `around` 0 to 1 once about.
    """
    way = ways(skin.meridian)
    half_length, half_width, up = (
        np.interp(along, way, skin.meridian[:, axis]) for axis in range(3)
    )
    x, y = _unit(skin.outline, around)
    return np.stack([half_length * x, half_width * y, up], axis=-1)


def ways(meridian: Floats) -> Floats:
    """Share of the way along a meridian at each of its points."""
    steps = np.linalg.norm(np.diff(meridian, axis=0), axis=1)
    way = np.concatenate([[0.0], np.cumsum(steps)])
    return np.asarray(way / way[-1])


def _unit(outline: Outline, around: Floats) -> tuple[Floats, Floats]:
    """Once about the outline that fills a square from -1 to 1."""
    if outline == "ellipse":
        turn = 2 * math.pi * around
        return np.cos(turn), np.sin(turn)
    turn = 8 * (around % 1)

    def wave(at: Floats) -> Floats:
        return np.asarray(np.clip(2 - np.abs((at + 4) % 8 - 4), -1, 1))

    return wave(turn), wave(turn - 2)
