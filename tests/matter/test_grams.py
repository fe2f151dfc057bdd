"""Grams of lines, batches and cooked batches."""

from dataclasses import replace

import pytest

from demould.larder.read import ingredient
from demould.matter.grams import (
    after_cooking,
    batch,
    counted,
    kept_by_solids,
    line_grams,
    share,
    weighed_lines,
)
from demould.mise.component import Component
from demould.mise.figure import Assumed, Figure, Line, Stated, unfold
from demould.mise.formula import FormulaLine
from tests.desserts.build import component, formula, stated
from tests.desserts.larder import find
from tests.desserts.pebble import CENTRE, GANACHE


def one(value: float | None, unit: str, what: str | None) -> FormulaLine:
    return FormulaLine(
        ordinal=1,
        amount=None if value is None else stated(value, unit, what or ""),
        what=what or "something",
        ingredient=what,
    )


def grams(value: float, unit: str, what: str) -> float:
    found = line_grams(one(value, unit, what), ingredient)
    assert found is not None
    return found.value


def test_grams_stay_as_written() -> None:
    line = one(3.6, "g", "gelatin 200 bloom")
    assert line_grams(line, find) is line.amount


def test_a_kilogram_is_a_thousand_grams() -> None:
    assert grams(1.2, "kg", "sucrose") == pytest.approx(1200)


def test_33_cl_of_cream_weigh_327_g() -> None:
    # 1 l of 35 % cream is 0.99 kg, common practice: 330 ml x 0.99 = 326.7.
    assert grams(33, "cl", "cream_35") == pytest.approx(326.7, abs=0.05)
    assert grams(330, "ml", "cream_35") == pytest.approx(326.7, abs=0.05)


def test_a_5_ml_spoon_of_water_weighs_5_g() -> None:
    # Common practice, no source: water 5 g, to the gram.
    assert grams(1, "tsp", "water") == pytest.approx(5, abs=0.5)


def test_eggs_and_leaves_go_by_the_weight_of_one() -> None:
    # Common practice: an egg without its shell 50 g, a leaf of unknown grade 2 g.
    assert grams(3, "eggs", "egg_whole") == pytest.approx(150)
    found = line_grams(one(2, "leaves", "gelatin_200"), ingredient)
    assert found is not None
    assert found.value == pytest.approx(4)
    doubted = [part for _, part in unfold(found) if isinstance(part.origin, Assumed)]
    assert [part.name for part in doubted] == ["leaves, each"]
    assert doubted[0].origin == Assumed(low=1.7, high=5, source="common_practice")


def test_pieces_and_leaves_go_by_their_name_first() -> None:
    # Common practice: a yolk 19 g; a gold leaf 2 g, one of unknown grade 2 g, bronze 3.3.
    yolks = replace(one(3, "pieces", "egg_yolk"), what="egg yolks")
    found = line_grams(yolks, ingredient)
    assert found is not None
    assert found.value == pytest.approx(57)
    bronze = replace(one(2, "leaf", "gelatin_140"), what="gelatin leaf bronze")
    found = line_grams(bronze, ingredient)
    assert found is not None
    assert found.value == pytest.approx(6.6)


@pytest.mark.parametrize(
    "line",
    [
        one(None, "g", "salt"),
        one(2, "handfuls", "salt"),
        one(5, "ml", "salt"),
        one(5, "ml", None),
    ],
    ids=["no amount", "no such unit", "no density", "no ingredient"],
)
def test_what_cannot_be_told_is_none(line: FormulaLine) -> None:
    assert line_grams(line, find) is None


def test_a_spoon_of_something_unknown_is_none() -> None:
    assert line_grams(one(1, "tsp", "salt"), find) is None


def test_only_counted_lines_hang_on_a_unit_weight() -> None:
    assert counted(one(5, "g", "salt")) is None
    assert counted(one(None, "g", "salt")) is None
    assert counted(one(5, "handfuls", "salt")) is None
    egg = counted(one(1, "egg", "egg_whole"))
    assert egg is not None
    assert egg.unit == "g"


def test_strained_solids_do_not_count() -> None:
    # 280 + 3.6 + 18 + 190 + 400 + 1: the 45 g of buckwheat leave again.
    assert batch(GANACHE, find).value == pytest.approx(892.6)


def test_the_solids_keep_their_own_weight_and_a_tenth() -> None:
    # Common practice, no source: dry groats hold about 1.1 times their own weight.
    kept = kept_by_solids(GANACHE, find)
    assert kept is not None
    assert kept.value == pytest.approx(49.5)
    assert kept_by_solids(CENTRE, find) is None


def test_what_the_solids_keep_can_be_said_in_the_line() -> None:
    groats = replace(GANACHE.formula[1], keeps=stated(2, ""))
    kept = kept_by_solids(replace(GANACHE, formula=(groats,)), find)
    assert kept is not None
    assert kept.value == pytest.approx(90)


def test_without_making_up_the_batch_is_short_of_what_the_solids_keep() -> None:
    lines = tuple(replace(line, made_up=False) for line in GANACHE.formula)
    short = batch(replace(GANACHE, formula=lines), find)
    assert short.value == pytest.approx(892.6 - 49.5)


def test_what_cooks_away_is_missing_afterwards() -> None:
    # 641.5 g less 4 %.
    assert after_cooking(CENTRE, find).value == pytest.approx(615.84)
    assert after_cooking(GANACHE, find) == batch(GANACHE, find)


def test_a_cooked_batch_unfolds_to_the_lines_as_written() -> None:
    leaves = [
        part.origin.line.text
        for _, part in unfold(after_cooking(CENTRE, find))
        if isinstance(part.origin, Stated) and part.origin.line
    ]
    assert leaves == [
        "380 blackcurrant purée",
        "160 pear, peeled and cored",
        "50 sugar",
        "35 sugar",
        "6.5 pectin NH",
        "10 verjuice",
    ]


def test_the_rule_of_cooking_is_in_words() -> None:
    origin = after_cooking(CENTRE, find).origin
    assert str(getattr(origin, "rule", "")) == "batch less 4 % that cooks away"


def test_a_share_is_the_same_in_percent_and_as_a_part() -> None:
    assert share(stated(4, "%")) == share(stated(0.04, "")) == 0.04


def test_lines_without_an_amount_are_left_out() -> None:
    lines = (*formula("10 sugar"), one(None, "g", "salt"))
    made = component("syrup", lines, 1.3)
    assert [line.what for line, _ in weighed_lines(made.formula, find)] == ["sugar"]
    assert batch(made, find).value == 10


def test_origins_keep_the_line_of_the_file() -> None:
    made: Component = component("syrup", formula("10 sugar"), 1.3)
    figures: list[Figure] = [part for _, part in unfold(batch(made, find))]
    assert figures[-1].origin == Stated(line=Line("desserts/test.yaml", 1, "10 sugar"))


def test_a_5_ml_spoon_of_cocoa_weighs_about_2_g_and_varies_by_40_per_cent() -> None:
    """Common practice: 2 to 2.5 g, and spoons of powder vary by 40 % either way."""
    spoon = Figure(name="cocoa", value=1, unit="teaspoon")
    line = FormulaLine(
        ordinal=1, amount=spoon, what="cocoa", ingredient="cocoa_powder_22"
    )
    each = counted(line)
    grams = line_grams(line, ingredient)

    assert grams is not None
    assert 2 <= grams.value <= 2.5
    assert each is not None
    assert isinstance(each.origin, Assumed)
    assert each.origin.low / each.value == pytest.approx(0.6)
    assert each.origin.high / each.value == pytest.approx(1.4)
