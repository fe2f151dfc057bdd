"""Windows nobody may work in, for the solver."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ortools.sat.python import cp_model

if TYPE_CHECKING:
    from collections.abc import Collection

    from demould.plan.problem.steps import Window
    from demould.plan.solve.cpsat.week import Week


def close(week: Week, windows: Collection[tuple[str, Window]]) -> None:
    """Let no free step have hands in these windows of its calendar."""
    for doing in week.doings.values():
        shut = [
            [window.open, window.close - 1]
            for name, window in windows
            if name == doing.step.calendar
        ]
        outside = cp_model.Domain.from_intervals(shut).complement()
        for part in doing.parts if shut else ():
            there = [] if part.there is True else [part.there]
            week.model.add_linear_expression_in_domain(
                part.start, outside
            ).only_enforce_if(*there)
