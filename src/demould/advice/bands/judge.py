"""A component against every band of its kind, worst first."""

from collections.abc import Iterator

from demould.advice.bands.airy import dense
from demould.advice.bands.change import Bound
from demould.advice.bands.finish import laid_on
from demould.advice.bands.judged import Judged
from demould.advice.bands.mix_ends import mix_ends
from demould.advice.bands.quantity import has_weight, quantity
from demould.advice.bands.set_by import set_by
from demould.advice.bands.shares import judged_share
from demould.advice.bands.soak import dry_sugar, soaked
from demould.advice.bands.sour import soured
from demould.advice.bands.temperatures import baked, temperatures
from demould.larder.fact import Band, Fact
from demould.larder.read import bands
from demould.matter.grams import Find
from demould.mise.component import Component
from demould.mise.dessert import Dessert


def judged(component: Component, dessert: Dessert, find: Find) -> tuple[Judged, ...]:
    """Everything of the component that has a band, worst first.

    A kind nobody knows has no bands of its own; what sets it is judged all the same.
    """
    band = bands(component.kind) if component.kind else None
    parts = dessert.components
    if not has_weight(component, find, parts):
        return ()
    bounds = tuple(_bounds(band)) if band else ()
    found = [
        *set_by(component, band, bounds, find, parts),
        *soured(component, find, parts),
        *soaked(component, find),
    ]
    if band is not None:
        found += [
            *(
                judged_share(component, bound, bounds, find, parts)
                for bound in bounds
                if bound[0].step >= 1
            ),
            *dense(component, band, find, parts),
            *dry_sugar(component, band),
            *baked(component, band),
            *laid_on(component, dessert, band),
            *temperatures(component, dessert, band),
            *mix_ends(component, band, find),
        ]
    return tuple(sorted(found, key=lambda one: -one.outside))


def out_of_band(dessert: Dessert, find: Find) -> tuple[Judged, ...]:
    """What is outside its band in the whole dessert, worst first."""
    found = (
        one
        for component in dessert.components
        for one in judged(component, dessert, find)
        if one.verdict != "inside"
    )
    return tuple(sorted(found, key=lambda one: -one.outside))


def _bounds(band: Band) -> Iterator[Bound]:
    """Every band that goes with grams."""
    facts: list[tuple[str, Fact | None]] = [
        (band.agent or "", band.dose),
        ("fat", band.fat),
        ("sugars", band.sugars),
        *band.more.items(),
    ]
    for name, fact in facts:
        what = quantity(name)
        if what is not None and fact is not None and fact.unit == "%":
            yield what, fact.low, fact.high
