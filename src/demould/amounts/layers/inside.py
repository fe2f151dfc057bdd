"""Whether a part keeps inside the faces of its cavity."""

import math

from demould.amounts.layers.place import Placed
from demould.amounts.shape.section import across_mm, as_drawn, height_mm
from demould.mise.shape import Box, Shape, Trough

LEVELS = 48


def sticks_out_mm(part: Placed, cavity: Shape) -> float:
    """How far a part reaches past its cavity, 0 if it keeps inside [mm].

    Measured level at 49 heights of the part: an ellipse in an ellipse keeps inside if
    both its axes do; a rectangle in an ellipse if its corners do.
    """
    out = max(0.0, -part.at, part.top - height_mm(cavity))
    return max(out, *(-room for _, room in rooms_beside(part, cavity)))


def room_beside_mm(part: Placed, cavity: Shape) -> float:
    """The least level room between a part's side and the cavity's face [mm].

    Below 0 where the part sticks out.
    """
    return min(room for _, room in rooms_beside(part, cavity))


def rooms_beside(part: Placed, cavity: Shape) -> list[tuple[float, float]]:
    """Heights over the cavity's bottom, and the room beside the part there [mm, mm]."""
    tall, hollow = height_mm(part.shape), height_mm(cavity)
    found = []
    for step in range(LEVELS + 1):
        up = tall * step / LEVELS
        own = tall - up if part.layer.turned_over else up
        level = min(max(part.at + up, 0.0), hollow)
        found.append((level, _room(part.shape, own, cavity, level)))
    return found


def _room(part: Shape, own_mm: float, cavity: Shape, level_mm: float) -> float:
    length, width = across_mm(part, own_mm)
    room_length, room_width = across_mm(cavity, level_mm)
    if not _has_corners(part) or _has_corners(cavity):
        return min(room_length - length, room_width - width) / 2
    corner = math.hypot(length, width) / 2
    if min(room_length, room_width) <= 0:
        return -corner
    reach = math.hypot(length / room_length, width / room_width)
    return corner * (1 / reach - 1) if reach > 0 else room_width / 2


def _has_corners(shape: Shape) -> bool:
    return isinstance(as_drawn(shape), Box | Trough)
