"""A dessert as it lies in the cold: turned parts, their make-up, the mould around."""

from collections.abc import Sequence
from dataclasses import replace

from demould.amounts.layers.place import Placed, placed
from demould.amounts.shape.section import height_mm, opening_mm2
from demould.amounts.shape.volume import cavity, mould_of, volume_up_to_ml
from demould.cold.body.profile import Profile, raised
from demould.cold.piece import FrozenPiece, Part, wall_of
from demould.cold.stand_in import StandIn, stand_in, turned_body
from demould.larder.read import bands
from demould.matter.composition import composition
from demould.matter.density import air as air_in
from demould.matter.grams import Find, share
from demould.mise.component import Component
from demould.mise.dessert import Dessert, Rest, component_of
from demould.mise.kitchen import Kitchen

FROZEN_C = -18.0
FROM_THE_FRIDGE_C = 6.0
FILLED_AT = ("whipping temperature", "fold temperature")
UNSURE_K = 2.0


def as_filled(dessert: Dessert, kitchen: Kitchen, find: Find) -> FrozenPiece:
    """Give the piece as it goes to freeze: in its mould, open above, centre frozen.

    A ball or an egg filled through a hole, or joined from halves, has its mould all
    round.

    The filler has the temperature its kind is filled at, what was frozen before has
    that of a boxed piece. A turned body stands for what is not round (`stand_in`).
    """
    mould = mould_of(kitchen, dessert.mould)
    stands = stand_in(mould.shape, cavity(mould).value)
    body, *inside = _parts(dessert, kitchen, find, stands)
    return FrozenPiece(
        body=body,
        inside=tuple(inside),
        wall=wall_of(mould.material, mould.wall.value / 1000),
        open_faces=("top",) if opening_mm2(mould.shape) > 1 else (),
        surface_share=stands.skin,
        times=stands.times,
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


def _parts(
    dessert: Dessert, kitchen: Kitchen, find: Find, stands: StandIn
) -> list[Part]:
    """Give the filler as the whole body, then what lies in it, the centre first."""
    filler = next(
        layer.component for layer in dessert.layers if isinstance(layer.fill, Rest)
    )
    body = component_of(dessert, filler)
    inside = sorted(placed(dessert, kitchen), key=lambda part: part.flush)
    return [
        _part(body, stands.outline, _filled_at(body), find, dessert.components),
        *(
            _part(
                component_of(dessert, part.layer.component),
                _raised(part, stands.times),
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


def _raised(part: Placed, times: float) -> Profile:
    """Turn a part, as it lies in the cavity: the same share of a body that stands in."""
    outline = turned_body(part.shape, volume_up_to_ml(part.shape) / times)
    if part.layer.turned_over:
        tall = height_mm(part.shape) / 1000
        outline = tuple((r, tall - z) for r, z in reversed(outline))
    return raised(outline, part.at / 1000)
