"""Whose hands, and for how long: what no day and no crew can hold."""

from __future__ import annotations

from typing import TYPE_CHECKING

from demould.plan.problem.steps import hands_needed, roads, skilled
from demould.plan.problem.telling import called, clock, minutes
from demould.plan.problem.windows import starts_attended
from demould.plan.quick.limit import Limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from demould.plan.problem.steps import Problem, Step, Window
    from demould.plan.solve.net import Limits


def nobody_can(problem: Problem) -> Iterator[Limit]:
    """Give every step that no day is long enough for, or nobody is there for."""
    for step in problem.steps:
        if step.attended == "none":
            continue
        ways = [
            starts_attended(problem, step, length, hands_needed(problem, step, road))
            for road in roads(step)
            for length in _lengths(step, road.duration.min)
        ]
        if all(way is not None and not way for way in ways):
            yield _why(problem, step)


def _lengths(step: Step, whole: int) -> tuple[int, ...]:
    if step.attended == "all":
        return (whole,)
    return (max(step.attend_start, step.attend_end),)


def _why(problem: Problem, step: Step) -> Limit:
    least = min(
        length for road in roads(step) for length in _lengths(step, road.duration.min)
    )
    longest = _longest(problem.calendars.get(step.calendar or "", ()))
    hands = min(hands_needed(problem, step, road) for road in roads(step))
    able = skilled(problem, step)
    name = called(step)
    if longest == 0 and step.calendar is not None:
        text = f"{name}: the kitchen is not open before it is due"
        help_ = "write the hours it is open, or another due time"
    elif step.calendar is not None and least > longest:
        text = f"{name} takes {minutes(least)} in one go, and the longest day has"
        text += f" {minutes(longest)}"
        help_ = "part it over two days or between two people, or make fewer"
    elif len(able) < hands and step.skill is not None:
        text = f"{name} needs {hands} who can {step.skill}, and there are {len(able)}"
        help_ = f"write 'can {step.skill}' behind who does"
    elif len(able) < hands:
        text = f"{name} needs {hands} people, and there are {len(able)}"
        help_ = "write who is there, or ask for fewer hands"
    else:
        who = " and ".join(person.name for person in able)
        text = (
            f"{name} takes {minutes(least)}, and {who} {_is(able)} never there so long"
        )
        help_ = "look at who is away, or let somebody else do it"
    return Limit(over="hours", id=step.id, orders=step.order, text=text, help=help_)


def _is(people: tuple[object, ...]) -> str:
    return "is" if len(people) == 1 else "are"


def _longest(windows: tuple[Window, ...]) -> int:
    return max((window.close - window.open for window in windows), default=0)


def too_few_hands(problem: Problem, limits: Limits) -> Iterator[Limit]:
    """Give the first due time by which there is more work than hands to do it."""
    if not problem.people:
        return
    works = sorted(
        (
            (limits.last[step.id, "end"], _work(problem, step), step)
            for step in problem.steps
            if _work(problem, step)
        ),
        key=lambda one: (one[0], one[2].id),
    )
    total, orders = 0, list[str]()
    for until, minutes_of_it, step in works:
        total += minutes_of_it
        orders += step.order
        there = hands_until(problem, until)
        if total > there:
            text = (
                f"{minutes(total)} of work by {clock(problem, until)}, and"
                f" {_together(problem)} {minutes(there)}"
            )
            yield Limit(
                over="hands",
                id="people",
                orders=tuple(dict.fromkeys(orders)),
                text=text,
                help="one more pair of hands, longer hours, or fewer pieces",
            )
            return


def _together(problem: Problem) -> str:
    names = [person.name for person in problem.people]
    if len(names) == 1:
        return f"{names[0]} has"
    return f"{', '.join(names[:-1])} and {names[-1]} together have"


def _work(problem: Problem, step: Step) -> int:
    """Give the least person-minutes of a step. [min]."""
    return min(
        hands_needed(problem, step, road) * _attended(step, road.duration.min)
        for road in roads(step)
    )


def _attended(step: Step, whole: int) -> int:
    if step.attended == "ends":
        return step.attend_start + step.attend_end
    return whole if step.attended == "all" else 0


def hands_until(problem: Problem, until: int) -> int:
    """Give the person-minutes there are before a minute. [min].

    Who has no hours of their own is there whenever the kitchen is open at all.
    """
    every = tuple(
        (window.open, window.close)
        for windows in problem.calendars.values()
        for window in windows
    )
    open_hours = _joined(every) if every else ((0, problem.horizon),)
    total = 0
    for person in problem.people:
        spans = open_hours
        if person.calendar is not None:
            windows = problem.calendars[person.calendar]
            spans = tuple((one.open, one.close) for one in windows)
        total += sum(max(0, min(close, until) - begin) for begin, close in spans)
    return total


def _joined(spans: tuple[tuple[int, int], ...]) -> tuple[tuple[int, int], ...]:
    joined: list[tuple[int, int]] = []
    for begin, close in sorted(spans):
        if joined and begin <= joined[-1][1]:
            joined[-1] = joined[-1][0], max(joined[-1][1], close)
        else:
            joined.append((begin, close))
    return tuple(joined)
