"""Each component's own factor for so many pieces, and what it makes."""

import math
from dataclasses import dataclass, replace
from typing import Literal, assert_never

from demould.amounts.counts.demand import Demand, demand
from demould.amounts.counts.losses import usable
from demould.amounts.counts.need import Ask, ask_for, need, pieces_at, whips_for
from demould.amounts.counts.rounding import (
    NEWS_MM,
    SPECK,
    short_at_rim_mm,
    up_to_thousandths,
    whole_pieces,
)
from demould.amounts.finish.spray import in_steps
from demould.amounts.layers.piece import fillers_of, in_the_mould, piece
from demould.amounts.shape.section import opening_mm2
from demould.amounts.shape.volume import mould_of
from demould.amounts.tools.rounds import Rounds
from demould.matter.composition import cook_to
from demould.matter.grams import Find, share
from demould.mise.component import Component, InSteps, Scaled, WholeBatches
from demould.mise.dessert import Dessert
from demould.mise.figure import Figure, worked
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words

Made = Literal["scaled", "as the jug needs", "in steps", "whole batches"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Make:
    """What to make of one component for so many pieces.

    Attributes
    ----------
    made
        How the amount is found; `whole batches` of factor 1 are "as it is".
    times
        How often its fixed loss counts: whips, or batches.
    written, weigh
        The batch as written, and what to weigh, before cooking. [g]
    factor
        What to multiply each line with. [x]
    cook_to
        What it weighs when it is cooked, None where nothing cooks away. [g]
    need
        What must be there after cooking, losses and all. [g]
    each
        What must be ready for a piece. [g]
    in_pieces, lost, left
        Where the cooked grams go: they add up to what was made. [g] `left` has the
        heel and the least of a dip, the glaze that ran off, off-cuts.
    """

    component: str
    name: str
    made: Made
    times: int
    written: Figure
    factor: Figure
    weigh: Figure
    cook_to: Figure | None
    need: Figure
    each: Figure
    in_pieces: Figure
    lost: Figure
    left: Figure


def makes(
    dessert: Dessert, kitchen: Kitchen, find: Find, rounds: Rounds
) -> tuple[Make, ...]:
    """Work out what to make of every component for all pieces of `rounds`.

    Raises
    ------
    ValueError
        If the piece cannot be made, or a formula gives nothing or loses everything.
    """
    one = piece(dessert, kitchen)
    pieces = sum(rounds.each)
    found = []
    for component in dessert.components:
        asked = demand(dessert, kitchen, one, component, pieces)
        if asked is not None:
            found.append(_make(dessert, kitchen, component, asked, find, rounds))
    return tuple(found)


def _make(
    dessert: Dessert,
    kitchen: Kitchen,
    component: Component,
    asked: Demand,
    find: Find,
    rounds: Rounds,
) -> Make:
    ask = ask_for(dessert, kitchen, component, asked, find, rounds)
    match component.making:
        case WholeBatches():
            return _in_batches(ask)
        case InSteps():
            return _up_to_a_step(ask)
        case Scaled():
            opening = opening_mm2(mould_of(kitchen, dessert.mould).shape)
            return _scaled(ask, opening)
        case _:
            assert_never(component.making)


def _scaled(ask: Ask, opening: float) -> Make:
    component = ask.component
    times = whips_for(component, ask.demand.each.value, ask.rounds, ask.mixer)
    needed = need(ask, times)
    strict = needed.value / ask.cooked.value
    if ask.demand.jug is not None:
        rule = "what the jug needs by what is written, not rounded"
        return _made(ask, "as the jug needs", times, needed, strict, rule)
    if _fits_as_written(ask, needed, opening):
        rule = "as written it fills them: less than 0.5 mm short at the rim"
        return _made(ask, "scaled", times, needed, 1.0, rule)
    factor = up_to_thousandths(strict)
    smaller = round(factor - 0.001, 3)
    if smaller > 0 and whole_pieces(pieces_at(ask, smaller, times)) >= ask.pieces:
        factor = smaller
    rule = "what is needed by what is written, up to 3 decimals"
    return _made(ask, "scaled", times, needed, factor, rule)


def _fits_as_written(ask: Ask, needed: Figure, opening: float) -> bool:
    if ask.component.key not in fillers_of(ask.dessert):
        return False
    short_g = (needed.value - ask.cooked.value) * (1 - share(ask.component.loss.share))
    short_ml = short_g / in_the_mould(ask.component).value
    return short_g > 0 and short_at_rim_mm(short_ml, opening) < NEWS_MM


def _up_to_a_step(ask: Ask) -> Make:
    needed = need(ask, 1)
    mixed = needed.value / ask.cooked.value * ask.written.value
    weigh = in_steps(ask.component, replace(needed, value=mixed))
    rule = "the next step up by what is written"
    return _made(ask, "in steps", 1, needed, weigh.value / ask.written.value, rule)


def _in_batches(ask: Ask) -> Make:
    if ask.cuts is not None:
        batches = math.ceil(ask.pieces / ask.cuts.value - SPECK)
    else:
        one = pieces_at(ask, 1.0, 1)
        if one <= 0:
            raise ValueError(f"one batch of {ask.component.name} is all loss")
        batches = math.ceil(ask.pieces / one - SPECK)
    needed = need(ask, batches)
    return _made(
        ask,
        "whole batches",
        batches,
        needed,
        float(batches),
        "whole batches as written",
    )


def _made(
    ask: Ask, made: Made, times: int, needed: Figure, factor: float, rule: str
) -> Make:
    component = ask.component
    parts = [needed, ask.cooked, *([ask.cuts] if ask.cuts else [])]
    by = worked(f"factor of {component.name}", factor, "x", rule, *parts)
    weigh = worked(
        f"{component.name} to weigh",
        ask.written.value * factor,
        "g",
        Words("{written:g} g x {factor:.4g}", written=ask.written.value, factor=factor),
        ask.written,
        by,
    )
    cooked = cook_to(component, weigh)
    in_pieces, lost, left = _where_it_goes(ask, times, cooked)
    return Make(
        component=component.key,
        name=component.name,
        made=made,
        times=times,
        written=ask.written,
        factor=by,
        weigh=weigh,
        cook_to=None if component.cooked_away is None else cooked,
        need=needed,
        each=ask.demand.each,
        in_pieces=in_pieces,
        lost=lost,
        left=left,
    )


def _where_it_goes(
    ask: Ask, times: int, cooked: Figure
) -> tuple[Figure, Figure, Figure]:
    component, asked = ask.component, ask.demand
    ready = usable(component, cooked, times)
    sticks = cooked.value - ready.value
    lost = worked(
        f"{component.name} lost",
        sticks + ask.pieces * asked.blown_past,
        "g",
        "what sticks, and what is blown past the pieces",
        cooked,
        ready,
    )
    stays = ask.pieces * asked.stays.value
    over = cooked.value - lost.value - stays
    in_pieces = worked(
        f"{component.name} in the pieces",
        stays + min(0.0, over),
        "g",
        Words("{n} pieces x {g:.2f} g", n=ask.pieces, g=asked.stays.value),
        asked.stays,
    )
    left = worked(
        f"{component.name} left over",
        max(0.0, over),
        "g",
        "made less lost less what is in the pieces",
        cooked,
        lost,
        in_pieces,
    )
    return in_pieces, lost, left
