from dataclasses import replace

import pytest

from demould.amounts.counts.factors import Make
from demould.mise.figure import assumed_in
from demould.mise.find import find_in
from demould.mise.version import formula_version
from demould.sheets.page import Blanks, Page
from demould.sheets.plain import plain
from demould.sheets.weighing import weighing_sheet, weighing_sheets
from demould.week.making import Making
from tests.demo_folder import demo_folder, demo_makings
from tests.sheets.reading import heads, lines, loud, rows, table_in, under
from tests.week.demo_week import domes, kitchen, pebbles

FIND = find_in(demo_folder().larder)
EVERY = [(making, make) for making in demo_makings() for make in making.amounts.makes]


def sheet(making: Making, key: str) -> Page:
    make = next(one for one in making.amounts.makes if one.component == key)
    return weighing_sheet(making, make, kitchen().scales, FIND)


def weighed(page: Page) -> list[list[str]]:
    return rows(table_in(tuple(page.blocks[:2])))


def labels(page: Page) -> list[str]:
    return [
        str(label)
        for block in page.blocks
        if isinstance(block, Blanks)
        for label in block.labels
    ]


def test_every_component_of_an_order_has_a_sheet_of_its_own_name() -> None:
    pages = weighing_sheets(pebbles(), kitchen().scales, FIND)
    assert [page.key for page in pages] == [
        f"weigh-saturday dinner-{key}"
        for key in ("ganache", "centre", "base", "dip", "spray", "sauce")
    ]
    assert str(pages[0].title) == "Buckwheat whipped ganache"
    assert str(pages[0].note) == "River Pebble, 27 for Sat 19:30"


@pytest.mark.parametrize(("making", "make"), EVERY)
def test_the_lines_add_up_to_the_batch_within_a_gram(
    making: Making, make: Make
) -> None:
    told = weighed(weighing_sheet(making, make, kitchen().scales, FIND))
    total = sum(float(row[1]) for row in told if row[2] != "--")
    assert total == pytest.approx(make.weigh.value, abs=1)
    assert total == pytest.approx(float(told[-1][2]), abs=0.051)


# The scale of 200 g in steps of 0.01 g takes what sets; a whole gram of 5 g of gelatin
# would be a fifth of its dose (common practice, no source). Worked by hand from the card:
# 3.6 x 1.307, 6.5 x 0.919, 5.2 x 1.007, 2.7 x 1.012, 9 as it is.
@pytest.mark.parametrize(
    ("making", "key", "what", "grams"),
    [
        (pebbles(), "ganache", "gelatin 200 bloom", "4.7"),
        (pebbles(), "centre", "pectin NH", "6.0"),
        (domes(), "mousse", "gelatin 200 bloom", "5.2"),
        (domes(), "centre", "pectin NH", "2.7"),
        (domes(), "glaze", "gelatin 200 bloom", "9.0"),
    ],
)
def test_what_sets_is_weighed_to_a_tenth_of_a_gram(
    making: Making, key: str, what: str, grams: str
) -> None:
    told = {row[0]: row[1] for row in weighed(sheet(making, key))}
    assert told[what] == grams


# 280 x 1.307 = 366, 45 x 1.307 = 58.8, 400 x 1.307 = 522.8 (worked by hand).
def test_the_ganache_is_weighed_in_the_order_of_its_card() -> None:
    assert weighed(sheet(pebbles(), "ganache")) == [
        ["cream 35 %, hot; after steeping; made up to this again", "366", "366", ""],
        ["roasted buckwheat groats; strained out", "59", "--", ""],
        ["gelatin 200 bloom", "4.7", "370.7", ""],
        ["water; for the gelatin", "24", "394.7", ""],
        ["white couverture 35 %", "248", "642.7", ""],
        ["cream 35 %, cold", "523", "1165.7", ""],
        ["salt", "1.3", "1167", ""],
    ]


def test_each_line_has_a_box_to_tick_and_a_place_for_its_lot() -> None:
    page = sheet(pebbles(), "ganache")
    table = table_in(tuple(page.blocks[:2]))
    assert table.ticks
    assert str(table.columns[-1].head) == "lot"
    assert plain(page).count("[ ]") == 7 + 3  # lines, and steps of the method
    assert labels(page) == ["tare", "weighed by", "day and time"]


def test_a_pan_has_a_place_for_its_weight_an_oven_has_none() -> None:
    assert labels(sheet(pebbles(), "centre"))[3:] == ["pan, empty", "pan, cooked"]
    assert labels(sheet(domes(), "sponge"))[3:] == []


@pytest.mark.parametrize(
    ("making", "key", "told"),
    [
        (pebbles(), "ganache", ["1167 g in all: 892.6 g as written x 1.307"]),
        (
            pebbles(),
            "centre",
            ["590 g in all: 641.5 g as written x 0.919", "cook to 566 g"],
        ),
        (pebbles(), "dip", ["569 g in all (as the jug needs; 608 g as written)"]),
        (
            domes(),
            "sponge",
            ["432 g in all (whole batches; 432 g as written)", "bake to 389 g"],
        ),
    ],
)
def test_the_sheet_says_first_how_much_in_all(
    making: Making, key: str, told: list[str]
) -> None:
    blocks = sheet(making, key).blocks
    assert lines(blocks) == [*told, *loud(blocks)]


def test_the_method_stands_below_as_it_was_written() -> None:
    method = rows(table_in(under(sheet(pebbles(), "base").blocks, "method")))
    assert method == [
        ["roll 25 min, stands 30 min; freezer; 30 to 35 °C, 5 mm between sheets"],
        ["cut 15 min; hold 14 d; at -18 °C"],
    ]


def test_a_component_without_a_method_has_no_head_for_one() -> None:
    assert heads(sheet(pebbles(), "spray").blocks) == []
    assert heads(sheet(pebbles(), "sauce").blocks) == ["method"]


@pytest.mark.parametrize(("making", "make"), EVERY)
def test_the_foot_has_the_formula_and_how_much_of_it_is_assumed(
    making: Making, make: Make
) -> None:
    page = weighing_sheet(making, make, kitchen().scales, FIND)
    assert [str(text) for text in page.foot] == [
        f"formula {formula_version(making.amounts.dessert)}",
        f"numbers assumed: {len(assumed_in([make.weigh]))}",
    ]


def test_the_ganache_hangs_on_one_assumption_and_the_base_on_none() -> None:
    assert str(sheet(pebbles(), "ganache").foot[1]) == "numbers assumed: 1"
    assert str(sheet(pebbles(), "base").foot[1]) == "numbers assumed: 0"


def test_another_gram_is_another_formula() -> None:
    making = pebbles()
    dessert = making.amounts.dessert
    first = dessert.components[0]
    line = first.formula[0]
    assert line.amount is not None
    more = replace(line, amount=replace(line.amount, value=281))
    changed = replace(
        dessert,
        components=(
            replace(first, formula=(more, *first.formula[1:])),
            *dessert.components[1:],
        ),
    )
    other = replace(making, amounts=replace(making.amounts, dessert=changed))
    assert sheet(other, "base").foot[0] != sheet(making, "base").foot[0]


@pytest.mark.parametrize(("making", "make"), EVERY)
def test_it_is_read_in_80_columns(making: Making, make: Make) -> None:
    text = plain(weighing_sheet(making, make, kitchen().scales, FIND))
    assert max(len(line) for line in text.splitlines()) <= 80
