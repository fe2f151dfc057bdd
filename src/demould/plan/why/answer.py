"""A plan, or why there is none: the whole answer to a problem in the time given."""

from __future__ import annotations

import time
from dataclasses import replace
from typing import TYPE_CHECKING

from demould.plan.solve.search import solve
from demould.plan.why.explain import explain

if TYPE_CHECKING:
    from collections.abc import Callable

    from demould.plan.answer.schedule import Schedule
    from demould.plan.problem.steps import Problem
    from demould.plan.solve.cpsat.time import Stop

FOR_A_FIRST_PLAN = 0.4
"""The part of the time for a first plan; where there is none by then, perhaps none is."""

LEAST_S = 1.0
"""Seconds for the reasons, however long the search took."""


def answer(
    problem: Problem,
    *,
    seconds: float,
    seed: int = 0,
    stop: Stop | None = None,
    tell: Callable[[Schedule], None] | None = None,
) -> Schedule:
    """Plan a problem; where there is no plan, say what meets and what makes room.

    Raises
    ------
    ValueError
        If the problem refers to what it does not have.
    """
    began = time.monotonic()
    found = solve(
        problem,
        seconds=seconds,
        seed=seed,
        steady=False,
        stop=stop,
        tell=tell,
        first_in=FOR_A_FIRST_PLAN,
    )
    if found.steps or not problem.steps:
        return found
    left = max(LEAST_S, seconds - (time.monotonic() - began))
    why = explain(problem, seconds=left)
    status = "infeasible" if why.conflict else found.status
    return replace(found, status=status, explain=why)
