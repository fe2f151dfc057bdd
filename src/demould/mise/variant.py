"""A dessert with one of its variants in place."""

from collections.abc import Iterable
from dataclasses import replace

from demould.larder.names import plain
from demould.mise.component import Component
from demould.mise.dessert import Dessert, Swap
from demould.mise.formula import FormulaLine
from demould.mise.resolve import resolve


def as_variant(dessert: Dessert, name: str | None, own: Iterable[str]) -> Dessert:
    """Put the swaps of the variant of that name in; None leaves it as written.

    `own` are the names of the kitchen's own larder, which come before the table's.
    """
    if name is None:
        return dessert
    variant = next(one for one in dessert.variants if one.name == name)
    components, own = dessert.components, tuple(own)
    for swap in variant.swaps:
        components = tuple(
            _swapped(one, swap, own) if one.key == swap.component else one
            for one in components
        )
    return replace(dessert, components=components)


def _swapped(component: Component, swap: Swap, own: tuple[str, ...]) -> Component:
    """Put what comes in where what goes out first stood, and count the lines anew.

    All lines of what goes out go: sugar may stand in two, and comes in once.
    """
    lines: list[FormulaLine] = []
    still_to_come = True
    for line in component.formula:
        if plain(line.what) != plain(swap.out):
            lines.append(line)
            continue
        if not still_to_come:
            continue
        still_to_come = False
        lines.extend(
            FormulaLine(
                ordinal=line.ordinal,
                amount=amount,
                what=what,
                ingredient=resolve(what, own),
                line=swap.line,
            )
            for amount, what in swap.into
        )
    return replace(
        component,
        formula=tuple(
            replace(line, ordinal=ordinal) for ordinal, line in enumerate(lines, 1)
        ),
    )
