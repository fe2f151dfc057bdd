"""What comes into the house after it is needed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from demould.plan.problem.telling import called, clock
from demould.plan.quick.limit import Limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from demould.plan.problem.steps import Problem
    from demould.plan.quick.chain import Chains
    from demould.plan.solve.net import Limits


def comes_too_late(problem: Problem, limits: Limits, chains: Chains) -> Iterator[Limit]:
    """Give every step that cannot begin before its latest start."""
    for step in problem.steps:
        last = limits.last[step.id, "start"]
        if step.earliest is not None and step.earliest > last:
            text = (
                f"{called(step)} waits for a delivery until"
                f" {clock(problem, step.earliest)}, and has to begin by"
                f" {clock(problem, chains.open_until(last))}"
            )
            yield Limit(
                over="delivery",
                id=step.id,
                orders=step.order,
                text=text,
                help="another supplier, what is in stock, or a later day",
            )
