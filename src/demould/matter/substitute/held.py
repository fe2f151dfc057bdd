"""What can be held when something else goes in, and what usually is."""

from collections.abc import Callable

from demould.larder.ingredient import Composition, Ingredient
from demould.matter.sweetness import antifreeze, sweetness

HELD: dict[str, Callable[[Composition], float]] = {
    "mass": lambda _: 100.0,
    "water": lambda made_of: made_of.water,
    "fat": lambda made_of: made_of.fat,
    "sugars": lambda made_of: made_of.sugars,
    "sweetness": sweetness,
    "freezing": antifreeze,
    "protein": lambda made_of: made_of.protein,
    "acid": lambda made_of: made_of.acid,
    "alcohol": lambda made_of: made_of.alcohol,
}
"""What 100 g of an ingredient bring of each, by its word. All add up by grams."""

USUAL: dict[str, tuple[str, ...]] = {
    "dairy": ("mass", "water", "fat"),
    "chocolate": ("mass", "fat", "sugars"),
    "fruit": ("mass", "water", "sugars"),
    "sugar": ("mass", "water", "sweetness"),
    "nut": ("fat",),
    "fat": ("fat",),
    "alcohol": ("alcohol", "water"),
    "egg": ("protein", "water"),
}
"""What is held unless the cook says otherwise, by what goes out."""

HELPERS: dict[str, tuple[str, ...]] = {
    "dairy": ("butter_82", "water"),
    "chocolate": ("cocoa_butter", "sucrose"),
    "fruit": ("sucrose", "water"),
    "sugar": ("sucrose", "water"),
    "nut": ("cocoa_butter",),
    "fat": ("water",),
    "alcohol": ("water",),
    "egg": ("water",),
}
"""Rows of the table that may come in to hold it, by what goes out."""


def usual(outgoing: Ingredient) -> tuple[str, ...]:
    """What is held by default where this goes out."""
    return USUAL.get(outgoing.category, ("mass",))
