"""What one more would buy: a mould, a jug, a level in the cold, a pair of hands."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, time
from math import ceil

from demould.mise.folder import Folder
from demould.mise.kitchen import ColdPlace, Kitchen, Opening, Person
from demould.mise.words import Words
from demould.plan.kitchen.from_kitchen import Laid, lay_out
from demould.plan.kitchen.lines import hands_min
from demould.plan.kitchen.parts import ToMake
from demould.plan.quick.look import first_look
from demould.plan.solve.search import solve
from demould.plan.solve.wish import Wish
from demould.week.from_now import soonest
from demould.week.making import Making
from demould.week.orders import makings_of, wanted

PLAN_S = 1.5
FEWEST_VISITS: tuple[Wish, ...] = ("sessions", "tidy")
SOMEBODY = "one more"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """What a week costs in a kitchen.

    `work_min` are person-minutes, `lost_g` what sticks to bowls, `clock_min` from the
    first hands to the last of each order if nobody ever went home. `visits`
    is None, and so is `clock_min`, where there is no plan.
    """

    rounds: int
    whips: int
    lost_g: float
    work_min: int
    clock_min: int | None
    visits: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OneMore:
    """One thing more, and what the week costs with it."""

    thing: Words
    cost: Cost


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """The week as it is, and with each thing more; every plan is made anew."""

    now: Cost
    each: tuple[OneMore, ...]


def one_more(folder: Folder, now: datetime) -> Bought:
    """Plan the week anew with one more of each thing that may be short."""
    makings = makings_of(folder, now)
    return Bought(
        now=_cost(folder, now),
        each=tuple(
            OneMore(thing=thing, cost=_cost(replace(folder, kitchen=kitchen), now))
            for thing, kitchen in _kitchens(folder.kitchen, makings)
        ),
    )


def _kitchens(
    kitchen: Kitchen, makings: Sequence[Making]
) -> Iterator[tuple[Words, Kitchen]]:
    """Walk the kitchen with one more of what the orders use."""
    keys = {making.amounts.rounds.mould for making in makings}
    keys |= {
        turns.mould
        for making in makings
        for turns in making.amounts.own_rounds.values()
    }
    for mould in kitchen.moulds:
        if mould.key in keys:
            more = replace(mould, trays=mould.trays + 1)
            moulds = tuple(more if one is mould else one for one in kitchen.moulds)
            thing = Words("{mould} mould", mould=mould.key)
            yield thing, replace(kitchen, moulds=moulds)
    for place in kitchen.cold:
        if place.shelves is not None:
            cold = tuple(_deeper(one) if one is place else one for one in kitchen.cold)
            thing = Words("level in the {place}", place=place.key)
            yield thing, replace(kitchen, cold=cold)
    used = {making.amounts.jug.jug for making in makings if making.amounts.jug}
    for jug in kitchen.jugs:
        if jug in used:
            thing = Words("jug of {wide:g} mm", wide=jug.diameter.value)
            yield thing, replace(kitchen, jugs=(*kitchen.jugs, jug))
    hands = (*kitchen.people, Person(name=SOMEBODY))
    yield Words("pair of hands"), replace(kitchen, people=hands)


def _deeper(place: ColdPlace) -> ColdPlace:
    shelves = place.shelves
    assert shelves is not None
    return replace(place, shelves=replace(shelves, count=shelves.count + 1))


def _cost(folder: Folder, now: datetime) -> Cost:
    makings = makings_of(folder, now)
    makes = wanted(folder, makings, now)
    laid = lay_out(folder.kitchen, makes, now)
    visits = None
    if not first_look(laid.problem):
        found = solve(laid.problem, seconds=PLAN_S, wishes=FEWEST_VISITS)
        visits = found.objective.sessions if found.steps else None
    return Cost(
        rounds=sum(making.amounts.rounds.count for making in makings),
        whips=sum(whip.bowl.goes for one in makings for whip in one.amounts.whips),
        lost_g=sum(
            make.lost.value for making in makings for make in making.amounts.makes
        ),
        work_min=_work(laid),
        clock_min=_clock(folder.kitchen, makes, now),
        visits=visits,
    )


def _work(laid: Laid) -> int:
    """Add up the person-minutes of all hands, each step rounded up as it is planned."""
    return sum(
        ceil(hands_min(part.step.hands, part.pieces, part.make.order.pieces) - 1e-9)
        for part in laid.parts.values()
        if not part.stands and part.step.hands
    )


def _clock(kitchen: Kitchen, makes: Sequence[ToMake], now: datetime) -> int | None:
    """Add up each order's minutes alone, with somebody there day and night."""
    always = Opening(weekdays=tuple(range(7)), opens=time(), closes=time(23, 59))
    open_ = replace(kitchen, openings=(always,))
    spans = []
    for make in makes:
        here = replace(make, arrivals={})
        over = soonest(open_, (here,), now).over
        if over is None:
            return None
        spans.append(int((over - now).total_seconds() // 60))
    return sum(spans)
