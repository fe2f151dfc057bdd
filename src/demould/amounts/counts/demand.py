"""What of a component has to be ready: so much a piece, and so much that only stands there."""

from dataclasses import dataclass
from typing import assert_never

from demould.amounts.finish.dip import InJug, best, dip_of, in_jugs, meant_on_end
from demould.amounts.finish.glaze import poured
from demould.amounts.layers.piece import Part, Piece
from demould.matter.grams import share
from demould.mise.component import Component
from demould.mise.dessert import (
    Cut,
    Dessert,
    Dip,
    Finish,
    Glaze,
    Laid,
    OnPlate,
    Spray,
)
from demould.mise.figure import Figure, worked
from demould.mise.kitchen import Kitchen
from demould.mise.shape import Shape
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """What has to be ready of one component.

    `each` is grams a piece that must be there, what is poured or blown past it included;
    `stays` is grams a piece that stay in it, on it or beside it; `blown_past` grams a
    piece of spray that do not land. `standing` must be in the jug
    whatever the number, in grams. `jug` is the way to dip, where it is a dip.
    """

    component: str
    each: Figure
    stays: Figure
    blown_past: float = 0.0
    standing: Figure | None = None
    jug: InJug | None = None


def demand(
    dessert: Dessert, kitchen: Kitchen, one: Piece, component: Component, pieces: int
) -> Demand | None:
    """Work out the demand for a component, for about `pieces`; None if nothing uses it.

    The number matters for the choice of the dip jug only: a narrow one may run over.
    """
    ready, stays = _on_a_piece(dessert, one, component)
    beside = _beside_it(dessert, component)
    if not ready and not beside:
        return None
    jug = _jug(dessert, kitchen, component, pieces)
    return Demand(
        component=component.key,
        each=_together(f"{component.name}, ready for a piece", [*ready, *beside]),
        stays=_together(f"{component.name} in a piece", [*stays, *beside]),
        blown_past=_blown_past(dessert, one, component),
        standing=None if jug is None else _standing(component, jug),
        jug=jug,
    )


def _on_a_piece(
    dessert: Dessert, one: Piece, component: Component
) -> tuple[list[Figure], list[Figure]]:
    inside = len(one.parts) - len(dessert.finish)
    finishes = (*[None] * inside, *dessert.finish)
    ready, stays = [], []
    for part, finish in zip(one.parts, finishes, strict=True):
        if part.component == component.key:
            stays.append(part.grams)
            ready.append(_ready(part, finish))
    return ready, stays


def _ready(part: Part, finish: Finish | None) -> Figure:
    match finish:
        case Glaze():
            return poured(finish, part, 1).pour
        case Spray(lands=lands):
            return _loaded(part.grams, lands)
        case Dip() | Laid() | None:
            return part.grams
        case _:
            assert_never(finish)


def _loaded(grams: Figure, lands: Figure) -> Figure:
    rule = Words("{lands:g} % of it lands", lands=100 * share(lands))
    name = f"{grams.name}: loaded"
    return worked(name, grams.value / share(lands), "g", rule, grams, lands)


def _blown_past(dessert: Dessert, one: Piece, component: Component) -> float:
    lands = [
        share(finish.lands)
        for finish in dessert.finish
        if isinstance(finish, Spray) and finish.component == component.key
    ]
    grams = [
        part.grams.value
        for part in one.parts
        if part.component == component.key and part.how == "spray"
    ]
    return sum(g / part - g for g, part in zip(grams, lands, strict=True))


def _beside_it(dessert: Dessert, component: Component) -> list[Figure]:
    return [
        _for_a_piece(dessert, plate)
        for plate in dessert.plate
        if plate.component == component.key
    ]


def _for_a_piece(dessert: Dessert, plate: OnPlate) -> Figure:
    if dessert.portions is None:
        return plate.amount
    rule = "grams a portion x portions of a piece"
    value = plate.amount.value * dessert.portions.value
    return worked(plate.what, value, "g", rule, plate.amount, dessert.portions)


def _together(name: str, parts: list[Figure]) -> Figure:
    if len(parts) == 1:
        return parts[0]
    return worked(name, sum(part.value for part in parts), "g", "together", *parts)


def _jug(
    dessert: Dessert, kitchen: Kitchen, component: Component, pieces: int
) -> InJug | None:
    dip = dip_of(dessert)
    if dip is None or dip.component != component.key:
        return None
    ways = in_jugs(dessert, kitchen, pieces)
    return best(ways, on_end=meant_on_end(dessert, kitchen))


def _standing(component: Component, jug: InJug) -> Figure:
    return worked(
        f"{component.name} that must stand in the jug",
        jug.least.value + jug.heel.value,
        "g",
        Words(
            "{least:.0f} g for the last piece and {heel:g} g heel",
            least=jug.least.value,
            heel=jug.heel.value,
        ),
        jug.least,
        jug.heel,
    )


def cuts_of(dessert: Dessert, component: Component) -> tuple[Shape, ...]:
    """Shapes that one piece has of a component cut from a sheet."""
    return tuple(
        layer.fill.shape
        for layer in dessert.layers
        if layer.component == component.key and isinstance(layer.fill, Cut)
    )
