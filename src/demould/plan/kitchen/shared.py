"""Which batches two orders of one dessert share: made once, for the first of them."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import groupby

from demould.amounts.shape.volume import mould_of
from demould.mise.component import Component
from demould.mise.dessert import FromMould
from demould.mise.kitchen import Kitchen
from demould.plan.kitchen.parts import ToMake, count_of

WITHOUT_A_HOLD = timedelta(hours=12)
"""So far apart may two orders share what says nothing about how long it holds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """One batch for several orders; `lead` is the first due, under whose name it goes.

    `pieces` are those of all of them, `arrives` when the last thing it needs is there.
    """

    lead: str
    orders: tuple[str, ...]
    pieces: int
    arrives: datetime | None


def shared_batches(
    kitchen: Kitchen, makes: Sequence[ToMake]
) -> Mapping[str, Mapping[str, Shared]]:
    """Give, by order and component, the batch it has a part in, where there is one.

    Shared is what is made in one go for all: not by rounds, and if it is frozen in a
    mould of its own, all of it at once. What is dipped into is melted for each: its jug
    is tied to one dipping.
    """
    found: dict[str, dict[str, Shared]] = {}
    for alike in _alike(makes):
        for component in alike[0].dessert.components:
            for together in _within_hold(component, alike):
                batch = _batch(kitchen, component, together)
                for make in together if batch else ():
                    assert batch is not None
                    found.setdefault(make.order.key, {})[component.key] = batch
    return found


def _alike(makes: Sequence[ToMake]) -> Iterator[list[ToMake]]:
    def what(make: ToMake) -> tuple[str, str]:
        return make.dessert.key, make.order.variant or ""

    for _, group in groupby(sorted(makes, key=what), key=what):
        yield sorted(group, key=lambda make: make.order.due)


def _within_hold(component: Component, makes: list[ToMake]) -> Iterator[list[ToMake]]:
    """Part the orders where the hold does not reach from the first of them."""
    longest = _hold(component)
    together: list[ToMake] = []
    for make in makes:
        if not count_of(make, component):
            continue
        if together and make.order.due - together[0].order.due > longest:
            yield together
            together = []
        together.append(make)
    yield together


def _hold(component: Component) -> timedelta:
    """Give the shortest of what its lines say: a hold, or the most a stand may last.

    Of a stand what comes over its least is what is left for the others.
    """
    holds = [step.hold.value for step in component.method if step.hold]
    holds += [
        step.stand.most.value - step.stand.least.value
        for step in component.method
        if step.stand and step.stand.most
    ]
    if any(step.within for step in component.method):
        return timedelta(0)
    return timedelta(minutes=min(holds)) if holds else WITHOUT_A_HOLD


def _batch(
    kitchen: Kitchen, component: Component, makes: list[ToMake]
) -> Shared | None:
    if len(makes) < 2 or not component.method:
        return None
    pieces = sum(count_of(make, component) for make in makes)
    if any(step.each_round for step in component.method):
        return None
    if any(make.jug and make.jug[0] == component.key for make in makes):
        return None
    moulds = [
        mould_of(kitchen, layer.fill.mould)
        for layer in makes[0].dessert.layers
        if layer.component == component.key and isinstance(layer.fill, FromMould)
    ]
    if any(pieces > mould.at_once for mould in moulds):
        return None
    arrives = [
        make.arrivals[component.key] for make in makes if component.key in make.arrivals
    ]
    return Shared(
        lead=makes[0].order.key,
        orders=tuple(make.order.key for make in makes),
        pieces=pieces,
        arrives=max(arrives, default=None),
    )
