"""Cuts of a batch, spread on trays."""

from dataclasses import replace

import pytest

from demould.amounts.tools.sheet import cuts_of_a_batch, cuts_of_a_tray, thickness
from demould.matter.grams import after_cooking
from demould.mise.component import Component, Sheet, Tray
from demould.mise.shape import Box, Cylinder, Shape
from tests.desserts.build import stated
from tests.desserts.domes import SPONGE
from tests.desserts.larder import find
from tests.desserts.others import RING_SPONGE, RYE_SPONGE

SMALL = Cylinder(diameter_mm=60, height_mm=8)
CAKE = Cylinder(diameter_mm=160, height_mm=9.4)
STRIP = Box(length_mm=490, width_mm=70, height_mm=8)
TRAY = Sheet(tray=Tray(length_mm=400, width_mm=300), gap=stated(2, "mm"))


def cuts(component: Component, shape: Shape) -> float:
    assert component.sheet is not None
    return cuts_of_a_batch(component, component.sheet, shape, find).value


def test_24_small_discs_and_2_large_ones_from_a_tray() -> None:
    # (400 + 2) / 62 = 6.5 by (300 + 2) / 62 = 4.9; (402 / 162) by (302 / 162) = 2 x 1.
    assert cuts_of_a_tray(TRAY, SMALL) == 24
    assert cuts_of_a_tray(TRAY, CAKE) == 2


def test_a_strip_longer_than_the_tray_does_not_come_out() -> None:
    assert cuts_of_a_tray(TRAY, STRIP) == 0


def test_shifted_rows_are_cut_where_the_card_asks_for_them() -> None:
    # 400 x 300 mm: 30 discs of 60 mm with every other row moved over 30 mm.
    assert cuts_of_a_tray(replace(TRAY, shifted=True), SMALL) == 30
    assert cuts_of_a_tray(replace(TRAY, shifted=True), CAKE) == 3


def test_the_ring_sponge_is_9_4_mm_thick() -> None:
    # 563 g less 10 %, 0.45 g/ml, over 400 x 300 mm.
    assert RING_SPONGE.sheet is not None
    one = thickness(RING_SPONGE, RING_SPONGE.sheet, after_cooking(RING_SPONGE, find))
    assert one.value == pytest.approx(9.38, abs=0.005)


def test_batches_give_their_cuts() -> None:
    # Domes: one tray 8.1 mm thick, 24. Ring: one tray 0.02 mm under its 9.4, 2. Log: 742
    # ml spread 8 mm thick are 600 x 154 mm of the tray, 2 strips.
    assert cuts(SPONGE, SMALL) == 24
    assert cuts(RING_SPONGE, CAKE) == 2
    assert cuts(RYE_SPONGE, STRIP) == 2


def test_thinner_cuts_take_more_trays() -> None:
    # 972 ml spread 4 mm thick are two trays and a bit.
    assert cuts(SPONGE, Cylinder(diameter_mm=60, height_mm=4)) == 48
    # 12 mm thick: 400 x 202 mm, 6 by 3.
    assert cuts(SPONGE, Cylinder(diameter_mm=60, height_mm=12)) == 18
