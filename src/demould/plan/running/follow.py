"""What follows what in a plan: waits, and the same hands, moulds and machines again.

A plan that runs late is worked off in the order it was planned. What has to be over
before a moment is the waits of the problem, and for each pair of hands and each unit of
a resource whatever had it before (the chains of a partial order schedule: Policella,
Smith, Cesta and Oddi, Generating robust schedules through temporal flexibility, 2004;
quoted from memory).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import road_taken
from demould.plan.problem.steps import due_order

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from demould.plan.answer.schedule import Planned
    from demould.plan.problem.steps import At, Problem

Moment = tuple[str, "At"]


@dataclass(frozen=True, slots=True, kw_only=True)
class After:
    """`late` comes at least `wait` minutes after `early`."""

    early: Moment
    late: Moment
    wait: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Within:
    """`late` comes at most `most` minutes after `early`: a hold."""

    early: Moment
    late: Moment
    most: int


@dataclass(frozen=True, slots=True)
class _Use:
    """Some units of one thing, from a moment to another, with minutes to clean it."""

    begin: Moment
    over: Moment
    starts: int
    ends: int
    amount: int
    clean: int = 0


def afters(problem: Problem, places: Mapping[str, Planned]) -> tuple[After, ...]:
    """Give everything that has to be over before something else, in this plan."""
    found = list(_waits(problem))
    for resource in problem.resources:
        uses = list(_uses(problem, places, resource.name))
        if sum(use.amount for use in uses) > resource.capacity:
            found += _chained(uses, resource.capacity)
    for person in problem.people:
        found += _chained(list(_busy(problem, places, person.name)), 1)
    return tuple(dict.fromkeys(found))


def withins(problem: Problem) -> tuple[Within, ...]:
    """Give every longest wait between two steps, or from a step to its due time."""
    return tuple(
        Within(early=(lag.from_, lag.from_at), late=(lag.to, lag.to_at), most=lag.max)
        for lag in problem.lags
        if lag.max is not None and due_order(lag.from_) is None
    )


def _waits(problem: Problem) -> Iterator[After]:
    for lag in problem.lags:
        inside = due_order(lag.from_) is None and due_order(lag.to) is None
        if inside and lag.min is not None:
            yield After(
                early=(lag.from_, lag.from_at), late=(lag.to, lag.to_at), wait=lag.min
            )


def _uses(problem: Problem, places: Mapping[str, Planned], name: str) -> Iterator[_Use]:
    for step in problem.steps:
        place = places[step.id]
        road = road_taken(step, place)
        if road is None:
            continue
        if road.uses.get(name, 0):
            yield _Use(
                (step.id, "start"),
                (step.id, "end"),
                place.start,
                place.end,
                road.uses[name],
                step.clean.get(name, 0),
            )
        elif road.attend_uses.get(name, 0) and step.attended == "all":
            amount = road.attend_uses[name]
            yield _Use(
                (step.id, "start"), (step.id, "end"), place.start, place.end, amount
            )
    for hold in problem.holds:
        if hold.resource == name and hold.amount:
            begin, over = (hold.from_, hold.from_at), (hold.to, hold.to_at)
            yield _Use(
                begin, over, minute(places, begin), minute(places, over), hold.amount
            )


def _busy(problem: Problem, places: Mapping[str, Planned], name: str) -> Iterator[_Use]:
    """Walk what somebody does from its start to its end; short ends are let be."""
    for step in problem.steps:
        place = places[step.id]
        if name in place.who and step.attended == "all":
            yield _Use((step.id, "start"), (step.id, "end"), place.start, place.end, 1)


def minute(places: Mapping[str, Planned], here: Moment) -> int:
    """Give the minute of a step's start or end in a plan."""
    place = places[here[0]]
    return place.start if here[1] == "start" else place.end


def _chained(uses: list[_Use], capacity: int) -> Iterator[After]:
    """Hand each unit on to the next that needs it, those free longest first."""
    free: list[tuple[int, int, _Use | None]] = [(-1, capacity, None)]
    for use in sorted(uses, key=lambda one: (one.starts, one.ends)):
        wanted = use.amount
        free.sort(key=lambda one: one[0])
        kept: list[tuple[int, int, _Use | None]] = []
        for since, units, before in free:
            if wanted and since <= use.starts:
                taken = min(units, wanted)
                wanted -= taken
                if before is not None:
                    yield After(early=before.over, late=use.begin, wait=before.clean)
                if units > taken:
                    kept.append((since, units - taken, before))
            else:
                kept.append((since, units, before))
        free = [*kept, (use.ends + use.clean, use.amount, use)]
