"""Wishes made promises: a problem in which what is wished for has to be kept.

Where the harder problem has a plan, the wish is met in full, and the search has one
thing less to weigh.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from demould.plan.problem.steps import DUE, Lag, orders_of, over, roads

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator

    from demould.plan.problem.steps import Problem, Step, Window


def on_time(problem: Problem) -> Problem:
    """Give the problem with every due time hard."""
    if not any(order.soft_due for order in problem.orders):
        return problem
    orders = tuple(replace(order, soft_due=False) for order in problem.orders)
    return replace(problem, orders=orders)


def with_margins(problem: Problem) -> Problem:
    """Give the problem with all spare time that is asked for as part of its waits."""
    asking = [s for s in problem.steps if s.margin and not over(problem, s.id, "end")]
    if not asking:
        return problem
    names = {step.id: step for step in asking}
    steps = tuple(
        _spared(problem, step) if step.id in names else step for step in problem.steps
    )
    more = [lag for step in asking for lag in _longer(problem, step)]
    return replace(problem, steps=steps, lags=(*problem.lags, *more))


def _spared(problem: Problem, step: Step) -> Step:
    last = problem.horizon if step.latest_end is None else step.latest_end
    return replace(step, margin=0, latest_end=last - step.margin)


def _longer(problem: Problem, step: Step) -> Iterator[Lag]:
    """Give the waits from the start on that leave the spare time after the quickest end."""
    quickest = max(road.duration.min for road in roads(step)) + step.margin
    for lag in problem.lags:
        if lag.from_ == step.id and lag.from_at == "end" and lag.min is not None:
            yield replace(lag, from_at="start", min=lag.min + quickest, max=None)
    for order in orders_of(problem, step):
        yield Lag(from_=step.id, from_at="start", to=f"{DUE}{order.id}", min=quickest)


def in_windows(problem: Problem, kept: Collection[tuple[str, Window]]) -> Problem:
    """Give the problem with only these windows open."""
    return replace(
        problem,
        calendars={
            name: tuple(window for window in windows if (name, window) in kept)
            for name, windows in problem.calendars.items()
        },
    )
