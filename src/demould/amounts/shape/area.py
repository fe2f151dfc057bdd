"""How much surface there is to coat."""

import math
from collections.abc import Callable
from functools import cache
from typing import Literal, assert_never

from demould.amounts.shape.section import as_drawn, opening_mm2
from demould.amounts.shape.volume import sizes
from demould.mise.figure import Assumed, Figure, Line, worked
from demould.mise.shape import (
    Box,
    CutEllipsoid,
    Cylinder,
    HalfSphere,
    Oval,
    Shape,
    Trough,
    WaterOnly,
)

Faces = Literal["face", "face and ends", "all round"]

MM2_IN_CM2 = 100.0
STEPS = 48


def area_cm2(shape: Shape, faces: Faces) -> float:
    """Area to coat [cm2].

    ``face`` is what the mould shaped, less the two ends of a log or a bar;
    ``face and ends`` all that the mould shaped; ``all round`` the open face as well.
    """
    drawn = as_drawn(shape)
    mm2 = face_mm2(shape)
    if faces != "face":
        mm2 += _ends_mm2(drawn)
    if faces == "all round":
        mm2 += opening_mm2(drawn)
    return mm2 / MM2_IN_CM2


@cache
def face_mm2(shape: Shape) -> float:
    """What the mould shaped, without the two ends of a log or a bar [mm2].

    Curved faces of ellipsoids and tapering ovals are summed over a grid; for anything
    from a ball to 1 : 4 : 10 the sum holds within 1e-6 of itself.
    """
    drawn = as_drawn(shape)
    match drawn:
        case HalfSphere(diameter_mm=d):
            return math.pi / 2 * d**2
        case Cylinder(diameter_mm=d, height_mm=h):
            return math.pi * d * (d / 4 + h)
        case Oval():
            return _oval_face_mm2(drawn)
        case CutEllipsoid():
            return _cut_ellipsoid_face_mm2(drawn)
        case Box(length_mm=length, width_mm=w, height_mm=h):
            return length * (w + 2 * h)
        case Trough(length_mm=length, width_mm=w, height_mm=h):
            return length * (math.pi / 2 * w + 2 * (h - w / 2))
        case _:
            assert_never(drawn)


def _ends_mm2(shape: Shape) -> float:
    match shape:
        case Box(width_mm=w, height_mm=h):
            return 2 * w * h
        case Trough(width_mm=w, height_mm=h):
            return 2 * (math.pi / 8 * w**2 + w * (h - w / 2))
        case _:
            return 0.0


def _oval_face_mm2(oval: Oval) -> float:
    grow_length = (oval.length_mm - oval.small_length_mm) / 2
    grow_width = (oval.width_mm - oval.small_width_mm) / 2

    def stretch(up: float, round_: float) -> float:
        cos, sin = math.cos(round_), math.sin(round_)
        a = oval.small_length_mm / 2 + up * grow_length
        b = oval.small_width_mm / 2 + up * grow_width
        slope = a * grow_width * sin**2 + b * grow_length * cos**2
        return math.hypot(b * cos * oval.height_mm, a * sin * oval.height_mm, slope)

    small_face = math.pi / 4 * oval.small_length_mm * oval.small_width_mm
    return small_face + _over_a_turn(stretch, 0.0, 1.0)


def _cut_ellipsoid_face_mm2(cut: CutEllipsoid) -> float:
    a, b, c = cut.half_length_mm, cut.half_width_mm, cut.half_height_mm

    def stretch(up: float, round_: float) -> float:
        flat = math.sqrt(max(0.0, 1 - up * up))
        x, y = flat * math.cos(round_), flat * math.sin(round_)
        return math.hypot(b * c * x, a * c * y, a * b * up)

    return _over_a_turn(stretch, -1.0, cut.cut_mm / c)


def _over_a_turn(
    stretch: Callable[[float, float], float], low: float, high: float
) -> float:
    """Sum over one turn, four quarters alike (midpoints), and from low to high (Simpson)."""
    quarter = math.pi / 2
    turns = [(step + 0.5) * quarter / STEPS for step in range(STEPS)]
    total = 0.0
    for step in range(2 * STEPS + 1):
        weight = 1 if step in (0, 2 * STEPS) else 4 if step % 2 else 2
        up = low + (high - low) * step / (2 * STEPS)
        total += weight * sum(stretch(up, turn) for turn in turns)
    return total * 4 * quarter / STEPS * (high - low) / (6 * STEPS)


def area(shape: Shape, faces: Faces, name: str, line: Line | None = None) -> Figure:
    """Area to coat with the sizes it hangs on [cm2].

    Where only the water is known the half-sphere of that volume is assumed; no body of
    the volume has less area than a ball, and few pieces have a quarter more than the
    half-sphere.
    """
    value = area_cm2(shape, faces)
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
