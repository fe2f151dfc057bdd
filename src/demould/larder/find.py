"""Which ingredient is meant by what somebody wrote."""

from collections.abc import Mapping
from functools import cache

from demould.larder.ingredient import Composition, Ingredient
from demould.larder.names import nearest, plain
from demould.larder.syrup import syrup
from demould.larder.table import Row, rows, several

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
    return ingredients().get(id_) or syrup(id_) or ingredients()[id_]


def find_ingredient(text: str) -> Ingredient | None:
    """The row whose id or one of whose names this is, or None.

    Case, accents, spacing, ``%`` and marks are forgiven, spelling is not. An id is
    written as it is: ``pectin_nh`` is one article, "pectin NH" a name of another.

    >>> find_ingredient("Blackcurrant Purée").id
    'blackcurrant'
    """
    by_id = ingredients().get(text.strip().casefold())
    return by_id or _by_plain_name().get(plain(text)) or syrup(text.strip())


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
