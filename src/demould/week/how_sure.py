"""How sure is Saturday: what the plan's minutes and pieces may be instead."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from demould.matter.grams import share
from demould.mise.figure import Assumed, Figure
from demould.mise.kitchen import Kitchen
from demould.plan.kitchen.parts import Part
from demould.plan.problem.steps import due_order
from demould.plan.running.bend import Bends
from demould.plan.running.sampled import Breaks, Spread
from demould.week.chilling import THAW, Chilling, InPlace
from demould.week.sections import Week
from demould.week.timing import Timing

HANDS = Figure(
    name="working minutes, as a share of those written",
    value=1.0,
    unit="times",
    origin=Assumed(low=0.9, high=1.25, source="habit: seldom quicker, often slower"),
)
FREEZES = Figure(
    name="freezing of a part on its own, as a share of what is written",
    value=0.85,
    unit="times",
    origin=Assumed(low=0.6, high=1.15, source="habit: written with the long end"),
)
"""How far a minute may be from the card where nobody has measured it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Odds:
    """A plan ready to be worked off, with what may come out otherwise."""

    bends: Bends
    spreads: tuple[Spread, ...]
    breaks: tuple[Breaks, ...]


def odds_of(week: Week) -> Odds:
    """Give what of a week's plan may come out otherwise; the plan must stand.

    Hands take longer or shorter; what freezes or thaws stays for as long as is written,
    and longer where the estimate's own luck asks for it; pieces break. What has to be
    delivered comes on its day.
    """
    timing = week.timing
    problem = timing.laid.problem
    places = {place.id: place for place in timing.schedule.steps}
    return Odds(
        bends=Bends(problem, places),
        spreads=tuple(_spreads(timing, week.chilling)),
        breaks=tuple(
            Breaks(
                order=making.order.key,
                made=making.amounts.pieces,
                needed=making.order.pieces,
                **_breakage(week.kitchen),
            )
            for making in week.makings
        ),
    )


def _breakage(kitchen: Kitchen) -> dict[str, float]:
    likely = share(kitchen.breakage)
    match kitchen.breakage.origin:
        case Assumed(low=low, high=high):
            return {"low": low / 100, "likely": likely, "high": high / 100}
    return {"low": likely, "likely": likely, "high": likely}


def _spreads(timing: Timing, chilling: Mapping[str, Chilling]) -> Iterator[Spread]:
    served = {
        lag.from_
        for lag in timing.laid.problem.lags
        if due_order(lag.to) is not None and lag.max == 0
    }
    for place in timing.schedule.steps:
        part = timing.laid.parts[place.id]
        if part.stands:
            yield from _wait(place.id, part, place.took, chilling)
        elif place.id not in served:
            minutes = place.end - place.start
            yield _of(place.id, minutes, HANDS, 0.0)


def _wait(
    name: str, part: Part, took: str | None, chilling: Mapping[str, Chilling]
) -> Iterator[Spread]:
    """What freezes or thaws is left in for as long as is written, or longer."""
    step = part.step
    where = took or step.place
    roads = [road for road in step.roads if road.place == where]
    least = (
        roads[0].least.value if roads else step.stand.least.value if step.stand else 0
    )
    known = chilling.get(part.make.dessert.key)
    if part.component is None and known is not None and _by_estimate(part):
        estimate = next((one for one in _places(part, known) if _is(one, where)), None)
        if estimate is not None and estimate.wait.hours is not None:
            hours = estimate.wait.hours
            low, likely, high = (
                max(least, 60 * value)
                for value in (hours.low, hours.likely, hours.high)
            )
            yield Spread(step=name, low=low, likely=likely, high=high)
    elif roads:
        yield _of(name, least, FREEZES, least)


def _by_estimate(part: Part) -> bool:
    return bool(part.step.roads) or part.step.key == THAW


def _places(part: Part, chilling: Chilling) -> tuple[InPlace, ...]:
    return chilling.freezing if part.step.roads else chilling.thawing


def _is(one: InPlace, where: str | None) -> bool:
    return one.place.key == where and one.how in ("", "open")


def _of(name: str, minutes: float, figure: Figure, least: float) -> Spread:
    origin = figure.origin
    assert isinstance(origin, Assumed)
    low, likely, high = (
        max(least, minutes * factor)
        for factor in (origin.low, figure.value, origin.high)
    )
    return Spread(step=name, low=low, likely=likely, high=high)
