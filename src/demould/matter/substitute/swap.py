"""One ingredient of a component for another: grams that hold what is chosen."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from demould.larder.ingredient import Ingredient
from demould.larder.read import agent_of
from demould.matter.grams import Find, weighed_lines
from demould.matter.substitute.balance import (
    HELPER,
    NEUTRAL,
    NEW_MOVES,
    NEW_STAYS,
    TASTE,
    Moving,
    balanced,
)
from demould.matter.substitute.held import HELD, HELPERS
from demould.mise.component import Component
from demould.mise.figure import Figure, Stated
from demould.mise.formula import FormulaLine

MOVES = ("sugar", "dairy", "fat", "misc")
"""Categories whose lines give way; fruit, chocolate, nuts and eggs are the taste."""
NEGLIGIBLE = 0.003
"""A helper under this share of the batch is left out [g/g]."""
FIXED = ("gelatin", "caramel", "for the")
"""Words of a remark that tie a line to something else."""
SUGAR_PER_PECTIN = 5.0
TASTES = ("fruit", "chocolate", "nut")
NOT_THINNED = 0.9
"""What brings the taste is not cut below this share of what it replaces [g/g]."""


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
    moved = _with(component, gone, new, weighed, grams[_NEW] / total)
    moved = _moved(moved, grams, helpers, find)
    return Swapped(
        component=component,
        gram_for_gram=straight,
        balanced=moved,
        lines=tuple(_lines(component, moved, look)),
        held=tuple(held),
        find=look,
    )


_NEW = "new"


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
    moving = list(_moving(component, gone, new, held, find, weighed))
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
        and not _same_as_a_line(name, moving, find)
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


def _same_as_a_line(name: str, moving: Sequence[Moving], find: Find) -> bool:
    """Whether a line that moves already brings what the helper would."""
    wanted = find(name).per_100g
    near = (abs(one.made_of.water - wanted.water) for one in moving if one.key != _NEW)
    fats = (abs(one.made_of.fat - wanted.fat) for one in moving if one.key != _NEW)
    return any(w < 3 and f < 3 for w, f in zip(near, fats, strict=True))


def _moving(
    component: Component,
    gone: Sequence[FormulaLine],
    new: Ingredient,
    held: Sequence[str],
    find: Find,
    weighed: dict[int, float],
) -> Iterator[Moving]:
    out = sum(weighed[line.ordinal] for line in gone)
    cost = NEW_MOVES if "mass" in held or "water" in held else NEW_STAYS
    least = NOT_THINNED * out if new.category in TASTES else 0.0
    yield Moving(key=_NEW, made_of=new.per_100g, grams=out, cost=cost, least=least)
    dry = SUGAR_PER_PECTIN * sum(
        weighed[line.ordinal]
        for line in component.formula
        if line.ordinal in weighed and _is_pectin(line, find)
    )
    for line in component.formula:
        if line in gone or line.ordinal not in weighed or line.ingredient is None:
            continue
        if line.strained_out or line.made_up:
            continue
        ingredient = find(line.ingredient)
        said = " ".join((line.state, *line.remarks)).casefold()
        tied = any(word in said for word in FIXED)
        if ingredient.category in MOVES and not tied and _plain(ingredient):
            yield Moving(
                key=f"line {line.ordinal}",
                made_of=ingredient.per_100g,
                grams=weighed[line.ordinal],
                cost=NEUTRAL if _neutral(ingredient) else TASTE,
                least=min(dry, weighed[line.ordinal]) if "pectin" in said else 0.0,
            )


def _is_pectin(line: FormulaLine, find: Find) -> bool:
    agent = agent_of(find(line.ingredient)) if line.ingredient else None
    return agent is not None and agent.name.startswith("pectin")


def _plain(ingredient: Ingredient) -> bool:
    """Salt, acids, infusions and fibre are there for their own sake and stay."""
    made_of = ingredient.per_100g
    if ingredient.category == "sugar":
        return made_of.fibre < 50
    return ingredient.category != "misc" or _is_water(ingredient)


def _neutral(ingredient: Ingredient) -> bool:
    """Water and plain sugar, which bring no taste of their own."""
    return _is_water(ingredient) or ingredient.per_100g.sucrose > 99


def _is_water(ingredient: Ingredient) -> bool:
    """Plain water; flower waters and infusions are taste."""
    return ingredient.name.casefold() == "water"


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


def sugared(fruit: Ingredient, share: float, sugar: Ingredient) -> Ingredient:
    """A purée with so much sugar in it: 90 parts fruit, 10 parts sugar at 0.1.

    Raises
    ------
    ValueError
        If the share is not between nothing and all.
    """
    if not 0 < share < 1:
        raise ValueError(
            f"{100 * share:g} % sugar in it; it must be over 0 and under 100"
        )
    parts = {
        part: (1 - share) * getattr(fruit.per_100g, part)
        + share * getattr(sugar.per_100g, part)
        for part in type(fruit.per_100g).__dataclass_fields__
    }
    name = f"{fruit.name} + {100 * share:g} % {sugar.name.casefold()}"
    return replace(
        fruit, id=name, name=name, names=(), per_100g=type(fruit.per_100g)(**parts)
    )
