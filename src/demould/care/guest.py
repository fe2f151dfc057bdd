"""What to tell the guest: who must not eat it, and what a variant is made without."""

from collections.abc import Iterable
from dataclasses import dataclass

from demould.care.allergens import Allergens, May, allergens_of
from demould.care.decoration import OnFood, decorations_of
from demould.care.inside import inside
from demould.care.shared import Dipped, by_dip, by_tools, handled
from demould.larder.allergens import Allergen, allergens_in
from demould.larder.cautions import Caution, cautions_at
from demould.larder.names import plain
from demould.mise.component import Component
from demould.mise.dessert import Dessert, component_of
from demould.mise.own_larder import Larder
from demould.mise.variant import as_variant
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Without:
    """What a variant is made without, and why: a swap, never a promise of absence."""

    allergen: Allergen
    why: Words


@dataclass(frozen=True, slots=True, kw_only=True)
class ForGuests:
    """One dessert, its variant in place, as the floor must know it.

    `may` is everything that may be in it: by a supplier's word, by shared tools, by a
    dip that was used before. `handled` is what else is in the house.
    """

    dessert: Dessert
    variant: str | None
    inside: Allergens
    may: tuple[May, ...]
    handled: tuple[Allergen, ...]
    without: tuple[Without, ...]
    cautions: tuple[Caution, ...]
    decorations: tuple[OnFood, ...] = ()


def for_guests(
    written: Dessert,
    variant: str | None,
    larder: Larder,
    others: Iterable[Dessert] = (),
    dipped: Iterable[Dipped] = (),
) -> ForGuests:
    """Give what to tell of a dessert as `variant` (None: as written).

    `others` is what else is made in the same days, `dipped` what else is, or was, in
    its dips and glazes.
    """
    own = tuple(entry.key for entry in larder)
    dessert = as_variant(written, variant, own)
    found = allergens_of(dessert, larder)
    also = (written, *others) if variant else tuple(others)
    may = (
        *found.may,
        *by_tools(dessert, also, larder),
        *by_dip(dessert, dipped, larder),
    )
    return ForGuests(
        dessert=dessert,
        variant=variant,
        inside=found,
        may=tuple(one for one in may if one.allergen.name not in found.names),
        handled=tuple(one for one in handled(larder) if one.name not in found.names),
        without=_without(written, variant, found, larder),
        cautions=guest_cautions(dessert, larder),
        decorations=decorations_of(dessert, larder, RULES),
    )


def _without(
    written: Dessert, variant: str | None, found: Allergens, larder: Larder
) -> tuple[Without, ...]:
    if variant is None:
        return ()
    swaps = next(one for one in written.variants if one.name == variant).swaps
    why = "; ".join(
        str(
            Words(
                "in the {component} {out} becomes {into}",
                component=component_of(written, swap.component).name,
                out=swap.out,
                into=" + ".join(what for _, what in swap.into),
            )
        )
        for swap in swaps
    )
    return tuple(
        Without(allergen=one.allergen, why=Words("{why}", why=why))
        for one in allergens_of(written, larder).present
        if one.allergen.name not in found.names
    )


GROUND = {"paste", "butter", "flour", "oil", "marzipan", "praline"}
"""Nobody chokes on these as on a nut."""

RULES = "eu"
"""The rule set colours and decorations are told by, where nobody chose another."""

HEATED_C = 70
"""An egg that a step brings this far is not called raw."""


def guest_cautions(dessert: Dessert, larder: Larder) -> tuple[Caution, ...]:
    """Give what guests are to be told besides allergens: honey, alcohol, raw egg."""
    parts = inside(dessert, larder)
    names = [
        name
        for one in parts
        for name in (one.name, one.like.name if one.like else "")
        if not GROUND & set(plain(name).split())
    ]
    told = cautions_at("ingredient", names)
    return tuple(
        one for one in told if one.name != "raw egg" or raw_egg_in(dessert, larder)
    )


def raw_egg_in(dessert: Dessert, larder: Larder) -> tuple[str, ...]:
    """Name the components with egg that is neither pasteurised nor heated by a step."""
    with_egg = {
        one.key
        for one in inside(dessert, larder)
        if one.ingredient
        and "egg" in (allergen.name for allergen in allergens_in(one.ingredient))
        and "pasteurised" not in one.name
    }
    return tuple(
        component.name
        for component in dessert.components
        if component.key in with_egg and not _heated(_said(component))
    )


def _said(component: Component) -> str:
    steps = (part for step in component.method for part in (step.key, *step.remarks))
    return " ".join((component.kind, *steps))


def _heated(text: str) -> bool:
    words = text.replace(",", " ").split()
    if any(word in ("sponge", "bake", "baked", "oven") for word in words):
        return True
    degrees = [float(word) for word in words if word.replace(".", "", 1).isdigit()]
    return "°C" in text and any(HEATED_C <= one <= 250 for one in degrees)
