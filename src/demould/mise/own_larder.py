"""What this kitchen buys and has: its own sheet of an ingredient wins over the table."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal

from demould.larder.ingredient import Ingredient
from demould.mise.figure import Figure, Line

Priced = Literal["", "gross", "net"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Pack:
    """One size it is sold in. `price` is money a pack, where it has its own."""

    size: Figure
    price: Decimal | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeFrom:
    """Made here from another entry: of `what` so much in % comes `out`."""

    what: str
    out: Figure
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """So many grams that came, or were used, on a day after the count."""

    on: date
    came: bool
    grams: Figure
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Season:
    """Months it is good in (January is 1), and what is taken instead out of them."""

    months: tuple[int, ...]
    instead: str = ""
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Stocked:
    """One entry of ``larder.yaml``.

    `ingredient.id` is the entry's own name. `like` is the row of the tool's table that
    tells what the supplier's sheet does not; `sheet` (per 100 g) and `sugars` are what it
    does, as written. `trim` is the share of the bought weight that is cut away: packs and
    stock are of the untrimmed article, `price` (money a kg) too, unless it is `priced`
    net. `money` is what the price calls it, "" where it does not. `keeps` is how long it
    is good once it is open, `use_by` the day by which what is in the house must be used.
    `since` is what came and went after the count. `made_from` another entry, it is not bought. `ask` is what
    nobody has said yet; `allergens` None that nobody has said, () that there are none.
    `pack_list` is the list of ingredients on its pack, `animal` is the one a gelatin is from, `read_by` who put their name to its allergens.
    """

    key: str
    ingredient: Ingredient
    like: str | None = None
    sheet: tuple[tuple[str, float], ...] = ()
    sugars: tuple[tuple[str, float], ...] = ()
    price: Decimal | None = None
    priced: Priced = ""
    money: str = ""
    packs: tuple[Pack, ...] = ()
    supplier: str = ""
    lead: Figure | None = None
    stock: Figure | None = None
    counted_on: date | None = None
    allergens: tuple[str, ...] | None = None
    may_contain: str = ""
    animal: str = ""
    pack_list: str = ""
    read_by: str = ""
    trim: Figure | None = None
    keeps: Figure | None = None
    use_by: date | None = None
    since: tuple[Moved, ...] = ()
    season: Season | None = None
    made_from: MadeFrom | None = None
    ask: str = ""
    remarks: tuple[str, ...] = ()
    line: Line | None = None


Larder = tuple[Stocked, ...]
