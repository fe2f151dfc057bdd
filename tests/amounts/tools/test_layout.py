"""Where the cuts of a tray lie."""

import math
from dataclasses import replace
from itertools import combinations, product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.spatial.distance import pdist
from shapely.affinity import scale, translate
from shapely.geometry import Point, box

from demould.amounts.tools.layout import (
    Layout,
    _families,
    best_rows,
    most,
    straight,
    trays_for,
)
from demould.mise.component import Sheet, Tray
from demould.mise.shape import Box, Cylinder, Oval, Shape
from tests.desserts.build import stated


def sheet(length: float, width: float, gap: float = 2.0) -> Sheet:
    return Sheet(tray=Tray(length_mm=length, width_mm=width), gap=stated(gap, "mm"))


def disc(wide: float) -> Cylinder:
    return Cylinder(diameter_mm=wide, height_mm=8)


TRAY = sheet(400, 300)


def sound(layout: Layout, gap: float, *, loose: float = 1e-6) -> None:
    """Every cut on the tray, none nearer to another than the gap, by shapely."""
    bodies = []
    for place in layout.places:
        long, wide = _sides(place.cut)
        if place.turned:
            long, wide = wide, long
        if isinstance(place.cut, Box):
            body = box(-long / 2, -wide / 2, long / 2, wide / 2)
        else:
            body = scale(Point(0, 0).buffer(1, quad_segs=64), long / 2, wide / 2)
        bodies.append(translate(body, *place.at))
    tray = box(0, 0, layout.tray.length_mm, layout.tray.width_mm).buffer(loose)
    assert all(tray.contains(body) for body in bodies)
    for one, other in combinations(bodies, 2):
        assert one.distance(other) >= gap - loose


def _sides(cut: Shape) -> tuple[float, float]:
    if isinstance(cut, Cylinder):
        return cut.diameter_mm, cut.diameter_mm
    assert isinstance(cut, Box | Oval)
    return cut.length_mm, cut.width_mm


def test_24_small_discs_straight_and_30_with_rows_moved_over() -> None:
    # (400 + 2) / 62 = 6.5 by (300 + 2) / 62 = 4.9. Moved over by the 30 mm that are left
    # of the length the next row comes within sqrt(62^2 - 30^2) = 54.3 mm: five rows.
    assert len(straight(TRAY, disc(60)).places) == 24
    assert len(most(TRAY, disc(60)).places) == 30
    sound(most(TRAY, disc(60)), 2)


def test_two_large_discs_straight_and_three_staggered() -> None:
    one, other = straight(TRAY, disc(160)), most(TRAY, disc(160))
    assert (len(one.places), len(other.places)) == (2, 3)
    # 201.06 cm2 each of 1200 cm2
    assert one.off_cut == pytest.approx(66.5, abs=0.05)
    assert other.off_cut == pytest.approx(49.7, abs=0.05)
    sound(other, 2)


def test_a_strip_longer_than_the_tray_does_not_come_out() -> None:
    strip = Box(length_mm=490, width_mm=70, height_mm=8)
    assert not most(TRAY, strip).places
    assert len(straight(sheet(300, 600), strip).places) == 4


# Diameters of n equal circles at their densest in a unit square, as proven optimal:
# R. L. Graham and B. D. Lubachevsky, Repeated patterns of dense packings of equal disks
# in a square, Electronic Journal of Combinatorics 3 (1996), R16, and the tables they
# cite. Quoted from memory.
DENSEST = {
    1: 1.0,
    2: 2 - math.sqrt(2),
    3: 0.508666,
    4: 0.5,
    5: math.sqrt(2) - 1,
    6: 0.375361,
    7: 0.348915,
    8: 0.341081,
    9: 1 / 3,
    10: 0.296408,
}


@pytest.mark.parametrize("n", DENSEST)
def test_rows_never_beat_the_densest_packing_and_reach_it_where_it_is_rows(
    n: int,
) -> None:
    side = 1 / DENSEST[n] + 1e-5
    found = sum(len(row) for _, row in best_rows(side, side))
    assert found <= n
    if n in (1, 2, 4, 5, 9):
        assert found == n


@given(st.floats(1.0, 6.0), st.floats(1.0, 6.0))
def test_the_mix_of_steps_is_the_best_of_all_mixes(long: float, wide: float) -> None:
    found = sum(len(row) for _, row in best_rows(long, wide))
    assert found == max(_tried(long, wide), default=0)


def _tried(long: float, wide: float) -> list[int]:
    """Every order of straight and shifted steps, written out."""
    counts = []
    for one, other in _families(long, math.floor(long + 1e-9)):
        apart = min((abs(x - y) for x in one for y in other), default=1.0)
        step = max(math.sqrt(max(0.0, 1 - apart**2)), 0.5)
        for n in range(2 * int(wide) + 2):
            for steps in product((False, True), repeat=n):
                if 1 + sum(step if s else 1 for s in steps) > wide + 1e-9:
                    continue
                rows = np.concatenate([[0], np.cumsum(steps)]) % 2
                counts.append(sum(len(other if odd else one) for odd in rows))
            if n >= 9:
                break
    return counts


@settings(max_examples=60)
@given(
    st.floats(100, 600),
    st.floats(100, 400),
    st.floats(30, 200),
    st.floats(0, 10),
)
def test_discs_lie_apart_on_the_tray_and_never_fewer_than_straight(
    length: float, width: float, wide: float, gap: float
) -> None:
    tray = sheet(length, width, gap)
    found = most(tray, disc(wide))
    assert len(found.places) >= len(straight(tray, disc(wide)).places)
    at = np.array([place.at for place in found.places]).reshape(-1, 2)
    if len(at) > 1:
        assert pdist(at).min() >= wide + gap - 1e-6
    if len(at):
        assert at.min() >= wide / 2 - 1e-6
        assert (at.max(axis=0) <= np.array([length, width]) - wide / 2 + 1e-6).all()
    if min(length, width) >= wide:
        assert found.places


@settings(max_examples=40)
@given(
    st.floats(100, 600),
    st.floats(100, 400),
    st.floats(20, 200),
    st.floats(20, 200),
    st.booleans(),
)
def test_strips_and_ovals_lie_apart_too(
    length: float, width: float, long: float, wide: float, oval: bool
) -> None:
    tray = sheet(length, width)
    long, wide = max(long, wide), min(long, wide)
    cut: Shape = Box(length_mm=long, width_mm=wide, height_mm=8)
    if oval:
        cut = Oval(
            length_mm=long,
            width_mm=wide,
            small_length_mm=long,
            small_width_mm=wide,
            height_mm=8,
        )
    found = most(tray, cut)
    assert len(found.places) >= len(straight(tray, cut).places)
    # Between ovals that are not level the gap is kept along the axes only.
    sound(found, 0 if oval else 2)


def test_ten_strips_from_a_tray_that_takes_eight_straight() -> None:
    # 210 x 148 on 600 x 400: straight (2 x 2 = 4 or 4 x 1 = 4); turned in the strip 5.
    cut = Box(length_mm=210, width_mm=148, height_mm=5)
    tray = sheet(600, 400, 0)
    assert len(straight(tray, cut).places) == 4
    assert len(most(tray, cut).places) > 4
    sound(most(tray, cut), 0)


def test_two_sizes_share_trays_largest_first() -> None:
    (one,) = trays_for(TRAY, [(disc(60), 6), (disc(160), 2)])
    assert len(one.places) == 8
    assert _sides(one.places[0].cut) == (160, 160)
    sound(one, 2)


@settings(max_examples=40, deadline=None)
@given(
    st.lists(
        st.tuples(st.floats(30, 200).map(disc), st.integers(1, 25)),
        min_size=1,
        max_size=3,
    )
)
def test_every_cut_wanted_is_on_some_tray(wanted: list[tuple[Cylinder, int]]) -> None:
    trays = trays_for(TRAY, wanted)
    for one in trays:
        sound(one, 2, loose=1e-5)
    for cut, n in wanted:
        there = sum(place.cut == cut for one in trays for place in one.places)
        same = sum(m for other, m in wanted if other == cut)
        assert there == same, n


def test_a_cut_that_does_not_come_out_is_refused() -> None:
    with pytest.raises(ValueError, match=r"420 x 420 mm .* 400 x 300 mm"):
        trays_for(TRAY, [(disc(420), 1)])


def test_no_tray_of_no_size() -> None:
    assert best_rows(0.5, 3) == ()
    assert best_rows(3, 0.5) == ()
    assert not most(
        replace(TRAY, tray=Tray(length_mm=50, width_mm=300)), disc(60)
    ).places
