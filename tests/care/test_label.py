"""Labels by hand from Regulation (EU) 1169/2011, and panels by published rounding."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from demould.amounts.layers.piece import piece
from demould.care.ingredient_list import Listed, mark, quantity
from demould.care.label import Label, Said, label_of
from demould.care.nutrition import eu_panel, us_panel
from demould.larder.allergens import allergen
from demould.larder.ingredient import Composition
from demould.larder.labels import printed, rule_sets
from demould.mise.find import find_in
from demould.mise.folder import dessert_of
from demould.mise.own_larder import Larder
from demould.mise.variant import as_variant
from demould.sheets.label_page import label_page, list_text
from demould.sheets.plain import plain
from demould.week.labelling import labels_of
from tests.care.test_allergens import NUT_FREE, changed
from tests.demo_folder import demo_folder, demo_makings

TODAY = date(2026, 11, 17)
PACKS = {
    "white couverture 35 %": "sugar, cocoa butter, whole milk powder, emulsifier: lecithins (soya)",
    "milk couverture 40 %": "sugar, cocoa butter, whole milk powder, emulsifier: lecithins (soya)",
    "wheat wafer flakes": "wheat flour, sugar, milk fat",
}


def label(
    dessert: str = "river-pebble",
    *,
    rules: str = "eu",
    variant: str | None = None,
    larder: Larder | None = None,
    said: Said | None = None,
    today: date = TODAY,
) -> Label:
    folder = demo_folder()
    larder = larder or folder.larder
    made = as_variant(dessert_of(folder, dessert), variant, [one.key for one in larder])
    return label_of(
        made,
        variant,
        piece(made, folder.kitchen),
        larder,
        find_in(larder),
        rule_sets()[rules],
        said or Said(),
        today,
    )


# Row 65 of the job, by hand: a piece of A holds 38.5 g ganache, 19.8 centre, 9.4 base, 9.1
# dip, 1.1 spray. Cream 680/892.6 x 38.5 = 29.3; white couverture 8.2 + 4.9 + 0.4 = 13.6;
# blackcurrant 380/616 x 19.8 = 12.2; pear 5.1; cocoa butter 4.0 + 0.6 = 4.7; flakes 3.3;
# sugar 85/616 x 19.8 = 2.7; hazelnut paste 2.7; milk couverture 2.1.
def test_the_list_falls_by_weight() -> None:
    found = label()
    assert [one.name for one in found.listed][:9] == [
        "cream",
        "white couverture",
        "blackcurrant purée",
        "pear",
        "cocoa butter",
        "wheat wafer flakes",
        "sugar",
        "hazelnut paste",
        "milk couverture",
    ]
    grams = {one.name: round(one.grams, 1) for one in found.listed}
    assert (grams["cream"], grams["white couverture"]) == (29.3, 13.6)
    assert (grams["blackcurrant purée"], grams["pear"]) == (12.2, 5.1)


# Annex VII A 1: finished weight less all else. In A the centre loses more than the 0.8 g
# of water of the ganache: none is left; in D the glaze's and the gelatin's stay.
def test_added_water_counts_by_what_is_left() -> None:
    assert "water" not in [one.name for one in label().listed]
    assert "water" in [one.name for one in label(rules="us").listed]
    domes = label("meadow-domes")
    others = sum(one.grams for one in domes.listed if one.name != "water")
    whole = label("meadow-domes", rules="us").net_g
    assert whole - others < 5 / 100 * whole + 1
    assert "water" not in [one.name for one in domes.listed]


def test_allergens_are_marked_each_time() -> None:
    text = list_text(label())
    for words in (
        "cream (MILK)",
        "white couverture (MILK, SOYA)",
        "WHEAT wafer flakes (MILK)",
        "HAZELNUT paste",
        "brown butter (MILK)",
    ):
        assert words in text
    without = list_text(label(variant=NUT_FREE))
    assert "HAZELNUT" not in without
    assert "sunflower kernel paste" in without


@pytest.mark.parametrize(
    ("text", "marked"),
    [
        ("hazelnuts", "HAZELNUTS"),
        ("cocoa", "cocoa (HAZELNUT)"),
        ("hazelnut (hazelnuts 99 %)", "HAZELNUT (HAZELNUTS 99 %)"),
    ],
)
def test_marking(text: str, marked: str) -> None:
    assert mark(text, [allergen("hazelnut")]) == marked


# Regulation (EU) 1169/2011, Annex VII C: category, then name and number.
def test_additives_have_category_and_number() -> None:
    assert "gelling agent: pectins (E440)" in list_text(label())
    assert "gelling agent: pectins," in list_text(label(rules="us")) + ","


# Article 22 and Annex VIII: mass used by finished mass. 12.2/77.9 = 15.7 %, 5.1/77.9 = 6.6 %.
def test_what_the_name_names_gets_its_quantity() -> None:
    said = Said(sold_as="blackcurrant and pear dessert")
    assert label(said=said).quantities == (
        ("blackcurrant purée", "16 %"),
        ("pear", "7 %"),
    )
    assert label(said=said, rules="uk").quantities == ()
    assert label().quantities == ()


# Annex VIII 3 (a): over 100 % it is grams for 100 g of the finished food.
def test_over_a_hundred_per_cent_is_said_in_grams() -> None:
    over = Listed(name="pear", text="pear", grams=1, share=120.4)
    assert quantity(over) == "120 g per 100 g"
    assert quantity(replace(over, share=100)) == "100 %"


def packed() -> Larder:
    """Give the demo's larder with every pack read and every question answered."""
    larder = demo_folder().larder
    for key, pack in PACKS.items():
        larder = tuple(
            replace(one, pack_list=pack, may_contain="none") if one.key == key else one
            for one in larder
        )
    return tuple(
        replace(one, animal="beef", ask="") if one.key.startswith("gelatin") else one
        for one in larder
    )


FULL = Said(
    sold_as="blackcurrant and pear dessert",
    made=date(2026, 11, 20),
    use_by=date(2026, 11, 22),
    keep="3 °C",
    lot="A-47",
    maker="Brackmoor Weir",
)


def test_it_is_a_draft_until_a_person_signs_and_nothing_is_open() -> None:
    assert label(larder=packed(), said=FULL).open == ()
    assert label(larder=packed(), said=FULL).is_draft
    signed = replace(FULL, signed="Mirel")
    assert not label(larder=packed(), said=signed).is_draft
    assert label(said=signed).is_draft
    assert "DRAFT" in plain(label_page(label(said=signed)))
    assert "read and signed: Mirel" in plain(
        label_page(label(larder=packed(), said=signed))
    )


def test_a_mixture_without_its_pack_s_list_is_open() -> None:
    open_ = " ".join(map(str, label(said=FULL).open))
    assert "white couverture is a mixture" in open_
    text = list_text(label(larder=packed(), said=FULL))
    assert "white couverture (sugar, cocoa butter, whole MILK powder" in text
    assert "lecithins (SOYA))" in text


def test_a_rule_set_past_its_date_is_open() -> None:
    late = rule_sets()["eu"].read_again_by + timedelta(days=1)
    assert label(larder=packed(), said=FULL, today=late).open
    assert "read the law" in str(label(larder=packed(), said=FULL, today=late).open[0])


def test_a_use_by_before_the_made_date_is_refused() -> None:
    with pytest.raises(ValueError, match="before the day it was made"):
        Said(made=date(2026, 11, 20), use_by=date(2026, 11, 19))


def test_no_allergen_data_keeps_it_a_draft() -> None:
    unread = changed("sugar", allergens=None)
    assert any("sugar" in str(one) for one in label(larder=unread).open)


# FALCPA: a "contains" line by the list of nine; buckwheat and rye are not on it (memory).
def test_the_us_line_names_the_nine() -> None:
    assert set(label(rules="us").contains) == {
        "milk",
        "soy",
        "tree nuts: hazelnuts",
        "wheat",
    }
    assert label().contains == ()
    assert "contains 2 % or less of" in list_text(label(rules="us"))


# Annex XIV by hand: 10 fat, 20 sugars, 5 protein, 3 fibre, 1 alcohol, 2 acid:
# 370 + 340 + 85 + 24 + 29 + 26 = 874 kJ; 90 + 80 + 20 + 6 + 7 + 6 = 209 kcal.
def test_the_energy_table_by_hand() -> None:
    of = Composition(
        fat=10,
        saturates=6,
        sucrose=20,
        protein=5,
        fibre=3,
        alcohol=1,
        acid=2,
        water=58,
        ash=1,
        sodium_mg=100,
    )
    assert [(row.name, row.per_100g) for row in eu_panel(of, 50)] == [
        ("energy", "874 kJ / 209 kcal"),
        ("fat", "10 g"),
        ("of which saturates", "6 g"),
        ("carbohydrate", "20 g"),
        ("of which sugars", "20 g"),
        ("fibre", "3 g"),
        ("protein", "5 g"),
        ("salt", "0.25 g"),
    ]
    assert eu_panel(of, 50)[0].a_piece == "437 kJ / 105 kcal"
    # 4 x (25 + 5) + 9 x 10 + 7 x 1 = 217, to the nearest 10.
    assert us_panel(of, 50)[0].per_100g == "220 kcal"


# Commission guidance on tolerances, December 2012, rounding table (from memory).
@pytest.mark.parametrize(
    ("name", "value", "says"),
    [
        ("fat", 0.5, "0 g"),
        ("fat", 0.51, "0.5 g"),
        ("fat", 9.94, "9.9 g"),
        ("fat", 10.5, "11 g"),
        ("saturates", 0.1, "0 g"),
        ("saturates", 0.14, "0.1 g"),
        ("saturates", 10.4, "10 g"),
        ("salt", 0.0125, "0 g"),
        ("salt", 0.126, "0.13 g"),
        ("salt", 1.04, "1 g"),
        ("energy", 1545.5, "1546 kJ"),
    ],
)
def test_rounding_of_the_european_panel(name: str, value: float, says: str) -> None:
    assert printed("eu", name, value) == says


# 21 CFR 101.9(c) (from memory).
@pytest.mark.parametrize(
    ("name", "value", "says"),
    [
        ("energy", 4.9, "0"),
        ("energy", 47, "45 kcal"),
        ("energy", 50, "50 kcal"),
        ("energy", 56, "60 kcal"),
        ("fat", 0.49, "0 g"),
        ("fat", 4.7, "4.5 g"),
        ("fat", 5.5, "6 g"),
        ("sodium", 4.9, "0 mg"),
        ("sodium", 138, "140 mg"),
        ("sodium", 144, "140 mg"),
        ("carbohydrate", 0.7, "less than 1 g"),
        ("carbohydrate", 1.5, "2 g"),
    ],
)
def test_rounding_of_the_us_panel(name: str, value: float, says: str) -> None:
    assert printed("us", name, value) == says


def test_a_panel_without_a_rule_is_our_own_mistake() -> None:
    with pytest.raises(KeyError):
        printed("eu", "sodium", 1)


def test_a_week_has_one_draft_a_dessert() -> None:
    found = labels_of(demo_folder(), demo_makings(), TODAY)
    assert [one.name for one in found] == ["Meadow Domes", "River Pebble"]
    assert all(one.is_draft for one in found)
    assert found[1].from_memory
