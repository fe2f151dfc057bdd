"""Whether a part keeps inside the faces of its cavity."""

import math
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from demould.amounts.layers.place import Placed
from demould.amounts.shape.body import ELLIPSE, RECTANGLE, body_of
from demould.amounts.shape.curve import Floats
from demould.amounts.shape.section import across_mm, height_mm, hole_across_mm
from demould.amounts.shape.skin import scaled
from demould.amounts.shape.volume import KEPT
from demould.mise.shape import Shape

LEVELS = 48
SPECK_MM = 1e-9


def sticks_out_mm(part: Placed, cavity: Shape) -> float:
    """How far a part reaches past its cavity, 0 if it keeps inside [mm].

    Measured level at 49 heights of the part: an ellipse in an ellipse keeps inside if
    both its axes do; a rectangle in an ellipse if its corners do.
    """
    out = max(0.0, -part.at, part.top - height_mm(cavity))
    out = max(out, *(-room for _, room in rooms_beside(part, cavity)))
    return out if out > SPECK_MM else 0.0


def room_beside_mm(part: Placed, cavity: Shape) -> float:
    """The least level room between a part's side and the cavity's face [mm].

    Below 0 where the part sticks out.
    """
    return min(room for _, room in rooms_beside(part, cavity))


def rooms_beside(part: Placed, cavity: Shape) -> tuple[tuple[float, float], ...]:
    """Heights over the cavity's bottom, and the room beside the part there [mm, mm]."""
    return _rooms(part.shape, part.at, part.layer.turned_over, cavity)


@lru_cache(maxsize=KEPT)
def _rooms(
    part: Shape,
    at_mm: float,
    over: bool,  # noqa: FBT001  # one of what the answer is kept by
    cavity: Shape,
) -> tuple[tuple[float, float], ...]:
    tall, hollow = height_mm(part), height_mm(cavity)
    found = []
    for step in range(LEVELS + 1):
        up = tall * step / LEVELS
        level = min(max(at_mm + up, 0.0), hollow)
        found.append((level, _room(part, tall - up if over else up, cavity, level)))
    return tuple(found)


def _room(part: Shape, own_mm: float, cavity: Shape, level_mm: float) -> float:
    room = _room_outside(part, own_mm, cavity, level_mm)
    hole = hole_across_mm(cavity, level_mm)
    if not hole:
        return room
    return min(room, (hole_across_mm(part, own_mm) - hole) / 2)


def _room_outside(part: Shape, own_mm: float, cavity: Shape, level_mm: float) -> float:
    length, width = across_mm(part, own_mm)
    room_length, room_width = across_mm(cavity, level_mm)
    mine, theirs = body_of(part).outline, body_of(cavity).outline
    if theirs is RECTANGLE or (mine is ELLIPSE and theirs is ELLIPSE):
        return min(room_length - length, room_width - width) / 2
    if mine is not RECTANGLE or theirs is not ELLIPSE:
        return _room_in_outline(
            scaled(mine, length, width), scaled(theirs, room_length, room_width)
        )
    corner = math.hypot(length, width) / 2
    if min(room_length, room_width) <= 0:
        return -corner
    reach = math.hypot(length / room_length, width / room_width)
    return corner * (1 / reach - 1) if reach > 0 else room_width / 2


def _room_in_outline(inner: Floats, outer: Floats) -> float:
    """The least distance between two closed lines, below 0 where one leaves the other."""
    into = np.where(_inside(inner, outer), 1.0, -1.0) * _away(inner, outer)
    out_of = np.where(_inside(outer, inner), -1.0, 1.0) * _away(outer, inner)
    return float(min(into.min(), out_of.min()))


def _away(points: Floats, line: Floats) -> Floats:
    """How far points, (n, 2), are from a closed line, (m, 2)."""
    start, way = line, np.roll(line, -1, axis=0) - line
    long = np.maximum((way**2).sum(axis=1), 1e-18)
    apart = points[:, None, :] - start
    share = np.clip((apart * way).sum(axis=2) / long, 0, 1)
    return np.asarray(
        np.linalg.norm(apart - share[..., None] * way, axis=2).min(axis=1)
    )


def _inside(points: Floats, line: Floats) -> NDArray[np.bool_]:
    """Whether points lie inside a closed line: rays to the right cross it oddly often."""
    x, y = points[:, 0, None], points[:, 1, None]
    x0, y0 = line.T
    x1, y1 = np.roll(line, -1, axis=0).T
    rise = np.where(y1 == y0, 1.0, y1 - y0)
    hit = ((y0 > y) != (y1 > y)) & (x < x0 + (y - y0) / rise * (x1 - x0))
    return np.asarray(hit.sum(axis=1) % 2 == 1)
