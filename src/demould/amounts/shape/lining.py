"""What a coat on the face of a cavity takes of it."""

from demould.amounts.shape.section import box_sides_mm, height_mm
from demould.amounts.shape.volume import volume_ml
from demould.mise.shape import Shape


def lining_ml(shape: Shape, coat_mm: float) -> float:
    """Volume of a coat so thick all over the face, up to the open side [ml].

    The cavity less the same one smaller by the coat in length, width and height: exact
    for balls, discs and boxes, within 5 % of the coat for an ellipsoid up to 3 mm.

    Raises
    ------
    ValueError
        If the coats of two sides meet.
    """
    long, wide = box_sides_mm(shape)
    high = height_mm(shape)
    if 2 * coat_mm >= min(long, wide) or coat_mm >= high:
        raise ValueError(
            f"a coat of {coat_mm:g} mm fills a cavity {min(long, wide):g} mm wide"
        )
    left = (1 - 2 * coat_mm / long) * (1 - 2 * coat_mm / wide) * (1 - coat_mm / high)
    return volume_ml(shape) * (1 - left)
