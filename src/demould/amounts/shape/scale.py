"""The same shape, larger or smaller."""

from dataclasses import fields, replace

from demould.amounts.shape.volume import volume_ml
from demould.mise.shape import FreeForm, Shape, WaterOnly
from demould.mise.shape_points import Outlined, Turned


def as_large_as(shape: Shape, ml: float) -> Shape:
    """Give a shape with all its sizes grown alike until it holds so much [ml].

    >>> from demould.mise.shape import Sphere
    >>> as_large_as(Sphere(diameter_mm=30), 8 * volume_ml(Sphere(diameter_mm=30)))
    Sphere(diameter_mm=60.0)
    """
    grow = (ml / volume_ml(shape)) ** (1 / 3)
    match shape:
        case WaterOnly():
            return WaterOnly(water_ml=ml)
        case FreeForm():
            return FreeForm(
                water_ml=ml,
                length_mm=grow * shape.length_mm,
                width_mm=grow * shape.width_mm,
                height_mm=grow * shape.height_mm,
            )
        case Turned(points=points):
            return Turned(points=tuple((grow * r, grow * z) for r, z in points))
        case Outlined(points=points, height_mm=high):
            return Outlined(
                points=tuple((grow * x, grow * y) for x, y in points),
                height_mm=grow * high,
            )
        case _:
            sizes = {
                part.name: grow * getattr(shape, part.name) for part in fields(shape)
            }
            return replace(shape, **sizes)
