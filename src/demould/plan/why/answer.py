"""A plan, or why there is none: the whole answer to a problem in the time given."""

from __future__ import annotations

import time
from dataclasses import replace
from typing import TYPE_CHECKING

from demould.plan.solve.search import solve
from demould.plan.why.explain import explain

if TYPE_CHECKING:
    from demould.plan.answer.schedule import Schedule
    from demould.plan.problem.steps import Problem

FOR_A_PLAN = 0.6
"""The part of the time for finding a plan, where there may be none."""

LEAST_S = 0.5
"""Seconds for the reasons, however long the search took."""


def answer(problem: Problem, *, seconds: float, seed: int = 0) -> Schedule:
    """Plan a problem; where there is no plan, say what meets and what makes room.

    Raises
    ------
    ValueError
        If the problem refers to what it does not have.
    """
    began = time.monotonic()
    found = solve(problem, seconds=seconds, seed=seed, steady=False)
    if found.steps or not problem.steps:
        return found
    left = max(LEAST_S, seconds - (time.monotonic() - began))
    why = explain(problem, seconds=left)
    status = "infeasible" if why.conflict else found.status
    return replace(found, status=status, explain=why)
