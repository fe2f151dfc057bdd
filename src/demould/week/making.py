"""What an order or a number asks for: pieces, rounds, grams, the jug, the bowl."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from demould.amounts.counts.counts import Counts, counts
from demould.amounts.counts.demand import demand
from demould.amounts.counts.factors import Make, makes
from demould.amounts.counts.losses import to_make_g
from demould.amounts.counts.spares import make_for
from demould.amounts.finish.dip import InJug, best, in_jugs, meant_on_end
from demould.amounts.layers.piece import Piece, fillers_of, piece
from demould.amounts.shape.volume import mould_of
from demould.amounts.tools.bowl import InBowl, in_bowl
from demould.amounts.tools.rounds import Rounds, rounds, rounds_as_chosen
from demould.matter.grams import Find
from demould.mise.component import Component
from demould.mise.dessert import Dessert, FromMould, component_of
from demould.mise.figure import Figure, worked
from demould.mise.kitchen import Kitchen, Tool
from demould.mise.order import Frozen, Order
from demould.mise.words import Words

NO_SPARES = "no spares"
PROBE = "a probe piece"
AWAY = {
    PROBE: "one more for the probe",
    "a piece to taste": "one more to taste",
    "a piece to keep": "one more to keep",
}
"""Choices that take a piece away, over the spares."""
PIECE = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Whip:
    """One round of a whipped component in its bowl."""

    component: str
    round: int
    pieces: int
    bowl: InBowl


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounts:
    """One dessert for so many pieces, worked out.

    `made` is pieces, spares included; `own_rounds` are those of components with a
    mould of their own. `jugs` are all ways to dip, `jug` the one taken. `still` are the
    pieces of each component that are not frozen already; `rounds` fill only what is not.
    """

    dessert: Dessert
    made: Figure
    rounds: Rounds
    own_rounds: Mapping[str, Rounds]
    piece: Piece
    counts: Counts
    makes: tuple[Make, ...]
    jugs: tuple[InJug, ...]
    jug: InJug | None
    whips: tuple[Whip, ...]
    still: Mapping[str, int]

    @property
    def pieces(self) -> int:
        """Pieces made."""
        return int(self.made.value)


@dataclass(frozen=True, slots=True, kw_only=True)
class Making:
    """An order and its amounts.

    `banked` are grams of a component left over from before, which go in first.
    """

    order: Order
    amounts: Amounts
    banked: Mapping[str, float] = field(default_factory=dict)


def making_of(order: Order, dessert: Dessert, kitchen: Kitchen, find: Find) -> Making:
    """Work one order out, its variant already in the dessert; see `amounts_of`."""
    made = pieces_for(order, kitchen)
    return Making(
        order=order,
        amounts=amounts_of(
            dessert,
            kitchen,
            find,
            made,
            order.choices,
            order.frozen,
            served=order.pieces,
        ),
    )


def amounts_of(
    dessert: Dessert,
    kitchen: Kitchen,
    find: Find,
    made: Figure,
    choices: Iterable[str] = (),
    frozen: Iterable[Frozen] = (),
    *,
    served: int | None = None,
) -> Amounts:
    """Work a dessert out for so many pieces, by the cook's choices.

    What is frozen already is not made again; it is dipped or glazed with the others.
    What only goes beside the piece is made for as many as are `served`, where that is
    said: a spare has no sauce.

    Raises
    ------
    ValueError
        If the piece cannot be; the reader of the folder has said so before.
    """
    pieces, choices = int(made.value), tuple(choices)
    still = _still(dessert, pieces, served or pieces, tuple(frozen))
    mould = mould_of(kitchen, dessert.mould)
    turns = rounds_as_chosen(still[PIECE], mould, choices)
    jugs = in_jugs(dessert, kitchen, pieces)
    return Amounts(
        dessert=dessert,
        made=made,
        rounds=turns,
        own_rounds=dict(_own_rounds(dessert, kitchen, still)),
        piece=piece(dessert, kitchen),
        counts=counts(dessert, kitchen, find),
        makes=tuple(_makes(dessert, kitchen, find, choices, still)),
        jugs=jugs,
        jug=best(jugs, on_end=meant_on_end(dessert, kitchen)),
        whips=tuple(_whips(dessert, kitchen, turns)),
        still={key: count for key, count in still.items() if key != PIECE},
    )


def _still(
    dessert: Dessert, pieces: int, served: int, frozen: tuple[Frozen, ...]
) -> dict[str, int]:
    """Give how many of the piece, and of each component, are still to be made."""

    def in_freezer(key: str | None) -> int:
        return sum(one.pieces for one in frozen if one.component == key)

    filled = max(0, pieces - in_freezer(None))
    inside = {layer.component for layer in dessert.layers}
    outside = {finish.component for finish in dessert.finish}

    def wanted(key: str) -> int:
        if key in inside:
            return filled
        return pieces if key in outside else served

    return {PIECE: filled} | {
        one.key: max(0, wanted(one.key) - in_freezer(one.key))
        for one in dessert.components
    }


def _makes(
    dessert: Dessert,
    kitchen: Kitchen,
    find: Find,
    choices: tuple[str, ...],
    still: Mapping[str, int],
) -> Iterator[Make]:
    """Make each component for as many pieces as it is still needed for."""
    mould = mould_of(kitchen, dessert.mould)
    for count in sorted({*still.values()} - {0}, reverse=True):
        turns = rounds_as_chosen(count, mould, choices)
        for make in makes(dessert, kitchen, find, turns):
            if still[make.component] == count:
                yield make


def counted(dessert: Dessert, kitchen: Kitchen, find: Find, n: int | None) -> Amounts:
    """Count a dessert alone: for `n` pieces, else for as many as it gives as written."""
    if n is None:
        n = max(1, int(counts(dessert, kitchen, find).pieces.likely))
    asked = Figure(name="pieces asked for", value=n, unit="pieces")
    return amounts_of(dessert, kitchen, find, asked)


def pieces_for(order: Order, kitchen: Kitchen) -> Figure:
    """Give the pieces to make for an order: its spares, and what is taken away.

    The probe spoils one, one is tasted, one is kept back: each is made over the spares,
    so that enough come out whole as surely as without.
    """
    if NO_SPARES in order.choices:
        rule = "as many as are ordered, no spares chosen"
        made = worked("pieces to make", order.pieces, "pieces", rule)
    else:
        made = make_for(order.pieces, kitchen, order.spares)
    for choice, rule in AWAY.items():
        if choice in order.choices:
            made = worked("pieces to make", made.value + 1, "pieces", rule, made)
    return made


def _own_rounds(
    dessert: Dessert, kitchen: Kitchen, still: Mapping[str, int]
) -> list[tuple[str, Rounds]]:
    return [
        (
            layer.component,
            rounds(still[layer.component], mould_of(kitchen, layer.fill.mould)),
        )
        for layer in dessert.layers
        if isinstance(layer.fill, FromMould)
    ]


def _whips(dessert: Dessert, kitchen: Kitchen, turns: Rounds) -> list[Whip]:
    """Give every round of a whipped filler, where a mixer says what it can take."""
    found = []
    for key in fillers_of(dessert):
        component = component_of(dessert, key)
        bowl = _bowl_of(dessert, component, kitchen)
        if component.whipped is None or bowl is None:
            continue
        for number, pieces in enumerate(turns.each, start=1):
            mass = _round_mass(dessert, kitchen, component, pieces)
            found.append(
                Whip(
                    component=key,
                    round=number,
                    pieces=pieces,
                    bowl=in_bowl(mass, bowl, component.whipped),
                )
            )
    return found


def _bowl_of(dessert: Dessert, component: Component, kitchen: Kitchen) -> Tool | None:
    """Find the tool with a bowl and a whisk's least that the filler is whipped in."""
    named = {
        tool for step in (*component.method, *dessert.method) for tool in step.tools
    }
    return next(
        (
            tool
            for tool in kitchen.tools
            if tool.key in named and tool.bowl is not None and tool.fill is not None
        ),
        None,
    )


def _round_mass(
    dessert: Dessert, kitchen: Kitchen, component: Component, pieces: int
) -> Figure:
    asked = demand(dessert, kitchen, piece(dessert, kitchen), component, pieces)
    assert asked is not None
    parts = [asked.each, component.loss.share]
    if component.loss.fixed:
        parts.append(component.loss.fixed)
    return worked(
        f"{component.name}, a round of {pieces}",
        to_make_g(component, pieces * asked.each.value),
        "g",
        Words("{n} pieces and what is lost", n=pieces),
        *parts,
    )
