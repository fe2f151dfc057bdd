"""What suppliers are asked: what it may contain, which animal, what nobody said."""

from collections.abc import Iterable

from demould.care.allergens import may_contain_unknown
from demould.larder.ingredient import Ingredient
from demould.larder.read import ingredient
from demould.mise.own_larder import Stocked
from demould.mise.words import Words


def asks_of(used: Iterable[Stocked]) -> tuple[Words, ...]:
    """Give what nobody has said of what is used, the loud question first."""
    used = tuple({one.key: one for one in used}.values())
    unknown = [one.key for one in used if may_contain_unknown(one, _like(one).ask)]
    unread = [one.key for one in used if one.allergens is None]
    asked = []
    if unknown:
        asked.append(
            Words(
                "what may {what} contain, nuts above all? NOT KNOWN",
                what=", ".join(unknown),
            )
        )
    if unread:
        asked.append(
            Words(
                "which allergens are in {what}? NO SHEET written down",
                what=", ".join(unread),
            )
        )
    for one in used:
        if one.ask:
            asked.append(Words("{what}: {ask}", what=one.key, ask=one.ask))
        elif "animal" in _like(one).ask and not one.animal:
            asked.append(Words("{what}: from which animal?", what=one.key))
    return tuple(asked)


def _like(one: Stocked) -> Ingredient:
    return ingredient(one.like) if one.like else one.ingredient
