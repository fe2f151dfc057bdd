"""How wide a body is at each height, and how large its open face.

Heights count from the bottom of a cavity as it is filled (round side down) up to the
open face. A free form of which only the water is known stands as the half-sphere that
holds as much: its area is 1.19 times the least any body of that volume can have.
"""

import math
from typing import assert_never

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

Drawn = HalfSphere | Cylinder | Oval | CutEllipsoid | Box | Trough


def as_drawn(shape: Shape) -> Drawn:
    """Give the shape, or for water only the half-sphere that holds as much."""
    if isinstance(shape, WaterOnly):
        return HalfSphere(diameter_mm=(12_000 * shape.water_ml / math.pi) ** (1 / 3))
    return shape


def height_mm(shape: Shape) -> float:
    """From the bottom of the cavity to the open face [mm]."""
    drawn = as_drawn(shape)
    match drawn:
        case HalfSphere(diameter_mm=d):
            return d / 2
        case CutEllipsoid(half_height_mm=c, cut_mm=k):
            return c + k
        case Cylinder(height_mm=h) | Oval(height_mm=h) | Box(height_mm=h):
            return h
        case Trough(height_mm=h):
            return h
        case _:
            assert_never(drawn)


def across_mm(shape: Shape, at_mm: float) -> tuple[float, float]:
    """Length and width of the horizontal section `at_mm` above the bottom [mm]."""
    drawn = as_drawn(shape)
    if not 0 <= at_mm <= height_mm(drawn):
        raise ValueError(
            f"a section at {at_mm:g} mm misses a body {height_mm(drawn):g} mm high"
        )
    match drawn:
        case HalfSphere(diameter_mm=d):
            round_ = 2 * math.sqrt(at_mm * (d - at_mm))
            return round_, round_
        case Cylinder(diameter_mm=d):
            return d, d
        case Oval(height_mm=h):
            up = at_mm / h
            return (
                drawn.small_length_mm + up * (drawn.length_mm - drawn.small_length_mm),
                drawn.small_width_mm + up * (drawn.width_mm - drawn.small_width_mm),
            )
        case CutEllipsoid(half_length_mm=a, half_width_mm=b, half_height_mm=c):
            wide = 2 * math.sqrt(max(0.0, 1 - ((at_mm - c) / c) ** 2))
            return a * wide, b * wide
        case Box(length_mm=length, width_mm=w):
            return length, w
        case Trough(length_mm=length, width_mm=w):
            chord = w if at_mm >= w / 2 else 2 * math.sqrt(at_mm * (w - at_mm))
            return length, chord
        case _:
            assert_never(drawn)


def section_mm2(shape: Shape, at_mm: float) -> float:
    """Area of the horizontal section `at_mm` above the bottom [mm2]."""
    length, width = across_mm(shape, at_mm)
    if isinstance(shape, Box | Trough):
        return length * width
    return math.pi / 4 * length * width


def opening_mm2(shape: Shape) -> float:
    """Area of the open face [mm2]."""
    return section_mm2(shape, height_mm(shape))


def profile(shape: Shape, steps: int = 60) -> tuple[tuple[float, float], ...]:
    """Heights and section areas from bottom to open face, evenly apart [mm, mm2].

    `steps` + 1 pairs. The trapezoid rule over 60 of them gives a half-sphere's volume
    within 0.01 %.
    """
    top = height_mm(shape)
    heights = [top * step / steps for step in range(steps + 1)]
    return tuple((at, section_mm2(shape, at)) for at in heights)


def box_mm(shape: Shape) -> tuple[float, float, float]:
    """Length, width and height of the box that just takes the body [mm].

    An ellipsoid cut above its widest section bulges past its open face.
    """
    length, width = box_sides_mm(shape)
    return max(length, width), min(length, width), height_mm(shape)


def box_sides_mm(shape: Shape) -> tuple[float, float]:
    """The two level sides of that box as the body lies, the longer one not first [mm]."""
    drawn = as_drawn(shape)
    top = height_mm(drawn)
    widest = min(drawn.half_height_mm, top) if isinstance(drawn, CutEllipsoid) else top
    return across_mm(drawn, widest)
