"""What in a problem can not be meant, before anybody plans it."""

from __future__ import annotations

from collections import Counter
from datetime import datetime
from itertools import pairwise
from typing import TYPE_CHECKING
from zoneinfo import available_timezones

from demould.plan.problem.fact_faults import change_faults, fact_faults
from demould.plan.problem.steps import DUE, due_order, roads

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from demould.plan.problem.steps import Problem, Road, Step

LONGEST_MIN = 1_051_200
"""Two years: nobody plans a kitchen further ahead."""


def problem_faults(problem: Problem) -> list[str]:
    """Say what in the problem can not be meant, one sentence a fault, in its order."""
    return [
        *_clock_faults(problem),
        *_twice("step", (step.id for step in problem.steps)),
        *_twice("order", (order.id for order in problem.orders)),
        *_twice("resource", (resource.name for resource in problem.resources)),
        *_twice("person", (person.name for person in problem.people)),
        *_calendar_faults(problem),
        *_resource_faults(problem),
        *(fault for step in problem.steps for fault in _step_faults(problem, step)),
        *_moment_faults(problem),
        *change_faults(problem),
        *fact_faults(problem),
    ]


def _clock_faults(problem: Problem) -> Iterator[str]:
    try:
        midnight = datetime.fromisoformat(problem.origin)
    except ValueError:
        yield (
            f"origin {problem.origin!r} is no date and time; write the local midnight"
            " all minutes are counted from, as 2026-03-02T00:00"
        )
    else:
        if midnight.tzinfo is not None:
            yield (
                f"origin {problem.origin!r} has an offset in it; write the local time"
                " and name the place under 'zone'"
            )
    if problem.zone is not None and problem.zone not in available_timezones():
        yield f"no zone is called {problem.zone!r}; write one as Europe/Rome"
    if problem.horizon < 0:
        yield f"the horizon of {problem.horizon} min is over before it begins"
    if problem.horizon > LONGEST_MIN:
        yield (
            f"the horizon of {problem.horizon} min is more than two years; plan at most"
            f" {LONGEST_MIN} min together"
        )


def _twice(kind: str, names: Iterable[str]) -> Iterator[str]:
    for name, times in Counter(names).items():
        if times > 1:
            yield f"{kind} {name!r} is there {times} times; each needs a name of its own"


def _calendar_faults(problem: Problem) -> Iterator[str]:
    for name, windows in problem.calendars.items():
        for window in windows:
            if window.close <= window.open:
                yield (
                    f"calendar {name!r}: the window from {window.open} to"
                    f" {window.close} must close after it opens"
                )
        for before, after in pairwise(windows):
            if after.open < before.close:
                yield (
                    f"calendar {name!r}: the window that opens at {after.open} must"
                    f" come after the one that closes at {before.close}"
                )
    for person in problem.people:
        if person.calendar is not None and person.calendar not in problem.calendars:
            yield f"person {person.name!r}: no calendar is called {person.calendar!r}"


def _resource_faults(problem: Problem) -> Iterator[str]:
    for resource in problem.resources:
        stretches = sorted(resource.profile, key=lambda other: other.start)
        if resource.capacity < 0 or any(other.capacity < 0 for other in stretches):
            yield f"resource {resource.name!r}: there can not be less than 0 of it"
        if any(other.end <= other.start for other in stretches):
            yield f"resource {resource.name!r}: each stretch must end after it starts"
        if any(b.start < a.end for a, b in pairwise(stretches)):
            yield f"resource {resource.name!r}: two stretches of its profile overlap"


def _step_faults(problem: Problem, step: Step) -> Iterator[str]:
    where = f"step {step.id!r}"
    if due_order(step.id) is not None:
        yield f"{where}: a step's id may not begin with {DUE!r}"
    if (step.duration is None) == (not step.either):
        yield f"{where}: it needs a duration, or roads under 'either', and not both"
    yield from _twice(f"{where}: road", (road.name for road in step.either))
    known = {order.id for order in problem.orders}
    for order in step.order:
        if order not in known:
            yield f"{where}: no order is called {order!r}"
    if step.calendar is not None and step.calendar not in problem.calendars:
        yield f"{where}: no calendar is called {step.calendar!r}"
    if step.fresh and not step.order:
        yield f"{where}: 'fresh' counts back from a due time, so it needs an order"
    yield from _amount_faults(problem, step, where)
    yield from _attendance_faults(problem, step, where)


def _ways(step: Step) -> tuple[Step | Road, ...]:
    return (step, *step.either)


def _amount_faults(problem: Problem, step: Step, where: str) -> Iterator[str]:
    stocked = {resource.name for resource in problem.resources}
    used = {name for road in _ways(step) for name in road.uses}
    attending = {name for road in _ways(step) for name in road.attend_uses}
    for name in sorted((used | attending) - stocked):
        yield f"{where}: no resource is called {name!r}"
    for name in sorted(set(step.clean) - used):
        yield f"{where}: {name!r} is cleaned but not used"
    numbers = [step.attend_start, step.attend_end, step.fresh, step.margin]
    numbers += step.clean.values()
    for road in _ways(step):
        numbers += [*road.uses.values(), *road.attend_uses.values(), road.hands or 0]
    if min(numbers) < 0:
        yield f"{where}: {min(numbers)} is less than 0"


def _attendance_faults(problem: Problem, step: Step, where: str) -> Iterator[str]:
    asked = [road.hands for road in _ways(step) if road.hands is not None]
    if any(asked) and not problem.people:
        yield f"{where}: it needs hands, but no people are named"
    if step.attended == "none" and (any(asked) or step.skill is not None):
        yield f"{where}: it needs hands or a skill, but nobody attends it"
    if step.attended == "none" and any(road.attend_uses for road in _ways(step)):
        yield f"{where}: it has 'attend_uses', but nobody attends it"
    if step.attended == "ends":
        ends = step.attend_start + step.attend_end
        for road in roads(step):
            if road.duration.min < ends:
                yield (
                    f"{where}: its attended ends take {ends} min, but it may be over"
                    f" in {road.duration.min}"
                )
    if step.interruptible and (step.attended != "all" or step.calendar is None):
        yield (
            f"{where}: it is interrupted where a window closes, so it must be attended"
            " all the time and have a calendar"
        )


def _moment_faults(problem: Problem) -> Iterator[str]:
    known = {step.id for step in problem.steps}
    known |= {f"{DUE}{order.id}" for order in problem.orders}
    for lag in problem.lags:
        for name in (lag.from_, lag.to):
            if name not in known:
                yield (
                    f"lag from {lag.from_!r} to {lag.to!r}: no step is called {name!r}"
                )
        if lag.min is not None and lag.max is not None and lag.max < lag.min:
            yield (
                f"lag from {lag.from_!r} to {lag.to!r}: at least {lag.min} and at most"
                f" {lag.max} min can never be"
            )
    stocked = {resource.name for resource in problem.resources}
    for hold in problem.holds:
        where = f"hold of {hold.resource!r} from {hold.from_!r} to {hold.to!r}"
        for name in (hold.from_, hold.to):
            if name not in known:
                yield f"{where}: no step is called {name!r}"
        if hold.resource not in stocked:
            yield f"{where}: no resource is called {hold.resource!r}"
        if hold.amount < 0:
            yield f"{where}: {hold.amount} is less than 0"
