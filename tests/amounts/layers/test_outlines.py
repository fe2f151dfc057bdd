"""Parts in cavities on plane outlines, and rings in rings."""

import math
from dataclasses import replace

import pytest
import shapely
import shapely.affinity
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.layers.inside import room_beside_mm, sticks_out_mm
from demould.amounts.layers.place import Placed
from demould.amounts.layers.wall import walls
from demould.amounts.shape.gap import nearest
from demould.amounts.shape.skin import skin_of, standing
from demould.mise.dessert import Cut, Layer
from demould.mise.shape import Cylinder, HollowRing, Savarin, Shape
from demould.mise.shape_points import Outlined
from tests.desserts.build import layer
from tests.desserts.kitchen import KITCHEN, mould
from tests.desserts.pebble import RIVER_PEBBLE

Points = tuple[tuple[float, float], ...]
TRAY: Points = ((0, 0), (60, 0), (60, 40), (0, 40), (0, 0))
L_SHAPE: Points = ((0, 0), (80, 0), (80, 30), (30, 30), (30, 60), (0, 60), (0, 0))


def _placed(shape: Shape, at: float = 5.0) -> Placed:
    return Placed(
        layer=Layer(component="centre", fill=Cut(shape=shape)), shape=shape, at=at
    )


def test_a_disc_in_a_drawn_rectangle_has_the_room_of_a_box() -> None:
    cavity = Outlined(points=TRAY, height_mm=30)
    disc = Cylinder(diameter_mm=20, height_mm=10)
    assert room_beside_mm(_placed(disc), cavity) == pytest.approx(10, abs=0.01)
    assert sticks_out_mm(_placed(disc), cavity) == 0
    gap = nearest(standing(skin_of(disc, lidded=True), 12), skin_of(cavity))
    assert gap.mm == pytest.approx(10, abs=0.01)
    floor = nearest(standing(skin_of(disc, lidded=True), 4), skin_of(cavity))
    assert floor.mm == pytest.approx(4, abs=0.01)


def test_the_middle_of_an_l_is_outside_it() -> None:
    cavity = Outlined(points=L_SHAPE, height_mm=30)
    disc = Cylinder(diameter_mm=10, height_mm=10)
    assert sticks_out_mm(_placed(disc), cavity) == pytest.approx(5, abs=0.05)


@given(
    st.lists(st.floats(20, 60), min_size=5, max_size=9),
    st.floats(4, 60),
)
def test_room_is_what_a_plane_geometry_library_measures(
    reaches: list[float], across: float
) -> None:
    # A star-shaped outline and a disc in the middle of the box round it. 64
    # sides of an ellipse stay within 0.1 mm of it here.
    count = len(reaches)
    corners = [
        (
            reach * math.cos(2 * math.pi * n / count),
            reach * math.sin(2 * math.pi * n / count),
        )
        for n, reach in enumerate(reaches)
    ]
    cavity = Outlined(points=(*corners, corners[0]), height_mm=30)
    xs, ys = zip(*corners, strict=True)
    middle = (max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2
    polygon = shapely.Polygon(corners)
    ball = shapely.Point(middle).buffer(1, quad_segs=64)
    part = shapely.affinity.scale(ball, across / 2, across / 2, origin=middle)
    inside = polygon.contains(part)
    away = polygon.exterior.distance(part.exterior)
    room = room_beside_mm(_placed(Cylinder(diameter_mm=across, height_mm=5)), cavity)
    if inside:
        assert room == pytest.approx(away, abs=0.1)
    else:
        assert room < 0.1


def test_a_ring_in_a_ring_has_room_to_rim_and_hole() -> None:
    # 25 mm up, at the rim of a savarin 90 wide with a hole of 30: a ring of 70 / 50 has
    # 10 mm to the outer face and 10 to the hole.
    cavity = Savarin(diameter_mm=90, hole_mm=30, height_mm=30)
    ring = HollowRing(diameter_mm=70, hole_mm=50, height_mm=5)
    at_rim = _placed(ring, 25)
    low = 15 * math.sqrt(1 - (5 / 30) ** 2) - 5
    assert room_beside_mm(at_rim, cavity) == pytest.approx(low)
    assert sticks_out_mm(at_rim, cavity) == 0
    disc = Cylinder(diameter_mm=70, height_mm=5)
    assert sticks_out_mm(_placed(disc, 25), cavity) > 10


def test_the_wall_round_a_ring_in_a_ring_is_the_nearer_of_both() -> None:
    cavity = HollowRing(diameter_mm=180, hole_mm=60, height_mm=45)
    off = HollowRing(diameter_mm=160, hole_mm=70, height_mm=12)
    kitchen = replace(KITCHEN, moulds=(mould("tube", 1, 1, cavity),))
    dessert = replace(
        RIVER_PEBBLE,
        mould="tube",
        layers=(layer("ganache"), layer("centre", off), layer("ganache")),
        finish=(),
        plate=(),
    )
    (wall,) = walls(dessert, kitchen)
    # 10 mm to the rim, 5 to the hole, 16.5 below and above.
    assert wall.least.value == pytest.approx(5, abs=0.01)
