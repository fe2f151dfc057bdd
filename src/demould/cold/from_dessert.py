"""A dessert as it lies in the cold: turned parts, their make-up, the mould around."""

import math
from collections.abc import Sequence
from dataclasses import replace

from demould.amounts.layers.place import Placed, placed
from demould.amounts.shape.area import area_cm2
from demould.amounts.shape.section import (
    across_mm,
    height_mm,
    hole_across_mm,
    opening_mm2,
    profile,
)
from demould.amounts.shape.volume import cavity, mould_of, volume_up_to_ml
from demould.cold.body.profile import (
    Profile,
    area,
    checked,
    raised,
    turned,
    volume,
)
from demould.cold.piece import FrozenPiece, Part, wall_of
from demould.larder.read import bands
from demould.matter.composition import composition
from demould.matter.density import air as air_in
from demould.matter.grams import Find, share
from demould.mise.component import Component
from demould.mise.dessert import Dessert, Rest, component_of
from demould.mise.kitchen import Kitchen
from demould.mise.shape import Shape

FROZEN_C = -18.0
FROM_THE_FRIDGE_C = 6.0
FILLED_AT = ("whipping temperature", "fold temperature")
UNSURE_K = 2.0


def as_filled(dessert: Dessert, kitchen: Kitchen, find: Find) -> FrozenPiece:
    """Give the piece as it goes to freeze: in its mould, open above, centre frozen.

    A ball or an egg filled through a hole, or joined from halves, has its mould all
    round.

    The filler has the temperature its kind is filled at, what was frozen before has
    that of a boxed piece. Parts are turned bodies: at each height a circle of the same
    area; `surface_share` says how much more skin the real piece has.
    """
    mould = mould_of(kitchen, dessert.mould)
    body, *inside = _parts(dessert, kitchen, find)
    return FrozenPiece(
        body=body,
        inside=tuple(inside),
        wall=wall_of(mould.material, mould.wall.value / 1000),
        open_faces=("top",) if opening_mm2(mould.shape) > 1 else (),
        surface_share=_skin(mould.shape, body.profile),
        start_unsure_k=UNSURE_K,
    )


def as_demoulded(dessert: Dessert, kitchen: Kitchen, find: Find) -> FrozenPiece:
    """Give the piece as it goes to thaw: bare, and at the freezer's temperature.

    Its finish is left out: a coat of under a millimetre hardly holds heat back.
    """
    filled = as_filled(dessert, kitchen, find)
    return replace(
        filled,
        body=replace(filled.body, start_c=FROZEN_C),
        inside=tuple(replace(part, start_c=FROZEN_C) for part in filled.inside),
        wall=None,
        open_faces=(),
    )


def _parts(dessert: Dessert, kitchen: Kitchen, find: Find) -> list[Part]:
    """Give the filler as the whole body, then what lies in it, the centre first."""
    mould = mould_of(kitchen, dessert.mould)
    filler = next(
        layer.component for layer in dessert.layers if isinstance(layer.fill, Rest)
    )
    body = component_of(dessert, filler)
    whole = turned_body(mould.shape, cavity(mould).value)
    inside = sorted(placed(dessert, kitchen), key=lambda part: part.flush)
    return [
        _part(body, whole, _filled_at(body), find, dessert.components),
        *(
            _part(
                component_of(dessert, part.layer.component),
                _raised(part),
                FROZEN_C,
                find,
                dessert.components,
            )
            for part in inside
        ),
    ]


def _part(
    component: Component,
    outline: Profile,
    start_c: float,
    find: Find,
    parts: Sequence[Component],
) -> Part:
    return Part(
        name=component.name,
        profile=outline,
        made_of=composition(component, find, parts),
        air=share(air_in(component.density, component.whipped))
        if component.whipped
        else 0.0,
        start_c=start_c,
    )


def _filled_at(component: Component) -> float:
    band = bands(component.kind)
    for what in FILLED_AT:
        if band and what in band.more:
            return band.more[what].value
    return FROM_THE_FRIDGE_C


def turned_body(shape: Shape, ml: float) -> Profile:
    """Turn a shape into circles of the same areas, in metres, holding so many ml.

    A ring keeps its hole.
    """
    if hole_across_mm(shape, 0.0):
        return _stretched(_ring(shape), ml / 1e6)
    levels = [(at / 1000, mm2 / 1e6) for at, mm2 in profile(shape)]
    return turned(levels, holding=ml / 1e6)


def _raised(part: Placed) -> Profile:
    """Turn a part, as it lies in the cavity."""
    outline = turned_body(part.shape, volume_up_to_ml(part.shape))
    if part.layer.turned_over:
        tall = height_mm(part.shape) / 1000
        outline = tuple((r, tall - z) for r, z in reversed(outline))
    return raised(outline, part.at / 1000)


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


def _skin(shape: Shape, outline: Profile) -> float:
    """How much more skin beside the flat face the real piece has than the turned one."""
    flat = opening_mm2(shape) / 1e6
    real = area_cm2(shape, "all round") / 1e4 - flat
    round_ = area(outline) - flat
    return max(1.0, real / round_)
