"""A larder as the tree of ``larder.yaml``."""

from collections import Counter
from datetime import date

from demould.mise.clock import MONTHS, WEEKDAYS
from demould.mise.figure import Figure
from demould.mise.own_bank import Bank
from demould.mise.own_larder import Larder, MadeFrom, Moved, Pack, Season, Stocked
from demould.mise.read_bank import FREEZER, PARS, write_lot, write_par
from demould.mise.read_price import FREE
from demould.mise.read_sheet import write_sheet
from demould.mise.tree import Branch
from demould.mise.write_quantity import write_figure
from demould.mise.write_tree import block, branch

NO_BANK = Bank()


def write_larder(larder: Larder, bank: Bank = NO_BANK) -> Branch:
    """The canonical tree: what `read_larder` reads back to the same larder, and `read_bank`.

    The day most of the stock was counted on stands once, at the top.
    """
    days = Counter(one.counted_on for one in larder if one.counted_on)
    all_have_one = all(one.counted_on for one in larder)
    top = days.most_common(1)[0][0] if days and all_have_one else None
    return branch(
        (
            ("counted", _day(top)),
            (FREEZER, block(map(write_lot, bank.lots))),
            (PARS, block(map(write_par, bank.pars))),
            *((one.key, _stocked(one, top)) for one in larder),
        )
    )


def _day(day: date | None) -> str:
    return f"{WEEKDAYS[day.weekday()]} {day}" if day else ""


def _figure(figure: Figure | None) -> str:
    return write_figure(figure) if figure else ""


def _stocked(one: Stocked, counted: date | None) -> Branch:
    allergens = one.allergens
    return branch(
        (
            ("like", one.like or ""),
            ("per 100 g", write_sheet(one.sheet)),
            ("of the sugars", write_sheet(one.sugars)),
            ("allergens", "" if allergens is None else ", ".join(allergens) or "none"),
            ("may contain", one.may_contain),
            ("animal", one.animal),
            ("ingredients", one.pack_list),
            ("read by", one.read_by),
            ("ask", one.ask),
            ("price", _price(one)),
            ("pack", "; ".join(_pack(pack, one.money) for pack in one.packs)),
            ("supplier", one.supplier),
            ("lead", _figure(one.lead)),
            ("stock", _figure(one.stock)),
            ("counted", "" if one.counted_on == counted else _day(one.counted_on)),
            ("trim", _figure(one.trim)),
            ("keeps", _figure(one.keeps)),
            ("use by", _day(one.use_by)),
            ("since", block(map(_moved, one.since))),
            ("season", _season(one.season)),
            ("made from", _made_from(one.made_from)),
            ("remarks", block(one.remarks)),
        )
    )


def _moved(one: Moved) -> str:
    what = "came" if one.came else "used"
    return f"{_day(one.on)} {what} {write_figure(one.grams)}"


def _season(season: Season | None) -> str:
    if season is None:
        return ""
    months = ", ".join(MONTHS[month - 1] for month in season.months)
    return f"{months}; else {season.instead}" if season.instead else months


def _price(one: Stocked) -> str:
    if one.price is None:
        return ""
    money = f" {one.money}" if one.money else ""
    return f"{one.price:f}{money} a kg {one.priced}".rstrip() if one.price else FREE


def _pack(pack: Pack, money: str) -> str:
    size = write_figure(pack.size)
    return f"{size} at {pack.price:f} {money}".rstrip() if pack.price else size


def _made_from(source: MadeFrom | None) -> str:
    return f"{source.what}; {write_figure(source.out)} comes out" if source else ""
