"""How wide a body is at each height, and how large its open face.

Heights count from the bottom of a cavity as it is filled (round side down) up to the
open face.
"""

from functools import cache

from demould.amounts.shape.body import Body, body_of, outline_area
from demould.amounts.shape.curve import Curve, most, point, share_where
from demould.mise.shape import Shape

SPECK_MM = 1e-9


@cache
def height_mm(shape: Shape) -> float:
    """From the bottom of the cavity to the open face [mm]."""
    return float(point(body_of(shape).outer[-1], 1.0)[2])


def across_mm(shape: Shape, at_mm: float) -> tuple[float, float]:
    """Length and width of the horizontal section `at_mm` above the bottom [mm]."""
    _refuse_outside(shape, at_mm)
    return _across(body_of(shape).outer, at_mm)


def hole_across_mm(shape: Shape, at_mm: float) -> float:
    """How wide the hole of a ring is `at_mm` above the bottom, 0 where it has none [mm]."""
    _refuse_outside(shape, at_mm)
    hole = body_of(shape).hole
    return _across(hole, at_mm)[0] if hole else 0.0


def _refuse_outside(shape: Shape, at_mm: float) -> None:
    if not 0 <= at_mm <= height_mm(shape):
        raise ValueError(
            f"a section at {at_mm:g} mm misses a body {height_mm(shape):g} mm high"
        )


def _across(meridian: tuple[Curve, ...], at_mm: float) -> tuple[float, float]:
    for curve in reversed(meridian):
        if point(curve, 0.0)[2] <= at_mm + SPECK_MM:
            share = share_where(curve, 2, at_mm)
            long, wide, _ = point(curve, 1.0 if share is None else share)
            return 2 * long, 2 * wide
    long, wide, _ = point(meridian[0], 0.0)
    return 2 * long, 2 * wide


def section_mm2(shape: Shape, at_mm: float) -> float:
    """Area of the horizontal section `at_mm` above the bottom [mm2]."""
    body = body_of(shape)
    long, wide = across_mm(shape, at_mm)
    hole = hole_across_mm(shape, at_mm)
    return outline_area(body.outline) * (long * wide - hole * hole) / 4


@cache
def opening_mm2(shape: Shape) -> float:
    """Area of the open face, 0 of a closed body [mm2]."""
    return section_mm2(shape, height_mm(shape))


def profile(shape: Shape, steps: int = 60) -> tuple[tuple[float, float], ...]:
    """Heights and section areas from bottom to open face, evenly apart [mm, mm2].

    `steps` + 1 pairs. The trapezoid rule over 60 of them gives a half-sphere's volume
    within 0.01 %.
    """
    top = height_mm(shape)
    heights = [top * (step / steps) for step in range(steps + 1)]
    return tuple((at, section_mm2(shape, at)) for at in heights)


def box_mm(shape: Shape) -> tuple[float, float, float]:
    """Length, width and height of the box that just takes the body [mm].

    An ellipsoid cut above its widest section bulges past its open face.
    """
    length, width = box_sides_mm(shape)
    return max(length, width), min(length, width), height_mm(shape)


@cache
def box_sides_mm(shape: Shape) -> tuple[float, float]:
    """The two level sides of that box as the body lies, the longer one not first [mm]."""
    body = body_of(shape)
    return 2 * _most(body, 0), 2 * _most(body, 1)


def _most(body: Body, axis: int) -> float:
    return max(most(curve, axis) for curve in body.outer)


def widest_mm2(shape: Shape) -> float:
    """Area of the widest horizontal section [mm2]."""
    return max(area for _, area in profile(shape))
