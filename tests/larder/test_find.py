"""What cooks write finds its row, and nothing else does."""

from collections import defaultdict

import pytest

from demould.larder.names import nearest, plain
from demould.larder.read import (
    find_ingredient,
    ingredient,
    ingredients,
    near_ingredients,
)

# As written in formulas and on order sheets (common practice, no source).
WRITTEN = {
    "cream_35": "cream 35 %; cream 35%; Cream; cream softly whipped; cream 35 % (hot)",
    "cream_30": "cream 30 %",
    "milk_whole_35": "milk; whole milk 3.5 %; Whole milk 3,5 %",
    "yogurt_whole_38": "whole yoghurt; whole yoghurt 3.8 %; yogurt; whole yogurt 3,8%",
    "milk_cond_sweet": "condensed milk; sweetened condensed milk",
    "white_couv_35": "white couverture; white couverture 35 % fat; white couv.",
    "milk_couv_40": "milk couverture 40 %; milk couverture 40 % cocoa; milk couv",
    "dark_couv_66": "dark couverture 66 %; dark couverture",
    "cocoa_butter": "cocoa butter; cocoa b.",
    "cocoa_powder_22": "cocoa; cocoa powder 22 % fat",
    "cocoa_black_11": "black cocoa; black cocoa 11 % fat",
    "hazelnut_paste": "hazelnut paste; hazelnut paste 100 %",
    "sunflower_paste": "sunflower kernel paste; sunflower kernel paste 100 %",
    "wafer_flakes_wheat": "wheat wafer flakes; wafer flakes",
    "buckwheat_roasted": "roasted buckwheat; roasted buckwheat groats; buckwheat",
    "butter_82": "butter; butter 82 %",
    "butter_brown": "brown butter",
    "blackcurrant": "blackcurrant; blackcurrant puree; blackcurrant purée, unsweetened",
    "pear": "pear; pear purée; pear dice; pear brunoise 3 mm; pear, peeled and cored",
    "plum": "plum purée; plum puree, unsweetened",
    "plum_dried": "dried plum; dried plum, stoned",
    "apricot_dried": "dried apricot",
    "candied_orange_peel": "candied orange peel",
    "rhubarb": "rhubarb; rhubarb net; rhubarb, trimmed; rhubarb, trimmed, frozen",
    "sucrose": "sugar; SUGAR; sugar for pectin",
    "honey": "honey",
    "glucose_de40": "glucose syrup DE40; glucose syrup DE 40; glucose syrup",
    "inulin": "inulin",
    "pectin_nh_use": "pectin NH; NH; pectin nh",
    "citric_sol_50": "citric acid solution 50 %; citric acid solution",
    "verjuice": "verjuice",
    "gelatin_200": "gelatin 200 bloom; gelatine 200 bloom; Gelatine",
    "gelatin_160": "gelatin 160 bloom",
    "water": "water; water for it",
    "salt": "salt",
    "egg_whole": "egg; whole egg",
    "egg_yolk": "yolk; egg yolk",
    "egg_whole_past": "whole egg, pasteurised",
    "egg_white_past": "egg white, pasteurised; pasteurised egg white",
    "flour_wheat": "wheat flour",
    "flour_oat": "oat flour",
    "flour_rye": "rye flour",
    "baking_powder": "baking powder",
    "thyme": "thyme; thyme, fresh",
    "almond_roasted": "roasted almonds; almonds, roasted",
    "orange_flower_water": "orange-flower water; orange flower water",
    "chicory_roasted": "roasted chicory",
    "tea_smoked": "smoked tea",
    "agar_powder": "agar; agar-agar",
}


@pytest.mark.parametrize("id_", WRITTEN)
def test_what_is_written_finds_its_row(id_: str) -> None:
    for text in WRITTEN[id_].split("; "):
        found = find_ingredient(text)
        assert found is not None, text
        assert found.id == id_, text


def test_no_name_finds_two_rows() -> None:
    found = defaultdict(set)
    for row in ingredients().values():
        for name in (row.name, *row.names):
            found[plain(name)].add(row.id)
    assert {name: ids for name, ids in found.items() if len(ids) > 1} == {}


def test_every_row_is_found_by_its_id_and_its_own_name() -> None:
    for row in ingredients().values():
        assert find_ingredient(row.id) is row
        assert find_ingredient(row.name) is row
        assert ingredient(row.id) is row


def test_an_id_is_not_a_name() -> None:
    by_id = find_ingredient("pectin_nh")
    by_name = find_ingredient("pectin NH")
    assert by_id is not None
    assert by_name is not None
    assert (by_id.id, by_name.id) == ("pectin_nh", "pectin_nh_use")


@pytest.mark.parametrize(
    "text", ["", "nut paste", "hazlenut paste", "pectin", "flakes", "cream, vegan", "%"]
)
def test_a_guess_is_not_a_find(text: str) -> None:
    assert find_ingredient(text) is None


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("nut paste", "hazelnut_paste"),
        ("hazlenut paste", "hazelnut_paste"),
        ("flakes", "wafer_flakes_wheat"),
        ("blakcurrant", "blackcurrant"),
        ("wite couverture", "white_couv_35"),
    ],
)
def test_the_nearest_row_is_offered_first(text: str, first: str) -> None:
    assert near_ingredients(text)[0].id == first


def test_near_rows_are_different_rows_and_no_more_than_asked() -> None:
    near = near_ingredients("gelatin bloom", 4)
    assert len({row.id for row in near}) == len(near) == 4
    assert all(row.id.startswith("gelatin_") for row in near)
    assert near_ingredients("zzzz") == ()
    assert near_ingredients("") == ()


def test_names_with_every_word_come_before_names_spelt_alike() -> None:
    known = ["pear dice", "pearl", "dried pear", "pear"]
    assert nearest("pear", known, 4) == ["pear", "pear dice", "dried pear", "pearl"]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Crème  35%", "creme 35"),
        ("3,8 %", "3.8"),
        ("pear, peeled", "pear peeled"),
        ("DE40-42", "de 40 42"),
        ("gelatine", "gelatin"),
    ],
)
def test_plain_spelling(text: str, expected: str) -> None:
    assert plain(text) == expected
