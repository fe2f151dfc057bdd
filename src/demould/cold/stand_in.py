"""Which turned body stands for a piece that is not round, and how much of it.

Level by level an oval or a bar is replaced by a circle that its middle sees as it sees
the true outline, and the whole has as much skin to its volume: then core and surface
take the same time. It holds less than the piece, so everything of it counts so many
`times`. Worked out, and held against solves in space, in docs/physics/cold.md.
"""

import math
from itertools import pairwise
from typing import NamedTuple

from demould.amounts.shape.area import area_cm2
from demould.amounts.shape.section import (
    across_mm,
    height_mm,
    hole_across_mm,
    opening_mm2,
    profile,
    section_mm2,
)
from demould.amounts.shape.volume import volume_up_to_ml
from demould.cold.body.profile import Profile, area, checked, closed, turned, volume
from demould.mise.shape import Shape

CORNERED = 0.65
"""What the corners of a square add to the way into its middle, beside their area: the
middle of a square of side s warms under even heat by 0.0737 s^2 q / k, that of a circle
of its width by s^2 q / 16 k (Timoshenko and Goodier's torsion of a square bar, from
memory): 1.18 times, where its area is 1.27 times."""


FAR_ENDS = 0.16
"""How fast the ends of a long body fall out of its middle's sight. Fitted to solves in
space of ovals and bars up to 2.7 times as long as wide (`benchmarks/cold_pebble.py`)."""


class StandIn(NamedTuple):
    """A turned body, metres.

    `skin` is how much more skin beside its flat faces the real piece has to its volume
    than the turned body, `times` how many turned bodies hold what it holds.
    """

    outline: Profile
    skin: float
    times: float


def stand_in(shape: Shape, ml: float) -> StandIn:
    """Give the turned body that freezes like a shape, of so many ml in all.

    Heights are kept. A ring keeps its hole; what is round stands for itself. Ovals,
    eggs, bars and logs are met within 4 % (see `benchmarks/cold_pebble.py`).
    """
    outline, times = turned_body(shape, ml), 1.0
    if not closed(outline):
        seen = turned([(at / 1000, _seen_m2(shape, at)) for at, _ in profile(shape)])
        times = volume(turned_body(shape, volume_up_to_ml(shape))) / volume(seen)
        outline = _stretched(seen, ml / 1e6 / times)
    flat = (opening_mm2(shape) + section_mm2(shape, 0.0)) / 1e6
    whole = area_cm2(shape, "all round") / 1e4 * (1 - _lost_ends(shape))
    skin = (whole - flat) / (_sides(outline) * times)
    return StandIn(outline, skin, times)


def turned_body(shape: Shape, ml: float) -> Profile:
    """Turn a shape into circles of the same areas, in metres, holding so many ml.

    A ring keeps its hole.
    """
    if hole_across_mm(shape, 0.0):
        return _stretched(_ring(shape), ml / 1e6)
    levels = [(at / 1000, mm2 / 1e6) for at, mm2 in profile(shape)]
    return turned(levels, holding=ml / 1e6)


def _sides(outline: Profile) -> float:
    """Skin of a turned body beside its flat ends [m2]."""
    if closed(outline):
        level = [b[0] ** 2 - a[0] ** 2 for a, b in pairwise(outline) if a[1] == b[1]]
        return area(outline) - math.pi * sum(abs(each) for each in level)
    ends = sum(
        b[0] ** 2 if a[0] == 0 else a[0] ** 2
        for a, b in (outline[:2], outline[-2:])
        if a[1] == b[1]
    )
    return area(outline) - math.pi * ends


def _lost_ends(shape: Shape) -> float:
    """What part of a long body's skin its middle does not feel: that of far ends."""
    levels = [across_mm(shape, at) for at, _ in profile(shape)]
    long, wide = max(levels, key=min)
    a, b, c = max(long, wide), min(long, wide), height_mm(shape)
    far = FAR_ENDS * (a / b - 1) ** 2
    return (1 / a) / (1 / a + 1 / b + 1 / c) * far / (1 + far)


def _seen_m2(shape: Shape, at_mm: float) -> float:
    """Area of the circle whose middle is as well wrapped as the section's [m2].

    Under even heat the middle of an ellipse of half axes a and b is like that of a
    circle of radius^2 2 a^2 b^2 / (a^2 + b^2): exact for ellipses and endless bars.
    """
    long, wide = across_mm(shape, at_mm)
    if min(long, wide) <= 0:
        return 0.0
    a, b = long / 2000, wide / 2000
    square = 2 * a * a * b * b / (a * a + b * b)
    evenness = 2 * a * b / (a * a + b * b)
    filled = section_mm2(shape, at_mm) / 1e6 / (math.pi * a * b)
    return math.pi * square * (1 + CORNERED * (filled - 1) * evenness)


def _ring(shape: Shape) -> Profile:
    """Once round the section of a ring: up its outer side, back down its hole."""
    heights = [at for at, _ in profile(shape)]
    outer = [(across_mm(shape, at)[0] / 2000, at / 1000) for at in heights]
    hole = [(hole_across_mm(shape, at) / 2000, at / 1000) for at in heights]
    around = [outer[0], *outer[1:], *reversed(hole)]
    return checked([*around, around[0]])


def _stretched(outline: Profile, holding: float) -> Profile:
    share = math.sqrt(holding / volume(outline))
    return tuple((share * r, z) for r, z in outline)
