"""What the demo kitchen says, against what was set down for it by hand."""

from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

import demould.demo
from demould.counter.text.read_folder import read_folder
from demould.mise.dessert import component_of
from demould.mise.folder import Folder, dessert_of
from demould.mise.variant import as_variant

NOW = datetime(2026, 11, 17, 14, 0, tzinfo=ZoneInfo("Europe/London"))


@pytest.fixture(scope="module")
def folder() -> Folder:
    path = Path(demould.demo.__path__[0]) / "brackmoor-weir"
    folder, _, _ = read_folder(path, NOW)
    assert folder is not None
    return folder


def own(folder: Folder) -> tuple[str, ...]:
    return tuple(stocked.key for stocked in folder.larder)


# Batches as the cards have them, added up by hand: what is strained out does not stay.
@pytest.mark.parametrize(
    ("dessert", "component", "grams"),
    [
        ("river-pebble", "ganache", 892.6),
        ("river-pebble", "centre", 641.5),
        ("river-pebble", "base", 316),
        ("river-pebble", "dip", 608),
        ("river-pebble", "sauce", 400),
        ("orchard-ring", "bavarois", 827),
        ("orchard-ring", "centre", 573),
        ("orchard-ring", "sponge", 563),
        ("orchard-ring", "oat base", 251),
        ("ember-log", "mousse", 1167),
        ("ember-log", "centre", 694),
        ("ember-log", "sponge", 412),
        ("ember-log", "dark glaze", 948),
        ("meadow-domes", "mousse", 485.2),
        ("meadow-domes", "centre", 277.2),
        ("meadow-domes", "sponge", 432),
        ("meadow-domes", "glaze", 659),
        ("amber-terrine", "nougat", 1079),
    ],
)
def test_formulas_weigh_what_their_cards_do(
    folder: Folder, dessert: str, component: str, grams: float
) -> None:
    lines = component_of(dessert_of(folder, dessert), component).formula
    stays = [line.amount for line in lines if line.amount and not line.strained_out]
    assert {amount.unit for amount in stays} == {"g"}
    # cards are to 0.1 g: sums of them are exact but for the last bits of a float
    assert sum(amount.value for amount in stays) == pytest.approx(grams, abs=1e-9)


def test_every_line_of_the_demo_has_its_ingredient(folder: Folder) -> None:
    names = {
        line.ingredient
        for dessert in folder.desserts
        for component in dessert.components
        for line in component.formula
    }
    assert None not in names
    assert "cream 35 %" in names
    assert "tea_smoked" in names


def test_cavities_are_trays_times_cavities_each(folder: Folder) -> None:
    cavities = {mould.key: mould.cavities for mould in folder.kitchen.moulds}
    assert cavities["pebble"] == 24
    assert cavities["oval insert"] == 48


def test_the_nut_free_variant_is_in_its_place(folder: Folder) -> None:
    pebble = dessert_of(folder, "river-pebble")
    assert as_variant(pebble, None, own(folder)) is pebble
    base = component_of(as_variant(pebble, "nut-free base", own(folder)), "base")
    assert [
        (line.ordinal, line.what, line.amount.value if line.amount else None)
        for line in base.formula
    ] == [
        (1, "milk couverture 40 %", 70),
        (2, "sunflower kernel paste", 90),
        (3, "cocoa butter", 6),
        (4, "wheat wafer flakes", 110),
        (5, "roasted buckwheat groats", 30),
        (6, "brown butter", 15),
        (7, "salt", 1),
    ]
