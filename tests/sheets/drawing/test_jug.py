"""The jug at the first and the last dip holds what the sums say."""

import math

import pytest

from demould.amounts.finish.dip import dip_of, in_jugs
from demould.mise.dessert import Dip, component_of
from demould.sheets.drawing.jug import _dips, jug_drawing
from demould.sheets.drawing.picture import Said
from demould.sheets.drawing.svg import svg_of
from tests.demo_folder import demo_folder, demo_makings
from tests.sheets.drawing.test_section import inside_and_apart

PEBBLES = next(m.amounts for m in demo_makings() if m.amounts.jug is not None)


def test_the_last_piece_still_goes_in_with_the_clearance_that_was_asked_for() -> None:
    jug, dip = PEBBLES.jug, dip_of(PEBBLES.dessert)
    assert jug is not None
    assert isinstance(dip, Dip)
    _, last = _dips(jug, PEBBLES.pieces)
    made = component_of(PEBBLES.dessert, dip.component)
    floor_cm2 = math.pi * (jug.jug.diameter.value / 20) ** 2
    over = jug.heel.value + jug.taken.value / PEBBLES.pieces
    # heel and the last piece's own coat stand over what covers it at its clearance
    mm = 10 * over / made.density.value / floor_cm2
    deep = 34.0
    assert last.stands_mm - deep == pytest.approx(dip.clearance.value + mm, abs=0.3)


def test_grams_fall_by_what_all_but_the_last_piece_took() -> None:
    jug = PEBBLES.jug
    assert jug is not None
    first, last = _dips(jug, PEBBLES.pieces)
    each = jug.taken.value / PEBBLES.pieces
    assert first.grams - last.grams == pytest.approx(each * (PEBBLES.pieces - 1))


@pytest.mark.parametrize("way", PEBBLES.jugs)
def test_every_jug_either_way_up_stays_on_the_paper(way: object) -> None:
    picture = jug_drawing(
        PEBBLES.dessert,
        demo_folder().kitchen,
        way,  # type: ignore[arg-type]
        PEBBLES.pieces,
    )
    inside_and_apart(picture)
    assert len(svg_of(picture)) < 10_000


def test_a_jug_that_runs_over_says_so() -> None:
    many = in_jugs(PEBBLES.dessert, demo_folder().kitchen, 120)
    over = next(way for way in many if way.overflows)
    said = [
        m.text
        for m in jug_drawing(PEBBLES.dessert, demo_folder().kitchen, over, 120).marks
        if isinstance(m, Said)
    ]
    assert any("runs over" in text for text in said)


def test_a_dessert_without_a_dip_has_no_jug() -> None:
    jug = PEBBLES.jugs[0]
    domes = next(one for one in demo_folder().desserts if one.key == "meadow-domes")
    with pytest.raises(ValueError, match="Meadow Domes"):
        jug_drawing(domes, demo_folder().kitchen, jug, 12)
