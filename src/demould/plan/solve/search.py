"""The search for a plan, the wishes met one after the other."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import (
    Explain,
    Objective,
    Planned,
    Schedule,
    moved_from,
    objective_of,
)
from demould.plan.problem.faults import problem_faults
from demould.plan.solve.asked import Asked, ask
from demould.plan.solve.cpsat.look import model_of
from demould.plan.solve.cpsat.time import Stop, Time
from demould.plan.solve.large import large
from demould.plan.solve.whole import minimise, whole
from demould.plan.solve.wish import DEFAULT_WISHES

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping, Sequence

    from demould.plan.answer.schedule import Status
    from demould.plan.problem.steps import Problem
    from demould.plan.solve.wish import Wish

FEW_STEPS = 60
"""So many steps are looked at together and to proof; more, in parts."""


def solve(
    problem: Problem,
    *,
    seconds: float = 10.0,
    seed: int = 0,
    wishes: Sequence[Wish] = DEFAULT_WISHES,
    workers: int = 2,
    steady: bool = True,
    stop: Stop | None = None,
    tell: Callable[[Schedule], None] | None = None,
    first_in: float = 1.0,
) -> Schedule:
    """Plan the problem, the wishes met one after the other.

    Parameters
    ----------
    problem
        What to plan. Hard due times are kept, soft ones are wishes.
    seconds
        How long it may take for all wishes together.
    seed
        Another seed may give another plan that is as good.
    wishes
        What to make small, first things first. Where there is a previous plan, few
        moved steps come before them all.
    workers
        Threads. In steady time the plan does not depend on them.
    steady
        Count the solver's deterministic seconds, about real ones, so that the same
        problem and seed give the same plan; else those on the wall.
    stop
        Called by somebody else, the search ends with the best plan so far.
    tell
        Is called with each better plan as it is found.
    first_in
        The part of the time in which a first plan of many orders has to be found.

    Returns
    -------
    Schedule
        ``optimal`` where every wish is proven, ``feasible`` where not all are,
        ``unknown`` where time ran out before the first plan, and ``infeasible``,
        with an explanation where waits and hours alone leave some step no room.

    Raises
    ------
    ValueError
        The problem refers to what it does not have; see `problem_faults`.
    """
    stop = stop or Stop()
    time = Time(seconds=seconds, steady=steady, stop=stop)
    first = Time(seconds=seconds * first_in, steady=steady, stop=stop)
    asked = _ask(problem)
    if isinstance(asked, Explain):
        return Schedule(problem=problem.id, status="infeasible", explain=asked)

    def told(places: Mapping[str, Planned]) -> None:
        if tell is not None:
            tell(_schedule(problem, "feasible", places))

    few = len(asked.steps) <= FEW_STEPS or len(asked.units) == 1
    if few or problem.previous or not wishes:
        found = whole(
            asked,
            time,
            wishes,
            near=_agreed(problem),
            workers=workers,
            seed=seed,
            tell=told,
        )
        if few or found.status != "unknown" or not wishes:
            return _schedule(problem, found.status, found.places, found.bound)
    status, places = large(
        problem, time, wishes, workers=workers, seed=seed, tell=told, first=first
    )
    return _schedule(problem, status, places)


def _ask(problem: Problem) -> Asked | Explain:
    faults = problem_faults(problem)
    if faults:
        raise ValueError("; ".join(faults))
    return ask(problem)


def _agreed(problem: Problem) -> dict[str, Planned]:
    """Give the agreed plan as places to begin from."""
    return {
        name: Planned(
            id=name,
            start=fact.start,
            end=fact.start if fact.end is None else fact.end,
            took=fact.took,
            who=fact.who,
        )
        for name, fact in problem.previous.items()
    }


def _schedule(
    problem: Problem,
    status: Status,
    places: Mapping[str, Planned],
    bound: Mapping[str, int] | None = None,
) -> Schedule:
    if not places:
        return Schedule(problem=problem.id, status=status)
    steps = tuple(places[step.id] for step in problem.steps)
    return Schedule(
        problem=problem.id,
        status=status,
        steps=steps,
        objective=objective_of(problem, steps) if steps else Objective(),
        bound=bound or {},
        moved=moved_from(problem, steps),
    )


def latest_start(
    problem: Problem, step: str, *, seconds: float = 10.0, workers: int = 2
) -> int | None:
    """Give the latest start of a step [min] that still works; see `latest_starts`."""
    return latest_starts(problem, (step,), seconds=seconds, workers=workers)[step]


def latest_starts(
    problem: Problem,
    steps: Iterable[str],
    *,
    seconds: float = 10.0,
    workers: int = 2,
) -> dict[str, int | None]:
    """Give, for each step, the latest start [min] over all plans with nothing late.

    Soft due times count as hard here, and no margins are asked for. None where there
    is no plan, or none was found in time. A start that is not proven the latest in
    its share of ``seconds`` is one that works all the same.
    """
    strict = replace(
        problem,
        orders=tuple(replace(order, soft_due=False) for order in problem.orders),
    )
    wanted = tuple(steps)
    asked = _ask(strict)
    if isinstance(asked, Explain):
        return dict.fromkeys(wanted)
    week = model_of(asked, tuple(asked.steps), asked.past)
    if week is None:
        return dict.fromkeys(wanted)
    time = Time(seconds=seconds)
    places = minimise(week, time, time.left, None, workers, 0).places
    latest: dict[str, int | None] = {}
    for number, step in enumerate(wanted):
        if places and step in week.doings:
            share = time.left / (len(wanted) - number)
            cost = -week.doings[step].start
            places = minimise(week, time, share, cost, workers, 0).places or places
        latest[step] = places[step].start if step in places else None
    return latest
