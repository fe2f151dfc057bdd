"""One plan for all orders: who does what when, and how late each thing may start."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from demould.mise.kitchen import Kitchen
from demould.plan.answer.schedule import Planned, Schedule
from demould.plan.judge.check import check
from demould.plan.judge.violation import Violation
from demould.plan.kitchen.clock import moment_at
from demould.plan.kitchen.from_kitchen import Laid, lay_out
from demould.plan.kitchen.parts import Part, ToMake
from demould.plan.quick.limit import Limit
from demould.plan.quick.look import first_look
from demould.plan.solve.search import latest_start, latest_starts, solve
from demould.plan.why.explain import explain

SOLVE_S = 6.0
LATEST_S = 4.0
LAST_BY_S = 0.5
WHY_S = 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One planned step on the clock of the kitchen."""

    id: str
    part: Part
    start: datetime
    end: datetime
    who: tuple[str, ...]
    took: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Timing:
    """The plan, judged.

    `latest` has the latest start that still works, for the steps a cook asks about;
    `last_by` that of the last round's freeze by each road it may take.
    `spare` the minutes each order can slip before one of them is missed. `broken` is
    what the judge found; a plan with any is never shown as one. `limits` are what was
    seen at once, without a search: with any of them there is no plan.
    """

    laid: Laid
    schedule: Schedule
    entries: tuple[Entry, ...]
    latest: Mapping[str, datetime]
    last_by: Mapping[tuple[str, str], datetime]
    spare: Mapping[str, int]
    broken: tuple[Violation, ...]
    limits: tuple[Limit, ...] = ()

    @property
    def stands(self) -> bool:
        """Whether there is a plan and it keeps every promise."""
        return bool(self.entries) and not self.broken


def timing_of(
    kitchen: Kitchen, orders: Iterable[ToMake], now: datetime, *, seed: int = 0
) -> Timing:
    """Plan all orders together from `now` (aware), and judge the plan."""
    orders = tuple(orders)
    laid = lay_out(kitchen, orders, now)
    limits = first_look(laid.problem)
    schedule = (
        Schedule(problem=laid.problem.id, status="infeasible")
        if limits
        else solve(laid.problem, seconds=SOLVE_S, seed=seed)
    )
    if not schedule.steps:
        laid, schedule = _otherwise(kitchen, orders, now, laid, schedule, seed)
    broken = check(laid.problem, schedule)
    if not schedule.steps:
        return Timing(
            laid=laid,
            schedule=schedule,
            entries=(),
            latest={},
            last_by={},
            spare={},
            broken=broken,
            limits=first_look(laid.problem),
        )
    asked = tuple(_asked_about(laid))
    latest = {
        name: minute
        for name, minute in latest_starts(laid.problem, asked, seconds=LATEST_S).items()
        if minute is not None
    }
    return Timing(
        laid=laid,
        schedule=schedule,
        entries=tuple(_entries(laid, schedule)),
        latest={name: moment_at(laid.origin, at) for name, at in latest.items()},
        last_by=dict(_last_by(laid)),
        spare=_spare(laid, schedule, latest),
        broken=broken,
    )


def _otherwise(
    kitchen: Kitchen,
    orders: tuple[ToMake, ...],
    now: datetime,
    laid: Laid,
    schedule: Schedule,
    seed: int,
) -> tuple[Laid, Schedule]:
    """Make nothing for two orders at once, or say what stands in the way."""
    apart = lay_out(kitchen, orders, now, share=False)
    if apart.problem != laid.problem and not first_look(apart.problem):
        found = solve(apart.problem, seconds=SOLVE_S, seed=seed)
        if found.steps:
            return apart, found
    why = explain(apart.problem, seconds=WHY_S)
    return apart, replace(schedule, explain=why)


def _last_by(laid: Laid) -> Iterator[tuple[tuple[str, str], datetime]]:
    """Walk the last round's freeze of each order with each road it may take."""
    last = {
        part.make.order.key: name
        for name, part in laid.parts.items()
        if part.component is None and part.step.roads
    }
    for name in last.values():
        step = next(one for one in laid.problem.steps if one.id == name)
        for road in step.either if len(step.either) > 1 else ():
            only = replace(step, either=(road,))
            steps = tuple(only if one is step else one for one in laid.problem.steps)
            at = latest_start(
                replace(laid.problem, steps=steps), name, seconds=LAST_BY_S
            )
            if at is not None:
                yield (name, road.name), moment_at(laid.origin, at)


def _asked_about(laid: Laid) -> Iterator[str]:
    """Walk the first hands of each component, and all hands on the piece's first round."""
    seen: set[tuple[str, str]] = set()
    for name, part in laid.parts.items():
        if part.stands or part.round > 1:
            continue
        if part.component is None:
            yield name
        elif (part.make.order.key, part.component.key) not in seen:
            seen.add((part.make.order.key, part.component.key))
            yield name


def _entries(laid: Laid, schedule: Schedule) -> list[Entry]:
    entries = [
        Entry(
            id=step.id,
            part=laid.parts[step.id],
            start=moment_at(laid.origin, step.start),
            end=moment_at(laid.origin, step.end),
            who=step.who,
            took=step.took,
        )
        for step in schedule.steps
    ]
    return sorted(entries, key=lambda entry: (entry.start, entry.end, entry.id))


def _spare(laid: Laid, schedule: Schedule, latest: Mapping[str, int]) -> dict[str, int]:
    planned: dict[str, Planned] = {step.id: step for step in schedule.steps}
    spare: dict[str, int] = {}
    for name, at in latest.items():
        if _served(laid, name):
            continue
        order = laid.parts[name].make.order.key
        minutes = at - planned[name].start
        spare[order] = min(spare.get(order, minutes), minutes)
    return spare


def _served(laid: Laid, name: str) -> bool:
    """Plating ends at the pass by its nature; it has no spare time to speak of."""
    part = laid.parts[name]
    return (
        part.make.order.ends == "plates"
        and part.component is None
        and part.step == part.make.dessert.method[-1]
    )
