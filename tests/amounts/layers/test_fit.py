"""What cannot go into its mould."""

from dataclasses import replace

import pytest

from demould.amounts.layers.fit import does_it_fit
from demould.mise.dessert import Dessert, Layer
from demould.mise.figure import Line
from demould.mise.kitchen import Kitchen
from demould.mise.shape import Box, Cylinder
from tests.desserts.build import layer
from tests.desserts.domes import MEADOW_DOMES
from tests.desserts.kitchen import KITCHEN
from tests.desserts.others import AMBER_TERRINE, EMBER_LOG, ORCHARD_RING
from tests.desserts.pebble import RIVER_PEBBLE

LINE = Line("desserts/meadow-domes.yaml", 6, "centre; from the dome mould", 3)


def domes(*layers: Layer) -> Dessert:
    return replace(MEADOW_DOMES, layers=layers)


def said(dessert: Dessert, kitchen: Kitchen = KITCHEN) -> list[str]:
    return [str(problem) for problem in does_it_fit(dessert, kitchen)]


@pytest.mark.parametrize(
    "dessert", [RIVER_PEBBLE, MEADOW_DOMES, ORCHARD_RING, EMBER_LOG, AMBER_TERRINE]
)
def test_the_demo_fits(dessert: Dessert) -> None:
    assert does_it_fit(dessert, KITCHEN) == ()


def test_an_insert_larger_than_the_cavity_is_refused_in_its_line() -> None:
    wide = replace(layer("centre", Cylinder(diameter_mm=80, height_mm=5)), line=LINE)
    (long, broad) = does_it_fit(domes(layer("mousse"), wide), KITCHEN)
    assert str(long) == (
        "desserts/meadow-domes.yaml:6:3: centre is 80 mm long, but the dome mould only"
        " 70 mm inside. Make it at most 70 mm long, or take a larger mould."
    )
    assert "80 mm wide" in str(broad)


def test_an_insert_as_large_as_the_cavity_leaves_no_room() -> None:
    assert said(domes(layer("mousse"), layer("centre", "dome"))) == [
        ": what goes into a piece takes 89.8 ml, but the dome mould holds 89.8 ml."
        " Take 0.1 ml less in all, or a larger mould."
    ]


def test_parts_that_together_are_too_much_are_refused() -> None:
    high = layer("centre", Cylinder(diameter_mm=60, height_mm=35))
    assert said(domes(layer("mousse"), high)) == [
        ": what goes into a piece takes 99.0 ml, but the dome mould holds 89.8 ml."
        " Take 9.2 ml less in all, or a larger mould."
    ]


def test_what_fills_a_mould_of_its_own_kind_fits_without_a_filler() -> None:
    assert said(domes(layer("centre", "dome"))) == []


def test_an_insert_turned_the_other_way_is_measured_by_its_longer_side() -> None:
    across = layer("sponge", Box(length_mm=70, width_mm=490, height_mm=8))
    log = replace(EMBER_LOG, layers=(layer("mousse"), across))
    assert said(log) == []


def test_two_fillers_are_refused() -> None:
    assert said(domes(layer("mousse"), layer("sponge"), layer("mousse"))) == [
        ": mousse and sponge both fill the rest. Give one of them a size."
    ]


def test_a_mould_of_0_cavities_is_refused() -> None:
    moulds = tuple(
        replace(mould, trays=0) if mould.key == "dome" else mould
        for mould in KITCHEN.moulds
    )
    assert said(MEADOW_DOMES, replace(KITCHEN, moulds=moulds)) == [
        ": the dome mould has 0 cavities. Write how many trays there are, and of how"
        " many cavities."
    ]


def test_a_strip_longer_than_its_tray_is_refused() -> None:
    sponge = EMBER_LOG.components[2]
    assert sponge.sheet is not None
    tray = replace(sponge.sheet.tray, length_mm=400, width_mm=300)
    small = replace(sponge, sheet=replace(sponge.sheet, tray=tray))
    log = replace(
        EMBER_LOG,
        components=tuple(
            small if one.key == "sponge" else one for one in EMBER_LOG.components
        ),
    )
    assert said(log) == [
        ": sponge is 490 x 70 mm, but its tray only 400 x 300 mm. Bake it on a larger"
        " tray, or join two."
    ]
