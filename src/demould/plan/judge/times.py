"""Whether a step is when it may be, for as long as it takes, in open hours."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from demould.plan.judge.violation import Violation
from demould.plan.problem.telling import called, clock, minutes

if TYPE_CHECKING:
    from collections.abc import Iterator

    from demould.plan.judge.done import Done
    from demould.plan.problem.steps import Problem


def times(problem: Problem, done: Done) -> Iterator[Violation]:
    """See that a step begins, lasts and ends as it may; what is past is as it was."""
    yield from _facts(problem, done)
    if done.over:
        return
    yield from _duration(problem, done)
    if not done.began:
        yield from _start(problem, done)
    yield from _end(problem, done)


def _facts(problem: Problem, done: Done) -> Iterator[Violation]:
    name, fact = called(done.step), done.fact
    now = 0 if problem.now is None else problem.now
    if fact is None:
        if problem.now is not None and done.start < now:
            text = f"{name} begins {clock(problem, done.start)}, before it is now"
            yield Violation(rule="now", text=text)
        return
    if done.start != fact.start:
        text = f"{name} began {clock(problem, fact.start)}, but the plan has it begin"
        yield Violation(rule="facts", text=f"{text} {clock(problem, done.start)}")
    if fact.end is not None and done.end != fact.end:
        text = f"{name} was over {clock(problem, fact.end)}, but the plan has it over"
        yield Violation(rule="facts", text=f"{text} {clock(problem, done.end)}")
    if fact.end is None and done.end < now:
        text = f"{name} is running, but the plan has it over {clock(problem, done.end)}"
        yield Violation(rule="now", text=text)


def _duration(problem: Problem, done: Done) -> Iterator[Violation]:
    name, took = called(done.step), done.end - done.start
    if done.segments:
        took = sum(until - begin for begin, until in done.segments)
    least, most = done.road.duration.min, done.road.duration.max
    overran = done.began and done.end == problem.now
    if took < least:
        text = f"{name} takes at least {minutes(least)}, but has {minutes(took)}"
        yield Violation(rule="duration", text=text)
    if most is not None and took > most and not overran:
        text = f"{name} takes at most {minutes(most)}, but has {minutes(took)}"
        yield Violation(rule="duration", text=text)


def _start(problem: Problem, done: Done) -> Iterator[Violation]:
    name = called(done.step)
    if done.start < 0:
        text = f"{name} begins before {clock(problem, 0)}, where the plan begins"
        yield Violation(rule="horizon", text=text)
    if done.step.earliest is not None and done.start < done.step.earliest:
        first = clock(problem, done.step.earliest)
        text = f"{name} can not begin before {first}, but begins"
        yield Violation(rule="earliest", text=f"{text} {clock(problem, done.start)}")


def _end(problem: Problem, done: Done) -> Iterator[Violation]:
    name = called(done.step)
    ended = f"but is over {clock(problem, done.end)}"
    if done.end > problem.horizon:
        last = clock(problem, problem.horizon)
        text = f"{name} must be over by {last}, where the plan ends, {ended}"
        yield Violation(rule="horizon", text=text)
    if done.step.latest_end is not None and done.end > done.step.latest_end:
        last = clock(problem, done.step.latest_end)
        yield Violation(rule="latest", text=f"{name} must be over by {last}, {ended}")
    for order in problem.orders:
        if order.id in done.step.order and not order.soft_due and done.end > order.due:
            due = clock(problem, order.due)
            text = f"{name} must be over when {order.id} is due, {due}, {ended}"
            yield Violation(rule="due", text=text)


def sittings(done: Done) -> Iterator[Violation]:
    """See that the sittings of an interrupted step follow one another from its start."""
    if not done.segments or done.over:
        return
    name = called(done.step)
    if not done.step.interruptible:
        text = f"{name} may not be interrupted, but has {len(done.segments)} sittings"
        yield Violation(rule="segments", text=text)
    turned = any(until <= begin for begin, until in done.segments)
    if turned or any(b[0] < a[1] for a, b in pairwise(done.segments)):
        text = f"{name}: its sittings do not follow one another: {list(done.segments)}"
        yield Violation(rule="segments", text=text)
    if (done.segments[0][0], done.segments[-1][1]) != (done.start, done.end):
        text = f"{name}: its sittings do not reach from its start to its end"
        yield Violation(rule="segments", text=text)


def hours(problem: Problem, done: Done) -> Iterator[Violation]:
    """See that every attended stretch that is still to come lies in one open window."""
    if done.step.calendar is None:
        return
    for begin, until in done.parts:
        if done.began and begin < (problem.now or 0):
            continue
        if not is_open(problem, done.step.calendar, begin, until):
            text = (
                f"{called(done.step)} needs somebody {stretch(problem, begin, until)}"
            )
            yield Violation(
                rule="hours", text=f"{text}, outside the hours of {done.step.calendar}"
            )


def is_open(problem: Problem, calendar: str, begin: int, until: int) -> bool:
    """Say whether one window of the calendar holds all these minutes."""
    windows = problem.calendars[calendar]
    return any(window.open <= begin and until <= window.close for window in windows)


def stretch(problem: Problem, begin: int, until: int) -> str:
    """Give a stretch of time for reading: "from Mon 09:00 to Mon 10:00"."""
    return f"from {clock(problem, begin)} to {clock(problem, until)}"
