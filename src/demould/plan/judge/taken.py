"""Whether anything, or anybody, is taken twice: resources, holds and people."""

from __future__ import annotations

from typing import TYPE_CHECKING

from demould.plan.judge.done import Done, held
from demould.plan.judge.times import is_open, stretch
from demould.plan.judge.violation import Violation
from demould.plan.problem.steps import hands_needed
from demould.plan.problem.telling import called, clock

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from demould.plan.problem.steps import Person, Problem, Resource


def holds(problem: Problem, done: Mapping[str, Done]) -> Iterator[Violation]:
    """See that nothing is given back before it is taken."""
    for resource, _, begin, over, what in held(problem, done):
        if over < begin:
            text = f"{resource} would be given back before it is taken, for {what}"
            yield Violation(rule="hold", text=text)


def capacity(
    problem: Problem, done: Mapping[str, Done], resource: Resource
) -> Iterator[Violation]:
    """Add up what is taken at every minute at which anything changes.

    What was taken before it is now is as it is: it alone is never too much.
    """
    since = 0 if problem.now is None else problem.now
    taken = [use for use in uses(problem, done, resource.name) if use[2]]
    changes = {begin for begin, *_ in taken}
    changes |= {edge for o in resource.profile for edge in (o.start, o.end)}
    for minute in sorted(changes):
        there = resource.capacity
        for other in resource.profile:
            if other.start <= minute < other.end:
                there = other.capacity
        now = [use for use in taken if use[0] <= minute < use[1]]
        total = sum(amount for *_, amount, _ in now)
        if total > there and any(begin >= since for begin, *_ in now):
            names = ", ".join(name for *_, name in now)
            text = (
                f"{total} of {resource.name} are needed {clock(problem, minute)} and"
                f" there are {there}: {names}"
            )
            yield Violation(rule="capacity", text=text)
            return


def uses(
    problem: Problem, done: Mapping[str, Done], name: str
) -> Iterator[tuple[int, int, int, str]]:
    """Give each use of a resource as first and last minute, amount and step."""
    for place in done.values():
        what = called(place.step)
        if place.road.uses.get(name, 0):
            clean = place.step.clean.get(name, 0)
            yield place.start, place.end + clean, place.road.uses[name], what
        for begin, until in place.parts:
            yield begin, until, place.road.attend_uses.get(name, 0), what
    for resource, amount, begin, until, what in held(problem, done):
        if resource == name:
            yield begin, until, amount, what


def who_does(problem: Problem, done: Done) -> Iterator[Violation]:
    """See that as many as are needed do a step, by name, and know how."""
    if done.began:
        return
    needed = hands_needed(problem, done.step, done.road)
    name = called(done.step)
    if len(done.who) != needed:
        text = f"{name} needs {needed} people by name and has {len(done.who)}"
        yield Violation(rule="who", text=text)
    if len(set(done.who)) < len(done.who):
        text = f"{name} counts somebody twice: {', '.join(done.who)}"
        yield Violation(rule="who", text=text)
    people = {person.name: person for person in problem.people}
    for who in done.who:
        if who not in people:
            yield Violation(rule="who", text=f"{name}: nobody is called {who!r}")
        elif done.step.skill is not None and done.step.skill not in people[who].skills:
            text = f"{name} needs {done.step.skill}, which {who} does not do"
            yield Violation(rule="who", text=text)


def person_free(
    problem: Problem, done: Mapping[str, Done], person: Person
) -> Iterator[Violation]:
    """See that somebody is there for all they do, and does one thing at a time."""
    since = 0 if problem.now is None else problem.now
    busy = sorted(
        (begin, until, called(place.step))
        for place in done.values()
        if person.name in place.who
        for begin, until in place.parts
    )
    for begin, until, what in busy:
        here = person.calendar is None or is_open(
            problem, person.calendar, begin, until
        )
        if begin >= since and not here:
            text = (
                f"{person.name} is not there {stretch(problem, begin, until)}: {what}"
            )
            yield Violation(rule="person", text=text)
    last, doing = 0, ""
    for begin, until, what in busy:
        if since <= begin < last:
            text = f"{person.name} would do {doing} and {what} at once"
            yield Violation(rule="person", text=f"{text}, {clock(problem, begin)}")
        if until > last:
            last, doing = until, what
