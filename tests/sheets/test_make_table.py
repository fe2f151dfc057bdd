from dataclasses import replace

from demould.mise.find import find_in
from demould.mise.order import Order
from demould.sheets.make_table import make_table
from demould.week.making import Amounts, making_of
from tests.demo_folder import demo_folder, demo_makings
from tests.sheets.reading import rows
from tests.week.demo_week import domes, kitchen, pebbles


def row(amounts: Amounts, name: str) -> list[str]:
    return next(one for one in rows(make_table([amounts])) if one[0] == name)


def test_each_dessert_stands_above_its_components_and_ends_in_a_whole_piece() -> None:
    table = make_table([making.amounts for making in demo_makings()])
    assert [str(column.head) for column in table.columns] == [
        "",
        "written",
        "factor",
        "weigh",
        "a piece",
        "",
    ]
    assert [one[0] for one in rows(table)] == [
        "MEADOW DOMES, 14",
        "Yoghurt-honey mousse",
        "Rhubarb centre",
        "Thyme sponge",
        "White mirror glaze",
        "whole piece",
        "RIVER PEBBLE, 27",
        "Buckwheat whipped ganache",
        "Blackcurrant-pear centre",
        "Hazelnut crisp base",
        "Stone dip",
        "Stone spray",
        "Blackcurrant sauce",
        "whole piece",
    ]


# Worked by hand; see the tests of the week's amounts. Dip: 107.8 cm2 x 0.8 mm x 1.06 g/ml
# is 9.1 g. Whole: 19.8 + 9.4 + 38.5 + 9.1 + 1.1 = 77.9 g.
def test_the_pebbles_rows_are_those_worked_by_hand() -> None:
    assert rows(make_table([pebbles().amounts]))[1:] == [
        [
            "Buckwheat whipped ganache",
            "892.6 g",
            "x 1.307",
            "1167 g",
            "38.5 g",
            "62.1 ml",
        ],
        [
            "Blackcurrant-pear centre",
            "641.5 g",
            "x 0.919",
            "590 g",
            "19.8 g",
            "cook to 566 g",
        ],
        ["Hazelnut crisp base", "316 g", "x 0.893", "282 g", "9.4 g", ""],
        ["Stone dip", "608 g", "--", "569 g", "9.1 g", "0.8 mm"],
        ["Stone spray", "100 g", "--", "60 g", "1.1 g", "50 % lands"],
        ["Blackcurrant sauce", "400 g", "x 0.948", "379 g", "15.0 g", "beside it"],
        ["whole piece", "", "", "", "77.9 g", ""],
    ]


# 432 g less 10 % in the oven is 389 g; 659 g less 3 % in the pan is 639 g (by hand).
def test_a_sheet_is_baked_and_a_glaze_cooked_as_they_are() -> None:
    assert row(domes().amounts, "Thyme sponge")[1:] == [
        "432 g",
        "as it is",
        "432 g",
        "9.0 g",
        "bake to 389 g",
    ]
    assert row(domes().amounts, "White mirror glaze")[1:] == [
        "659 g",
        "as it is",
        "659 g",
        "16.4 g",
        "cook to 639 g",
    ]


# Of 48 domes 53 are made: 53 x 16.36 g x 2.5 = 2168 g to pour, 639 g a batch: four.
def test_several_whole_batches_are_told_as_so_many() -> None:
    order: Order = replace(domes().order, pieces=48)
    many = making_of(
        order, domes().amounts.dessert, kitchen(), find_in(demo_folder().larder)
    )
    assert many.amounts.pieces == 53
    assert row(many.amounts, "White mirror glaze")[2:4] == ["x 4", "2636 g"]


def test_only_what_hangs_on_an_assumption_is_marked() -> None:
    table = make_table([pebbles().amounts])
    marks = {
        str(one[0].text): [cell.known == "assumed" for cell in one[1:5]]
        for one in table.rows
    }
    assert marks["Buckwheat whipped ganache"] == [False, False, True, True]
    assert marks["Hazelnut crisp base"] == [False, False, False, False]
    assert marks["whole piece"] == [False, False, False, True]
