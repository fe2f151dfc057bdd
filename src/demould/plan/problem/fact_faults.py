"""What can not be meant in changeovers, and in what is said to have happened."""

from __future__ import annotations

from typing import TYPE_CHECKING

from demould.plan.problem.steps import roads

if TYPE_CHECKING:
    from collections.abc import Iterator

    from demould.plan.problem.steps import Fact, Problem


def change_faults(problem: Problem) -> Iterator[str]:
    """Say what can not be meant in a changeover."""
    capacities = {one.name: one for one in problem.resources}
    for change in problem.changeovers:
        where = f"changeover of {change.resource!r}"
        resource = capacities.get(change.resource)
        if resource is None:
            yield f"{where}: no resource is called {change.resource!r}"
        elif max([resource.capacity, *(o.capacity for o in resource.profile)]) > 1:
            yield (
                f"{where}: there are {resource.capacity} of it; one is changed over"
                " between users only where there is one of it"
            )
        gaps = [
            change.minutes,
            *(m for row in change.matrix.values() for m in row.values()),
        ]
        if min(gaps) < 0:
            yield f"{where}: {min(gaps)} min is less than 0"


def fact_faults(problem: Problem) -> Iterator[str]:
    """Say what can not have happened as it is said to have."""
    steps = {step.id: step for step in problem.steps}
    if problem.done and problem.now is None:
        yield "something is done, but 'now' is not there; say at which minute it is now"
    if problem.now is not None and not 0 <= problem.now <= problem.horizon:
        yield f"now, {problem.now} min, is not between 0 and {problem.horizon} min"
    for name, fact in problem.done.items():
        where = f"done {name!r}"
        if name not in steps:
            yield f"{where}: no step is called {name!r}"
            continue
        yield from _when_faults(problem, fact, where)
        known = (
            {road.name for road in roads(steps[name])} if steps[name].either else set()
        )
        if fact.took is not None and fact.took not in known:
            yield f"{where}: it has no road called {fact.took!r}"


def _when_faults(problem: Problem, fact: Fact, where: str) -> Iterator[str]:
    now = problem.horizon if problem.now is None else problem.now
    if fact.start > now:
        yield f"{where}: it began at {fact.start}, and now it is only {now}"
    if fact.end is not None and fact.end < fact.start:
        yield f"{where}: it was over at {fact.end}, before it began at {fact.start}"
    if fact.end is not None and fact.end > now:
        yield (
            f"{where}: it was over at {fact.end}, and now it is only {now}; leave the"
            " end out while it is running"
        )
