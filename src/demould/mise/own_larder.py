"""What this kitchen buys and has: its own sheet of an ingredient wins over the table."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from demould.larder.ingredient import Ingredient
from demould.mise.figure import Figure, Line


@dataclass(frozen=True, slots=True, kw_only=True)
class Stocked:
    """One entry of ``larder.yaml``.

    `ingredient.id` is the entry's own name. `like` is the row of the tool's table that
    tells what the supplier's sheet does not. `price` is money per kg; `trim` the share
    of the bought weight that is cut away; `ask` what nobody has said yet.
    """

    key: str
    ingredient: Ingredient
    like: str | None = None
    price: Decimal | None = None
    pack: Figure | None = None
    lead: Figure | None = None
    stock: Figure | None = None
    counted_on: date | None = None
    allergens: tuple[str, ...] = ()
    may_contain: str = ""
    trim: Figure | None = None
    ask: str = ""
    remarks: tuple[str, ...] = ()
    line: Line | None = None


Larder = tuple[Stocked, ...]
