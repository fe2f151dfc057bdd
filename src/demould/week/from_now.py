"""I start now: when can I plate, in how many visits, and what does each leave behind."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta

from demould.mise.folder import Folder
from demould.mise.kitchen import Kitchen
from demould.mise.order import Order
from demould.plan.answer.schedule import Planned, Schedule
from demould.plan.kitchen.clock import moment_at
from demould.plan.kitchen.from_kitchen import Laid, lay_out
from demould.plan.kitchen.lines import OPEN
from demould.plan.kitchen.parts import Part, ToMake
from demould.plan.kitchen.soon import as_soon_as
from demould.plan.problem.steps import Window
from demould.plan.quick.limit import Limit
from demould.plan.quick.look import first_look
from demould.plan.solve.search import solve
from demould.plan.solve.wish import Wish
from demould.week.making import Making
from demould.week.orders import makings_of, wanted, with_order

PLAN_S = 3.0
SOONEST_FIRST: tuple[Wish, ...] = ("tardiness", "sessions", "tidy")
LOOK_AHEAD = timedelta(days=14)
MIDNIGHT = time(23, 59)


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """What is left when a visit is over, and until when it needs nobody.

    `part` is the step it stands in, or the last one done where it is only kept.
    """

    part: Part
    until: datetime
    kept: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Visit:
    """One stretch of work: from the first hands to the last, and what it leaves."""

    start: datetime
    end: datetime
    hands_min: int
    leaves: tuple[Left, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Soonest:
    """The earliest plate, and the visits on the way; None where there is no plan.

    `ready` is when what thaws is ready, `over` the end of the last hands. `proven`
    says that nothing sooner is possible.
    """

    laid: Laid
    over: datetime | None
    ready: datetime | None
    proven: bool
    visits: tuple[Visit, ...]
    entries: tuple[Planned, ...] = ()
    limits: tuple[Limit, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FromNow:
    """By the kitchen's own hours, and with somebody there until midnight."""

    making: Making
    hours: Soonest
    evening: Soonest


def from_now(folder: Folder, order: Order, now: datetime) -> FromNow:
    """Plan one dessert alone, from `now` (aware) and as soon as can be."""
    alone = replace(folder, orders=())
    asked = with_order(alone, replace(order, due=now + LOOK_AHEAD))
    (making,) = makings_of(asked, now)
    makes = wanted(asked, (making,), now)
    late = _until_midnight(asked.kitchen)
    return FromNow(
        making=making,
        hours=soonest(asked.kitchen, makes, now),
        evening=soonest(late, makes, now),
    )


def _until_midnight(kitchen: Kitchen) -> Kitchen:
    openings = tuple(replace(one, closes=MIDNIGHT) for one in kitchen.openings)
    return replace(kitchen, openings=openings)


def soonest(kitchen: Kitchen, makes: Sequence[ToMake], now: datetime) -> Soonest:
    """Plan what is to be made so that its last hands are over as soon as can be."""
    laid = as_soon_as(lay_out(kitchen, makes, now), now)
    limits = first_look(laid.problem)
    found = Schedule(problem=laid.problem.id, status="infeasible")
    if not limits:
        found = solve(laid.problem, seconds=PLAN_S, wishes=SOONEST_FIRST)
    if not found.steps:
        return Soonest(
            laid=laid, over=None, ready=None, proven=False, visits=(), limits=limits
        )
    ends = {place.id: place.end for place in found.steps}
    waits = [ends[name] for name, part in laid.parts.items() if _of_piece_waits(part)]
    over = max(ends.values())
    return Soonest(
        laid=laid,
        over=moment_at(laid.origin, over),
        ready=moment_at(laid.origin, max(waits)) if waits else None,
        proven=found.objective.tardiness <= found.bound.get("tardiness", -1),
        visits=tuple(_visits(laid, found)),
        entries=found.steps,
    )


def _of_piece_waits(part: Part) -> bool:
    return part.component is None and part.stands


def _visits(laid: Laid, found: Schedule) -> Iterator[Visit]:
    places = {place.id: place for place in found.steps}
    for window in laid.problem.calendars[OPEN]:
        hands = [
            places[name]
            for name, part in laid.parts.items()
            if not part.stands and _inside(window, places[name])
        ]
        ends = [
            places[name].end
            for name, part in laid.parts.items()
            if part.step.roads and window.open < places[name].end <= window.close
        ]
        if hands:
            over = max([*(place.end for place in hands), *ends])
            yield Visit(
                start=moment_at(laid.origin, min(place.start for place in hands)),
                end=moment_at(laid.origin, over),
                hands_min=sum(
                    (one.end - one.start) * max(1, len(one.who)) for one in hands
                ),
                leaves=tuple(_leaves(laid, places, over)),
            )


def _inside(window: Window, place: Planned) -> bool:
    return window.open <= place.start and place.end <= window.close


def _leaves(laid: Laid, places: Mapping[str, Planned], over: int) -> Iterator[Left]:
    """Walk what stands, then what is only kept until its next step."""
    for key, chain in _chains(laid).items():
        standing = [
            name
            for name in chain
            if laid.parts[name].stands and places[name].start <= over < places[name].end
        ]
        for name in standing:
            until = moment_at(laid.origin, places[name].end)
            yield Left(part=laid.parts[name], until=until)
        before = [name for name in chain if places[name].end <= over]
        needing = [name for name in laid.parts if _needs(laid.parts[name], key)]
        after = [
            places[name].start
            for name in (*chain, *needing)
            if places[name].start > over
        ]
        if before and after and not standing:
            last = max(before, key=lambda name: places[name].end)
            until = moment_at(laid.origin, min(after))
            yield Left(part=laid.parts[last], until=until, kept=True)


def _needs(part: Part, key: tuple[str, str]) -> bool:
    """Whether a step of the pieces needs the component of a chain."""
    order, component = key
    return (
        bool(component)
        and part.make.order.key == order
        and part.component is None
        and not part.stands
        and any(need.component == component for need in part.step.needs)
    )


def _chains(laid: Laid) -> Mapping[tuple[str, str], list[str]]:
    """Give the steps of each component, and of the pieces, as they go together."""
    chains: dict[tuple[str, str], list[str]] = {}
    for name, part in laid.parts.items():
        key = part.component.key if part.component else ""
        chains.setdefault((part.make.order.key, key), []).append(name)
    return chains
