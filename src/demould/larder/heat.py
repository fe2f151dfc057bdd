"""How heat goes: the air of a place, what moulds are made of, what food is made of."""

from collections.abc import Mapping
from functools import cache

from demould.larder.fact import Constituent, Film, Material, Quadratic
from demould.larder.names import plain
from demould.larder.table import Row, by_name, facts, named, notes


@cache
def film_kinds() -> tuple[str, ...]:
    """The kinds of place an air film is known for."""
    return tuple(by_name("films"))


def film(kind: str) -> Film:
    """The air film of one kind of place, by any name of it.

    Raises
    ------
    KeyError
        If no such kind of place is known; :func:`film_kinds` lists them.
    """
    name = named("films")[plain(kind)]
    group = by_name("films")[name]
    known = facts(group)
    return Film(
        kind=name,
        total=known["total"],
        convective=known["convective"],
        vapour=known.get("vapour"),
        humidity=known.get("humidity"),
        note=notes(group[:1]),
    )


def material(name: str) -> Material:
    """What moulds and trays are made of: silicone, polycarbonate, steel, aluminium.

    Raises
    ------
    KeyError
        If the material is not in the table.
    """
    own = named("materials")[plain(name)]
    known = facts(by_name("materials")[own])
    return Material(
        name=own,
        conductivity=known["conductivity"],
        density=known["density"],
        heat_capacity=known["heat capacity"],
    )


@cache
def constituents() -> Mapping[str, Constituent]:
    """Heat properties of what food is made of: water, ice, protein, fat and so on."""
    found = {}
    for name, group in by_name("constituents").items():
        curve = {row["quantity"]: _quadratic(row) for row in group}
        found[name] = Constituent(
            name=name,
            conductivity=curve["conductivity"],
            density=curve["density"],
            heat_capacity=curve["heat capacity"],
        )
    return found


def _quadratic(row: Row) -> Quadratic:
    a, b, c, low, high = (float(row[name]) for name in ("a", "b", "c", "low", "high"))
    return Quadratic(
        a=a,
        b=b,
        c=c,
        unit=row["unit"],
        low=low,
        high=high,
        source=row["source"],
        page=row["page"],
    )
