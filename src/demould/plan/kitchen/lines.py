"""One line of a method as steps to plan: hands first, then what stands alone."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import ceil

from demould.mise.component import Component
from demould.mise.figure import Figure
from demould.mise.kitchen import Kitchen
from demould.mise.method import Hands, Step
from demould.plan.kitchen.limits import in_the_cold, shape_of
from demould.plan.kitchen.parts import ToMake
from demould.plan.problem import steps as problem

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
        shape = shape_of(kitchen, make.dessert, component)
        takes = {
            place: in_the_cold(kitchen, place, shape, pieces, ceil(grams))
            for place in (step.place, *(road.place for road in step.roads))
            if place is not None
        }
        laid.append(_wait(make, step, name, label, takes))
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
    minutes = hands_min(hands, pieces, make.order.pieces)
    whole = problem.Step(
        id=name,
        order=(make.order.key,),
        label=label,
        duration=_shared(minutes, people),
        attended="all",
        calendar=OPEN,
        uses=_tools(step),
        hands=people,
        skill=step.skill,
    )
    if people == 1 or not any(person.away for person in kitchen.people):
        return whole
    return replace(
        whole, duration=None, either=tuple(_by_hands(minutes, people)), hands=None
    )


def _shared(minutes: float, people: int) -> problem.Span:
    return problem.exactly(max(1, ceil(minutes / people - 1e-9)))


def _by_hands(minutes: float, people: int) -> Iterator[problem.Road]:
    """All of them, or as many as are there on a day somebody is away."""
    for hands in range(people, 0, -1):
        yield problem.Road(
            name=f"{hands} at it", duration=_shared(minutes, hands), hands=hands
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


Takes = Mapping[str, Mapping[str, int]]
"""What is taken of each cold place, by its name."""


def _wait(
    make: ToMake, step: Step, name: str, label: str, takes: Takes
) -> problem.Step:
    if step.stand:
        least = ceil(step.stand.least.value)
        stands = problem.Step(
            id=name,
            order=(make.order.key,),
            label=label,
            duration=problem.exactly(least),
            uses=_tools(step) | dict(takes.get(step.place or "", {})),
            margin=round(SPARE_OF_A_WAIT * least),
        )
        return _taken_out(stands) if step.tools and step.place is None else stands
    least = min(ceil(road.least.value) for road in step.roads)
    return problem.Step(
        id=name,
        order=(make.order.key,),
        label=label,
        either=tuple(_roads(step, takes)),
        attended="ends",
        attend_end=1,
        hands=0,
        calendar=OPEN,
        margin=round(SPARE_OF_A_WAIT * least),
    )


def _taken_out(stands: problem.Step) -> problem.Step:
    """What is in a tool, and not in the cold, is taken out by somebody on the minute."""
    return replace(stands, attended="ends", attend_end=1, hands=0, calendar=OPEN)


def _roads(step: Step, takes: Takes) -> Iterator[problem.Road]:
    """Each place, at least as long as written, until somebody takes it out."""
    for road in step.roads:
        yield problem.Road(
            name=road.place,
            duration=problem.Span(min=ceil(road.least.value), max=None),
            uses=takes[road.place],
        )
