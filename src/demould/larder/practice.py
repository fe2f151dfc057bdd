"""What is usual: bands for components, holds, weights of counted things, densities."""

from collections.abc import Mapping
from functools import cache

from demould.larder.fact import Band, Fact, Hold
from demould.larder.names import plain
from demould.larder.table import Row, by_name, facts, named, notes, several

_SETTING_AGENTS = ("gelatin", "pectin", "agar")


@cache
def component_kinds() -> tuple[str, ...]:
    """The kinds of component that practice has bands or a density for."""
    return tuple(by_name("bands"))


@cache
def bands(kind: str) -> Band | None:
    """What is usual for this kind of component, by any name of it, or None."""
    name = named("bands").get(plain(kind))
    if name is None:
        return None
    group = by_name("bands")[name]
    known = facts(group)
    agent = next((agent for agent in _SETTING_AGENTS if agent in known), None)
    return Band(
        kind=name,
        names=several(group[0]["names"]),
        agent=agent,
        dose=known.pop(agent) if agent else None,
        fat=known.pop("fat", None),
        sugars=known.pop("sugars", None),
        density=known.pop("density", None),
        more=known,
        note=notes(group),
    )


@cache
def holds() -> Mapping[str, Hold]:
    """How long each state must and may wait, by state."""
    return {state: _hold(state, group) for state, group in by_name("holds").items()}


def hold(state: str) -> Hold | None:
    """How long this state must and may wait, by any name of it, or None."""
    name = named("holds").get(plain(state))
    return holds()[name] if name else None


def unit_weight(unit: str, quantity: str = "mass") -> Fact | None:
    """What one of a counted thing weighs or holds, by any name of it, or None.

    `quantity` is ``mass`` [g] of an egg, a leaf, a pinch; ``volume`` and ``volume of
    powder`` [ml] of a spoon or cup; ``bloom`` of a leaf of gelatin; ``trim`` [%] and
    ``juice`` [g] of a fruit.

    >>> unit_weight("egg yolks").value, unit_weight("gold leaf gelatin", "bloom").value
    (19.0, 200.0)
    """
    return _of("unit_weights", unit, quantity)


def density(what: str, quantity: str = "density") -> Fact | None:
    """The density of a material or a mix before it is aerated, or None.

    In g/ml. Of a component in the mould, see :func:`bands`; of an ingredient, its own row.
    """
    return _of("densities", what, quantity)


def _of(table: str, what: str, quantity: str) -> Fact | None:
    name = named(table).get(plain(what))
    return facts(by_name(table)[name]).get(quantity) if name else None


def _hold(state: str, group: tuple[Row, ...]) -> Hold:
    known = facts(group)
    return Hold(
        state=state,
        least=known.get("least"),
        most=known.get("most"),
        counted_from=group[0]["counted_from"],
        note=notes(group),
    )
