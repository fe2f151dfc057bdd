"""Whether moments lie as far apart as they must: waits, and changeovers."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from demould.plan.judge.done import Done, minute_of
from demould.plan.judge.violation import Violation
from demould.plan.problem.steps import over
from demould.plan.problem.telling import called, clock, minutes, moment

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from demould.plan.problem.steps import Changeover, Lag, Problem, Step


def lag_kept(
    problem: Problem, done: Mapping[str, Done], lag: Lag
) -> Iterator[Violation]:
    """See that two moments lie as far apart as they must, unless both have passed."""
    if over(problem, lag.from_, lag.from_at) and over(problem, lag.to, lag.to_at):
        return
    before = minute_of(problem, done, lag.from_, lag.from_at)
    after = minute_of(problem, done, lag.to, lag.to_at)
    if before is None or after is None:
        return
    steps = {step.id: step for step in problem.steps}
    ends = (
        f"between {moment(steps, lag.from_, lag.from_at)} and"
        f" {moment(steps, lag.to, lag.to_at)}"
    )
    why = f" ({lag.why})" if lag.why else ""
    if lag.min is not None and after - before < lag.min:
        text = f"{ends} lie {after - before} min, fewer than {lag.min}{why}"
        yield Violation(rule="lag", text=text)
    if lag.max is not None and after - before > lag.max:
        text = f"{ends} lie {after - before} min, more than {lag.max}{why}"
        yield Violation(rule="lag", text=text)


def changeovers(
    problem: Problem, done: Mapping[str, Done], change: Changeover
) -> Iterator[Violation]:
    """See that one user after another leaves time to change the resource over."""
    users = sorted(
        (d for d in done.values() if d.road.uses.get(change.resource, 0)),
        key=lambda d: (d.start, d.end),
    )
    for one, other in pairwise(users):
        needed = _minutes(change, one.step, other.step)
        if other.fact is None and other.start - one.end < needed:
            yield Violation(
                rule="changeover",
                text=(
                    f"{change.resource} needs {minutes(needed)} between"
                    f" {called(one.step)} and {called(other.step)}, and has"
                    f" {other.start - one.end} min, {clock(problem, one.end)}"
                ),
            )


def _minutes(change: Changeover, one: Step, other: Step) -> int:
    keys = [
        {"family": step.family, "label": step.label, "skill": step.skill}[change.key]
        for step in (one, other)
    ]
    if keys[0] == keys[1]:
        return 0
    return change.matrix.get(str(keys[0]), {}).get(str(keys[1]), change.minutes)
