"""A purée with sugar in it, as it is sold."""

from dataclasses import replace

from demould.larder.ingredient import Ingredient


def sugared(fruit: Ingredient, share: float, sugar: Ingredient) -> Ingredient:
    """A purée with so much sugar in it: 90 parts fruit, 10 parts sugar at 0.1.

    Raises
    ------
    ValueError
        If the share is not between nothing and all.
    """
    if not 0 < share < 1:
        raise ValueError(
            f"{100 * share:g} % sugar in it; it must be over 0 and under 100"
        )
    parts = {
        part: (1 - share) * getattr(fruit.per_100g, part)
        + share * getattr(sugar.per_100g, part)
        for part in type(fruit.per_100g).__dataclass_fields__
    }
    name = f"{fruit.name} + {100 * share:g} % {sugar.name.casefold()}"
    return replace(
        fruit, id=name, name=name, names=(), per_100g=type(fruit.per_100g)(**parts)
    )
