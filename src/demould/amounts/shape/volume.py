"""How much a shape and a cavity hold."""

import math
from dataclasses import fields
from functools import cache, lru_cache
from typing import assert_never

from demould.amounts.shape.body import body_of, holds_mm3
from demould.mise.figure import Figure, Line, Stated, worked
from demould.mise.kitchen import Kitchen
from demould.mise.mould import Mould
from demould.mise.shape import (
    Box,
    Cone,
    CutEllipsoid,
    Cylinder,
    Dome,
    Egg,
    FreeForm,
    HalfEgg,
    HalfSphere,
    HollowRing,
    Oval,
    Savarin,
    Shape,
    Sphere,
    TaperedBox,
    Trough,
    WaterOnly,
)
from demould.mise.shape_points import Outlined, Turned

MM3_IN_ML = 1000.0
KEPT = 512


def volume_ml(shape: Shape) -> float:
    """Volume of a shape [ml].

    All but free forms are exact to 1e-9 of themselves.

    >>> round(volume_ml(HalfSphere(diameter_mm=70)), 2)
    89.8
    """
    if isinstance(shape, WaterOnly | FreeForm):
        return shape.water_ml
    return volume_up_to_ml(shape)


@cache
def volume_up_to_ml(shape: Shape, up_to_mm: float = math.inf) -> float:
    """What of a shape lies under a height over its bottom [ml]."""
    body = body_of(shape)
    mm3 = holds_mm3(body, body.outer, up_to_mm)
    if body.hole:
        mm3 -= holds_mm3(body, body.hole, up_to_mm)
    return mm3 / MM3_IN_ML


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
        if isinstance(getattr(shape, part.name), float | int)
    )


@lru_cache(maxsize=KEPT)
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
        case TaperedBox():
            return "both faces and four times the one half way, by height / 6"
        case Sphere():
            return "a ball: π / 6 x diameter x diameter x diameter"
        case Dome():
            return "the cap of a ball, or half a ball and the straight sides above it"
        case Cone():
            return "π / 12 x height x (both diameters squared and one by the other)"
        case HollowRing():
            return "π / 4 x (diameter squared less hole squared) x height"
        case Savarin():
            return "half an ellipse turned about the hole: its area x the way of its middle"
        case Egg():
            return "π / 6 x length x width x width"
        case HalfEgg():
            return "π / 12 x length x width x width"
        case Turned():
            return "the drawn profile turned about its axis"
        case Outlined():
            return "area inside the drawn outline x height"
        case WaterOnly() | FreeForm():
            return "the water it holds"
        case _:
            assert_never(shape)


@lru_cache(maxsize=KEPT)
def cavity(mould: Mould) -> Figure:
    """What one piece takes in its mould: the water weighed, else by its shape [ml].

    A piece joined from two halves takes two cavities.
    """
    name = f"one cavity of {mould.key}"
    if mould.water is None:
        return volume(mould.shape, name, mould.line)
    if mould.halves:
        rule = "twice the water one half holds, 1 g to the ml"
        return worked(name, 2 * mould.water.value, "ml", rule, mould.water)
    rule = "the water it holds, 1 g to the ml"
    return worked(name, mould.water.value, "ml", rule, mould.water)


def water_against_shape(mould: Mould) -> Figure | None:
    """How much more the weighed water is than the shape says, where both are known [%]."""
    if mould.water is None or isinstance(mould.shape, WaterOnly | FreeForm):
        return None
    by_shape = volume(mould.shape, f"{mould.key} by its sizes", mould.line)
    return worked(
        f"water against sizes of {mould.key}",
        100 * (cavity(mould).value / by_shape.value - 1),
        "%",
        "the water it holds over what its sizes say, less 100 %",
        mould.water,
        by_shape,
    )


def mould_of(kitchen: Kitchen, key: str) -> Mould:
    """Find a mould by its key; the reader has made sure that it is there."""
    return next(mould for mould in kitchen.moulds if mould.key == key)
