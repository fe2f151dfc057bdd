"""Where the faces of a body run in space: points on them, and the body lifted to its place.

A body is given by its meridian, the half length and half width of its level sections
from the middle of the bottom to the rim of the open side, and by the outline that all
those sections have: an ellipse or a rectangle.
"""

import math
from functools import cache
from typing import NamedTuple

import numpy as np

from demould.amounts.shape.body import ELLIPSE, body_of
from demould.amounts.shape.curve import Curve, Floats, points_at, sampled
from demould.mise.shape import Shape


class Skin(NamedTuple):
    """The faces of a body.

    `meridian` has shape (n, 3): half length, half width, height over the cavity's
    bottom. [mm] Between its points it runs straight. `outline` is what the level
    sections have, filling a square from -1 to 1.
    """

    meridian: Floats
    outline: tuple[Curve, ...]


@cache
def skin_of(shape: Shape, *, lidded: bool = False) -> Skin:
    """Give the outer faces; the open side as well where `lidded`."""
    body = body_of(shape)
    meridian = _points(body.outer)
    low, high = meridian[0] * [0.0, 0.0, 1.0], meridian[-1] * [0.0, 0.0, 1.0]
    if body.hole:
        inner = _points(body.hole)
        low, high = inner[0], inner[-1]
    if np.any(low != meridian[0]):
        meridian = np.vstack([low, meridian])
    if lidded and np.any(high != meridian[-1]):
        meridian = np.vstack([meridian, high])
    return Skin(meridian, body.outline)


@cache
def hole_of(shape: Shape) -> Skin | None:
    """Give the face of a ring's hole, None where a body has none."""
    body = body_of(shape)
    return Skin(_points(body.hole), body.outline) if body.hole else None


def _points(meridian: tuple[Curve, ...]) -> Floats:
    parts = [sampled(curve) for curve in meridian]
    return np.vstack([parts[0], *(part[1:] for part in parts[1:])])


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


def scaled(
    outline: tuple[Curve, ...], length: float, width: float, sides: int = 64
) -> Floats:
    """Points of a level section so long and wide, once about it, corners among them.

    Shape (n, 2), the first not again. [mm]
    """
    each = max(1, sides // len(outline))
    around = np.arange(each * len(outline)) / (each * len(outline))
    x, y = _unit(outline, around)
    return np.stack([x * length / 2, y * width / 2], axis=-1)


def ways(meridian: Floats) -> Floats:
    """Share of the way along a meridian at each of its points."""
    steps = np.linalg.norm(np.diff(meridian, axis=0), axis=1)
    way = np.concatenate([[0.0], np.cumsum(steps)])
    return np.asarray(way / way[-1])


def _unit(outline: tuple[Curve, ...], around: Floats) -> tuple[Floats, Floats]:
    """Once about the outline that fills a square from -1 to 1, side after side."""
    if outline is ELLIPSE:
        return np.cos(2 * math.pi * around), np.sin(2 * math.pi * around)
    turn = (np.asarray(around) % 1) * len(outline)
    side = np.minimum(turn.astype(int), len(outline) - 1)
    x, y = np.empty_like(turn), np.empty_like(turn)
    for index, curve in enumerate(outline):
        here = side == index
        at = points_at(curve, turn[here] - index)
        x[here], y[here] = at[:, 0], at[:, 1]
    return x, y
