"""What the solver does not know of one step: when, by which road, by whom."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ortools.sat.python import cp_model

from demould.plan.problem.steps import hands_needed, skilled

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from demould.plan.problem.steps import Problem, Road, Step
    from demould.plan.solve.net import Limits, Moment, Net

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
    there: When = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Doing:
    """The unknowns of a step; ``took`` has a road and whether it is taken.

    ``before`` are the sittings of a running step that are past.
    """

    step: Step
    start: Sum
    size: Sum
    end: Sum
    took: tuple[tuple[Road, When], ...]
    parts: tuple[Part, ...]
    who: Mapping[str, When]
    before: tuple[tuple[int, int], ...] = ()


def domain_of(net: Net, limits: Limits, here: Moment) -> cp_model.Domain:
    """Give the minutes a moment may have."""
    inside = cp_model.Domain(limits.first[here], limits.last[here])
    ranges = net.ranges.get(here)
    if ranges is None:
        return inside
    return inside.intersection_with(
        cp_model.Domain.from_intervals([list(pair) for pair in ranges])
    )


def taken_roads(
    model: cp_model.CpModel, step: Step, ways: Sequence[Road], size: Sum | None
) -> tuple[tuple[Road, When], ...]:
    """Give each road with whether it is taken, and let ``size`` be what it takes."""
    if len(ways) == 1:
        takes = ways[0].duration
        if size is not None and not isinstance(size, int):
            model.add(size >= takes.min)
            if takes.max is not None:
                model.add(size <= takes.max)
        return ((ways[0], True),)
    took = [(way, model.new_bool_var(f"{step.id} by {way.name}")) for way in ways]
    model.add_exactly_one(taken for _, taken in took)
    if size is not None:
        for way, taken in took:
            model.add(size >= way.duration.min).only_enforce_if(taken)
            if way.duration.max is not None:
                model.add(size <= way.duration.max).only_enforce_if(taken)
    return tuple(took)


def who_may(
    model: cp_model.CpModel,
    problem: Problem,
    step: Step,
    took: Sequence[tuple[Road, When]],
) -> dict[str, When]:
    """Give each person who knows how, with whether they do it."""
    wanted = [(hands_needed(problem, step, road), taken) for road, taken in took]
    fact = problem.done.get(step.id)
    if fact is not None:
        return dict.fromkeys(fact.who, True)
    if not any(hands for hands, _ in wanted):
        return {}
    who = {
        person.name: model.new_bool_var(f"{person.name} does {step.id}")
        for person in skilled(problem, step)
    }
    for hands, taken in wanted:
        model.add(sum(who.values()) == hands).only_enforce_if(taken)
    return dict(who)
