"""Every shape as one kind of body: a meridian, and the outline all its level sections have.

The meridian runs from the bottom up to the rim, as (half length, half width, height) in
mm; the outline fills a square from -1 to 1. A ring has a second meridian, that of its
hole. Heights count from the bottom of a cavity as it is filled (round side down) up to
the open face.
"""

import math
from functools import cache
from itertools import pairwise
from typing import NamedTuple, assert_never

import numpy as np

from demould.amounts.shape.curve import (
    Arc,
    Curve,
    Straight,
    nodes,
    point,
    share_where,
)
from demould.amounts.shape.free_form import free_outline, free_rise
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

QUARTER = math.pi / 2
BLUNT = 0.42
"""Share of an egg's length to its widest place, from the blunt end. Common practice, no
source; what an egg holds does not hang on it."""


class Body(NamedTuple):
    """The faces of a shape.

    `hole` is empty but for rings; `ends` has the parts of the outline that are the ends
    of a log or a bar, by their place in `outline`.
    """

    outer: tuple[Curve, ...]
    outline: tuple[Curve, ...]
    hole: tuple[Curve, ...] = ()
    ends: tuple[int, ...] = ()


ELLIPSE: tuple[Curve, ...] = tuple(
    Arc((0.0, 0.0), (1.0, 0.0), (0.0, 1.0), n * QUARTER, (n + 1) * QUARTER)
    for n in range(4)
)
RECTANGLE: tuple[Curve, ...] = tuple(
    Straight(start, end)
    for start, end in pairwise(
        (
            (1.0, 0.0),
            (1.0, 1.0),
            (0.0, 1.0),
            (-1.0, 1.0),
            (-1.0, 0.0),
            (-1.0, -1.0),
            (0.0, -1.0),
            (1.0, -1.0),
            (1.0, 0.0),
        )
    )
)
_ENDS = (0, 3, 4, 7)
_WIDEST = 2 * BLUNT - 1
EGG: tuple[Curve, ...] = tuple(
    Arc((_WIDEST, 0.0), (reach, 0.0), (0.0, 1.0), n * QUARTER, (n + 1) * QUARTER)
    for n, reach in enumerate((1 - _WIDEST, 1 + _WIDEST, 1 + _WIDEST, 1 - _WIDEST))
)


@cache
def body_of(shape: Shape) -> Body:
    """Give the faces of a shape.

    A free form of which only the water is known stands as the half-sphere that holds as
    much: its area is 1.19 times the least any body of that volume can have.
    """
    match shape:
        case HalfSphere(diameter_mm=d):
            return Body(_ellipsoid(d / 2, d / 2, d / 2, 0.0), ELLIPSE)
        case Sphere(diameter_mm=d):
            return Body(_ellipsoid(d / 2, d / 2, d / 2, d / 2), ELLIPSE)
        case CutEllipsoid(half_length_mm=a, half_width_mm=b, half_height_mm=c):
            return Body(_ellipsoid(a, b, c, shape.cut_mm), ELLIPSE)
        case Cylinder(diameter_mm=d, height_mm=h):
            return Body(_leaning(d, d, d, d, h), ELLIPSE)
        case Cone(diameter_mm=d, small_mm=small, height_mm=h):
            return Body(_leaning(small, small, d, d, h), ELLIPSE)
        case Dome():
            return Body(_dome(shape), ELLIPSE)
        case Oval():
            return Body(_tapering(shape), ELLIPSE)
        case Box(length_mm=long, width_mm=w, height_mm=h):
            return Body(_leaning(long, w, long, w, h), RECTANGLE, ends=_ENDS)
        case TaperedBox():
            return Body(_tapering(shape), RECTANGLE, ends=_ENDS)
        case Trough(length_mm=long, width_mm=w, height_mm=h):
            return Body(_log(long, w, h), RECTANGLE, ends=_ENDS)
        case HollowRing(diameter_mm=d, hole_mm=hole, height_mm=h):
            inner = _leaning(hole, hole, hole, hole, h)
            return Body(_leaning(d, d, d, d, h), ELLIPSE, hole=inner)
        case Savarin():
            return Body(_bow(shape, +1), ELLIPSE, hole=_bow(shape, -1))
        case Egg(length_mm=long, width_mm=w):
            return Body(_ellipsoid(long / 2, w / 2, w / 2, w / 2), EGG)
        case HalfEgg(length_mm=long, width_mm=w):
            return Body(_ellipsoid(long / 2, w / 2, w / 2, 0.0), EGG)
        case Turned(points=points):
            return Body(_through(points), ELLIPSE)
        case Outlined():
            return _raised(shape)
        case FreeForm():
            return _free(shape)
        case WaterOnly(water_ml=held):
            across = (12_000 * held / math.pi) ** (1 / 3)
            return body_of(HalfSphere(diameter_mm=across))
        case _:
            assert_never(shape)


def _ellipsoid(a: float, b: float, c: float, cut: float) -> tuple[Curve, ...]:
    """From the far end of an ellipsoid to `cut` above its widest section, by quarters."""
    last = math.acos(-cut / c)
    stops = [0.0, QUARTER, last] if last > QUARTER else [0.0, last]
    return tuple(
        Arc((0.0, 0.0, c), (0.0, 0.0, -c), (a, b, 0.0), low, high)
        for low, high in pairwise(stops)
    )


def _leaning(
    low_long: float, low_wide: float, long: float, wide: float, high: float
) -> tuple[Curve, ...]:
    low = (low_long / 2, low_wide / 2, 0.0)
    return (Straight(low, (long / 2, wide / 2, high)),)


def _tapering(shape: Oval | TaperedBox) -> tuple[Curve, ...]:
    small = shape.small_length_mm, shape.small_width_mm
    return _leaning(*small, shape.length_mm, shape.width_mm, shape.height_mm)


def _dome(dome: Dome) -> tuple[Curve, ...]:
    half, high = dome.diameter_mm / 2, dome.height_mm
    if high >= half:
        bow = _ellipsoid(half, half, half, 0.0)
        straight = Straight((half, half, half), (half, half, high))
        return (*bow, straight) if high > half else bow
    ball = (half**2 + high**2) / (2 * high)
    return _ellipsoid(ball, ball, ball, high - ball)


def _log(long: float, wide: float, high: float) -> tuple[Curve, ...]:
    half = wide / 2
    bow = Arc((long / 2, 0.0, half), (0.0, 0.0, -half), (0.0, half, 0.0), 0.0, QUARTER)
    if high == half:
        return (bow,)
    return (bow, Straight((long / 2, half, half), (long / 2, half, high)))


def _bow(ring: Savarin, side: int) -> tuple[Curve, ...]:
    """A quarter of an ellipse from the ring's lowest line out to its rim, or to its hole."""
    middle = (ring.diameter_mm + ring.hole_mm) / 4
    reach = side * (ring.diameter_mm - ring.hole_mm) / 4
    centre = (middle, middle, ring.height_mm)
    down = (0.0, 0.0, -ring.height_mm)
    return (Arc(centre, down, (reach, reach, 0.0), 0.0, QUARTER),)


def _through(points: tuple[tuple[float, float], ...]) -> tuple[Curve, ...]:
    low = points[0][1]
    turned = [(half, half, up - low) for half, up in points]
    return tuple(
        Straight(start, end) for start, end in pairwise(turned) if start != end
    )


def _raised(shape: Outlined) -> Body:
    xs, ys = zip(*shape.points, strict=True)
    long, wide = max(xs) - min(xs), max(ys) - min(ys)
    middle = (max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2
    corners = [
        (2 * (x - middle[0]) / long, 2 * (y - middle[1]) / wide)
        for x, y in shape.points
    ]
    outline = tuple(Straight(start, end) for start, end in pairwise(corners))
    return Body(_leaning(long, wide, long, wide, shape.height_mm), outline)


def _free(shape: FreeForm) -> Body:
    half = shape.length_mm / 2, shape.width_mm / 2
    rise = [
        (scale * half[0], scale * half[1], up * shape.height_mm)
        for scale, up in free_rise(shape)
    ]
    sides = free_outline(shape)
    outline = (
        tuple(Straight(start, end) for start, end in pairwise(sides))
        if sides
        else ELLIPSE
    )
    return Body(tuple(Straight(start, end) for start, end in pairwise(rise)), outline)


def has_corners(shape: Shape) -> bool:
    """Whether level sections are rectangles or other outlines with corners."""
    return any(isinstance(side, Straight) for side in body_of(shape).outline)


@cache
def outline_area(outline: tuple[Curve, ...]) -> float:
    """Area inside an outline that fills a square from -1 to 1: π for an ellipse."""
    total = 0.0
    for side in outline:
        at, slope, weight = nodes(side)
        turned = at[:, 0] * slope[:, 1] - at[:, 1] * slope[:, 0]
        total += float(np.dot(weight, turned)) / 2
    return abs(total)


def holds_mm3(
    body: Body, meridian: tuple[Curve, ...], up_to_mm: float = math.inf
) -> float:
    """What lies inside one meridian of a body, up to a height [mm3]."""
    total = 0.0
    for curve, last in under(meridian, up_to_mm):
        at, slope, weight = nodes(curve, 0.0, last)
        total += float(np.dot(weight, at[:, 0] * at[:, 1] * slope[:, 2]))
    return outline_area(body.outline) * total


def under(
    meridian: tuple[Curve, ...], up_to_mm: float
) -> tuple[tuple[Curve, float], ...]:
    """The curves of a meridian up to a height, each with the share of its way."""
    found = []
    for curve in meridian:
        if point(curve, 1.0)[2] <= up_to_mm:
            found.append((curve, 1.0))
        elif point(curve, 0.0)[2] < up_to_mm:
            found.append((curve, share_where(curve, 2, up_to_mm) or 0.0))
    return tuple(found)
