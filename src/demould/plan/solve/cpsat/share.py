"""What can not be in two places: resources and people, for the solver."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from ortools.sat.python import cp_model

from demould.plan.problem.steps import Resource, Road, hands_needed
from demould.plan.solve.cpsat.week import Doing, Part, Week, When


@dataclass(frozen=True, slots=True, kw_only=True)
class _Demand:
    interval: cp_model.IntervalVar
    amount: int
    least: int


def share_resource(week: Week, resource: Resource) -> None:
    """Never let more of a resource be taken than there is."""
    uses = [use for use in _demands(week, resource) if use.amount]
    levels = list(_levels(resource))
    top = max(capacity for _, _, capacity in levels)
    lacks = [
        _Demand(
            interval=week.model.new_fixed_size_interval_var(start, end - start, ""),
            amount=top - capacity,
            least=end - start,
        )
        for start, end, capacity in levels
        if capacity < top
    ]
    if sum(use.amount for use in uses) <= min(level[2] for level in levels):
        return
    demands = [*uses, *lacks]
    if all(top < 2 * use.amount <= 2 * top and use.least for use in demands):
        week.model.add_no_overlap([use.interval for use in demands])
    else:
        week.model.add_cumulative(
            [use.interval for use in demands], [use.amount for use in demands], top
        )


EVER = 10_000_000
"""Longer than any horizon, nineteen years. [min]"""


def _levels(resource: Resource) -> Iterator[tuple[int, int, int]]:
    """Give the capacity of a resource as stretches from 0 to for ever."""
    since = 0
    for other in sorted(resource.profile, key=lambda other: other.start):
        if other.end <= 0:
            continue
        if since < other.start:
            yield since, other.start, resource.capacity
        yield max(other.start, 0), other.end, other.capacity
        since = other.end
    yield since, EVER, resource.capacity


def _demands(week: Week, resource: Resource) -> Iterator[_Demand]:
    for doing in week.doings.values():
        clean = doing.step.clean.get(resource.name, 0)
        for road, taken in doing.took:
            amount = road.uses.get(resource.name, 0)
            if amount:
                yield _use(week, doing, road, taken, clean, amount)
            for part in doing.parts:
                yield _Demand(
                    interval=_during(week, part, taken),
                    amount=road.attend_uses.get(resource.name, 0),
                    least=part.least,
                )
    for hold in week.problem.holds:
        if hold.resource == resource.name:
            begin = week.at(hold.from_, hold.from_at)
            over = week.at(hold.to, hold.to_at)
            length = week.model.new_int_var(0, week.problem.horizon, "")
            interval = week.model.new_interval_var(begin, length, over, "")
            yield _Demand(interval=interval, amount=hold.amount, least=0)


def _use(
    week: Week, doing: Doing, road: Road, taken: When, clean: int, amount: int
) -> _Demand:
    least = road.duration.min + clean
    if road.duration.min == road.duration.max:
        interval = week.model.new_optional_fixed_size_interval_var(
            doing.start, least, taken, ""
        )
    else:
        interval = week.model.new_optional_interval_var(
            doing.start, doing.size + clean, doing.end + clean, taken, ""
        )
    return _Demand(interval=interval, amount=amount, least=least)


def _during(week: Week, part: Part, taken: When) -> cp_model.IntervalVar:
    return week.model.new_optional_interval_var(
        part.start, part.size, part.end, taken, ""
    )


def share_people(week: Week) -> None:
    """Let nobody be in two places, nor all of them together be more than they are."""
    busy: dict[str, list[cp_model.IntervalVar]] = defaultdict(list)
    parts: list[cp_model.IntervalVar] = []
    hands: list[int] = []
    for doing in week.doings.values():
        needed = min(
            hands_needed(week.problem, doing.step, road) for road, _ in doing.took
        )
        for part in doing.parts:
            parts.append(
                week.model.new_interval_var(part.start, part.size, part.end, "")
            )
            hands.append(needed)
            for name, there in doing.who.items():
                busy[name].append(_during(week, part, there))
    for intervals in busy.values():
        week.model.add_no_overlap(intervals)
    if busy:
        week.model.add_cumulative(parts, hands, len(week.problem.people))
