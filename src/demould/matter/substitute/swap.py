"""One ingredient of a component for another: grams that hold what is chosen."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from demould.larder.ingredient import Ingredient
from demould.larder.read import agent_of
from demould.matter.grams import Find, weighed_lines
from demould.matter.substitute.balance import (
    HELPER,
    Moving,
    balanced,
)
from demould.matter.substitute.held import HELD, HELPERS
from demould.matter.substitute.moving import NEW, moving_lines, same_as_a_line
from demould.mise.component import Component
from demould.mise.figure import Figure, Stated
from demould.mise.formula import FormulaLine

NEGLIGIBLE = 0.003
"""A helper under this share of the batch is left out [g/g]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewLine:
    """One line after the swap; `before_g` None where it is new, `after_g` 0 where gone."""

    what: str
    ingredient: str
    before_g: float | None
    after_g: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Swapped:
    """The component with the other ingredient in, gram for gram and balanced.

    `held` are the words of what was held; `find` knows the new ingredient too.
    """

    component: Component
    gram_for_gram: Component
    balanced: Component
    lines: tuple[NewLine, ...]
    held: tuple[str, ...]
    find: Find


def swapped(
    component: Component,
    outgoing: str,
    new: Ingredient,
    held: Sequence[str],
    find: Find,
) -> Swapped:
    """Put `new` in for every line of the ingredient `outgoing`, holding `held`.

    Raises
    ------
    ValueError
        If nothing of it can be weighed, a word of `held` is not known, or either is a
        setting agent: those go by `setting agents`, never gram for gram.
    """
    unknown = [name for name in held if name not in HELD]
    if unknown:
        raise ValueError(f"{unknown[0]!r} cannot be held; any of {', '.join(HELD)} can")
    if agent_of(find(outgoing)) or agent_of(new):
        raise ValueError("a setting agent is never exchanged gram for gram")
    weighed = {
        line.ordinal: grams.value
        for line, grams in weighed_lines(component.formula, find)
    }
    gone = [
        line
        for line in component.formula
        if line.ingredient == outgoing
        and line.ordinal in weighed
        and not line.strained_out
    ]
    if not gone:
        raise ValueError(f"nothing of it in {component.name} can be weighed")
    look = _knows(find, new)
    straight = _with(component, gone, new, weighed, 1.0)
    grams, helpers = _balance(component, gone, new, held, find, weighed)
    total = sum(weighed[line.ordinal] for line in gone)
    moved = _with(component, gone, new, weighed, grams[NEW] / total)
    moved = _moved(moved, grams, helpers, find)
    return Swapped(
        component=component,
        gram_for_gram=straight,
        balanced=moved,
        lines=tuple(_lines(component, moved, look)),
        held=tuple(held),
        find=look,
    )


def _knows(find: Find, new: Ingredient) -> Find:
    def look(name: str) -> Ingredient:
        return new if name == new.id else find(name)

    return look


def _balance(
    component: Component,
    gone: Sequence[FormulaLine],
    new: Ingredient,
    held: Sequence[str],
    find: Find,
    weighed: dict[int, float],
) -> tuple[dict[str, float], tuple[str, ...]]:
    moving = list(moving_lines(component, gone, new, held, find, weighed))
    lines = {f"line {line.ordinal}": line for line in component.formula}
    batch = sum(
        grams
        for line in component.formula
        if not line.strained_out
        for grams in (weighed.get(line.ordinal, 0.0),)
    )
    out = sum(weighed[line.ordinal] for line in gone)
    wanted = {
        name: (
            out * HELD[name](find(gone[0].ingredient or "").per_100g)
            + sum(
                one.grams * HELD[name](one.made_of)
                for one in moving
                if one.key in lines
            )
        )
        / 100
        for name in held
    }
    there = {line.ingredient for line in component.formula}
    helpers = tuple(
        name
        for name in HELPERS.get(find(gone[0].ingredient or "").category, ())
        if name not in there
        and name != new.id
        and not same_as_a_line(name, moving, find)
    )
    while True:
        extra = [
            Moving(key=name, made_of=find(name).per_100g, grams=0.0, cost=HELPER)
            for name in helpers
        ]
        grams = balanced([*moving, *extra], wanted, batch)
        kept = tuple(name for name in helpers if grams[name] >= NEGLIGIBLE * batch)
        if kept == helpers:
            return grams, helpers
        helpers = kept


def _with(
    component: Component,
    gone: Sequence[FormulaLine],
    new: Ingredient,
    weighed: dict[int, float],
    times: float,
) -> Component:
    def changed(line: FormulaLine) -> FormulaLine:
        if line not in gone:
            return line
        return replace(
            line,
            what=new.name,
            ingredient=new.id,
            amount=_grams(new.name, weighed[line.ordinal] * times),
        )

    return replace(
        component, formula=tuple(changed(line) for line in component.formula)
    )


def _moved(
    component: Component, grams: dict[str, float], helpers: Sequence[str], find: Find
) -> Component:
    lines = [
        replace(line, amount=_grams(line.what, grams[f"line {line.ordinal}"]))
        if f"line {line.ordinal}" in grams
        else line
        for line in component.formula
    ]
    last = max(line.ordinal for line in lines)
    lines.extend(
        FormulaLine(
            ordinal=last + n,
            amount=_grams(name, grams[name]),
            what=_spoken(find(name)),
            ingredient=name,
        )
        for n, name in enumerate(helpers, start=1)
    )
    return replace(component, formula=tuple(lines))


def _spoken(ingredient: Ingredient) -> str:
    return ingredient.names[0] if ingredient.names else ingredient.name


def _grams(what: str, value: float) -> Figure:
    return Figure(name=what, value=round(value, 3), unit="g", origin=Stated())


def _lines(before: Component, after: Component, find: Find) -> Iterator[NewLine]:
    was = {
        line.ordinal: (line, grams.value)
        for line, grams in weighed_lines(before.formula, find)
    }
    for line, grams in weighed_lines(after.formula, find):
        if line.strained_out:
            continue
        old = was.get(line.ordinal)
        yield NewLine(
            what=line.what,
            ingredient=line.ingredient or "",
            before_g=old[1] if old else None,
            after_g=grams.value,
        )
