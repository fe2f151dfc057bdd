"""Parts inside the faces of their cavity."""

import math

import pytest

from demould.amounts.layers.inside import room_beside_mm, sticks_out_mm
from demould.amounts.layers.place import Placed
from demould.mise.dessert import Cut, Layer
from demould.mise.shape import Box, Cylinder, HalfSphere, Shape
from tests.desserts.kitchen import DOME, LOG, SMALL_DOME


def lying(shape: Shape, at: float, *, turned_over: bool = False) -> Placed:
    layer = Layer(component="centre", fill=Cut(shape=shape), turned_over=turned_over)
    return Placed(layer=layer, shape=shape, at=at)


def test_a_disc_has_the_room_that_its_lower_edge_leaves() -> None:
    # 10 mm up a ball of 70 mm: half width sqrt(10 x 60) = 24.49.
    disc = Cylinder(diameter_mm=40, height_mm=5)
    assert room_beside_mm(lying(disc, 10), DOME) == pytest.approx(math.sqrt(600) - 20)
    assert sticks_out_mm(lying(disc, 10), DOME) == 0


def test_a_bars_corners_count_in_a_round_mould() -> None:
    # Corner of 40 x 30 is 25 mm out, the face at 10 mm 24.49.
    bar = Box(length_mm=40, width_mm=30, height_mm=5)
    assert sticks_out_mm(lying(bar, 10), DOME) == pytest.approx(25 - math.sqrt(600))
    assert room_beside_mm(lying(bar, 0), DOME) == -25


def test_in_a_log_length_and_width_count_each_for_itself() -> None:
    bar = Box(length_mm=490, width_mm=60, height_mm=5)
    assert room_beside_mm(lying(bar, 45), LOG) == 5


@pytest.mark.parametrize(("at", "out"), [(-2.0, 2.0), (17.0, 2.0), (5.0, 0.0)])
def test_above_the_open_side_and_under_the_bottom_is_out(at: float, out: float) -> None:
    tin = Cylinder(diameter_mm=70, height_mm=35)
    assert sticks_out_mm(lying(SMALL_DOME, at), tin) == out


def test_a_half_sphere_turned_over_needs_its_width_below() -> None:
    up = room_beside_mm(lying(HalfSphere(diameter_mm=40), 3.5, turned_over=True), DOME)
    assert up == pytest.approx(math.sqrt(3.5 * 66.5) - 20)


def test_a_part_narrowing_to_a_point_has_half_the_width_there() -> None:
    point = Box(length_mm=1e-9, width_mm=1e-9, height_mm=1)
    assert room_beside_mm(lying(point, 10), DOME) == pytest.approx(24.49, abs=0.01)
