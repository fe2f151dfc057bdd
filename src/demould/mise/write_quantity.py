"""Figures, shapes and moments as they are written: what the readers read back."""

from datetime import datetime
from decimal import Decimal
from typing import assert_never

from demould.mise.clock import show_day
from demould.mise.figure import Assumed, Figure, Measured, Stated, Worked
from demould.mise.number import has_thousands_look, written
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

_WHOLE = {"g", "ml", "mm", "pieces"}


def write_figure(figure: Figure) -> str:
    """A figure with its unit and how it is known.

    Times are written in days or hours where they come out even.
    """
    origin = write_origin(figure)
    return f"{write_amount(figure)} {origin}".strip()


def write_amount(figure: Figure) -> str:
    """A figure with its unit alone."""
    if figure.unit == "min" and not isinstance(figure.origin, Assumed):
        return write_time(figure.value)
    return f"{_number(figure.value, figure.unit)} {figure.unit}".strip()


def write_time(minutes: float) -> str:
    """Minutes as d, h or min, whichever comes out even.

    >>> write_time(20160), write_time(150), write_time(75), write_time(0.75)
    ('14 d', '2.5 h', '75 min', '0.75 min')
    """
    exact = Decimal(str(minutes))
    if exact and exact % 1440 == 0 and exact > 2880:
        return f"{written(exact / 1440)} d"
    if exact and exact % 30 == 0 and exact >= 120:
        return f"{written(exact / 60)} h"
    return f"{written(exact)} min"


def _number(value: float, unit: str) -> str:
    """A number that cannot be taken for thousands: 1.2340 g."""
    plain = written(value)
    return f"{plain}0" if unit in _WHOLE and has_thousands_look(plain) else plain


def write_origin(figure: Figure) -> str:
    """The words in brackets; none where somebody stated it."""
    match figure.origin:
        case Measured(on=on, readings=readings):
            said = ", ".join(
                filter(None, (f"{readings} times" * (readings > 1), str(on or "")))
            )
            if readings > 1:
                return f"(measured {said})"
            return f"(measured, {said})" if said else "(measured)"
        case Assumed(low=low, high=high, source=source):
            span = f"{written(low)} to {written(high)}"
            return f"(assumed {', '.join(filter(None, (span, source)))})"
        case Stated(by=by):
            return f"(stated by {by})" if by else ""
        case Worked():
            return ""
        case _:
            assert_never(figure.origin)


def write_shape(shape: Shape) -> str:
    """A shape with its sizes in mm."""
    match shape:
        case HalfSphere(diameter_mm=across):
            return f"half-sphere {write_sizes(across)} mm"
        case Cylinder(diameter_mm=across, height_mm=high):
            return f"disc {write_sizes(across, high)} mm"
        case Oval():
            return _oval(shape)
        case CutEllipsoid():
            axes = write_sizes(
                shape.half_length_mm, shape.half_width_mm, shape.half_height_mm
            )
            cut = write_sizes(shape.cut_mm)
            return f"cut ellipsoid {axes} mm, cut {cut} mm above its widest"
        case Box(length_mm=long, width_mm=wide, height_mm=high):
            return f"box {write_sizes(long, wide, high)} mm"
        case Trough(length_mm=long, width_mm=wide, height_mm=high):
            return f"trough {write_sizes(long, wide, high)} mm"
        case TaperedBox():
            face = write_sizes(shape.length_mm, shape.width_mm)
            small = write_sizes(shape.small_length_mm, shape.small_width_mm)
            return f"box {face} to {small}, {write_sizes(shape.height_mm)} mm deep"
        case Sphere(diameter_mm=across):
            return f"sphere {write_sizes(across)} mm"
        case Dome(diameter_mm=across, height_mm=high):
            return f"dome {write_sizes(across, high)} mm"
        case Cone(diameter_mm=across, small_mm=small_mm, height_mm=high):
            if small_mm:
                across_both = f"{write_sizes(across)} to {write_sizes(small_mm)}"
                return f"cone {across_both} x {write_sizes(high)} mm"
            return f"cone {write_sizes(across, high)} mm"
        case HollowRing(diameter_mm=across, hole_mm=hole, height_mm=high):
            return f"ring {write_sizes(across, high)} mm, hole {write_sizes(hole)} mm"
        case Savarin(diameter_mm=across, hole_mm=hole, height_mm=high):
            return (
                f"savarin {write_sizes(across, high)} mm, hole {write_sizes(hole)} mm"
            )
        case Egg(length_mm=long, width_mm=wide_mm):
            return f"egg {write_sizes(long, wide_mm)} mm"
        case HalfEgg(length_mm=long, width_mm=wide_mm):
            return f"half egg {write_sizes(long, wide_mm)} mm"
        case Turned() | Outlined():
            return _points(shape)
        case FreeForm(water_ml=held):
            sizes = write_sizes(shape.length_mm, shape.width_mm, shape.height_mm)
            return f"free form {sizes} mm, water {_number(held, 'ml')} ml"
        case WaterOnly(water_ml=held):
            return f"water {_number(held, 'ml')} ml"
        case _:
            assert_never(shape)


def _points(shape: Turned | Outlined) -> str:
    points = ", ".join(
        f"{_number(one, 'mm')} {_number(other, 'mm')}" for one, other in shape.points
    )
    if isinstance(shape, Turned):
        return f"turned {points} mm"
    return f"outline {points} mm, {write_sizes(shape.height_mm)} mm high"


def _oval(oval: Oval) -> str:
    wide = (oval.length_mm, oval.width_mm)
    small = (oval.small_length_mm, oval.small_width_mm)
    if wide == small:
        return f"oval {write_sizes(*wide, oval.height_mm)} mm"
    return f"oval {write_sizes(*wide)} to {write_sizes(*small)}, {write_sizes(oval.height_mm)} mm deep"


def write_sizes(*sizes: float) -> str:
    """Lengths in mm with x between them, without their unit."""
    return " x ".join(_number(size, "mm") for size in sizes)


def write_moment(moment: datetime) -> str:
    """A moment; of one that comes twice, which."""
    shown = show_day(moment)
    if moment.replace(fold=0).utcoffset() == moment.replace(fold=1).utcoffset():
        return shown
    return f"{shown} {'second' if moment.fold else 'first'}"
