"""What two versions differ in."""

from dataclasses import replace

from demould.advice.changes import changes
from tests.advice.kitchenware import FIND, dessert, made


def test_nothing_changes_in_the_same() -> None:
    it = made("x", "300 cream_35", "3 gelatin_200")
    found = changes(it, it, dessert(it), FIND)
    assert not (*found.effects, *found.allergens_in, *found.allergens_out, *found.out)
    assert found.trial is None


def test_a_thinner_cream_is_told_by_its_fat_and_the_gelatin_s_company() -> None:
    rich = made("x", "300 cream_35", "3 gelatin_200")
    thin = made("x", "300 cream_30", "3 gelatin_200")
    found = changes(rich, thin, dessert(rich), FIND)
    told = [str(one.says) for one in found.effects]
    assert "fat 34.7 to 29.7 %" in told
    assert str(found.trial).startswith("trial first: gelatin in other company (water")


def test_a_dose_that_moves_is_told_to_its_second_decimal() -> None:
    it = made("x", "500 water", "5 gelatin_200")
    more = made("x", "500 water", "5.1 gelatin_200")
    (one,) = (
        one
        for one in changes(it, more, dessert(it), FIND).effects
        if one.name.startswith("dose")
    )
    assert str(one.says) == "dose of gelatin 0.99 to 1.01 %"


def test_allergens_come_and_go() -> None:
    nut = made("x", "100 hazelnut_paste")
    seed = made("x", "100 tahini")
    found = changes(nut, seed, dessert(nut), FIND)
    assert any("hazelnut" in one for one in found.allergens_out)
    assert any("sesame" in one for one in found.allergens_in)


def test_a_band_that_is_left_is_told_once() -> None:
    it = made(
        "mirror glaze", "300 sucrose", "300 water", "60 cream_35", "9 gelatin_200"
    )
    less = replace(
        it,
        formula=made(
            "x", "300 sucrose", "300 water", "60 cream_35", "4 gelatin_200"
        ).formula,
    )
    found = changes(it, less, dessert(it), FIND)
    assert [one.what for one in found.out if one.what == "gelatin"] == ["gelatin"]


def test_a_line_that_was_not_there_is_tried_first() -> None:
    it = made("x", "100 hazelnut_paste", "50 milk_couv_40")
    more = made("x", "100 hazelnut_paste", "50 milk_couv_40", "6 cocoa_butter")
    found = changes(it, more, dessert(it), FIND)
    assert str(found.trial) == "trial first: cocoa_butter was not in it before"
