"""Trays, boxes, blast cycles, the blender's least, and pieces cut into portions."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.tools.blast import cycles, frozen_g
from demould.amounts.tools.blender import blends
from demould.amounts.tools.portion import (
    by_angle,
    by_count,
    by_weight,
    by_width,
    cut_faces_cm2,
)
from demould.amounts.tools.tray import on_a_tray, trays_for
from demould.mise.kitchen import ColdPlace, Tool
from demould.mise.shape import Box, HollowRing, Savarin
from tests.desserts.build import stated
from tests.desserts.kitchen import DOME, LOG, RING, TERRINE


def test_a_tray_of_600_by_400_takes_30_pieces_of_80_by_56_with_20_between() -> None:
    # 600 / (80 + 20) = 6, 400 / (56 + 20) = 5.3: 6 x 5.
    piece = Box(length_mm=80, width_mm=56, height_mm=34)
    assert on_a_tray((600, 400), piece, 20) == 30
    assert trays_for(31, 30) == 2


def test_a_gap_larger_than_the_tray_leaves_no_room() -> None:
    assert on_a_tray((600, 400), DOME, 700) == 0
    with pytest.raises(ValueError, match=r"^a gap of -1 mm; it must be 0 or more$"):
        on_a_tray((600, 400), DOME, -1)


@given(st.floats(50, 900), st.floats(50, 900), st.floats(0, 60))
def test_turning_the_tray_changes_nothing(long: float, wide: float, gap: float) -> None:
    piece = Box(length_mm=80, width_mm=56, height_mm=34)
    assert on_a_tray((long, wide), piece, gap) == on_a_tray((wide, long), piece, gap)


def test_535_pieces_are_36_kg_and_8_cycles_of_5_kg() -> None:
    # 38.5 g ganache, 19.8 g centre, 9.4 g base: 67.7 g a piece.
    blast = ColdPlace(
        key="blast",
        air=stated(-35, "°C"),
        kind="blast chiller",
        load=stated(5000, "g"),
    )
    grams = frozen_g(535, stated(67.7, "g"))
    assert grams.value / 1000 == pytest.approx(36.2, abs=0.05)
    assert cycles(grams.value, blast) == 8
    assert cycles(5000, blast) == 1
    assert cycles(5000.1, blast) == 2


def test_a_blender_catches_639_g_and_not_150() -> None:
    stick = Tool(key="blender", least=stated(300, "g"))
    assert blends(stated(639, "g"), stick) == ()
    assert [str(one) for one in blends(stated(150, "g"), stick)] == [
        "150 g are under the 300 g that the blender catches: take a narrower jug",
        "make 300 g and keep what is over",
    ]


def test_a_log_of_500_mm_is_20_slices_of_25() -> None:
    # 1092 + 645 + 137 + 231 g = 2105 g: 105 g a slice.
    cut = by_width(LOG, stated(2105, "g"), 25)
    assert (cut.count, cut.width, cut.angle) == (20, 25, None)
    assert cut.each.value == pytest.approx(105, abs=0.5)
    assert cut.trim.value == pytest.approx(0)


def test_a_ring_is_8_wedges_of_45_degrees() -> None:
    # 843 g and 6.1 g of velvet: 106 g.
    cut = by_angle(RING, stated(849.1, "g"), 45)
    assert (cut.count, cut.angle) == (8, 45)
    assert cut.each.value == pytest.approx(106, abs=0.5)
    assert cut.width == pytest.approx(math.pi * 180 / 8)
    assert by_count(RING, stated(849.1, "g"), 8) == cut


def test_a_terrine_is_15_slices_of_20_mm() -> None:
    cut = by_width(TERRINE, stated(1008, "g"), 20)
    assert cut.count == 15
    assert cut.each.value == pytest.approx(67, abs=0.3)


def test_what_no_slice_comes_of_is_trim() -> None:
    cut = by_width(TERRINE, stated(1000, "g"), 70)
    assert cut.count == 4
    assert cut.trim.value == pytest.approx(1000 * 20 / 300)
    wedge = by_angle(RING, stated(720, "g"), 50)
    assert wedge.count == 7
    assert wedge.trim.value == pytest.approx(20)


@given(st.floats(100, 5000), st.floats(20, 100))
def test_portions_by_weight_are_never_too_light(whole: float, least: float) -> None:
    cut = by_weight(TERRINE, stated(whole, "g"), least)
    assert cut.each.value >= least - 1e-6
    assert whole / (cut.count + 1) < least + 1e-6


@pytest.mark.parametrize(
    ("cut", "says"),
    [
        (lambda g: by_width(LOG, g, 600), "a slice of 600 mm off a piece 500 mm long"),
        (lambda g: by_width(RING, g, 60), "only a long piece is cut by a width"),
        (lambda g: by_angle(LOG, g, 45), "only a round piece is cut by an angle"),
        (
            lambda g: by_angle(RING, g, 0),
            "a wedge of 0°; it must be over 0 and at most 360",
        ),
        (lambda g: by_count(RING, g, 0), "cut in 0; it must be 1 or more"),
        (lambda g: by_weight(LOG, g, 200), "a portion of 200 g out of 100 g"),
        (
            lambda g: by_count(DOME, g, 2),
            "only rings, discs, logs, bars and terrines are cut up",
        ),
    ],
)
def test_cuts_that_cannot_be(cut: object, says: str) -> None:
    with pytest.raises(ValueError) as fault:  # noqa: PT011  # its whole text is below
        cut(stated(100, "g"))  # type: ignore[operator]  # a function of the whole
    assert str(fault.value) == says


def test_cutting_lays_two_faces_bare_a_cut() -> None:
    # 19 cuts of 49.1 cm2 (half-round r 40 on 30 mm straight), 8 of 9 x 4.5 cm.
    assert cut_faces_cm2(LOG, 20) == pytest.approx(2 * 19 * 49.13, abs=0.5)
    assert cut_faces_cm2(RING, 8) == pytest.approx(2 * 8 * 9 * 4.5)
    assert cut_faces_cm2(RING, 1) == 0
    tube = HollowRing(diameter_mm=180, hole_mm=60, height_mm=45)
    assert cut_faces_cm2(tube, 8) == pytest.approx(2 * 8 * 6 * 4.5)
    round_ = Savarin(diameter_mm=180, hole_mm=60, height_mm=45)
    assert cut_faces_cm2(round_, 8) == pytest.approx(2 * 8 * math.pi / 4 * 6 * 4.5)
