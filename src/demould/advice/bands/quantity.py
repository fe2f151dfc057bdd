"""What a formula can be judged by that goes with the grams of its lines."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from demould.larder.ingredient import Ingredient
from demould.larder.read import agent_of, bloom_of
from demould.matter.composition import composition, share_of
from demould.matter.gelatin import as_bloom
from demould.matter.grams import Find, after_cooking, share
from demould.matter.inside import inside
from demould.matter.setting import REFERENCE_BLOOM, doses
from demould.mise.component import Component
from demould.mise.figure import Figure, worked

Of = Callable[[Ingredient], float]
COUVERTURE_SUGARS = 20.0
COUVERTURE_FAT = 20.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity:
    """One share of the whole: what 100 g of an ingredient bring of it [g].

    `step` is how fine what carries it is weighed. [g]
    """

    name: str
    of: Of
    step: float = 1.0


def fat(what: Ingredient) -> float:
    """All fat."""
    return what.per_100g.fat


def sugars(what: Ingredient) -> float:
    """All sugars."""
    return what.per_100g.sugars


def water(what: Ingredient) -> float:
    """All water."""
    return what.per_100g.water


def protein(what: Ingredient) -> float:
    """All protein."""
    return what.per_100g.protein


def solids(what: Ingredient) -> float:
    """What dissolves: degrees Brix of a fruit centre, near enough."""
    made_of = what.per_100g
    return (
        made_of.sugars
        + made_of.polyols
        + made_of.erythritol
        + made_of.other_carb
        + made_of.acid
    )


def couverture(what: Ingredient) -> float:
    """Chocolate with its sugar; cocoa butter and cocoa do not count."""
    made_of = what.per_100g
    sweet = made_of.sugars >= COUVERTURE_SUGARS and made_of.fat >= COUVERTURE_FAT
    return 100.0 if what.category == "chocolate" and sweet else 0.0


def agent(family: str) -> Of:
    """A setting agent of that family; gelatin counts as 200 bloom by the root law."""

    def of(what: Ingredient) -> float:
        found = agent_of(what)
        if found is None or not found.name.startswith(family):
            return 0.0
        if family == "gelatin":
            return as_bloom(100.0, bloom_of(what).value, REFERENCE_BLOOM).root
        return 100.0

    return of


def quantity(name: str) -> Quantity | None:
    """The quantity of a band that goes with grams, or None."""
    if name in ("gelatin", "pectin", "agar"):
        return Quantity(name=name, of=agent(name), step=0.1)
    plain: dict[str, Of] = {
        "fat": fat,
        "sugars": sugars,
        "water": water,
        "protein": protein,
        "solids": solids,
        "couverture": couverture,
    }
    return Quantity(name=name, of=plain[name]) if name in plain else None


def measured(
    component: Component, what: Quantity, find: Find, parts: Sequence[Component] = ()
) -> Figure:
    """The share of it in the component as it is used [%]."""
    if what.name in ("fat", "sugars", "water", "protein"):
        return share_of(component, what.name, find, parts)
    if what.name in ("gelatin", "pectin", "agar"):
        each = [
            one
            for one in doses(component, find, parts)
            if one.agent.startswith(what.name)
        ]
        if len(each) == 1:
            return each[0].to_judge
    cooked = after_cooking(component, find)
    total = sum(
        grams * what.of(one) / 100 for one, grams in inside(component, find, parts)
    )
    name = f"{what.name} in {component.name}"
    rule = "grams of it in 100 g of what is left after cooking"
    return worked(name, 100 * total / cooked.value, "%", rule, cooked)


def kept(component: Component) -> float:
    """The share of the mixed mass that is left after cooking."""
    away = component.cooked_away
    return 1.0 if away is None else 1.0 - share(away)


def has_weight(
    component: Component, find: Find, parts: Sequence[Component] = ()
) -> bool:
    """Whether anything in it can be weighed, so that it can be judged at all."""
    try:
        composition(component, find, parts)
    except ValueError:
        return False
    return True
