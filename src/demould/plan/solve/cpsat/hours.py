"""Open hours: every attended part in one window, its step's and its people's."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ortools.sat.python import cp_model

from demould.plan.problem.steps import hands_needed
from demould.plan.problem.windows import Ranges, starts_attended, starts_within

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from demould.plan.problem.steps import Problem, Road, Step, Window
    from demould.plan.solve.cpsat.unknown import Doing, Part, When


def keep_hours(model: cp_model.CpModel, problem: Problem, doing: Doing) -> None:
    """Keep every part that is still to begin inside open hours."""
    for part in doing.parts:
        if not part_is_past(problem, doing, part):
            for road, taken in doing.took:
                _keep_road(model, problem, doing, part, road, taken)


def part_is_past(problem: Problem, doing: Doing, part: Part) -> bool:
    """Say whether the part began before it is now."""
    return doing.step.id in problem.done and part.first < (problem.now or 0)


def _keep_road(
    model: cp_model.CpModel,
    problem: Problem,
    doing: Doing,
    part: Part,
    road: Road,
    taken: When,
) -> None:
    people = {person.name: person for person in problem.people}
    step, calendars = doing.step, problem.calendars
    hands = hands_needed(problem, step, road)
    length = _fixed_length(step, part, road)
    if length is not None and len(doing.took) > 1:
        found = starts_attended(problem, step, length, hands)
        _begin_in(model, part, found, [taken])
    elif length is None and step.calendar is not None and not step.interruptible:
        _in_one_window(model, part, calendars[step.calendar], [taken])
    for name, there in doing.who.items():
        own = people[name].calendar if name in people else None
        if own is None or own == step.calendar or there is True:
            continue
        if length is not None:
            found = starts_within(calendars[own], length)
            _begin_in(model, part, found, [taken, there])
        else:
            _in_one_window(model, part, calendars[own], [taken, there, part.there])


def _fixed_length(step: Step, part: Part, road: Road) -> int | None:
    if step.attended == "ends":
        return part.least
    if step.interruptible:
        return None
    return road.duration.min if road.duration.min == road.duration.max else None


def _begin_in(
    model: cp_model.CpModel, part: Part, ranges: Ranges | None, when: Sequence[When]
) -> None:
    if ranges is None:
        return
    domain = cp_model.Domain.from_intervals([list(pair) for pair in ranges])
    model.add_linear_expression_in_domain(part.start, domain).only_enforce_if(*when)


def _in_one_window(
    model: cp_model.CpModel,
    part: Part,
    windows: Iterable[Window],
    when: Sequence[When],
) -> None:
    choices = []
    for window in windows:
        if window.open <= part.last and part.first <= window.close - part.least:
            inside = model.new_bool_var("")
            model.add(part.start >= window.open).only_enforce_if(inside)
            model.add(part.end <= window.close).only_enforce_if(inside)
            choices.append(inside)
    model.add_bool_or(choices).only_enforce_if(*when)
