"""The search for a plan, with the CP-SAT solver.

The wishes are met one after the other: each is made as good as it gets in its share of
the time, then kept that good while the next is looked at, starting from the plan found.
Time is counted in the solver's own deterministic seconds, so that the same problem,
seed and seconds give the same plan on a busy machine too.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil

from ortools.sat.python import cp_model

from demould.plan.answer.schedule import (
    Explain,
    Planned,
    Schedule,
    Status,
    objective_of,
)
from demould.plan.problem.faults import problem_faults
from demould.plan.problem.steps import Problem
from demould.plan.solve.cpsat.share import share_people, share_resource
from demould.plan.solve.cpsat.week import Doing, Sum, Week, week_of
from demould.plan.solve.cpsat.wishes import COSTS, DEFAULT_WISHES, Wish
from demould.plan.solve.lags import Bounds, bounds

STEADY = 0.3
"""Deterministic seconds in a real one, measured with two workers on two cores."""

ALONE = 0.4
"""The part of each search that one strategy has to itself."""

ALONE_FOR: Mapping[Wish, float] = {"freshness": 0.9, "tidy": 1.0}
"""Where turns of many strategies gave worse plans in the same time, on twelve orders."""

TIDYING = 0.02
"""The part of the time for ``tidy``, which is no promise and needs no proof."""


def solve(
    problem: Problem,
    *,
    seconds: float = 10.0,
    seed: int = 0,
    wishes: Sequence[Wish] = DEFAULT_WISHES,
    workers: int = 2,
) -> Schedule:
    """Plan the problem, the wishes met one after the other.

    Parameters
    ----------
    problem
        What to plan. Hard due times are kept, soft ones are wishes.
    seconds
        The solver's deterministic seconds for all wishes together; about real ones.
    seed
        Another seed may give another plan that is as good.
    wishes
        What to make small, first things first.
    workers
        Threads. The plan does not depend on them.

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
    limits = _limits(problem)
    if isinstance(limits, Explain):
        return Schedule(problem=problem.id, status="infeasible", explain=limits)
    week = _week(problem, limits)
    search = _Search(week=week, seed=seed, workers=workers, left=seconds * STEADY)
    status = search.run(search.left)
    if search.plan is None:
        return Schedule(problem=problem.id, status=status)
    bound: dict[str, int] = {}
    tidying = search.left * TIDYING
    promises = [wish for wish in wishes if wish != "tidy"]
    for wish in wishes:
        cost = COSTS[wish](week)
        if isinstance(cost, int):
            continue
        alone = ALONE_FOR.get(wish, ALONE)
        if wish == "tidy":
            search.minimise(cost, tidying, alone)
            continue
        share = len(promises) - promises.index(wish)
        reached = search.minimise(cost, search.left / share, alone)
        status = "feasible" if reached != "optimal" else status
        if reached != "unknown":
            bound[wish] = search.bound
    return Schedule(
        problem=problem.id,
        status=status,
        steps=search.plan,
        objective=objective_of(problem, search.plan),
        bound=bound,
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
    asked = tuple(steps)
    limits = _limits(strict)
    if isinstance(limits, Explain):
        return dict.fromkeys(asked)
    week = _week(strict, limits)
    search = _Search(week=week, seed=0, workers=workers, left=seconds * STEADY)
    search.run(search.left)
    if search.plan is None:
        return dict.fromkeys(asked)
    latest: dict[str, int | None] = {}
    for number, step in enumerate(asked):
        search.aim(-week.doings[step].start)
        search.run(search.left / (len(asked) - number))
        latest[step] = next(place.start for place in search.plan if place.id == step)
    return latest


@dataclass(slots=True, kw_only=True)
class _Search:
    """The solver at work: the best plan so far, and the time that is left."""

    week: Week
    seed: int
    workers: int
    left: float
    plan: tuple[Planned, ...] | None = None
    bound: int = 0
    value: int = 0

    def aim(self, cost: Sum) -> None:
        """Say what to make small, and start from the plan so far."""
        self.week.model.minimize(cost)

    def minimise(self, cost: Sum, limit: float, alone: float) -> Status:
        """Make a cost small, then keep it so for all that comes after."""
        self.aim(cost)
        status = self.run(limit, alone)
        if status != "unknown":
            self.week.model.add(cost <= self.value)
        return status

    def run(self, limit: float, alone: float = ALONE) -> Status:
        """Search for ``limit`` steady seconds; keep the best plan where one is found.

        One strategy alone closes what is easy, or finds a good first plan; only what
        it leaves open is worth the turns that many strategies take.
        """
        before = self.left
        status = self._look(limit * alone, together=False)
        if status in ("optimal", "infeasible"):
            return status
        bound, first = self.bound, (self.value, self.plan)
        joint = self._look(limit - (before - self.left), together=True)
        if status == "unknown":
            return joint
        self.bound = max(self.bound, bound)
        self.value, self.plan = min(
            first, (self.value, self.plan), key=lambda kept: kept[0]
        )
        return "optimal" if joint == "optimal" else "feasible"

    def _look(self, limit: float, *, together: bool) -> Status:
        solver = cp_model.CpSolver()
        solver.parameters.random_seed = self.seed
        solver.parameters.num_workers = self.workers if together else 1
        solver.parameters.interleave_search = together
        solver.parameters.max_deterministic_time = max(limit, 0.01)
        status = solver.solve(self.week.model)
        self.left -= solver.response_proto.deterministic_time
        if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return "infeasible" if status == cp_model.INFEASIBLE else "unknown"
        self.plan = tuple(_planned(solver, d) for d in self.week.doings.values())
        self.value = round(solver.objective_value)
        self.bound = ceil(solver.best_objective_bound - 1e-6)
        self.week.model.clear_hints()  # type: ignore[no-untyped-call]
        for index, value in enumerate(solver.response_proto.solution):
            self.week.model.add_hint(
                self.week.model.get_int_var_from_proto_index(index), value
            )
        return "optimal" if status == cp_model.OPTIMAL else "feasible"


def _planned(solver: cp_model.CpSolver, doing: Doing) -> Planned:
    took = next(road for road, taken in doing.took if solver.boolean_value(taken))
    return Planned(
        id=doing.step.id,
        start=solver.value(doing.start),
        end=solver.value(doing.end),
        took=took.name if doing.step.either else None,
        who=tuple(
            name for name, there in doing.who.items() if solver.boolean_value(there)
        ),
    )


def _limits(problem: Problem) -> Bounds | Explain:
    faults = problem_faults(problem)
    if faults:
        raise ValueError("; ".join(faults))
    return bounds(problem)


def _week(problem: Problem, limits: Bounds) -> Week:
    week = week_of(problem, limits)
    for resource in problem.resources:
        share_resource(week, resource)
    share_people(week)
    return week
