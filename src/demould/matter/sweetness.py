"""How sweet a mix is and how it keeps from freezing, by the trade's scale."""

from demould.larder.ingredient import Composition
from demould.larder.read import scale
from demould.matter.water import SALT_PER_SODIUM

_PARTS = (
    "sucrose",
    "glucose",
    "fructose",
    "lactose",
    "maltose",
    "trehalose",
    "other_sugar",
    "polyols",
    "erythritol",
    "other_carb",
    "alcohol",
)


def sweetness(made_of: Composition) -> float:
    """Sweetness of 100 g, where 100 g of sucrose are 100. A number for the tongue."""
    return _on("sweetness", made_of)


def antifreeze(made_of: Composition) -> float:
    """What keeps 100 g from freezing, where 100 g of sucrose are 100.

    The trade's number, to compare one mix with another; ice goes by water activity.
    """
    return _on("antifreeze", made_of)


def _on(quantity: str, made_of: Composition) -> float:
    salt = made_of.sodium_mg / 1000 * SALT_PER_SODIUM
    total = scale("salt")[quantity].value * min(salt, made_of.ash)
    for part in _PARTS:
        total += scale(part)[quantity].value * getattr(made_of, part)
    return total / 100
