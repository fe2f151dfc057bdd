"""A new plan by the same hands as the agreed one, wherever they are free."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import attended_parts
from demould.plan.judge.check import check
from demould.plan.problem.steps import skilled

if TYPE_CHECKING:
    from collections.abc import Mapping

    from demould.plan.answer.schedule import Planned, Schedule
    from demould.plan.problem.steps import Problem

Busy = dict[str, list[tuple[int, int]]]


def by_the_same_hands(
    problem: Problem, schedule: Schedule, agreed: Mapping[str, Planned]
) -> Schedule:
    """Give each step back to who was to do it, where nobody is in two places then.

    The judge looks at the result; where it finds anything the plan stays as it is.
    """
    steps = {step.id: step for step in problem.steps}
    busy: Busy = {}
    places: dict[str, Planned] = {}
    for keep in (True, False):
        for place in sorted(schedule.steps, key=lambda one: one.start):
            before = agreed.get(place.id)
            wanted = before.who if before else ()
            same = len(wanted) == len(place.who)
            parts = attended_parts(steps[place.id], place)
            if place.id in places or not (keep or place.who):
                continue
            if keep and same and all(_free(busy, name, parts) for name in wanted):
                places[place.id] = replace(place, who=wanted)
            elif not keep:
                able = [one.name for one in skilled(problem, steps[place.id])]
                free = [name for name in able if _free(busy, name, parts)]
                if len(free) < len(place.who):
                    return schedule
                places[place.id] = replace(place, who=tuple(free[: len(place.who)]))
            if place.id in places:
                for name in places[place.id].who:
                    busy.setdefault(name, []).extend(parts)
    found = replace(
        schedule, steps=tuple(places.get(one.id, one) for one in schedule.steps)
    )
    return schedule if check(problem, found) else found


def _free(busy: Busy, name: str, parts: tuple[tuple[int, int], ...]) -> bool:
    return all(
        over <= start or until <= begin
        for begin, over in busy.get(name, ())
        for start, until in parts
    )
