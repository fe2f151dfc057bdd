"""Composition after straining and cooking, setting doses, energy."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.larder.ingredient import Composition
from demould.larder.read import ingredient
from demould.matter.composition import (
    composition,
    cook_to,
    energy_eu,
    share_of,
)
from demould.matter.setting import doses
from demould.mise.component import Component
from demould.mise.figure import Figure, Stated, unfold
from demould.mise.formula import FormulaLine
from tests.desserts.build import component, formula, stated
from tests.desserts.domes import CENTRE as RHUBARB
from tests.desserts.domes import GLAZE as WHITE_GLAZE
from tests.desserts.domes import MOUSSE as YOGHURT
from tests.desserts.larder import find
from tests.desserts.others import BAVAROIS, DARK_GLAZE, NOUGAT, PEAR, PLUM, TEA_MOUSSE
from tests.desserts.pebble import CENTRE, CRISP, DIP, GANACHE

# Worked by hand from the planning composition in tests/desserts/larder.py, printed to
# one decimal (two for doses): allow half of the last one, and 0.001 for its rounding.
WORKED = [
    (GANACHE, 47.1, 34.1, 14.2),
    (CENTRE, 70.5, 0.2, 21.7),
    (CRISP, 2.3, 33.7, 21.8),
    (DIP, 0.6, 63.5, 30.4),
    (BAVAROIS, 60.9, 21.0, 13.1),
    (WHITE_GLAZE, 28.4, 12.1, 43.8),
    (NOUGAT, 42.3, 19.6, 30.0),
]


@pytest.mark.parametrize(("made", "water", "fat", "sugars"), WORKED)
def test_water_fat_and_sugars_are_the_worked_ones(
    made: Component, water: float, fat: float, sugars: float
) -> None:
    inside = composition(made, find)
    assert inside.water == pytest.approx(water, abs=0.051)
    assert inside.fat == pytest.approx(fat, abs=0.051)
    assert inside.sugars == pytest.approx(sugars, abs=0.051)


@pytest.mark.parametrize(
    ("made", "part", "printed"),
    [
        (PEAR, "sugars", 17.1),
        (TEA_MOUSSE, "fat", 28.6),
        (TEA_MOUSSE, "sugars", 13.1),
        (YOGHURT, "fat", 16.6),
        (YOGHURT, "sugars", 13.6),
    ],
)
def test_parts_are_the_worked_ones(made: Component, part: str, printed: float) -> None:
    assert share_of(made, part, find).value == pytest.approx(printed, abs=0.051)


@pytest.mark.parametrize(
    ("made", "dose"),
    [
        (GANACHE, 0.40),
        (CENTRE, 1.06),
        (BAVAROIS, 0.85),
        (PEAR, 0.92),
        (TEA_MOUSSE, 0.34),
        (PLUM, 0.90),
        (DARK_GLAZE, 1.49),
        (YOGHURT, 1.07),
        (RHUBARB, 1.01),
        (WHITE_GLAZE, 1.41),
    ],
)
def test_the_setting_dose_is_of_what_is_left_after_cooking(
    made: Component, dose: float
) -> None:
    (agent,) = doses(made, find)
    assert agent.whole.value == pytest.approx(dose, abs=0.0051)


@pytest.mark.parametrize(
    ("made", "kcal"), [(GANACHE, 381), (CENTRE, 112), (CRISP, 527), (DIP, 713)]
)
def test_planning_energy_counts_other_at_3_kcal(made: Component, kcal: float) -> None:
    # A planning convention: fibre, starch, ash and acid together at 3 kcal/g.
    inside = composition(made, find)
    planned = 4 * (inside.protein + inside.sugars) + 9 * inside.fat
    planned += 3 * inside.other_carb
    assert planned == pytest.approx(kcal, abs=0.51)


def test_cooking_takes_water_only() -> None:
    raw = composition(replace(CENTRE, cooked_away=None), find)
    cooked = composition(CENTRE, find)
    assert cooked.water == pytest.approx((raw.water - 4) / 0.96)
    assert cooked.sugars == pytest.approx(raw.sugars / 0.96)
    assert cooked.total == pytest.approx(100)


@given(away=st.floats(0, 70))
def test_dry_grams_stay_whatever_cooks_away(away: float) -> None:
    made = replace(CENTRE, cooked_away=stated(away, "%"))
    raw = composition(replace(CENTRE, cooked_away=None), find)
    kept = composition(made, find)
    assert kept.sugars * (100 - away) == pytest.approx(raw.sugars * 100)
    assert kept.total == pytest.approx(100)


def test_more_cannot_cook_away_than_there_is_water() -> None:
    syrup = component("syrup", formula("80 sugar", "20 water"), 1.3, away=21)
    with pytest.raises(
        ValueError, match=r"^21 % of syrup cooks away, but only 20\.0 % of it is water$"
    ):
        composition(syrup, find)


def test_a_formula_without_weights_has_no_composition() -> None:
    with pytest.raises(ValueError, match=r"^nothing in air can be weighed$"):
        composition(component("air", (), 1), find)


def test_lines_nobody_knows_are_left_out() -> None:
    unknown = FormulaLine(
        ordinal=2, amount=stated(5, "g"), what="stardust", ingredient=None
    )
    made = component("sugar", (*formula("10 sugar"), unknown), 1)
    assert composition(made, find).sucrose == pytest.approx(100)
    assert doses(made, find) == ()


def test_a_line_may_be_a_component_of_the_same_dessert() -> None:
    caramel = component("caramel", formula("80 sugar", "20 water"), 1.3, away=20)
    of_it = FormulaLine(
        ordinal=1,
        amount=stated(50, "g"),
        what="caramel",
        ingredient=None,
        component="caramel",
    )
    made = component("sauce", (of_it, *formula("50 water")), 1.1)
    parts = (caramel, made)
    assert composition(made, find, parts).sucrose == pytest.approx(50)
    sugar = share_of(made, "sucrose", find, parts)
    assert sugar.value == pytest.approx(50)
    assert "80 sugar" in _texts(sugar)


def _texts(figure: Figure) -> list[str]:
    return [
        part.origin.line.text
        for _, part in unfold(figure)
        if isinstance(part.origin, Stated) and part.origin.line
    ]


def test_fat_unfolds_to_grams_of_each_line_and_the_sheet_of_its_ingredient() -> None:
    fat = share_of(GANACHE, "fat", find)
    assert "400 cream 35 %" in _texts(fat)
    sheets = {
        part.name: part.origin.by
        for _, part in unfold(fat)
        if isinstance(part.origin, Stated) and part.origin.by
    }
    assert sheets == {
        "fat in cream 35 %": "planning table",
        "fat in white couverture 35 %": "planning table",
    }


def test_water_hangs_on_what_cooks_away() -> None:
    names = [part.name for _, part in unfold(share_of(CENTRE, "water", find))]
    assert names.count("cooked away from centre") == 2
    names = [part.name for _, part in unfold(share_of(CENTRE, "fat", find))]
    assert names.count("cooked away from centre") == 1


def test_strained_solids_bring_no_dose() -> None:
    bag = FormulaLine(
        ordinal=1,
        amount=stated(5, "g"),
        what="gelatin 200 bloom",
        ingredient="gelatin 200 bloom",
        strained_out=True,
    )
    made = component("tea", (bag, *formula("100 water; made up")), 1)
    assert doses(made, find) == ()


def test_the_same_agent_on_two_lines_is_one_dose() -> None:
    made = component(
        "jelly", formula("1 gelatin 200 bloom", "2 gelatin 200 bloom", "97 water"), 1
    )
    (agent,) = doses(made, find)
    assert agent.whole.value == pytest.approx(3)


def test_cook_to_is_what_is_left_of_what_is_weighed() -> None:
    weighed = stated(590, "g")
    assert cook_to(CENTRE, weighed).value == pytest.approx(566.4)
    assert cook_to(GANACHE, weighed) is weighed


def test_energy_goes_by_the_factors_of_the_regulation() -> None:
    # Regulation (EU) 1169/2011, Annex XIV, per gram: carbohydrate 17 kJ, 4 kcal; polyols
    # 10, 2.4; protein 17, 4; fat 37, 9; alcohol 29, 7; organic acid 13, 3; fibre 8, 2;
    # erythritol 0. One gram of each in turn.
    one = {
        "sucrose": (17, 4),
        "lactose": (17, 4),
        "starch": (17, 4),
        "other_carb": (17, 4),
        "polyols": (10, 2.4),
        "erythritol": (0, 0),
        "protein": (17, 4),
        "fat": (37, 9),
        "alcohol": (29, 7),
        "acid": (13, 3),
        "fibre": (8, 2),
        "water": (0, 0),
        "ash": (0, 0),
    }
    for part, energy in one.items():
        assert energy_eu(Composition(**{part: 1.0})) == pytest.approx(energy), part


def test_energy_of_butter_is_near_the_printed_one() -> None:
    # USDA SR26, NDB 01145, butter without salt: 717 kcal, by factors of its own (8.79
    # for milk fat, where the regulation has 9): 81.1 x 0.21 = 17 kcal apart, at most.
    _, kcal = energy_eu(ingredient("butter_unsalted").per_100g)
    assert kcal == pytest.approx(717, abs=18)
