"""The smallest honest trial: the fewest pieces that the tools can make well."""

from collections.abc import Iterator
from dataclasses import dataclass

from demould.amounts.counts.losses import usable
from demould.amounts.layers.piece import fillers_of
from demould.matter.grams import Find
from demould.mise.component import Component
from demould.mise.dessert import Dessert, component_of
from demould.mise.figure import Figure
from demould.mise.kitchen import Kitchen, Tool
from demould.mise.words import Words
from demould.week.making import Amounts, counted


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialPart:
    """One component of the trial: what it needs, what must be made, and why."""

    name: str
    needs: Figure
    make_g: float
    why: Words | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """So many pieces, and what does not shrink with them. `reason` says what sets it."""

    pieces: int
    reason: Words
    parts: tuple[TrialPart, ...]


def trial_of(dessert: Dessert, kitchen: Kitchen, find: Find) -> Trial:
    """Give the fewest pieces for which the filling can be whipped as it will be.

    Where nothing has a least: two, one to cut and one to keep, or one that is cut into
    portions.
    """
    one = counted(dessert, kitchen, find, 1)
    pieces, reason = 2, Words("one to cut, one to keep")
    if dessert.portions is not None and dessert.portions.value > 1:
        pieces, reason = 1, Words("one to cut: nothing here has a least of its own")
    for key in fillers_of(dessert):
        component = component_of(dessert, key)
        for tool in _tools(component, dessert, kitchen):
            fits = _pieces(component, one, tool)
            if fits > pieces:
                pieces = fits
                reason = Words(
                    "{tool}: at least {least:g} g of {name}, which fills {n}",
                    tool=tool.key,
                    least=tool.least.value if tool.least else 0.0,
                    name=component.name,
                    n=fits,
                )
    amounts = counted(dessert, kitchen, find, pieces)
    return Trial(
        pieces=pieces,
        reason=reason,
        parts=tuple(_parts(dessert, kitchen, amounts)),
    )


def _pieces(component: Component, amounts: Amounts, tool: Tool) -> int:
    """Pieces that the least of a tool fills."""
    each = next(make.each for make in amounts.makes if make.component == component.key)
    assert tool.least is not None
    return int(usable(component, tool.least).value / each.value)


def _tools(component: Component, dessert: Dessert, kitchen: Kitchen) -> list[Tool]:
    """Tools with a least that the component is made or whipped in."""
    whips = (
        step
        for step in dessert.method
        if any(need.component == component.key for need in step.needs)
    )
    named = {tool for step in (*component.method, *whips) for tool in step.tools}
    return [
        tool for tool in kitchen.tools if tool.key in named and tool.least is not None
    ]


def _parts(dessert: Dessert, kitchen: Kitchen, amounts: Amounts) -> Iterator[TrialPart]:
    for make in amounts.makes:
        component = component_of(dessert, make.component)
        needs = make.weigh.value
        least = max(
            (
                (tool.least.value, tool.key)
                for tool in _tools(component, dessert, kitchen)
                if tool.least is not None
            ),
            default=(0.0, ""),
        )
        why = None
        if make.made == "as the jug needs" and amounts.jug is not None:
            why = Words(
                "{least:.0f} g only to cover the last piece: it does not shrink",
                least=amounts.jug.least.value,
            )
        elif make.made == "whole batches":
            why = Words("made as it is")
        elif least[0] > needs:
            why = Words(
                "the {tool} needs {least:g} g: keep the rest",
                tool=least[1],
                least=least[0],
            )
        yield TrialPart(
            name=make.name,
            needs=make.weigh,
            make_g=max(needs, least[0]),
            why=why,
        )
