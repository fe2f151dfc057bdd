"""What sets and what thickens: each agent's facts, and which ingredient is which."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from demould.larder.fact import Fact
from demould.larder.ingredient import Ingredient
from demould.larder.names import plain
from demould.larder.practice import unit_weight
from demould.larder.table import by_name, facts, named

_BLOOM = re.compile(r"\b(\d{2,3})(?:\s*bloom)?\b")


@dataclass(frozen=True, slots=True, kw_only=True)
class Agent:
    """One setting agent.

    `facts` by quantity: ``dose`` [% of the whole], ``ph``, ``sets`` [°C], ``melts``
    [°C], ``solids`` [%], ``calcium`` [mg a gram of it], ``weeps`` (a rank).
    """

    name: str
    facts: Mapping[str, Fact]


@cache
def agents() -> Mapping[str, Agent]:
    """Every setting agent, by name."""
    return {
        name: Agent(name=name, facts=facts(group))
        for name, group in by_name("agents").items()
    }


def agent_of(ingredient: Ingredient) -> Agent | None:
    """The setting agent an ingredient is, by its id or its name, or None.

    >>> from demould.larder.read import ingredient
    >>> agent_of(ingredient("pectin_nh")).name, agent_of(ingredient("sucrose"))
    ('pectin NH', None)
    """
    if ingredient.category != "gelling":
        return None
    spoken = named("agents")
    for said in (ingredient.id, ingredient.name, *ingredient.names):
        if (name := spoken.get(plain(said))) is not None:
            return agents()[name]
    words = set(plain(ingredient.name).split())
    held = [said for said in spoken if set(said.split()) <= words]
    return agents()[spoken[max(held, key=len)]] if held else None


def bloom_of(ingredient: Ingredient) -> Fact:
    """The strength of a gelatin [g bloom]: by its name, its grade, or the usual one.

    A name that gives two numbers (200-240) has them as bounds.

    >>> from demould.larder.read import ingredient
    >>> bloom_of(ingredient("gelatin_160")).value
    160.0
    """
    usual = agents()["gelatin"].facts["bloom"]
    grade = unit_weight(ingredient.name, "bloom")
    found = [float(n) for n in _BLOOM.findall(plain(ingredient.name))]
    found = [n for n in found if 50 <= n <= 350]
    if not found:
        return grade or usual
    return Fact(
        value=sum(found) / len(found),
        unit=usual.unit,
        low=min(found),
        high=max(found),
        source=ingredient.source,
        page=ingredient.page,
    )
