"""The cost line of the week and the cost page, as a cook reads them."""

from dataclasses import replace
from decimal import Decimal
from functools import cache

from demould.demo import NOW
from demould.office.price import price_as_sold
from demould.sheets.cost_page import cost_blocks, cost_page
from demould.sheets.page import Table
from demould.sheets.plain import plain
from demould.week.costing import Costing, costings_of
from tests.demo_folder import demo_folder, demo_makings
from tests.sheets.reading import lines, loud, rows, table_in, under
from tests.week.demo_week import kitchen


@cache
def costings() -> tuple[Costing, ...]:
    return costings_of(demo_makings(), demo_folder(), NOW, sizes=(24, 50))


def test_the_week_has_one_line_an_order() -> None:
    told = rows(table_in(tuple(cost_blocks(costings(), kitchen()))))
    assert told[1] == [
        "River Pebble",
        "24.56 for 27 = 1.02 a sold piece, 0.13 beside it; labour 5.38 is the cost",
    ]


def test_sold_under_cost_is_loud_on_the_week() -> None:
    one = costings()[1]
    sold = replace(one, sold_at=price_as_sold(one.new, Decimal(6), Decimal(0)))
    assert loud(tuple(cost_blocks([sold], kitchen()))) == [
        "River Pebble: at 6.00 before tax a piece loses 0.54: it costs 6.54"
    ]
    fair = replace(one, sold_at=price_as_sold(one.new, Decimal(7), Decimal(0)))
    assert loud(tuple(cost_blocks([fair], kitchen()))) == []


# In all, by 27 made, by 24 sold (by hand): see the tests of cost.
def test_the_page_has_each_component_in_all_made_and_sold() -> None:
    blocks = under(
        cost_page(kitchen(), costings(), NOW).blocks, "River Pebble, saturday dinner"
    )
    first = next(block for block in blocks if isinstance(block, Table))
    told = rows(first)
    assert ["Buckwheat whipped ganache", "9.40", "0.35", "0.39"] in told
    assert ["ingredients of the pieces", "24.56", "0.91", "1.02"] in told
    assert ["352 min of hands at 22 an hour", "129.20", "4.79", "5.38"] in told
    said = lines(blocks)
    assert (
        "labour is the cost: 352 min of hands at 22 an hour, more than all that is bought"
        in said
    )
    assert "no price: salt 2 g; counted as nothing" in said
    assert loud(blocks) == [
        "ingredients 25 % of it: at 4.09 before tax a piece loses 2.45: it costs 6.54"
    ]


def test_it_is_read_in_80_columns() -> None:
    page = cost_page(kitchen(), costings(), NOW)
    assert str(page.note) == "drawn up Tue 14:00"
    text = plain(page)
    assert max(map(len, text.splitlines())) <= 80
