"""What is only assumed in a dessert and its kitchen, and how to put it at a bound."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from demould.matter.grams import counted
from demould.mise.dessert import Dessert
from demould.mise.figure import Assumed, Figure, Path, figures_in, put
from demould.mise.kitchen import Kitchen


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """One assumed figure, where what stands for it is written, and that at its bounds.

    For the weight of one leaf or egg, that is the amount of its formula line.
    """

    figure: Figure
    in_kitchen: bool
    path: Path
    low: Figure
    high: Figure


def doubts_of(dessert: Dessert, kitchen: Kitchen) -> Iterator[Doubt]:
    """Walk every assumed figure, and every assumed unit weight of a counted line."""
    yield from _assumed(dessert, in_kitchen=False)
    yield from _assumed(kitchen, in_kitchen=True)
    for number, component in enumerate(dessert.components):
        for line, one in enumerate(component.formula):
            each = counted(one)
            if each is None or one.amount is None:
                continue
            assert isinstance(each.origin, Assumed)
            path = ("components", number, "formula", line, "amount")
            yield Doubt(
                figure=each,
                in_kitchen=False,
                path=path,
                low=_times(one.amount, each.origin.low / each.value),
                high=_times(one.amount, each.origin.high / each.value),
            )


def put_at(
    dessert: Dessert, kitchen: Kitchen, doubt: Doubt, bound: Figure
) -> tuple[Dessert, Kitchen]:
    """Give both with the doubt at one of its bounds."""
    if doubt.in_kitchen:
        return dessert, put(kitchen, doubt.path, bound)
    return put(dessert, doubt.path, bound), kitchen


def _assumed(thing: object, *, in_kitchen: bool) -> Iterator[Doubt]:
    for path, figure in figures_in(thing):
        if isinstance(figure.origin, Assumed):
            yield Doubt(
                figure=figure,
                in_kitchen=in_kitchen,
                path=path,
                low=replace(figure, value=figure.origin.low),
                high=replace(figure, value=figure.origin.high),
            )


def _times(figure: Figure, factor: float) -> Figure:
    return replace(figure, value=figure.value * factor)
