"""An ingredient by its id: the kitchen's own sheet first, then the table."""

from collections.abc import Callable

from demould.larder.ingredient import Ingredient
from demould.larder.read import ingredient
from demould.mise.own_larder import Larder


def find_in(larder: Larder) -> Callable[[str], Ingredient]:
    """Give the look-up that every room takes.

    It raises `KeyError` for an id that neither has; the reader lets none through.
    """
    own = {stocked.key: stocked.ingredient for stocked in larder}

    def find(name: str) -> Ingredient:
        return own[name] if name in own else ingredient(name)

    return find
