"""One look of the solver at the model of some steps."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, isfinite
from typing import TYPE_CHECKING

from ortools.sat.python import cp_model

from demould.plan.answer.schedule import Planned
from demould.plan.solve.cpsat.change import change_over
from demould.plan.solve.cpsat.share import share_people, share_resource
from demould.plan.solve.cpsat.week import Week, week_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from demould.plan.answer.schedule import Status
    from demould.plan.solve.asked import Asked
    from demould.plan.solve.cpsat.time import Time
    from demould.plan.solve.cpsat.unknown import Doing, Sum, When


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What a look found: the places of the free steps, what they cost, and a bound."""

    status: Status
    places: Mapping[str, Planned]
    value: int = 0
    bound: int = 0


def model_of(
    asked: Asked, free: Iterable[str], placed: Mapping[str, Planned]
) -> Week | None:
    """Give the whole model of the free steps beside those placed; None: no room."""
    week = week_of(asked, free, placed)
    if week is None:
        return None
    for resource in asked.problem.resources:
        share_resource(week, resource)
    share_people(week)
    for change in asked.problem.changeovers:
        change_over(week, change)
    return week


def hint(week: Week, places: Mapping[str, Planned]) -> None:
    """Let the solver begin from these places."""
    model = week.model
    model.clear_hints()  # type: ignore[no-untyped-call]
    hinted: set[int] = set()

    def say(var: Sum | When, value: int) -> None:
        if isinstance(var, cp_model.IntVar) and var.index not in hinted:
            hinted.add(var.index)
            model.add_hint(var, value)

    for name, doing in week.doings.items():
        place = places.get(name)
        if place is None:
            continue
        say(doing.start, place.start)
        say(doing.end, place.end)
        for road, taken in doing.took if len(doing.took) > 1 else ():
            say(taken, road.name == place.took)
        for who, there in doing.who.items():
            say(there, who in place.who)


def look(
    week: Week,
    time: Time,
    seconds: float,
    *,
    cost: Sum | None = None,
    workers: int = 1,
    seed: int = 0,
    walking: bool = False,
    quick: bool = False,
    proving: bool = False,
) -> Seen:
    """Look for places of the free steps, with ``cost`` made small where there is one.

    With several workers in steady time, they take turns. A ``quick`` look is laid out
    fast, and its seconds are the solver's deterministic ones in any time. ``proving``
    leans on linear bounds, which shows soonest that few moulds are too few. What is
    found is the hint for the next look.
    """
    if time.left <= 0:
        return Seen(status="unknown", places={})
    solver = cp_model.CpSolver()
    solver.parameters.random_seed = seed
    solver.parameters.num_workers = workers
    solver.parameters.interleave_search = time.steady and workers > 1
    if quick or walking:
        solver.parameters.max_presolve_iterations = 1
        solver.parameters.cp_model_probing_level = 0
        solver.parameters.symmetry_level = 0
        time.quick(solver, seconds)
    else:
        time.limit(solver, seconds)
    if proving:
        solver.parameters.linearization_level = 2
    if walking:
        solver.parameters.search_branching = cp_model.FIXED_SEARCH
    if cost is not None:
        week.model.minimize(cost)
    time.stop.running = solver
    status = solver.solve(week.model)
    time.stop.running = None
    time.spend(solver, quick=quick or walking)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        known = status == cp_model.INFEASIBLE
        bound = 0
        if cost is not None and not known and isfinite(solver.best_objective_bound):
            bound = ceil(solver.best_objective_bound - 1e-6)
        return Seen(status="infeasible" if known else "unknown", places={}, bound=bound)
    _hint_all(week, solver)
    return Seen(
        status="optimal" if status == cp_model.OPTIMAL else "feasible",
        places={name: _place(solver, d) for name, d in week.doings.items()},
        value=round(solver.objective_value),
        bound=ceil(solver.best_objective_bound - 1e-6),
    )


def _hint_all(week: Week, solver: cp_model.CpSolver) -> None:
    week.model.clear_hints()  # type: ignore[no-untyped-call]
    for index, value in enumerate(solver.response_proto.solution):
        week.model.add_hint(week.model.get_int_var_from_proto_index(index), value)


def _place(solver: cp_model.CpSolver, doing: Doing) -> Planned:
    took = next(road for road, taken in doing.took if solver.boolean_value(taken))
    segments = tuple(
        (solver.value(part.start), solver.value(part.end))
        for part in doing.parts
        if solver.boolean_value(part.there)
    )
    segments = _joined((*doing.before, *segments)) if doing.step.interruptible else ()
    return Planned(
        id=doing.step.id,
        start=solver.value(doing.start),
        end=solver.value(doing.end),
        took=took.name if doing.step.either else None,
        who=tuple(
            name for name, there in doing.who.items() if solver.boolean_value(there)
        ),
        segments=segments if len(segments) > 1 else (),
    )


def _joined(segments: tuple[tuple[int, int], ...]) -> tuple[tuple[int, int], ...]:
    joined: list[tuple[int, int]] = []
    for begin, until in segments:
        if joined and joined[-1][1] == begin:
            joined[-1] = (joined[-1][0], until)
        else:
            joined.append((begin, until))
    return tuple(joined)
