"""All tables: sources, bounds, units and names, row by row."""

from collections import defaultdict
from importlib.resources import files

import pytest

from demould.larder.ingredient import Composition
from demould.larder.names import plain
from demould.larder.table import Row, rows, several, sources

TABLES = sorted(
    entry.name.removesuffix(".csv")
    for entry in (files("demould.larder") / "tables").iterdir()
)
VALUES = [
    "agents", "bands", "curves", "densities", "enzymes", "films", "growth", "holds", "materials", "stiffness",
    "sweetness", "syrup_densities", "unit_weights", "usual_amounts",
]  # fmt: skip
UNITS = {
    "", "%", "-", "d", "g", "h", "s", "times", "g bloom", "g/cm2", "g/100 cm2", "g/100 g", "g/g", "g/ml", "kcal", "kcal/100 g", "kJ",
    "kg/m3", "J/g", "J/kgK", "J/cm2", "K", "mg", "mg/100 g", "mg/g", "min", "ml", "mm", "per g", "per h", "W/m2K", "W/mK", "Pa", "°C",
}  # fmt: skip
KNOWN = {"read", "memory", "practice", "computed", "guess"}

EVERY_ROW = [(table, row) for table in TABLES for row in rows(table)]
NUMERIC = [
    *Composition.__dataclass_fields__,
    "density_g_ml",
    "ph",
    "energy_kcal_source",
]


def test_every_table_is_looked_at() -> None:
    others = {
        "allergen_exemptions",
        "allergen_lists",
        "allergens",
        "causes",
        "cautions",
        "columns",
        "constituents",
        "decorations",
        "energy_factors",
        "hygiene_rules",
        "ingredients",
        "label_names",
        "label_rules",
        "panel_rounding",
        "readings",
        "requests",
        "signs",
        "starts",
        "trade_words",
        "usual_steps",
        "vague_names",
    }
    assert set(TABLES) == others | set(VALUES)


def test_every_source_exists_and_every_source_is_used() -> None:
    used = {row["source"] for _, row in EVERY_ROW}
    assert used == set(sources())


@pytest.mark.parametrize("key", sources())
def test_a_source_says_how_it_is_known(key: str) -> None:
    source = sources()[key]
    assert source.key == key
    assert source.reference
    assert source.licence
    assert source.known in KNOWN
    if source.known in {"memory", "practice", "computed", "guess"}:
        assert source.reason
    assert source.year is None or 1900 < source.year < 2030


@pytest.mark.parametrize("table", VALUES)
def test_every_value_lies_between_its_bounds(table: str) -> None:
    for row in rows(table):
        low, value, high = (float(row[name]) for name in ("low", "value", "high"))
        assert low <= value <= high, row


@pytest.mark.parametrize("table", TABLES)
def test_every_unit_is_known(table: str) -> None:
    assert {row["unit"] for row in rows(table) if "unit" in row} <= UNITS


def test_columns_are_the_numeric_columns_of_the_ingredients() -> None:
    assert sorted(row["column"] for row in rows("columns")) == sorted(NUMERIC)


@pytest.mark.parametrize("column", rows("columns"), ids=lambda row: row["column"])
def test_every_cell_lies_between_the_bounds_of_its_column(column: Row) -> None:
    low, high = float(column["low"]), float(column["high"])
    for row in rows("ingredients"):
        cell = row[column["column"]]
        if cell:
            assert low <= float(cell) <= high, row["id"]


def test_parts_by_mass_are_never_left_empty() -> None:
    for row in rows("ingredients"):
        assert all(row[name] for name in Composition.__dataclass_fields__), row["id"]


def test_ids_are_unique() -> None:
    ids = [row["id"] for row in rows("ingredients")]
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("table", [*VALUES, "constituents"])
def test_a_name_has_each_quantity_once(table: str) -> None:
    pairs = [(row["name"], row["quantity"]) for row in rows(table)]
    assert len(pairs) == len(set(pairs))


@pytest.mark.parametrize("table", VALUES)
def test_no_spoken_name_means_two_things(table: str) -> None:
    meant = defaultdict(set)
    for row in rows(table):
        for spoken in (row["name"], *several(row["names"])):
            meant[plain(spoken)].add(row["name"])
    assert {name: of for name, of in meant.items() if len(of) > 1} == {}


@pytest.mark.parametrize("table", TABLES)
def test_every_row_has_all_its_cells_and_no_more(table: str) -> None:
    for row in rows(table):
        assert None not in row, row
        assert None not in row.values(), row
        assert all(cell == cell.strip() for cell in row.values()), row


def test_a_guess_from_nobody_gives_its_reason() -> None:
    guessed = {key for key, source in sources().items() if source.known == "guess"}
    assert guessed == {"estimate", "film_estimate", "stiffness_estimate"}
    for table, row in EVERY_ROW:
        if row["source"] == "estimate":
            assert row["note"], (table, row)


def test_a_missing_table_is_our_own_mistake() -> None:
    with pytest.raises(FileNotFoundError):
        rows("no such table")
