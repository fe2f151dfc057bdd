"""How many pieces the batch as written gives, component by component."""

from dataclasses import dataclass

from demould.amounts.counts.demand import Demand, cuts_of, demand
from demould.amounts.counts.losses import usable
from demould.amounts.counts.rounding import filled_pieces, short_at_rim_mm, whole_pieces
from demould.amounts.layers.piece import Piece, fillers_of, piece
from demould.amounts.shape.section import opening_mm2
from demould.amounts.shape.volume import mould_of
from demould.amounts.tools.sheet import cuts_of_a_batch
from demould.matter.grams import Find, after_cooking, share
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.figure import Figure, worked
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Yield:
    """What one component as written gives.

    `exact` is pieces before rounding, `gives` after. `each` is grams that must be ready
    for a piece. `standing` is grams that only stand in the jug to the end. `remark` says what
    the number hangs on (the jug).
    """

    component: str
    name: str
    exact: Figure
    gives: Figure
    each: Figure
    remark: Words | None = None
    standing: Figure | None = None


def yields(dessert: Dessert, kitchen: Kitchen, find: Find) -> tuple[Yield, ...]:
    """Every component that a piece or its plate uses, in the dessert's order.

    A dip counts in the narrowest jug that takes the piece, topped up as it goes down.

    Raises
    ------
    ValueError
        If the piece itself cannot be; `does_it_fit` says why.
    """
    one = piece(dessert, kitchen)
    found = (
        _yield(dessert, kitchen, one, component, find)
        for component in dessert.components
    )
    return tuple(given for given in found if given is not None)


def _yield(
    dessert: Dessert, kitchen: Kitchen, one: Piece, component: Component, find: Find
) -> Yield | None:
    asked = demand(dessert, kitchen, one, component, 1)
    if asked is None:
        return None
    exact = exact_pieces(dessert, kitchen, component, asked, find)
    return Yield(
        component=component.key,
        name=component.name,
        exact=exact,
        gives=_gives(dessert, kitchen, component, exact),
        each=asked.each,
        remark=_remark(asked),
        standing=asked.standing,
    )


def exact_pieces(
    dessert: Dessert,
    kitchen: Kitchen,
    component: Component,
    asked: Demand,
    find: Find,
) -> Figure:
    """Pieces of the batch as written, not rounded [pieces]."""
    name = f"pieces of {component.name}, as written"
    cuts = cuts_of(dessert, component)
    if component.sheet is not None and cuts:
        of_a_batch = cuts_of_a_batch(component, component.sheet, cuts[0], find)
        rule = Words("cuts of a batch, {n} in a piece", n=len(cuts))
        value = of_a_batch.value / len(cuts)
        return worked(name, value, "pieces", rule, of_a_batch)
    times = _whips_as_written(dessert, kitchen, component, asked, find)
    ready = usable(component, after_cooking(component, find), times)
    standing = 0.0 if asked.standing is None else asked.standing.value
    parts = [ready, asked.each, *([asked.standing] if asked.standing else [])]
    value = max(0.0, ready.value - standing) / asked.each.value
    if _lost_a_whip(component):
        value = min(value, float(times * _cavities(dessert, kitchen)))
    return worked(name, value, "pieces", _rule(component, asked), *parts)


def _lost_a_whip(component: Component) -> bool:
    return component.loss.once_a == "whip" and component.loss.fixed is not None


def _cavities(dessert: Dessert, kitchen: Kitchen) -> int:
    return mould_of(kitchen, dessert.mould).at_once


def _whips_as_written(
    dessert: Dessert,
    kitchen: Kitchen,
    component: Component,
    asked: Demand,
    find: Find,
) -> int:
    """Whips that give most pieces: each costs its fixed grams and fills the moulds once."""
    if not _lost_a_whip(component):
        return 1
    cavities = _cavities(dessert, kitchen)
    cooked = after_cooking(component, find)
    times = 1
    while usable(component, cooked, times + 1).value / asked.each.value > (
        times * cavities
    ):
        times += 1
    return times


def _rule(component: Component, asked: Demand) -> Words:
    loss = component.loss
    lost = 100 * share(loss.share)
    each = asked.each.value
    if asked.standing is not None:
        return Words(
            "(batch less {lost:g} %) less {standing:.0f} g that stand in the jug,"
            " by {each:.2f} g a piece",
            lost=lost,
            standing=asked.standing.value,
            each=each,
        )
    if loss.fixed is not None:
        return Words(
            "(batch less {lost:g} %) less {fixed:g} g a {once}, by {each:.1f} g a piece",
            lost=lost,
            fixed=loss.fixed.value,
            once=loss.once_a,
            each=each,
        )
    if lost == 0:
        return Words("batch by {each:.1f} g a piece", each=each)
    return Words(
        "(batch less {lost:g} %), by {each:.1f} g a piece", lost=lost, each=each
    )


def _gives(
    dessert: Dessert, kitchen: Kitchen, component: Component, exact: Figure
) -> Figure:
    whole = whole_pieces(exact.value)
    rule = Words("rounded down")
    if component.key in fillers_of(dessert):
        filled, short = _to_the_rim(dessert, kitchen, exact.value)
        if filled > whole:
            whole = filled
            rule = Words(
                "the last one is {short:.2f} mm short at the rim: it fits", short=short
            )
    return worked(exact.name, whole, "pieces", rule, exact)


def _to_the_rim(dessert: Dessert, kitchen: Kitchen, exact: float) -> tuple[int, float]:
    opening = opening_mm2(mould_of(kitchen, dessert.mould).shape)
    parts = piece(dessert, kitchen).parts
    each_ml = next(part.volume.value for part in parts if part.how == "rest")
    short_ml = (whole_pieces(exact) + 1 - exact) * each_ml
    return (
        filled_pieces(exact, each_ml, opening),
        short_at_rim_mm(short_ml, opening),
    )


def _remark(asked: Demand) -> Words | None:
    if asked.jug is None:
        return None
    return Words("in the {wide:g} mm jug", wide=asked.jug.jug.diameter.value)
