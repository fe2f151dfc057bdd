"""Fruit that melts gelatin while it is raw, and the heat that ends it."""

from dataclasses import dataclass
from functools import cache

from demould.larder.fact import Fact
from demould.larder.ingredient import Ingredient
from demould.larder.names import plain
from demould.larder.table import by_name, facts, named


@dataclass(frozen=True, slots=True, kw_only=True)
class Enzyme:
    """What ends it: so hot [°C], held so long [min]."""

    fruit: str
    heat_to: Fact
    hold: Fact


@cache
def _enzyme(name: str) -> Enzyme:
    known = facts(by_name("enzymes")[name])
    return Enzyme(fruit=name, heat_to=known["heat to"], hold=known["hold"])


def enzyme_in(ingredient: Ingredient) -> Enzyme | None:
    """The enzyme of a fruit, by a word of its name; None where it has none, or it is dried.

    >>> from demould.larder.read import ingredient
    >>> enzyme_in(ingredient("kiwi")).fruit, enzyme_in(ingredient("pear"))
    ('kiwi', None)
    """
    spoken = named("enzymes")
    words = plain(f"{ingredient.id} {ingredient.name}").split()
    if "juice" in words and "pineapple" in words:
        return None
    for word in words:
        if word in spoken:
            return _enzyme(spoken[word])
    return None
