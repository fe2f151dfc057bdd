"""A first plan in one walk: every step as late, or as early, as the others leave it.

The solver walks the minutes from the end, placing what may be last as late as it can
be, or from the beginning, and goes back only where it meets a contradiction. Where
room is not very scarce that gives a plan of the whole problem almost at once: a fresh
one from the end, one with few sessions from the beginning.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from ortools.sat.python import cp_model

from demould.plan.solve.cpsat.costs import COSTS
from demould.plan.solve.cpsat.look import Seen, look, model_of

if TYPE_CHECKING:
    from demould.plan.solve.asked import Asked
    from demould.plan.solve.cpsat.time import Time

Way = Literal["late", "early"]


def walk(
    asked: Asked,
    time: Time,
    seconds: float,
    way: Way,
    *,
    sessions: int | None = None,
    seed: int = 0,
) -> Seen:
    """Place all steps in one walk, in at most so many sessions where it is said."""
    week = model_of(asked, tuple(asked.steps), asked.past)
    if week is None:
        return Seen(status="infeasible", places={})
    if sessions is not None:
        count, _, _ = COSTS["sessions"](week)
        week.model.add(count <= sessions)
    if way == "late":
        edges = [
            edge
            for doing in week.doings.values()
            for edge in (doing.start, doing.end)
            if isinstance(edge, cp_model.IntVar)
        ]
        week.model.add_decision_strategy(
            edges, cp_model.CHOOSE_HIGHEST_MAX, cp_model.SELECT_MAX_VALUE
        )
    return look(week, time, seconds, seed=seed, walking=True)
