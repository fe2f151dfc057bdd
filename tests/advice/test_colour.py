"""Colour of a dip as a share of it."""

from dataclasses import replace

import pytest

from demould.advice.colour import colours
from demould.advice.makeup import makeups
from demould.mise.dessert import component_of
from demould.mise.find import find_in
from demould.mise.folder import dessert_of
from demould.sheets.page import Lines
from demould.sheets.will_it import made_of
from tests.demo_folder import demo_folder

FOLDER = demo_folder()
FIND = find_in(FOLDER.larder)
PEBBLE = dessert_of(FOLDER, "river-pebble")


def test_8_g_of_black_cocoa_in_608_g_of_dip_are_1_3_per_cent() -> None:
    """330 + 270 + 8 = 608 g."""
    (one,) = colours(component_of(PEBBLE, "dip"), FIND)

    assert (one.what, one.grams, one.whole) == ("black cocoa", 8, 608)
    assert one.share == pytest.approx(1.316, abs=0.001)


def test_a_coat_without_colour_and_a_mix_that_is_no_coat_have_none() -> None:
    dip = component_of(PEBBLE, "dip")

    assert not list(colours(component_of(PEBBLE, "spray"), FIND))
    assert not list(colours(replace(dip, kind="sauce"), FIND))


def test_it_is_told_with_what_things_are_made_of() -> None:
    lines = [
        str(line)
        for block in made_of(makeups(PEBBLE, FIND))
        if isinstance(block, Lines)
        for line in block.lines
    ]

    assert lines == [
        "Stone dip: 8 g black cocoa in 608 g, 1.3 % (by the scale, never by the spoon;"
        " the shade is your own: note which it gave)"
    ]
