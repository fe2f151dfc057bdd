"""What is called an allergen where: the lists of the law, their names, what is exempt."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache

from demould.larder.ingredient import Ingredient
from demould.larder.names import plain
from demould.larder.table import rows, several


@dataclass(frozen=True, slots=True, kw_only=True)
class Allergen:
    """One substance, by the word a cook says.

    `eu` and `us` are its names on the lists of 14 and of 9, "" where it is not on them;
    `elsewhere` the countries that name it by law besides. `kind` is ``nut`` or
    ``gluten`` where the law wants each of a group named.
    """

    name: str
    kind: str = ""
    eu: str = ""
    us: str = ""
    elsewhere: tuple[str, ...] = ()
    source: str = ""
    page: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class AllergenList:
    """A list of the law: what it is called, how many groups, since when."""

    name: str
    says: str
    groups: int
    since: date
    source: str
    page: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Exemption:
    """What a list does not count, though it is made from an allergen."""

    allergen: str
    what: str
    ingredients: tuple[str, ...]
    source: str
    page: str
    note: str = ""


@cache
def allergens() -> Mapping[str, Allergen]:
    """Every substance by its name."""
    return {
        row["name"]: Allergen(
            name=row["name"],
            kind=row["kind"],
            eu=row["eu"],
            us=row["us"],
            elsewhere=several(row["elsewhere"]),
            source=row["source"],
            page=row["page"],
            note=row["note"],
        )
        for row in rows("allergens")
    }


def find_allergen(text: str) -> Allergen | None:
    """The substance somebody means, or None.

    >>> find_allergen("nuts: hazelnuts").name, find_allergen("Soybeans").name
    ('hazelnut', 'soya')
    """
    return _by_plain_name().get(plain(text))


def allergen(text: str) -> Allergen:
    """The substance somebody means; a word nobody knows is one of the kitchen's own."""
    return find_allergen(text) or Allergen(name=text.strip(), source="own")


@cache
def allergen_lists() -> Mapping[str, AllergenList]:
    """The lists of the law, by name."""
    return {
        row["name"]: AllergenList(
            name=row["name"],
            says=row["says"],
            groups=int(row["groups"]),
            since=date.fromisoformat(row["since"]),
            source=row["source"],
            page=row["page"],
            note=row["note"],
        )
        for row in rows("allergen_lists")
    }


@cache
def exemptions() -> tuple[Exemption, ...]:
    """What the list of 14 does not count."""
    return tuple(
        Exemption(
            allergen=row["allergen"],
            what=row["what"],
            ingredients=several(row["ingredients"]),
            source=row["source"],
            page=row["page"],
            note=row["note"],
        )
        for row in rows("allergen_exemptions")
    )


def allergens_in(ingredient: Ingredient) -> tuple[Allergen, ...]:
    """What an ingredient's sheet or row names, and what other countries do.

    >>> from demould.larder.read import ingredient
    >>> [one.name for one in allergens_in(ingredient("milk_couv_40"))]
    ['soya', 'milk']
    """
    told = (*(ingredient.allergens_eu or ()), *ingredient.allergens_elsewhere)
    found = {one.name: one for one in map(allergen, told)}
    words = {
        word
        for name in (ingredient.name, *ingredient.names)
        for word in plain(name).split()
    }
    for one in allergens().values():
        if one.elsewhere and words & {one.name, *_spoken(one.name)}:
            found[one.name] = one
    return tuple(found.values())


@cache
def _spoken(name: str) -> frozenset[str]:
    return frozenset(
        plain(spoken)
        for row in rows("allergens")
        if row["name"] == name
        for spoken in several(row["names"])
    )


@cache
def _by_plain_name() -> Mapping[str, Allergen]:
    return {
        spoken: one
        for one in allergens().values()
        for spoken in (
            plain(one.name),
            plain(one.eu),
            plain(one.us),
            *_spoken(one.name),
        )
        if spoken
    }
