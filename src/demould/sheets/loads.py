"""What a full round takes of a cold place that has a cycle by weight."""

from collections.abc import Iterator

from demould.mise.words import Words
from demould.plan.kitchen.parts import Part
from demould.plan.problem.steps import Problem, Road, roads
from demould.week.making import Making
from demould.week.timing import Timing


def loads(making: Making, timing: Timing) -> Iterator[tuple[str, Words]]:
    """Walk the places with a cycle the first round may freeze in: kilograms, levels."""
    problem = timing.laid.problem
    for step in problem.steps:
        part = timing.laid.parts[step.id]
        if _first_freeze(making, part):
            for road in roads(step):
                told = "; ".join(_told(problem, road))
                if any(name.startswith("cold:") for name in road.uses):
                    yield road.name, Words("{n}: {told}", n=part.pieces, told=told)


def _first_freeze(making: Making, part: Part) -> bool:
    return (
        part.make.order.key == making.order.key
        and part.component is None
        and bool(part.step.roads)
        and part.round <= 1
    )


def _told(problem: Problem, road: Road) -> Iterator[str]:
    has = {one.name: one.capacity for one in problem.resources}
    for name, amount in road.uses.items():
        kind = name.partition(":")[0]
        if kind == "cold":
            yield f"{amount / 1000:.1f} kg of {has[name] / 1000:g} kg a cycle"
        elif kind == "shelf":
            yield f"{amount} of {has[name]} levels"
