"""The frozen bank and what to use up, as a cook reads them."""

from dataclasses import replace
from datetime import date

from demould.demo import NOW
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.mise.own_bank import Bank, Lot, Par
from demould.sheets.bank_blocks import bank_blocks
from demould.sheets.page import Table
from demould.sheets.weighing import weighing_sheet
from demould.week.orders import allotted_of, makings_of
from tests.demo_folder import demo_folder, demo_makings
from tests.office.larder_by_hand import g
from tests.sheets.reading import heads, lines, loud, rows, table_in

MADE = date(2026, 11, 14)
DIP = Lot(dessert="river-pebble", component="dip", grams=g(313), made=MADE)


def with_bank(*lots: Lot, pars: tuple[Par, ...] = ()) -> Folder:
    return replace(demo_folder(), bank=Bank(lots=lots, pars=pars))


def told(folder: Folder) -> tuple[list[list[str]], list[str]]:
    bank, makings = allotted_of(folder, NOW), makings_of(folder, NOW)
    blocks = tuple(bank_blocks(bank, makings))
    return rows(table_in(blocks)), lines(blocks)


def test_a_lot_says_of_when_it_is_until_when_and_who_takes_it() -> None:
    lots = (
        Lot(dessert="river-pebble", pieces=30, made=MADE),
        Lot(dessert="river-pebble", pieces=6, made=date(2026, 10, 24)),
    )
    found, _ = told(with_bank(*lots))
    assert found == [
        [
            "6 River Pebble",
            "of Sat 24 Oct",
            "good until Sat 14 Nov",
            "PAST ITS DAY: not counted",
        ],
        [
            "30 River Pebble",
            "of Sat 14 Nov",
            "good until Sat 5 Dec",
            "27 for saturday dinner; 3 stay",
        ],
    ]


# 569 g are melted, 313 g of them from the freezer: 256 g new (by hand, to a gram).
def test_left_over_dip_goes_in_first_on_the_week_and_on_the_weighing_sheet() -> None:
    folder = with_bank(DIP)
    says = "Stone dip: 313 g from the freezer go in first, 256 g are made new"
    assert says in told(folder)[1]
    making = makings_of(folder, NOW)[1]
    dip = next(one for one in making.amounts.makes if one.component == "dip")
    find = find_in(folder.larder)
    sheet = weighing_sheet(making, dip, folder.kitchen.scales, find)
    careful = "melt: unplugged before anybody reaches for the blade"
    assert loud(sheet.blocks) == [says, careful]
    # 330 g of 608 are white couverture: 139 of 256 (by hand).
    weighed = next(block for block in sheet.blocks if isinstance(block, Table))
    assert rows(weighed)[0][1] == "139"


def test_the_counter_is_told_tonight_and_what_is_not_there() -> None:
    lot = Lot(dessert="meadow-domes", pieces=17, made=MADE, keeps=g(0))
    lot = replace(lot, keeps=replace(g(21 * 1440), unit="min"))
    _, said = told(with_bank(lot, pars=(Par(dessert="meadow-domes", pieces=5),)))
    assert said[:2] == [
        "tonight into the fridge, for the counter: Meadow Domes, 3 of Sat 14 Nov",
        "the counter wants 2 Meadow Domes more than the freezer has to spare",
    ]


def test_what_comes_to_the_freezer_is_told_before_it_does() -> None:
    blocks = tuple(bank_blocks(allotted_of(demo_folder(), NOW), demo_makings()))
    assert heads(blocks) == ["frozen bank"]
    assert lines(blocks) == [
        "comes to it when all is made: 410 g White mirror glaze, 323 g Stone dip; write"
        " its day and what it touched on the box"
    ]


def test_an_empty_freezer_and_nothing_for_it_is_no_block() -> None:
    assert tuple(bank_blocks(allotted_of(demo_folder(), NOW))) == ()
