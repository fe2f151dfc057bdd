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
    tells what the supplier's sheet does not; `sheet` (per 100 g) and `sugars` are what it
    does, as written. `price` is money per kg; `trim` the share of the bought weight that
    is cut away; where `gross`, price, pack and stock are of the untrimmed article. `ask`
    is what nobody has said yet; `allergens` None that nobody has said, () that there
    are none.
    """

    key: str
    ingredient: Ingredient
    like: str | None = None
    sheet: tuple[tuple[str, float], ...] = ()
    sugars: tuple[tuple[str, float], ...] = ()
    price: Decimal | None = None
    pack: Figure | None = None
    lead: Figure | None = None
    stock: Figure | None = None
    counted_on: date | None = None
    allergens: tuple[str, ...] | None = None
    may_contain: str = ""
    gross: bool = False
    trim: Figure | None = None
    ask: str = ""
    remarks: tuple[str, ...] = ()
    line: Line | None = None


Larder = tuple[Stocked, ...]
