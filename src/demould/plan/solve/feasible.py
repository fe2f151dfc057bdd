"""Whether there is a plan at all, in a short time."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import Explain
from demould.plan.problem.steps import due_order, roads
from demould.plan.solve.asked import ask
from demould.plan.solve.cpsat.look import look, model_of
from demould.plan.solve.cpsat.walk import walk

if TYPE_CHECKING:
    from demould.plan.answer.schedule import Status
    from demould.plan.problem.steps import Hold, Lag, Problem, Step
    from demould.plan.solve.cpsat.time import Time

A_WALK = 0.01
"""Deterministic seconds for a walk, which finds most plans that there are."""

FEW = 30
FEW_S = 0.4
"""So many deterministic seconds are soon over where steps are as few as these."""


def feasible(problem: Problem, time: Time, seconds: float) -> Status:
    """Say whether there is a plan, in so many deterministic seconds.

    Steps that no wait ties to anything scarce are looked at apart: where they have
    their plan, whether there is one hangs on the others alone.
    """
    few, rest = _parted(problem)
    if rest.steps and few.steps and _searched(rest, time, seconds) == "feasible":
        return _searched(few, time, seconds)
    return _searched(problem, time, seconds)


def _searched(problem: Problem, time: Time, seconds: float) -> Status:
    asked = ask(problem)
    if isinstance(asked, Explain):
        return "infeasible"
    status = walk(asked, time, A_WALK, "early").status
    if status != "unknown":
        return "infeasible" if status == "infeasible" else "feasible"
    week = model_of(asked, tuple(asked.steps), asked.past)
    if week is None:
        return "infeasible"
    seconds = max(seconds, FEW_S * min(1.0, FEW / len(asked.steps)))
    status = look(week, time, seconds, quick=True, proving=True).status
    return "feasible" if status == "optimal" else status


def _parted(problem: Problem) -> tuple[Problem, Problem]:
    """Part the steps that waits tie to something scarce from all others."""
    scarce = _scarce(problem)
    held = {h.from_ for h in problem.holds if h.resource in scarce}
    held |= {h.to for h in problem.holds if h.resource in scarce}
    tied = {
        step.id
        for step in problem.steps
        if step.id in held
        or (problem.people and step.attended != "none")
        or any(scarce & {*road.uses, *road.attend_uses} for road in roads(step))
    }
    ties: tuple[Lag | Hold, ...] = (*problem.lags, *problem.holds)
    grown = True
    while grown:
        before = len(tied)
        for tie in ties:
            if tie.from_ in tied or tie.to in tied:
                tied |= {n for n in (tie.from_, tie.to) if due_order(n) is None}
        grown = len(tied) > before
    return _of(problem, tied), _of(problem, {s.id for s in problem.steps} - tied)


def _scarce(problem: Problem) -> set[str]:
    """Name what could not be taken by all that want it at once."""
    wanted: Counter[str] = Counter()
    for step in problem.steps:
        for name, amount in _most(step).items():
            wanted[name] += amount
    for hold in problem.holds:
        wanted[hold.resource] += hold.amount
    return {
        one.name
        for one in problem.resources
        if wanted[one.name]
        > min([one.capacity, *(other.capacity for other in one.profile)])
    }


def _most(step: Step) -> Counter[str]:
    most: Counter[str] = Counter()
    for road in roads(step):
        most |= Counter(road.uses) + Counter(road.attend_uses)
    return most


def _of(problem: Problem, names: set[str]) -> Problem:
    def inside(name: str) -> bool:
        return due_order(name) is not None or name in names

    return replace(
        problem,
        steps=tuple(step for step in problem.steps if step.id in names),
        lags=tuple(g for g in problem.lags if inside(g.from_) and inside(g.to)),
        holds=tuple(h for h in problem.holds if inside(h.from_) and inside(h.to)),
        done={name: fact for name, fact in problem.done.items() if name in names},
    )
