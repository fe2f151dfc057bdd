"""Which lines of a formula give way when something else goes in."""

from collections.abc import Iterator, Sequence

from demould.larder.ingredient import Ingredient
from demould.larder.read import agent_of
from demould.matter.grams import Find
from demould.matter.substitute.balance import (
    NEUTRAL,
    NEW_MOVES,
    NEW_STAYS,
    TASTE,
    Moving,
)
from demould.mise.component import Component
from demould.mise.formula import FormulaLine

MOVES = ("sugar", "dairy", "fat", "misc")
"""Categories whose lines give way; fruit, chocolate, nuts and eggs are the taste."""
FIXED = ("gelatin", "caramel", "for the")
"""Words of a remark that tie a line to something else."""
SUGAR_PER_PECTIN = 5.0
TASTES = ("fruit", "chocolate", "nut")
NOT_THINNED = 0.9
"""What brings the taste is not cut below this share of what it replaces [g/g]."""


NEW = "new"
"""What the line is called that comes in."""


def moving_lines(
    component: Component,
    gone: Sequence[FormulaLine],
    new: Ingredient,
    held: Sequence[str],
    find: Find,
    weighed: dict[int, float],
) -> Iterator[Moving]:
    """What comes in, and every line that may give way for it, with what that costs."""
    out = sum(weighed[line.ordinal] for line in gone)
    cost = NEW_MOVES if "mass" in held or "water" in held else NEW_STAYS
    least = NOT_THINNED * out if new.category in TASTES else 0.0
    yield Moving(key=NEW, made_of=new.per_100g, grams=out, cost=cost, least=least)
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


def same_as_a_line(name: str, moving: Sequence[Moving], find: Find) -> bool:
    """Whether a line that moves already brings what the helper would."""
    wanted = find(name).per_100g
    near = (abs(one.made_of.water - wanted.water) for one in moving if one.key != NEW)
    fats = (abs(one.made_of.fat - wanted.fat) for one in moving if one.key != NEW)
    return any(w < 3 and f < 3 for w, f in zip(near, fats, strict=True))
