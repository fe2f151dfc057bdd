"""Which ingredients are in a component, and how much of each."""

from collections.abc import Sequence

from demould.larder.ingredient import Ingredient
from demould.matter.grams import Find, after_cooking, weighed_lines
from demould.mise.component import Component

Inside = tuple[tuple[Ingredient, float], ...]


def inside(component: Component, find: Find, parts: Sequence[Component] = ()) -> Inside:
    """Every ingredient that stays in, with its grams in the batch as written.

    A line that takes another component of the dessert (`parts`) brings that one's
    ingredients in proportion. Strained solids and lines without grams are left out.
    """
    found: list[tuple[Ingredient, float]] = []
    for line, grams in weighed_lines(component.formula, find):
        if line.strained_out:
            continue
        if line.ingredient is not None:
            found.append((find(line.ingredient), grams.value))
            continue
        part = next((one for one in parts if one.key == line.component), None)
        if part is not None:
            whole = after_cooking(part, find).value
            share = grams.value / whole if whole > 0 else 0.0
            found.extend((what, g * share) for what, g in inside(part, find, parts))
    return tuple(found)
