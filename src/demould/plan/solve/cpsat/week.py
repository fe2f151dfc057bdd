"""The unknowns of a week for the solver, with their waits and hours."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from ortools.sat.python import cp_model

from demould.plan.problem.steps import (
    At,
    Problem,
    Road,
    Step,
    Window,
    due_order,
    hands_needed,
    roads,
    skilled,
)
from demould.plan.problem.windows import Ranges, starts_attended, starts_within
from demould.plan.solve.lags import Bounds

Sum = cp_model.LinearExpr | int
When = cp_model.IntVar | bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A stretch somebody attends, with the first and last minute it can begin at."""

    start: Sum
    size: Sum
    end: Sum
    least: int
    first: int
    last: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Doing:
    """The unknowns of a step; ``took`` has a road and whether it is taken."""

    step: Step
    start: Sum
    size: Sum
    end: Sum
    took: tuple[tuple[Road, When], ...]
    parts: tuple[Part, ...]
    who: Mapping[str, cp_model.IntVar]


@dataclass(frozen=True, slots=True, kw_only=True)
class Week:
    """A problem with its limits, and the model made of it so far."""

    problem: Problem
    limits: Bounds
    model: cp_model.CpModel
    doings: Mapping[str, Doing]
    sessions: dict[tuple[str, Window], list[tuple[Part, cp_model.IntVar]]]

    def at(self, name: str, at: At) -> Sum:
        """Give the minute of a step's start or end, or of a due time."""
        order = due_order(name)
        if order is not None:
            return self.limits.earliest[name, "start"]
        return self.doings[name].start if at == "start" else self.doings[name].end


def week_of(problem: Problem, limits: Bounds) -> Week:
    """Give the week with everything but what it has to share."""
    model = cp_model.CpModel()
    doings = {step.id: _doing(model, problem, limits, step) for step in problem.steps}
    week = Week(problem=problem, limits=limits, model=model, doings=doings, sessions={})
    for doing in doings.values():
        _keep_hours(week, doing)
    _keep_lags(week)
    return week


def _doing(
    model: cp_model.CpModel, problem: Problem, limits: Bounds, step: Step
) -> Doing:
    ways = roads(step)
    first = limits.earliest[step.id, "start"], limits.earliest[step.id, "end"]
    last = limits.latest[step.id, "start"], limits.latest[step.id, "end"]
    start = model.new_int_var(first[0], last[0], f"{step.id} starts")
    if len({way.duration for way in ways}) == 1 and (
        ways[0].duration.min == ways[0].duration.max
    ):
        size: Sum = ways[0].duration.min
        end: Sum = start + size
    else:
        least = min(way.duration.min for way in ways)
        longest = max(
            last[1] - first[0] if way.duration.max is None else way.duration.max
            for way in ways
        )
        size = model.new_int_var(least, max(least, longest), f"{step.id} takes")
        end = model.new_int_var(first[1], last[1], f"{step.id} ends")
    if not isinstance(size, int):
        model.add(end - start == size)
    took = _took(model, step, ways, size)
    return Doing(
        step=step,
        start=start,
        size=size,
        end=end,
        took=took,
        parts=tuple(_parts(limits, step, start, size, end)),
        who=_who(model, problem, step, took),
    )


def _took(
    model: cp_model.CpModel, step: Step, ways: Sequence[Road], size: Sum
) -> tuple[tuple[Road, When], ...]:
    if len(ways) == 1:
        return ((ways[0], True),)
    took = [(way, model.new_bool_var(f"{step.id} by {way.name}")) for way in ways]
    model.add_exactly_one(taken for _, taken in took)
    for way, taken in took:
        model.add(size >= way.duration.min).only_enforce_if(taken)
        if way.duration.max is not None:
            model.add(size <= way.duration.max).only_enforce_if(taken)
    return tuple(took)


def _parts(
    limits: Bounds, step: Step, start: Sum, size: Sum, end: Sum
) -> Iterator[Part]:
    first, last = limits.earliest[step.id, "start"], limits.latest[step.id, "start"]
    if step.attended == "all" and not (isinstance(size, int) and size == 0):
        least = min(way.duration.min for way in roads(step))
        yield Part(start=start, size=size, end=end, least=least, first=first, last=last)
    if step.attended == "ends" and step.attend_start:
        length = step.attend_start
        over = start + length
        yield Part(
            start=start, size=length, end=over, least=length, first=first, last=last
        )
    if step.attended == "ends" and step.attend_end:
        length = step.attend_end
        yield Part(
            start=end - length,
            size=length,
            end=end,
            least=length,
            first=limits.earliest[step.id, "end"] - length,
            last=limits.latest[step.id, "end"] - length,
        )


def _who(
    model: cp_model.CpModel,
    problem: Problem,
    step: Step,
    took: Sequence[tuple[Road, When]],
) -> dict[str, cp_model.IntVar]:
    wanted = [(hands_needed(problem, step, road), taken) for road, taken in took]
    if not any(hands for hands, _ in wanted):
        return {}
    who = {
        person.name: model.new_bool_var(f"{person.name} does {step.id}")
        for person in skilled(problem, step)
    }
    for hands, taken in wanted:
        model.add(sum(who.values()) == hands).only_enforce_if(taken)
    return who


def _keep_hours(week: Week, doing: Doing) -> None:
    """Keep every attended part inside open hours, its step's and its people's."""
    calendars = week.problem.calendars
    people = {person.name: person for person in week.problem.people}
    for part in doing.parts:
        for road, taken in doing.took:
            hands = hands_needed(week.problem, doing.step, road)
            length = _fixed_length(doing.step, part, road)
            if length is not None:
                found = starts_attended(week.problem, doing.step, length, hands)
                _begin_in(week, part, found, [taken])
            elif doing.step.calendar is not None:
                in_one_window(week, part, calendars[doing.step.calendar], [taken])
            for name, there in doing.who.items():
                own = people[name].calendar
                if own is None or own == doing.step.calendar:
                    continue
                if length is not None:
                    found = starts_within(calendars[own], length)
                    _begin_in(week, part, found, [taken, there])
                else:
                    in_one_window(week, part, calendars[own], [taken, there])


def _fixed_length(step: Step, part: Part, road: Road) -> int | None:
    if step.attended == "ends":
        return part.least
    return road.duration.min if road.duration.min == road.duration.max else None


def _begin_in(
    week: Week, part: Part, ranges: Ranges | None, when: Sequence[When]
) -> None:
    if ranges is None:
        return
    domain = cp_model.Domain.from_intervals([list(pair) for pair in ranges])
    week.model.add_linear_expression_in_domain(part.start, domain).only_enforce_if(
        *when
    )


def in_one_window(
    week: Week, part: Part, windows: Iterable[Window], when: Sequence[When]
) -> list[tuple[Window, cp_model.IntVar]]:
    """Put a part into one of the windows; give each with whether it is the one."""
    choices = []
    for window in windows:
        if window.open <= part.last and part.first <= window.close - part.least:
            inside = week.model.new_bool_var("")
            week.model.add(part.start >= window.open).only_enforce_if(inside)
            week.model.add(part.end <= window.close).only_enforce_if(inside)
            choices.append((window, inside))
    week.model.add_bool_or([inside for _, inside in choices]).only_enforce_if(*when)
    return choices


def _keep_lags(week: Week) -> None:
    for lag in week.problem.lags:
        apart = week.at(lag.to, lag.to_at) - week.at(lag.from_, lag.from_at)
        if lag.min is not None:
            week.model.add(apart >= lag.min)
        if lag.max is not None:
            week.model.add(apart <= lag.max)
