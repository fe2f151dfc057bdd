"""How much surface there is to coat."""

import math
from functools import cache, lru_cache
from typing import Literal

import numpy as np

from demould.amounts.shape.body import Body, body_of, outline_area, under
from demould.amounts.shape.curve import Curve, joined, point
from demould.amounts.shape.free_form import AREA_WITHIN
from demould.amounts.shape.section import opening_mm2
from demould.amounts.shape.volume import KEPT, sizes
from demould.mise.figure import Assumed, Figure, Line, worked
from demould.mise.shape import FreeForm, Shape, WaterOnly

Faces = Literal["face", "face and ends", "all round"]

MM2_IN_CM2 = 100.0


def area_cm2(shape: Shape, faces: Faces, up_to_mm: float = math.inf) -> float:
    """Area to coat, up to a height over the bottom of the cavity [cm2].

    ``face`` is what the mould shaped, less the two ends of a log or a bar;
    ``face and ends`` all that the mould shaped; ``all round`` the open face as well.
    """
    mm2 = face_mm2(shape, up_to_mm)
    if faces != "face":
        mm2 += _ends_mm2(shape, up_to_mm)
    if faces == "all round":
        mm2 += opening_mm2(shape)
    return mm2 / MM2_IN_CM2


@cache
def side_cm2(shape: Shape) -> float:
    """What stands upright of a face: all that the mould shaped but its level floor [cm2]."""
    return area_cm2(shape, "face and ends") - _floor_mm2(body_of(shape)) / MM2_IN_CM2


@cache
def face_mm2(shape: Shape, up_to_mm: float = math.inf) -> float:
    """What the mould shaped, without the two ends of a log or a bar [mm2]."""
    body = body_of(shape)
    sides = tuple(
        side for index, side in enumerate(body.outline) if index not in body.ends
    )
    mm2 = _floor_mm2(body) + _beside_mm2(body.outer, sides, up_to_mm)
    return mm2 + (_beside_mm2(body.hole, sides, up_to_mm) if body.hole else 0.0)


def _ends_mm2(shape: Shape, up_to_mm: float) -> float:
    body = body_of(shape)
    ends = tuple(body.outline[index] for index in body.ends)
    return _beside_mm2(body.outer, ends, up_to_mm) if ends else 0.0


def _floor_mm2(body: Body) -> float:
    """The level face a body stands on in its cavity [mm2]."""
    long, wide, _ = point(body.outer[0], 0.0)
    hole = point(body.hole[0], 0.0)[0] if body.hole else 0.0
    return outline_area(body.outline) * (long * wide - hole * hole)


def _beside_mm2(
    meridian: tuple[Curve, ...], sides: tuple[Curve, ...], up_to_mm: float
) -> float:
    """The face that sides of the outline draw along a meridian [mm2].

    A place on it is (a x, b y, z): a, b, z run along the meridian, x, y about the
    outline. Its stretch is the length of the cross product of both slopes.
    """
    below = under(meridian, up_to_mm)
    if not below:
        return 0.0
    up, grow, by_up = joined(below)
    about, turn, by_about = joined([(side, 1.0) for side in sides])
    a, b = up[:, 0, None], up[:, 1, None]
    da, db, dz = (grow[:, axis, None] for axis in range(3))
    (x, y), (dx, dy) = about.T, turn.T
    stretch = np.sqrt(
        (dz * b * dy) ** 2
        + (dz * a * dx) ** 2
        + (da * x * b * dy - db * y * a * dx) ** 2
    )
    return float(by_up @ stretch @ by_about)


@lru_cache(maxsize=KEPT)
def area(shape: Shape, faces: Faces, name: str, line: Line | None = None) -> Figure:
    """Area to coat with the sizes it hangs on [cm2].

    Where only the water is known the half-sphere of that volume is assumed; no body of
    the volume has less area than a ball, and few pieces have a quarter more than the
    half-sphere.
    """
    value = area_cm2(shape, faces)
    if isinstance(shape, FreeForm):
        bounds = Assumed(
            low=value * (1 - AREA_WITHIN), high=value * (1 + AREA_WITHIN), line=line
        )
        return Figure(name=name, value=value, unit="cm2", origin=bounds)
    if isinstance(shape, WaterOnly):
        ball = (36 * math.pi * shape.water_ml**2) ** (1 / 3)
        ball_share = ball / area_cm2(shape, "all round")
        bounds = Assumed(low=value * ball_share, high=value * 1.25, line=line)
        return Figure(name=name, value=value, unit="cm2", origin=bounds)
    return worked(name, value, "cm2", _AREA_RULES[faces], *sizes(shape, line))


_AREA_RULES: dict[Faces, str] = {
    "face": "all that the mould shaped, without the ends of a log",
    "face and ends": "all that the mould shaped, both ends of a log with it",
    "all round": "all that the mould shaped and the flat side",
}
