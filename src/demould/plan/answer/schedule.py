"""When, and by whom: the answer, ``demould-plan/1``."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from demould.plan.problem.steps import (
    due_order,
    orders_of,
    over,
    roads,
    strictest_due,
)

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from demould.plan.problem.steps import At, Fact, Problem, Road, Step

SCHEDULE_SCHEMA = "demould-plan/1"

Status = Literal["optimal", "feasible", "infeasible", "unknown"]
Kind = Literal["order", "resource", "lag", "calendar", "due"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """A step in its place [min]; ``took`` names its road, ``who`` the people.

    ``segments`` are the sittings of a step that is interrupted; none: it is not.
    """

    id: str
    start: int
    end: int
    took: str | None = None
    who: tuple[str, ...] = ()
    segments: tuple[tuple[int, int], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Objective:
    """What a plan costs, each the less the better.

    ``tardiness`` [min] adds up how late each late order is. ``margins_missed`` [min]
    is spare time that was asked for and is not there. ``sessions`` counts calendar
    windows somebody works in, ``overtime`` the attended minutes in those marked so.
    ``freshness`` adds up ``fresh`` times the minutes from start to due time.
    """

    late_orders: int = 0
    tardiness: int = 0
    margins_missed: int = 0
    sessions: int = 0
    overtime: int = 0
    freshness: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """One of the things that can not all be kept, worded for the cook."""

    kind: Kind
    id: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Relaxation:
    """A change that would make room, and its operations as the schema writes them.

    ``problem_after`` is the problem with them applied, ``plan_after`` a judged plan of
    it: whoever doubts the change can check it.
    """

    text: str
    changes: tuple[Mapping[str, object], ...]
    problem_after: Problem | None = None
    plan_after: Schedule | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Explain:
    """Why there is no plan: one sentence, what meets, and what would make room."""

    text: str
    conflict: tuple[Conflict, ...] = ()
    relaxations: tuple[Relaxation, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Schedule:
    """A plan for a problem, or that there is none.

    ``bound`` has, by the names in `Objective`, what no plan can fall below, given
    that the wishes before it are met as well as they are here. ``moved`` names the open
    steps that begin at another minute, or go by another road, than was agreed.
    """

    problem: str
    status: Status
    steps: tuple[Planned, ...] = ()
    objective: Objective = Objective()
    bound: Mapping[str, int] = field(default_factory=dict)
    explain: Explain | None = None
    moved: tuple[str, ...] = ()


def road_taken(step: Step, planned: Planned) -> Road | None:
    """Give the road the plan takes for the step, None where it names none it has."""
    for road in roads(step):
        if not step.either or road.name == planned.took:
            return road
    return None


def attended_parts(step: Step, place: Planned) -> tuple[tuple[int, int], ...]:
    """Give the stretches ``[from, to)`` [min] in which somebody is at the step."""
    start, end = place.start, place.end
    parts: tuple[tuple[int, int], ...] = ()
    if step.attended == "all":
        parts = place.segments or ((start, end),)
    if step.attended == "ends":
        parts = ((start, start + step.attend_start), (end - step.attend_end, end))
    return tuple((begin, over) for begin, over in parts if begin < over)


def moved_from(problem: Problem, planned: Iterable[Planned]) -> tuple[str, ...]:
    """Name the open steps that are not where the agreed plan has them."""
    return tuple(
        place.id
        for place in planned
        if place.id in problem.previous
        and place.id not in problem.done
        and _moved(problem.previous[place.id], place)
    )


def _moved(agreed: Fact, place: Planned) -> bool:
    road = agreed.took is not None and agreed.took != place.took
    return road or agreed.start != place.start


def objective_of(problem: Problem, planned: Iterable[Planned]) -> Objective:
    """Work out what a whole plan costs, from its minutes alone."""
    done = {place.id: place for place in planned}
    late = _lateness(problem, done)
    worked = tuple(_worked(problem, done))
    overtime = {
        (name, window.open)
        for name, windows in problem.calendars.items()
        for window in windows
        if window.overtime
    }
    return Objective(
        late_orders=len(late),
        tardiness=sum(late.values()),
        margins_missed=sum(
            max(0, step.margin - spare(problem, step, done))
            for step in problem.steps
            if step.margin and not over(problem, step.id, "end")
        ),
        sessions=len({session for session, _ in worked}),
        overtime=sum(length for session, length in worked if session in overtime),
        freshness=sum(
            step.fresh * ((strictest_due(problem, step) or 0) - done[step.id].start)
            for step in problem.steps
        ),
    )


def spare(problem: Problem, step: Step, done: Mapping[str, Planned]) -> int:
    """Give the spare minutes after a step, never less than 0.

    They run from its first possible end (its start and the shortest it can take) to
    the first moment something that waits for it would have to move: the lags that
    leave its end, and its due time.
    """
    road = road_taken(step, done[step.id])
    quickest = (
        done[step.id].end if road is None else (done[step.id].start + road.duration.min)
    )
    limits = [problem.horizon]
    limits += [
        _minute(problem, done, lag.to, lag.to_at) - lag.min
        for lag in problem.lags
        if lag.from_ == step.id and lag.from_at == "end" and lag.min is not None
    ]
    limits += [order.due for order in orders_of(problem, step)]
    if step.latest_end is not None:
        limits.append(step.latest_end)
    return max(0, min(limits) - quickest)


def _lateness(problem: Problem, done: Mapping[str, Planned]) -> dict[str, int]:
    """Give the minutes each late order with a soft due time is late."""
    late = {}
    for order in problem.orders:
        ends = [done[s.id].end for s in problem.steps if order.id in s.order]
        if order.soft_due and max(ends, default=order.due) > order.due:
            late[order.id] = max(ends) - order.due
    return late


def _worked(
    problem: Problem, done: Mapping[str, Planned]
) -> Iterator[tuple[tuple[str, int], int]]:
    """Give the session and the length [min] of every attended part."""
    for step in problem.steps:
        if step.calendar is None:
            continue
        place = done[step.id]
        for begin, until in attended_parts(step, place):
            for window in problem.calendars[step.calendar]:
                inside = min(until, window.close) - max(begin, window.open)
                if inside > 0:
                    yield (step.calendar, window.open), inside


def _minute(problem: Problem, done: Mapping[str, Planned], name: str, at: At) -> int:
    order = due_order(name)
    if order is not None:
        return next(known.due for known in problem.orders if known.id == order)
    return done[name].start if at == "start" else done[name].end
