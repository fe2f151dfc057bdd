"""A plan beside its problem, as the judge reads it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from demould.plan.problem.steps import due_order
from demould.plan.problem.telling import moment

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from demould.plan.answer.schedule import Planned
    from demould.plan.problem.steps import At, Fact, Problem, Road, Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """A step with its place in the plan and the road it takes.

    ``segments`` are its sittings as the plan says them, ``parts`` what is attended.
    With a ``fact`` it began before it is now: what is past is not judged any more.
    """

    step: Step
    start: int
    end: int
    road: Road
    who: tuple[str, ...]
    parts: tuple[tuple[int, int], ...]
    segments: tuple[tuple[int, int], ...] = ()
    fact: Fact | None = None

    @property
    def began(self) -> bool:
        """Whether its start is past."""
        return self.fact is not None

    @property
    def over(self) -> bool:
        """Whether its end is past."""
        return self.fact is not None and self.fact.end is not None


def attended(step: Step, place: Planned) -> tuple[tuple[int, int], ...]:
    """Give the stretches [min] in which somebody has to be at the step."""
    if step.attended == "none":
        return ()
    parts = [*place.segments] or [(place.start, place.end)]
    if step.attended == "ends":
        parts = [
            (place.start, place.start + step.attend_start),
            (place.end - step.attend_end, place.end),
        ]
    return tuple((begin, over) for begin, over in parts if over > begin)


def minute_of(
    problem: Problem, done: Mapping[str, Done], name: str, at: At
) -> int | None:
    """Give the minute of a start, an end or a due time; None for what is missing."""
    due = due_order(name)
    if due is not None:
        return next(order.due for order in problem.orders if order.id == due)
    if name not in done:
        return None
    return done[name].start if at == "start" else done[name].end


def held(
    problem: Problem, done: Mapping[str, Done]
) -> Iterator[tuple[str, int, int, int, str]]:
    """Give each hold as resource, amount, first and last minute, and the step."""
    steps = {step.id: step for step in problem.steps}
    for hold in problem.holds:
        begin = minute_of(problem, done, hold.from_, hold.from_at)
        over = minute_of(problem, done, hold.to, hold.to_at)
        if begin is not None and over is not None:
            what = moment(steps, hold.from_, hold.from_at)
            yield hold.resource, hold.amount, begin, over, what
