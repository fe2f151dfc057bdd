"""One line of a method as steps to plan: hands first, then what stands alone."""

from collections.abc import Iterator
from dataclasses import replace
from math import ceil

from demould.mise.component import Component
from demould.mise.figure import Figure
from demould.mise.kitchen import Kitchen
from demould.mise.method import Hands, Step
from demould.plan import steps as problem
from demould.plan.parts import ToMake

OPEN = "open"

SPARE_OF_A_WAIT = 0.2
"""The share of an unattended wait that is wished for as spare time after it."""


def plan_steps(
    kitchen: Kitchen,
    make: ToMake,
    component: Component | None,
    step: Step,
    *,
    name: str,
    pieces: int,
    earliest: int | None,
) -> tuple[problem.Step, ...]:
    """Give the hands of a line, then its wait, as steps of the problem."""
    label = f"{component.name if component else make.dessert.name}: {step.key}"
    grams = pieces * (
        make.part_g.get(component.key, 0.0) if component else make.piece_g
    )
    laid = []
    if step.hands:
        laid.append(_hands(kitchen, make, step, step.hands, name, label, pieces))
    if step.stand or step.roads:
        name = f"{name}.stands" if step.hands else name
        laid.append(_wait(kitchen, make, step, name, label, ceil(grams)))
    if laid and earliest is not None:
        laid[0] = replace(laid[0], earliest=earliest)
    return tuple(laid)


def _tools(step: Step) -> dict[str, int]:
    return {f"tool:{tool}": 1 for tool in step.tools}


def _hands(
    kitchen: Kitchen,
    make: ToMake,
    step: Step,
    hands: Hands,
    name: str,
    label: str,
    pieces: int,
) -> problem.Step:
    people = max(1, len(kitchen.people)) if hands.all_hands else 1
    minutes = hands_min(hands, pieces, make.order.pieces) / people
    return problem.Step(
        id=name,
        order=(make.order.key,),
        label=label,
        duration=problem.exactly(max(1, ceil(minutes - 1e-9))),
        attended="all",
        calendar=OPEN,
        uses=_tools(step),
        hands=people,
    )


def hands_min(hands: Hands, pieces: int, portions: int) -> float:
    """Give the person-minutes of a step over so many pieces and portions. [min]."""

    def of(figure: Figure | None) -> float:
        return figure.value if figure else 0.0

    return (
        of(hands.fixed)
        + of(hands.per_piece) * pieces
        + of(hands.per_portion) * portions
    )


def _wait(
    kitchen: Kitchen, make: ToMake, step: Step, name: str, label: str, grams: int
) -> problem.Step:
    if step.stand:
        least = ceil(step.stand.least.value)
        return problem.Step(
            id=name,
            order=(make.order.key,),
            label=label,
            duration=problem.exactly(least),
            uses=_tools(step),
            margin=round(SPARE_OF_A_WAIT * least),
        )
    least = min(ceil(road.least.value) for road in step.roads)
    return problem.Step(
        id=name,
        order=(make.order.key,),
        label=label,
        either=tuple(_roads(kitchen, step, grams)),
        attended="ends",
        attend_end=1,
        hands=0,
        calendar=OPEN,
        margin=round(SPARE_OF_A_WAIT * least),
    )


def _roads(kitchen: Kitchen, step: Step, grams: int) -> Iterator[problem.Road]:
    """Each place, at least as long as written, until somebody takes it out."""
    limited = {place.key for place in kitchen.cold if place.load is not None}
    for road in step.roads:
        yield problem.Road(
            name=road.place,
            duration=problem.Span(min=ceil(road.least.value), max=None),
            uses={f"cold:{road.place}": grams} if road.place in limited else {},
        )
