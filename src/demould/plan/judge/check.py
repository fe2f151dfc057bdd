"""The judge: does a plan keep every promise its problem asks for.

Everything is worked out again from the minutes in the plan, without the solver and
without the limits it starts from, so that a fault there can not hide here.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import asdict
from typing import TYPE_CHECKING

from demould.plan.judge.apart import changeovers, lag_kept
from demould.plan.judge.claims import moved, worth
from demould.plan.judge.done import Done, attended
from demould.plan.judge.taken import capacity, holds, person_free, who_does
from demould.plan.judge.times import hours, sittings, times
from demould.plan.judge.violation import Violation
from demould.plan.problem.steps import roads
from demould.plan.problem.telling import called

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from demould.plan.answer.schedule import Schedule
    from demould.plan.problem.steps import Problem


def check(problem: Problem, schedule: Schedule) -> tuple[Violation, ...]:
    """Give every promise the plan breaks, none where it can be cooked as it stands.

    A schedule without a plan (infeasible, unknown) is judged only for having no steps.
    """
    if schedule.status in ("infeasible", "unknown"):
        return tuple(_no_plan(problem, schedule))
    amiss = [*_wrong_problem(problem, schedule), *_step_set(problem, schedule)]
    done, roadless = placed(problem, schedule)
    amiss += roadless
    for place in done.values():
        amiss += times(problem, place)
        amiss += sittings(place)
        amiss += hours(problem, place)
        amiss += who_does(problem, place)
    for lag in problem.lags:
        amiss += lag_kept(problem, done, lag)
    amiss += holds(problem, done)
    for resource in problem.resources:
        amiss += capacity(problem, done, resource)
    for person in problem.people:
        amiss += person_free(problem, done, person)
    for change in problem.changeovers:
        amiss += changeovers(problem, done, change)
    if not amiss:
        amiss += _objective(problem, schedule, done)
    return tuple(amiss)


def _no_plan(problem: Problem, schedule: Schedule) -> Iterator[Violation]:
    yield from _wrong_problem(problem, schedule)
    if schedule.steps:
        text = f"the plan is called {schedule.status} and has steps all the same"
        yield Violation(rule="steps", text=text)


def _wrong_problem(problem: Problem, schedule: Schedule) -> Iterator[Violation]:
    if schedule.problem != problem.id:
        text = f"the plan is for {schedule.problem!r}, not for {problem.id!r}"
        yield Violation(rule="problem", text=text)


def _step_set(problem: Problem, schedule: Schedule) -> Iterator[Violation]:
    times = Counter(place.id for place in schedule.steps)
    for step in problem.steps:
        if times[step.id] != 1:
            text = f"{called(step)} is planned {times[step.id]} times, not once"
            yield Violation(rule="steps", text=text)
    known = {step.id for step in problem.steps}
    for name in times:
        if name not in known:
            yield Violation(rule="steps", text=f"nobody asked for {name!r}")


def placed(
    problem: Problem, schedule: Schedule
) -> tuple[dict[str, Done], list[Violation]]:
    """Give each step its place and its road, and say which road there is not."""
    places = {place.id: place for place in schedule.steps}
    done: dict[str, Done] = {}
    amiss: list[Violation] = []
    for step in problem.steps:
        if step.id not in places:
            continue
        place = places[step.id]
        taken = [r for r in roads(step) if r.name == place.took or not step.either]
        if taken:
            done[step.id] = Done(
                step=step,
                start=place.start,
                end=place.end,
                road=taken[0],
                who=place.who,
                parts=attended(step, place),
                segments=place.segments,
                fact=problem.done.get(step.id),
            )
        else:
            names = " or ".join(road.name for road in step.either)
            text = f"{called(step)} goes by {names}, not by {place.took!r}"
            amiss.append(Violation(rule="road", text=text))
    return done, amiss


def _objective(
    problem: Problem, schedule: Schedule, done: Mapping[str, Done]
) -> Iterator[Violation]:
    said = asdict(schedule.objective)
    for cost, found in worth(problem, done).items():
        if said[cost] != found:
            text = f"the plan says {cost} is {said[cost]}, but it is {found}"
            yield Violation(rule="objective", text=text)
    asked, found_moved = schedule.moved, moved(problem, done)
    if asked != found_moved:
        text = f"the plan says it moves {list(asked)}, but it moves {list(found_moved)}"
        yield Violation(rule="objective", text=text)
