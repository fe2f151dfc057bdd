from collections.abc import Callable
from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from demould.larder.ingredient import Composition
from demould.mise.read_larder import read_larder
from demould.mise.read_sheet import composition_from

Read = Callable[..., tuple[Any, list[str]]]

# USDA National Nutrient Database SR26, NDB 19296 honey: glucose 35.75, fructose 40.94
# of 82.12 g sugars (as the table of the larder has it, from memory).
HONEY = Composition(water=17.1, glucose=35.75, fructose=40.94, sucrose=0.89, ash=0.2)


def test_an_entry_and_all_its_lines(read: Read) -> None:
    text = """counted: Tue 2026-11-17
pear, peeled:
  like: pear
  per 100 g: water 84, fat 0.1, sugars 10, protein 0.4, other 5.5
  of the sugars: sucrose 1.3, glucose and fructose 8.7
  allergens: none
  may contain: unknown, ask
  ask: from where?
  price: 4.20 a kg gross
  pack: 1000 g
  lead: 1 day
  stock: 0 g
  trim: 20 %
  remarks: |
    the green ones
nuts:
  like: hazelnut paste
  counted: 2026-11-16
"""
    (pear, nuts), faults = read(read_larder, text)
    assert faults == []
    assert (pear.key, pear.ingredient.id, pear.like) == ("pear, peeled",) * 2 + (
        "pear",
    )
    assert pear.ingredient.source == "x.yaml:2"
    assert (pear.price, pear.priced) == (Decimal("4.20"), "gross")
    assert [
        (figure.value, figure.unit)
        for figure in (pear.packs[0].size, pear.lead, pear.stock, pear.trim)
    ] == [(1000, "g"), (1440, "min"), (0, "g"), (20, "%")]
    assert (pear.allergens, pear.may_contain, pear.ask) == (
        (),
        "unknown, ask",
        "from where?",
    )
    assert pear.remarks == ("the green ones",)
    assert (pear.counted_on, nuts.counted_on) == (
        date(2026, 11, 17),
        date(2026, 11, 16),
    )
    assert (nuts.like, nuts.allergens, nuts.sheet) == ("hazelnut_paste", None, ())
    assert nuts.ingredient.allergens_eu == ("nuts: hazelnuts",)


def test_the_sheet_wins_and_the_like_row_fills(read: Read) -> None:
    text = """cream:
  like: cream_35
  per 100 g: water 58.9, fat 35, sugars 3, protein 2.2, other 0.9
  of the sugars: lactose 3
"""
    ((cream,), _) = read(read_larder, text)
    made_of = cream.ingredient.per_100g
    assert (made_of.water, made_of.fat, made_of.lactose, made_of.protein) == (
        58.9,
        35,
        3,
        2.2,
    )
    # the table's cream has ash and nothing else that a sheet calls "other"
    assert made_of.ash == pytest.approx(0.9, abs=1e-12)
    assert made_of.milk_fat == pytest.approx(35, abs=1e-12)
    assert made_of.total == pytest.approx(100, abs=1e-9)


def test_glucose_and_fructose_go_as_in_the_like_row_else_in_halves() -> None:
    sheet = (("water", 20.0), ("sugars", 76.0), ("other", 4.0))
    sugars = (("glucose and fructose", 70.0), ("sucrose", 6.0))
    like = composition_from(sheet, sugars, HONEY)
    assert like.glucose == pytest.approx(70 * 35.75 / (35.75 + 40.94), abs=1e-12)
    assert like.glucose + like.fructose == pytest.approx(70, abs=1e-12)
    alone = composition_from(sheet, sugars, None)
    assert (alone.glucose, alone.fructose, alone.sucrose) == (35, 35, 6)
    assert (like.ash, alone.other_carb) == (4, 4)


def test_sugars_nobody_names_go_as_in_the_like_row_else_they_are_other() -> None:
    sheet = (("water", 20.0), ("sugars", 80.0))
    like = composition_from(sheet, (), HONEY)
    assert like.sucrose == pytest.approx(80 * 0.89 / 77.58, abs=1e-12)
    assert like.sugars == pytest.approx(80, abs=1e-12)
    assert composition_from(sheet, (), None).other_sugar == 80
    assert composition_from(sheet, (), Composition(water=100)).other_sugar == 80


def test_what_the_sheet_names_itself_is_not_spread_over() -> None:
    like = Composition(water=10, fibre=30, starch=60, sodium_mg=90)
    sheet = (("water", 55.0), ("fibre", 5.0), ("other", 40.0))
    made_of = composition_from(sheet, (), like)
    assert (made_of.fibre, made_of.starch) == (5, 40)
    assert made_of.sodium_mg == 45  # half of the dry matter, half of the sodium


def test_fats_go_by_the_like_rows_shares_unless_said() -> None:
    like = Composition(fat=50, cocoa_butter=40, milk_fat=5, saturates=30)
    made_of = composition_from((("fat", 100.0), ("saturates", 70.0)), (), like)
    assert (made_of.cocoa_butter, made_of.milk_fat, made_of.saturates) == (80, 10, 70)


def test_own_allergens_win(read: Read) -> None:
    text = """groats:
  like: buckwheat_roasted
  allergens: buckwheat
paste:
  per 100 g: water 5, fat 95
  allergens: sesame
"""
    ((groats, paste), faults) = read(read_larder, text)
    assert faults == []
    assert groats.ingredient.allergens_eu == ()
    assert groats.ingredient.allergens_elsewhere == ("buckwheat",)
    assert paste.ingredient.allergens_eu == ("sesame",)


@pytest.mark.parametrize(
    ("below", "message"),
    [
        (
            "price: 5 a kg",
            "1:1: nobody says what 'thing' is made of. Write per 100 g: from its sheet, or"
            " like: and a name of the table.",
        ),
        (
            "like: qqqq",
            "2:9: the table has no 'qqqq'. Take the line away, and write its sheet per 100"
            " g.",
        ),
        (
            "per 100 g: water 50, fat 47.9",
            "2:14: the sheet adds up to 97.9 g in 100 g. Look at the sheet again; what it"
            " does not name is 'other'.",
        ),
        (
            "per 100 g: water 50, fats 50",
            "2:24: no part of a sheet is called 'fats'. Perhaps you meant 'fat'.",
        ),
        (
            "per 100 g: water 50, fat lots",
            "2:24: 'lots' is not a number. Write it in figures, for example 12 or 0.5.",
        ),
        (
            "per 100 g: water 110, fat -10",
            "2:25: 'fat -10' is less than 0. Write it without the minus sign.",
        ),
        (
            "per 100 g: water 50, water 50",
            "2:24: 'water' is here twice. Keep one of them.",
        ),
        (
            "per 100 g: water 90, sugars 10\n  of the sugars: lactose 9.7 g",
            "3:18: these sugars add up to 9.7 g, the sheet has 10 g. Make the two agree;"
            " what is not known is 'other sugar'.",
        ),
        (
            "like: sucrose\n  price: -1 a kg",
            "3:10: the price, '-1 a kg', is not money a kg. Write it like 5.20 a kg, or"
            " 4.20 a kg gross for untrimmed.",
        ),
        (
            "like: sucrose\n  stock: 3",
            "3:10: the stock, '3', has no unit. Write the unit too: 3 g or 3 kg.",
        ),
    ],
)
def test_a_bad_entry(read: Read, below: str, message: str) -> None:
    assert read(read_larder, f"thing:\n  {below}\n")[1] == [f"x.yaml:{message}"]


def test_sheets_may_be_off_by_their_rounding(read: Read) -> None:
    text = "thing:\n  per 100 g: water 89, sugars 9.8\n  of the sugars: lactose 10\n"
    assert read(read_larder, text)[1] == []


def test_two_entries_of_one_name_and_one_that_says_nothing(read: Read) -> None:
    text = "Sugar:\n  like: sucrose\nsugar :\n  like: sucrose\nsalt: x\n"
    assert read(read_larder, text)[1] == [
        "x.yaml:3:1: 'sugar' is here twice, first on line 1. Keep one of the two.",
        "x.yaml:5:1: nothing is said of 'salt'. Write below it what it is like, or what"
        " its sheet says per 100 g.",
    ]
