"""Several wishes as one sum, first things first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from demould.plan.solve.cpsat.costs import COSTS, moved

if TYPE_CHECKING:
    from collections.abc import Sequence

    from demould.plan.solve.cpsat.unknown import Sum
    from demould.plan.solve.cpsat.week import Week
    from demould.plan.solve.wish import Wish

HEAVIEST = 10**13
"""No weight is larger, so that no sum runs over."""


def combined(week: Week, wishes: Sequence[Wish]) -> Sum:
    """Give one sum in which no later wish outweighs an earlier one.

    ``tidy`` is left out: it is for whole plans. Where the weights would grow past all
    bounds, the last that fit are as heavy as can be.
    """
    costs = [COSTS[wish](week) for wish in wishes if wish != "tidy"]
    if week.asked.problem.previous:
        costs.insert(0, moved(week))
    total: Sum = 0
    weight = 1
    for cost, least, most in reversed(costs):
        if isinstance(cost, int) or least == most:
            continue
        total += weight * cost
        weight = min(HEAVIEST, weight * (most - least + 1))
    return total
