"""The lists of the law, worked by hand, and the words a cook has for what is on them."""

import pytest

from demould.larder.allergens import (
    allergen,
    allergen_lists,
    allergens,
    allergens_in,
    exemptions,
    find_allergen,
)
from demould.larder.find import ingredients

# Regulation (EU) No 1169/2011, Annex II, points 1 to 14 (from memory, by hand).
ANNEX_II = {
    "1": {"wheat", "rye", "barley", "oats", "gluten"},
    "2": {"crustaceans"},
    "3": {"egg"},
    "4": {"fish"},
    "5": {"peanut"},
    "6": {"soya"},
    "7": {"milk"},
    "8": {
        "almond", "hazelnut", "walnut", "cashew", "pecan", "Brazil nut", "pistachio",
        "macadamia", "nut",
    },
    "9": {"celery"},
    "10": {"mustard"},
    "11": {"sesame"},
    "12": {"sulphites"},
    "13": {"lupin"},
    "14": {"molluscs"},
}  # fmt: skip

# FALCPA 2004 and the FASTER Act 2021 (from memory): milk, egg, fish, crustacean shellfish,
# tree nuts, peanuts, wheat, soy, sesame.
NOT_OF_THE_NINE = {
    "rye", "barley", "oats", "gluten", "celery", "mustard", "sulphites", "lupin",
    "molluscs",
}  # fmt: skip


def test_the_list_of_fourteen_is_annex_ii() -> None:
    found: dict[str, set[str]] = {}
    for one in allergens().values():
        if one.eu:
            found.setdefault(one.page.removeprefix("Annex II "), set()).add(one.name)
    assert found == ANNEX_II
    assert allergen_lists()["eu"].groups == len(found)


def test_the_list_of_nine_leaves_out_what_only_the_fourteen_name() -> None:
    eu = {one.name for one in allergens().values() if one.eu}
    assert {name for name in eu if not allergens()[name].us} == NOT_OF_THE_NINE
    groups = {one.us.partition(":")[0] for one in allergens().values() if one.us}
    assert len(groups) == allergen_lists()["us"].groups


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("hazelnuts", "hazelnut"),
        ("nuts: hazelnuts", "hazelnut"),
        ("tree nuts: hazelnuts", "hazelnut"),
        ("Soy", "soya"),
        ("cereals containing gluten: rye", "rye"),
        ("Sulfites", "sulphites"),
        ("spelt", "wheat"),
    ],
)
def test_one_substance_has_many_words(said: str, meant: str) -> None:
    assert allergen(said).name == meant


def test_a_word_nobody_knows_is_the_kitchens_own() -> None:
    assert find_allergen("dragon fruit") is None
    assert allergen("dragon fruit").name == "dragon fruit"


def test_every_allergen_of_the_ingredient_table_is_known() -> None:
    for one in ingredients().values():
        for said in (*(one.allergens_eu or ()), *(one.allergens_us or ())):
            assert find_allergen(said), (one.id, said)


def test_other_countries_are_named_though_no_sheet_does() -> None:
    assert [one.name for one in allergens_in(ingredients()["buckwheat_roasted"])] == [
        "buckwheat"
    ]
    assert allergens()["buckwheat"].eu == ""


# Annex II 1 (a) to (d), 4 (a) and (b), 6 (a), 7 (a) and (b), 8 (a) (from memory).
def test_what_is_exempt_names_rows_that_exist() -> None:
    pages = [one.page.removeprefix("Annex II ") for one in exemptions()]
    assert pages == [
        "1(a)", "1(b)", "1(c)", "1(d)", "4(a)", "4(b)", "6(a)", "7(a)", "7(b)", "8(a)",
    ]  # fmt: skip
    for one in exemptions():
        assert set(one.ingredients) <= set(ingredients())
        assert one.allergen in allergens()
