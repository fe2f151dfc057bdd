"""Every row of the ingredient table, row by row."""

import csv
from pathlib import Path

import pytest

from demould.larder.ingredient import Composition, Ingredient
from demould.larder.read import energy_factors, ingredient, ingredients

SOURCES = Path(__file__).parents[1] / "sources"
ROWS = list(ingredients().values())

every_row = pytest.mark.parametrize("row", ROWS, ids=lambda row: row.id)


def test_there_are_the_215_articles_of_the_first_edition() -> None:
    assert len(ROWS) == 215


# The law (Regulation (EU) No 1169/2011, Annex XIV) and the database (food-specific
# Atwater factors) disagree by more than the tolerance on these rows, each for a reason.
FOOD_FACTORS = {
    "cocoa_mass": "cocoa has Atwater factors of its own, 1.33 kcal per g carbohydrate",
    "cocoa_powder_nat": "the same",
    "cocoa_powder_alk": "the same",
    "agar_powder": "fibre of the database is a crude value, here by analysis",
    "lemon_juice": "lemon carbohydrate counts 2.48 to 2.70 kcal per g; by law 4, acid 3",
    "lemon_segment": "the same",
    "orange_zest": "fibre counts as carbohydrate there; by law 2 kcal per g",
    "raspberry": "the same",
    "apple_green": "the same, at 4 kcal per g",
    "cranberry": "the same",
    "apricot": "fruit carbohydrate counts 3.60 kcal per g; acid comes on top by law",
    "peach": "the same",
}


@every_row
def test_the_parts_make_up_the_whole(row: Ingredient) -> None:
    # Each part is rounded by its source and acid is added to some fruit on top: 2 g.
    assert row.per_100g.total == pytest.approx(100, abs=2)


@every_row
def test_kinds_of_fat_are_no_more_than_the_fat(row: Ingredient) -> None:
    made_of = row.per_100g
    # The table rounds to 0.001 g.
    assert made_of.milk_fat + made_of.cocoa_butter <= made_of.fat + 0.001
    assert made_of.saturates <= made_of.fat + 0.001


def energy_by_law_kcal(made_of: Composition) -> float:
    factor = {name: known.kcal for name, known in energy_factors().items()}
    carbohydrate = made_of.sugars + made_of.starch + made_of.other_carb
    return (
        factor["carbohydrate"] * carbohydrate
        + factor["polyols"] * made_of.polyols
        + factor["erythritol"] * made_of.erythritol
        + factor["protein"] * made_of.protein
        + factor["fat"] * made_of.fat
        + factor["alcohol"] * made_of.alcohol
        + factor["acid"] * made_of.acid
        + factor["fibre"] * made_of.fibre
    )


WITH_KCAL = [row for row in ROWS if row.energy_kcal_source is not None]


@pytest.mark.parametrize("row", WITH_KCAL, ids=lambda row: row.id)
def test_energy_by_law_is_near_the_databases_own(row: Ingredient) -> None:
    printed = row.energy_kcal_source
    assert printed is not None
    apart = abs(energy_by_law_kcal(row.per_100g) - printed)
    # Food-specific factors move most foods by less than a tenth; 5 kcal for lean ones.
    near = apart <= max(0.10 * printed, 5)
    assert near != (row.id in FOOD_FACTORS), f"{apart:.1f} kcal apart"


def test_every_row_of_the_database_has_its_energy() -> None:
    without = [row.id for row in ROWS if row.page and row.energy_kcal_source is None]
    assert without == []
    assert len(WITH_KCAL) == 132


def read_sr26() -> list[dict[str, str]]:
    lines = (SOURCES / "usda_sr26.csv").read_text("utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


@pytest.mark.parametrize("printed", read_sr26(), ids=lambda printed: printed["ndb"])
def test_rows_of_sr26_are_copied_as_printed(printed: dict[str, str]) -> None:
    rows = [row for row in ROWS if row.page == f"NDB {printed['ndb']}"]
    assert rows
    for row in rows:
        made_of = row.per_100g
        assert row.source == "usda_sr26"
        assert row.energy_kcal_source == float(printed["kcal"])
        assert made_of.water == float(printed["water"])
        assert made_of.protein == float(printed["protein"])
        assert made_of.fat == float(printed["fat"])
        assert made_of.sodium_mg == float(printed["sodium_mg"])


# Molar masses from IUPAC standard atomic weights, to 0.01 g/mol:
# article, constituent, share of it in % by mass.
PURE = [
    ("dextrose_mono", "glucose", 100 * 180.16 / (180.16 + 18.015)),
    ("lactose_mono", "lactose", 100 * 342.30 / (342.30 + 18.015)),
    ("trehalose", "trehalose", 100 * 342.30 / (342.30 + 2 * 18.015)),
    ("trisodium_citrate", "water", 100 * 2 * 18.015 / (258.07 + 2 * 18.015)),
    ("calcium_lactate", "water", 100 * 5 * 18.015 / (218.22 + 5 * 18.015)),
]


@pytest.mark.parametrize(("article", "part", "share"), PURE)
def test_water_of_crystallisation_follows_from_molar_masses(
    article: str, part: str, share: float
) -> None:
    # The table gives one decimal.
    assert getattr(ingredient(article).per_100g, part) == pytest.approx(share, abs=0.06)


def test_sodium_of_sodium_citrate_follows_from_molar_masses() -> None:
    sodium_mg = 1000 * 100 * 3 * 22.990 / (258.07 + 2 * 18.015)
    # Given to 50 mg.
    found = ingredient("trisodium_citrate").per_100g.sodium_mg
    assert found == pytest.approx(sodium_mg, abs=30)


# Parts by mass as the row's note gives them.
MIXED = [
    ("cream_30", {"cream_us_heavy": 0.8104, "milk_skim": 0.1896}),
    ("cream_35", {"cream_us_heavy": 0.9458, "milk_skim": 0.0542}),
    ("cream_40", {"cream_us_heavy": 0.9320, "butter_unsalted": 0.0680}),
    ("praline_hazelnut_50", {"hazelnut_paste": 0.5, "sucrose": 0.5}),
    ("marzipan", {"almond_paste": 0.5, "sucrose": 0.5}),
    ("fruit_puree_10s", {"raspberry": 0.9, "sucrose": 0.1}),
    ("dark_55", {"cocoa_mass": 0.47, "cocoa_butter": 0.08, "sucrose": 0.445}),
    ("dark_64", {"cocoa_mass": 0.53, "cocoa_butter": 0.11, "sucrose": 0.355}),
    ("dark_70", {"cocoa_mass": 0.62, "cocoa_butter": 0.08, "sucrose": 0.295}),
    ("milk_35", {"cocoa_mass": 0.11, "cocoa_butter": 0.24, "sucrose": 0.43, "wmp": 0.215}),
    ("milk_40", {"cocoa_mass": 0.16, "cocoa_butter": 0.24, "sucrose": 0.365, "wmp": 0.23}),
    ("white", {"cocoa_butter": 0.30, "sucrose": 0.43, "wmp": 0.265}),
]  # fmt: skip


def part_of(article: str, part: str) -> float:
    if (article, part) == ("milk_skim", "sugars"):
        return 5.09  # as SR26 prints it; the row itself is capped to its carbohydrate
    share: float = getattr(ingredient(article).per_100g, part)
    return share


@pytest.mark.parametrize(("article", "parts"), MIXED)
def test_mixed_rows_follow_from_their_parts(
    article: str, parts: dict[str, float]
) -> None:
    whole = {"lecithin_soy": 1 - sum(parts.values())} | parts
    mixed = ingredient(article).per_100g
    for part in (
        "water",
        "protein",
        "fat",
        "milk_fat",
        "cocoa_butter",
        "sugars",
        "ash",
    ):
        expected = sum(share * part_of(name, part) for name, share in whole.items())
        # Shares of cream are given to 0.0001, which is 0.006 g of its water.
        assert getattr(mixed, part) == pytest.approx(expected, abs=0.006), part


def test_every_mixed_row_is_worked_out_here() -> None:
    mixed = {row.id for row in ROWS if row.source == "derived_sr26"}
    assert mixed == {article for article, _ in MIXED}


# Lists of Regulation (EU) No 1169/2011, Annex II, and of 21 U.S.C. 321(qq): names only.
EU = {
    "cereals containing gluten", "eggs", "fish", "peanuts", "soya", "milk", "nuts",
    "sesame", "sulphites", "crustaceans", "celery", "mustard", "lupin", "molluscs",
}  # fmt: skip
US = {
    "milk", "egg", "fish", "shellfish", "tree nuts", "peanuts", "wheat", "soy", "sesame",
}  # fmt: skip


@every_row
def test_allergens_are_groups_of_the_laws_lists(row: Ingredient) -> None:
    assert row.allergens_eu is not None
    assert row.allergens_us is not None
    assert {name.split(":")[0] for name in row.allergens_eu} <= EU
    assert {name.split(":")[0] for name in row.allergens_us} <= US


@every_row
def test_one_who_eats_no_animal_eats_no_milk_egg_or_fish(row: Ingredient) -> None:
    allergens = set(row.allergens_eu or ())
    if allergens & {"milk", "eggs", "fish"}:
        assert row.vegan is False
    if row.vegan:
        assert row.vegetarian is True


@every_row
def test_what_has_milk_fat_names_milk(row: Ingredient) -> None:
    if row.per_100g.milk_fat or row.per_100g.lactose:
        assert "milk" in (row.allergens_eu or ())


@every_row
def test_alcohol_is_not_halal(row: Ingredient) -> None:
    if row.per_100g.alcohol > 0.5:
        assert row.halal is False


def test_buckwheat_is_named_everywhere() -> None:
    assert ingredient("buckwheat_roasted").allergens_elsewhere == ("buckwheat",)


@every_row
def test_what_only_the_supplier_can_tell_is_a_known_question(row: Ingredient) -> None:
    known = {"may contain", "animal", "sulphites", "wheat starch", "additives"}
    assert set(row.ask) <= known
    if row.id.startswith("gelatin_") and row.id != "gelatin_fish":
        assert "animal" in row.ask
