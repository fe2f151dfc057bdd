"""The larder's answers: every packaged fact, read once and kept."""

from collections.abc import Mapping
from functools import cache

from demould.larder.fact import (
    Band,
    Constituent,
    EnergyFactor,
    Fact,
    Film,
    Hold,
    Material,
    Quadratic,
)
from demould.larder.ingredient import Composition, Ingredient
from demould.larder.names import nearest, plain
from demould.larder.table import (
    Row,
    by_name,
    facts,
    named,
    notes,
    rows,
    several,
    sources,
)

__all__ = [
    "bands",
    "component_kinds",
    "constituents",
    "density",
    "energy_factors",
    "film",
    "film_kinds",
    "find_ingredient",
    "hold",
    "holds",
    "ingredient",
    "ingredients",
    "material",
    "near_ingredients",
    "sources",
    "unit_weight",
]

_SETTING_AGENTS = ("gelatin", "pectin", "agar")

_CONSTITUENTS = tuple(Composition.__dataclass_fields__)
_SAID = {"yes": True, "no": False, "?": None}


@cache
def ingredients() -> Mapping[str, Ingredient]:
    """The ingredient table, by id."""
    return {row["id"]: _ingredient(row) for row in rows("ingredients")}


def ingredient(id_: str) -> Ingredient:
    """The row of the ingredient table with this id.

    Raises
    ------
    KeyError
        If the table has no such row.
    """
    return ingredients()[id_]


def find_ingredient(text: str) -> Ingredient | None:
    """The row whose id or one of whose names this is, or None.

    Case, accents, spacing, ``%`` and marks are forgiven, spelling is not. An id is
    written as it is: ``pectin_nh`` is one article, "pectin NH" a name of another.

    >>> find_ingredient("Blackcurrant Purée").id
    'blackcurrant'
    """
    by_id = ingredients().get(text.strip().casefold())
    return by_id or _by_plain_name().get(plain(text))


def near_ingredients(text: str, n: int = 3) -> tuple[Ingredient, ...]:
    """The rows whose names come nearest to the text, best first, at most n.

    A guess to ask about, never to act on.

    >>> [near.id for near in near_ingredients("nut paste", 1)]
    ['hazelnut_paste']
    """
    known = _by_plain_name()
    names = nearest(plain(text), known, 4 * n)
    found = {known[name].id: known[name] for name in names}
    return tuple(found.values())[:n]


@cache
def _by_plain_name() -> Mapping[str, Ingredient]:
    return {
        plain(name): row
        for row in ingredients().values()
        for name in (row.name, *row.names)
    }


def _ingredient(row: Row) -> Ingredient:
    return Ingredient(
        id=row["id"],
        name=row["name"],
        names=several(row["names"]),
        category=row["category"],
        per_100g=Composition(**{part: float(row[part]) for part in _CONSTITUENTS}),
        density_g_ml=_number(row["density_g_ml"]),
        ph=_number(row["ph"]),
        allergens_eu=several(row["allergens_eu"]),
        allergens_us=several(row["allergens_us"]),
        allergens_elsewhere=several(row["allergens_elsewhere"]),
        ask=several(row["ask"]),
        vegan=_SAID[row["vegan"]],
        vegetarian=_SAID[row["vegetarian"]],
        halal=_SAID[row["halal"]],
        energy_kcal_source=_number(row["energy_kcal_source"]),
        source=row["source"],
        page=row["page"],
        note=row["note"],
    )


def _number(cell: str) -> float | None:
    return float(cell) if cell else None


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
    """The density of a material or a mix before it is aerated, or None. [g/ml].

    Of a component in the mould, see :func:`bands`; of an ingredient, its own row.
    """
    return _of("densities", what, quantity)


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


@cache
def energy_factors() -> Mapping[str, EnergyFactor]:
    """Energy of one gram by European law, by constituent."""
    return {
        row["name"]: EnergyFactor(
            constituent=row["name"],
            kj=float(row["kj"]),
            kcal=float(row["kcal"]),
            source=row["source"],
            page=row["page"],
        )
        for row in rows("energy_factors")
    }


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
