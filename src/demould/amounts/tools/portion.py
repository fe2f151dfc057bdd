"""Rings, logs, slabs and terrines cut into portions: by number, angle, width or weight."""

import math
from dataclasses import dataclass

from demould.amounts.shape.section import box_mm
from demould.amounts.shape.volume import volume_ml
from demould.mise.figure import Figure, worked
from demould.mise.shape import (
    Box,
    Cylinder,
    HollowRing,
    Savarin,
    Shape,
    TaperedBox,
    Trough,
)
from demould.mise.words import Words

Round = Cylinder | HollowRing | Savarin
Long = Box | Trough | TaperedBox
SPECK = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Portions:
    """One piece cut up.

    Attributes
    ----------
    count
        Portions, all alike.
    each
        What one weighs. [g]
    angle
        Of a wedge. [°] None of a slice.
    width
        Of a slice, or of a wedge at its rim. [mm]
    trim
        What is cut off and not a portion. [g]
    """

    count: int
    each: Figure
    angle: float | None
    width: float
    trim: Figure


def by_count(shape: Shape, whole: Figure, count: int) -> Portions:
    """Cut into so many, nothing left over.

    Raises
    ------
    ValueError
        If the shape is neither round nor long, or the count is under 1.
    """
    if count < 1:
        raise ValueError(f"cut in {count}; it must be 1 or more")
    if isinstance(shape, Round):
        return _cut(shape, whole, count, 1.0, 360 / count)
    return _cut(shape, whole, count, 1.0, None)


def by_angle(shape: Shape, whole: Figure, degrees: float) -> Portions:
    """Cut a round piece in wedges of an angle; what is left of the turn is trim."""
    if not 0 < degrees <= 360:
        raise ValueError(f"a wedge of {degrees:g}°; it must be over 0 and at most 360")
    if not isinstance(shape, Round):
        raise ValueError("only a round piece is cut by an angle")
    count = int(360 / degrees + SPECK)
    return _cut(shape, whole, count, count * degrees / 360, degrees)


def by_width(shape: Shape, whole: Figure, width_mm: float) -> Portions:
    """Cut a long piece in slices of a width; the end that is left is trim."""
    if not isinstance(shape, Long):
        raise ValueError("only a long piece is cut by a width")
    length = box_mm(shape)[0]
    if not 0 < width_mm <= length:
        raise ValueError(f"a slice of {width_mm:g} mm off a piece {length:g} mm long")
    count = int(length / width_mm + SPECK)
    return _cut(shape, whole, count, count * width_mm / length, None)


def by_weight(shape: Shape, whole: Figure, grams: float) -> Portions:
    """Cut in portions of at least a weight, as many as the whole gives, all alike."""
    if not 0 < grams <= whole.value:
        raise ValueError(f"a portion of {grams:g} g out of {whole.value:.0f} g")
    return by_count(shape, whole, int(whole.value / grams + SPECK))


def _cut(
    shape: Shape, whole: Figure, count: int, used: float, angle: float | None
) -> Portions:
    if not isinstance(shape, Round | Long):
        raise ValueError("only rings, discs, logs, bars and terrines are cut up")
    long = box_mm(shape)[0]
    width = used * (math.pi * long if isinstance(shape, Round) else long) / count
    each = worked(
        "a portion",
        whole.value * used / count,
        "g",
        Words("cut in {n}", n=count),
        whole,
    )
    trim = worked(
        "trim", whole.value * (1 - used), "g", "what is left of the cut", whole
    )
    return Portions(count=count, each=each, angle=angle, width=width, trim=trim)


def cut_faces_cm2(shape: Shape, count: int) -> float:
    """Area that cutting lays bare on all portions together, to coat it [cm2].

    A log in n slices has n - 1 cuts, a ring in n wedges n of them from the rim to the
    middle or the hole; each cut lays two faces bare.
    """
    if isinstance(shape, Round):
        across = shape.diameter_mm / 2
        hole = 0.0 if isinstance(shape, Cylinder) else shape.hole_mm / 2
        wide = across - hole
        full = math.pi / 4 if isinstance(shape, Savarin) else 1.0
        return 2 * (count if count > 1 else 0) * full * wide * shape.height_mm / 100
    if not isinstance(shape, Long):
        raise ValueError("only rings, discs, logs, bars and terrines are cut up")
    section = 1000 * volume_ml(shape) / box_mm(shape)[0]
    return 2 * (count - 1) * section / 100
