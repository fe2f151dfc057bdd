"""How much a shape and a cavity hold."""

import math
from dataclasses import fields
from typing import assert_never

from demould.amounts.shape.section import Drawn
from demould.mise.figure import Figure, Line, Stated, worked
from demould.mise.kitchen import Kitchen
from demould.mise.mould import Mould
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

MM3_IN_ML = 1000.0


def volume_ml(shape: Shape) -> float:
    """Volume of a shape [ml].

    All are exact: a tapering oval is a prismatoid (the sections at both ends and four
    times the middle one, by a sixth of the height), since its axes change evenly.

    >>> round(volume_ml(HalfSphere(diameter_mm=70)), 2)
    89.8
    """
    if isinstance(shape, WaterOnly):
        return shape.water_ml
    return _mm3(shape) / MM3_IN_ML


def _mm3(shape: Drawn) -> float:
    match shape:
        case HalfSphere(diameter_mm=d):
            return math.pi / 12 * d**3
        case Cylinder(diameter_mm=d, height_mm=h):
            return math.pi / 4 * d**2 * h
        case Oval():
            return _oval_mm3(shape)
        case CutEllipsoid(
            half_length_mm=a, half_width_mm=b, half_height_mm=c, cut_mm=k
        ):
            return math.pi * a * b * (k + 2 * c / 3 - k**3 / (3 * c**2))
        case Box(length_mm=length, width_mm=w, height_mm=h):
            return length * w * h
        case Trough(length_mm=length, width_mm=w, height_mm=h):
            return length * (math.pi / 8 * w**2 + w * (h - w / 2))
        case _:
            assert_never(shape)


def _oval_mm3(oval: Oval) -> float:
    middle_length = (oval.length_mm + oval.small_length_mm) / 2
    middle_width = (oval.width_mm + oval.small_width_mm) / 2
    faces = oval.length_mm * oval.width_mm + oval.small_length_mm * oval.small_width_mm
    return math.pi / 24 * oval.height_mm * (faces + 4 * middle_length * middle_width)


def sizes(shape: Shape, line: Line | None = None) -> tuple[Figure, ...]:
    """The sizes of a shape as figures, as the line that gave them says."""
    return tuple(
        Figure(
            name=part.name.rpartition("_")[0].replace("_", " "),
            value=getattr(shape, part.name),
            unit=part.name.rpartition("_")[2],
            origin=Stated(line=line),
        )
        for part in fields(shape)
    )


def volume(shape: Shape, name: str, line: Line | None = None) -> Figure:
    """Volume of a shape with the sizes it hangs on [ml]."""
    return worked(
        name, volume_ml(shape), "ml", _volume_rule(shape), *sizes(shape, line)
    )


def _volume_rule(shape: Shape) -> str:
    match shape:
        case HalfSphere():
            return "half of a ball: π / 12 x diameter x diameter x diameter"
        case Cylinder():
            return "π / 4 x diameter x diameter x height"
        case Oval():
            return "both faces and four times the ellipse half way, by height / 6"
        case CutEllipsoid():
            return "an ellipsoid from its far end to the cut"
        case Box():
            return "length x width x height"
        case Trough():
            return "length x (half a circle and the straight sides above it)"
        case WaterOnly():
            return "the water it holds"
        case _:
            assert_never(shape)


def cavity(mould: Mould) -> Figure:
    """What one cavity holds: the water weighed, where it was, else by its shape [ml]."""
    if mould.water is None:
        return volume(mould.shape, f"one cavity of {mould.key}", mould.line)
    return worked(
        f"one cavity of {mould.key}",
        mould.water.value,
        "ml",
        "the water it holds, 1 g to the ml",
        mould.water,
    )


def water_against_shape(mould: Mould) -> Figure | None:
    """How much more the weighed water is than the shape says, where both are known [%]."""
    if mould.water is None or isinstance(mould.shape, WaterOnly):
        return None
    by_shape = volume(mould.shape, f"{mould.key} by its sizes", mould.line)
    return worked(
        f"water against sizes of {mould.key}",
        100 * (mould.water.value / by_shape.value - 1),
        "%",
        "the water it holds over what its sizes say, less 100 %",
        mould.water,
        by_shape,
    )


def mould_of(kitchen: Kitchen, key: str) -> Mould:
    """Find a mould by its key; the reader has made sure that it is there."""
    return next(mould for mould in kitchen.moulds if mould.key == key)
