"""What is to be made, and what each planned step is in the dessert's own words."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.method import Step
from demould.mise.order import Order


@dataclass(frozen=True, slots=True, kw_only=True)
class ToMake:
    """One order, worked out far enough to be planned.

    `pieces` is what is made, spares included; `rounds` are the fillings of the
    dessert's mould, `own_rounds` those of a component's own. `piece_g` is one piece as
    it goes into the cold, `part_g` each component in it. [g] `arrivals`: a component's
    first step cannot start before what it needs is delivered. `counts` are pieces of a
    component that are still to be made, where some are frozen already; the rounds then
    hold fewer than `pieces`. `jug` is the component
    that is dipped into, and the width of its jug. [mm]
    """

    order: Order
    dessert: Dessert
    pieces: int
    rounds: tuple[int, ...]
    own_rounds: Mapping[str, tuple[int, ...]] = field(default_factory=dict)
    piece_g: float
    part_g: Mapping[str, float] = field(default_factory=dict)
    arrivals: Mapping[str, datetime] = field(default_factory=dict)
    counts: Mapping[str, int] = field(default_factory=dict)
    jug: tuple[str, float] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A planned step as a line of a method.

    `component` is None for a step of the piece. `pieces` go through it; `round` counts
    from 1, or is 0 where the step is done once for all. `stands` marks the unattended
    part of a line.
    """

    make: ToMake
    component: Component | None
    step: Step
    round: int
    pieces: int
    stands: bool = False


def rounds_of(make: ToMake, component: Component | None) -> tuple[int, ...]:
    """Give the rounds a component goes by: its own mould's, else the dessert's."""
    if component is None:
        return make.rounds
    return make.own_rounds.get(component.key, make.rounds)


def count_of(make: ToMake, component: Component | None) -> int:
    """Give how many pieces of a component are made, or are finished in all."""
    if component is None:
        return make.pieces
    return make.counts.get(component.key, make.pieces)


def step_name(make: ToMake, component: Component | None, number: int, key: str) -> str:
    """Name a step for good: order.dessert.variant.component.round.step."""
    return ".".join(
        (
            make.order.key,
            make.dessert.key,
            make.order.variant or "as-written",
            component.key if component else "piece",
            str(number),
            key,
        )
    )
