"""May this colour, gold, leaf or flower be on it, by a rule set: no, with limits, or ask."""

from collections.abc import Iterator
from dataclasses import dataclass

from demould.care.inside import Inside, inside
from demould.larder.decorations import Permit, decorations_in
from demould.larder.names import plain
from demould.mise.dessert import Dessert
from demould.mise.own_larder import Larder
from demould.mise.words import Words

PLANTS = {
    "flower",
    "flowers",
    "petal",
    "petals",
    "leaf",
    "leaves",
    "twig",
    "twigs",
    "blossom",
    "blossoms",
}
COLOURS = {"colour", "colours", "color", "dust", "glitter", "lustre", "luster"}
NOT_PLANTS = {
    "gelatin",
    "gelatine",
    "gold",
    "silver",
    "mint",
    "thyme",
    "basil",
    "tea",
    "bay",
    "orange",
}
"""Words beside which a leaf or flower is told well enough."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OnFood:
    """What is said of one decoration: by which rule set, and whether it may be there."""

    what: str
    permit: Permit
    says: Words


def decorations_of(dessert: Dessert, larder: Larder, rules: str) -> tuple[OnFood, ...]:
    """Judge every colour, metal, leaf and flower in and on a dessert by a rule set."""
    once = {one.name: one for one in inside(dessert, larder)}
    return tuple(found for one in once.values() for found in _of(one, rules))


def _of(one: Inside, rules: str) -> Iterator[OnFood]:
    pack = one.stocked.pack_list if one.stocked else ""
    like = one.like.name if one.like else ""
    text = f"{one.name}; {like}; {pack}"
    known = decorations_in(text)
    for found in known:
        permit: Permit = getattr(found, rules)
        yield OnFood(
            what=one.name,
            permit=permit,
            says=Words(
                "{what}: {name} {may} by the rules of {rules}. {says}",
                what=one.name,
                name=found.name,
                may=_MAY[permit],
                rules=rules,
                says=found.says,
            ),
        )
    words = set(plain(one.name).split())
    if known:
        return
    if words & PLANTS and not words & NOT_PLANTS:
        yield OnFood(
            what=one.name,
            permit="ask",
            says=Words(
                "{what}: of which species, and grown for food? Many pretty ones are"
                " poisonous",
                what=one.name,
            ),
        )
    if words & COLOURS and not pack:
        yield OnFood(
            what=one.name,
            permit="ask",
            says=Words(
                "{what}: which colour, by number? Non-toxic is not for food: write its"
                " pack's list in larder.yaml, ingredients:",
                what=one.name,
            ),
        )


_MAY = {
    "yes": Words("may be in food"),
    "limit": Words("has limits by food, or a warning,"),
    "ask": Words("is to be asked about"),
    "no": Words("MUST NOT be in food"),
}
