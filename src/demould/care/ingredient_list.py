"""The list of ingredients: by falling weight as the law counts it, allergens marked."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from demould.amounts.layers.piece import Piece
from demould.larder.allergens import Allergen, allergens_in
from demould.larder.ingredient import Ingredient
from demould.larder.labels import LabelName, RuleSet, label_names
from demould.larder.names import plain
from demould.matter.grams import Find, after_cooking, batch, weighed_lines
from demould.mise.component import Component
from demould.mise.dessert import Dessert, component_of
from demould.mise.own_larder import Larder, Stocked

WATER = "water"


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """One ingredient of the list, its text with the allergens marked.

    `grams` are what goes into one piece at the mixing bowl, `share` in % of the
    finished piece. `missing` where it is a compound whose own list nobody wrote down.
    """

    name: str
    text: str
    grams: float
    share: float
    missing: bool = False


def ingredient_list(
    dessert: Dessert, piece: Piece, larder: Larder, find: Find, rules: RuleSet
) -> tuple[Listed, ...]:
    """Give what goes into one piece, the heaviest first; without what is on the plate.

    Weights are those at the mixing bowl (Article 18). Where the rule set lets water be
    counted by what is left, it is the finished weight less everything else (Annex VII
    A 1), and is left out up to its share. What was only steeped stands last.
    """
    whole = piece.whole.value
    grams: dict[str, float] = {}
    for part in piece.parts:
        component = component_of(dessert, part.component)
        for id_, mass in _used(component, part.grams.value, dessert.components, find):
            grams[id_] = grams.get(id_, 0.0) + mass
    own = {one.key: one for one in larder}
    merged: dict[str, tuple[float, str]] = {}
    for id_, mass in grams.items():
        name = called(find(id_), own.get(id_))
        merged[name] = merged.get(name, (0.0, id_))[0] + mass, id_
    if WATER in merged and rules.water_left_out:
        others = sum(mass for name, (mass, _) in merged.items() if name != WATER)
        left, id_ = max(0.0, whole - others), merged[WATER][1]
        merged.pop(WATER)
        if left > whole * rules.water_left_out / 100:
            merged[WATER] = left, id_
    listed = (
        _listed(name, mass, whole, find(id_), own.get(id_), rules)
        for name, (mass, id_) in merged.items()
    )
    return tuple(sorted(listed, key=lambda one: -one.grams))


def _used(
    component: Component, grams: float, parts: Iterable[Component], find: Find
) -> Iterator[tuple[str, float]]:
    parts = tuple(parts)
    lines = weighed_lines(component.formula, find)
    mixed = sum(mass.value for line, mass in lines if not line.strained_out)
    if mixed <= 0:
        return
    times = grams / after_cooking(component, find).value
    times *= batch(component, find).value / mixed
    for line, mass in lines:
        weight = 0.0 if line.strained_out else mass.value * times
        if line.ingredient is not None:
            yield line.ingredient, weight
        elif line.component is not None:
            part = next(one for one in parts if one.key == line.component)
            yield from _used(part, weight, parts, find)


def called(of: Ingredient, stocked: Stocked | None) -> str:
    """Give what a label calls it: without its per cent, state and trim.

    >>> from demould.larder.find import ingredient
    >>> called(ingredient("cream_35"), None)
    'cream'
    """
    known = _label_name(of, stocked)
    if known is not None and known.says:
        return known.says
    name = re.sub(r"\s*\d+(?:[.,]\d+)?\s*%.*", "", of.name).partition(",")[0]
    return name[:1].lower() + name[1:]


def _label_name(of: Ingredient, stocked: Stocked | None) -> LabelName | None:
    id_ = stocked.like if stocked and stocked.like else of.id
    return label_names().get(id_)


def _listed(
    name: str,
    grams: float,
    whole: float,
    of: Ingredient,
    stocked: Stocked | None,
    rules: RuleSet,
) -> Listed:
    known = _label_name(of, stocked)
    text = name
    if known is not None and known.category:
        number = f" ({known.number})" if known.number and rules.panel == "eu" else ""
        text = f"{known.category}: {name}{number}" if name != known.category else name
    pack = stocked.pack_list if stocked else ""
    if pack:
        text = f"{text} ({pack})"
    marked = mark(text, [one for one in allergens_in(of) if on_list(one, rules)])
    return Listed(
        name=name,
        text=marked,
        grams=grams,
        share=100 * grams / whole,
        missing=known is not None and known.compound and not pack,
    )


def on_list(allergen: Allergen, rules: RuleSet) -> bool:
    """Say whether a rule set's own list names an allergen; the kitchen's own are."""
    if rules.panel == "us":
        return bool(allergen.us)
    return bool(allergen.eu) or allergen.source == "own"


def mark(text: str, allergens: Iterable[Allergen]) -> str:
    """Put each allergen in capitals where its word stands, or behind in brackets.

    >>> from demould.larder.allergens import allergen
    >>> mark("whole milk powder", [allergen("milk")]), mark("cream", [allergen("milk")])
    ('whole MILK powder', 'cream (MILK)')
    """
    behind = []
    for one in allergens:
        found = re.compile(rf"\b{re.escape(one.name)}(?:e?s)?\b", re.IGNORECASE)
        if found.search(text):
            text = found.sub(lambda hit: hit[0].upper(), text)
        else:
            behind.append(one.name.upper())
    return f"{text} ({', '.join(behind)})" if behind else text


def emphasised(listed: Iterable[Listed], sold_as: str) -> tuple[Listed, ...]:
    """Give the ingredients that the name of the food names: their quantity is said."""
    words = set(plain(sold_as).split())
    return tuple(
        one
        for one in listed
        if words & {plain(one.name).split()[0], plain(one.name)} and one.name != WATER
    )


def quantity(one: Listed) -> str:
    """Give its quantity: % of the finished food, or grams a 100 g where it is over 100.

    >>> quantity(Listed(name="pear", text="pear", grams=110, share=110))
    '110 g per 100 g'
    """
    if one.share > 100:
        return f"{one.share:.0f} g per 100 g"
    return f"{one.share:.0f} %" if one.share >= 1 else f"{one.share:.1f} %"
