"""Horizontal sections, heights, boxes."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.shape.section import (
    across_mm,
    box_mm,
    height_mm,
    opening_mm2,
    profile,
    section_mm2,
)
from demould.amounts.shape.volume import volume_ml
from demould.mise.shape import HalfSphere, Shape, WaterOnly
from tests.amounts.meshes import section_hull_mm2
from tests.desserts.kitchen import DOME, LOG, OVAL_INSERT, PEBBLE, RING, TERRINE

SHAPES = [DOME, RING, PEBBLE, OVAL_INSERT, LOG, TERRINE, WaterOnly(water_ml=90)]


def test_the_open_face_of_the_pebble_is_66_by_46() -> None:
    # Cut 12.36 mm over the widest section of an ellipsoid 40.2 x 28.0 x 21.64 mm: both
    # axes shrink by sqrt(1 - (12.36 / 21.64)2) = 0.8208. Face 23.8 cm2.
    length, width = across_mm(PEBBLE, 34.0)
    assert (length, width) == pytest.approx((66.0, 46.0), abs=0.05)
    assert opening_mm2(PEBBLE) == pytest.approx(2380, abs=5)


def test_the_pebble_is_80_by_56_by_34() -> None:
    assert box_mm(PEBBLE) == pytest.approx((80.4, 56.0, 34.0))


@pytest.mark.parametrize("up", [2.0, 11.0, 21.64, 33.0])
def test_sections_of_the_pebble_are_those_of_its_mesh(up: float) -> None:
    # The section of the mesh is a polygon of some 300 corners inside the ellipse; facets
    # of a ball so fine lie within 5e-4 of it. Where the section is small (2 mm up, the
    # steep cap) corners are few: 1 %.
    mesh = section_hull_mm2(PEBBLE, up - PEBBLE.half_height_mm)
    off = 0.01 if up < 5 else 0.002
    assert section_mm2(PEBBLE, up) == pytest.approx(mesh, rel=off)
    assert section_mm2(PEBBLE, up) > mesh


def test_a_half_sphere_is_as_wide_as_its_circle() -> None:
    # Chord of a circle of 70 mm, 10 mm over the lowest point: 2 sqrt(10 x 60).
    assert across_mm(DOME, 10)[0] == pytest.approx(2 * math.sqrt(600))
    assert opening_mm2(DOME) == pytest.approx(math.pi / 4 * 70**2)


def test_a_log_is_straight_above_its_half_round() -> None:
    assert across_mm(LOG, 40) == (500, 80)
    assert across_mm(LOG, 60) == (500, 80)
    assert across_mm(LOG, 10)[1] == pytest.approx(2 * math.sqrt(10 * 70))
    assert section_mm2(LOG, 60) == pytest.approx(500 * 80)


def test_an_oval_grows_evenly_from_its_small_face() -> None:
    assert across_mm(OVAL_INSERT, 0) == pytest.approx((42.4, 28.3))
    assert across_mm(OVAL_INSERT, 9) == pytest.approx((43.7, 29.15))
    assert across_mm(OVAL_INSERT, 18) == pytest.approx((45, 30))


@pytest.mark.parametrize("shape", SHAPES)
def test_sections_add_up_to_the_volume(shape: Shape) -> None:
    slices = profile(shape, 400)
    total = sum(
        (high - low) * (below + above) / 2
        for (low, below), (high, above) in itertools.pairwise(slices)
    )
    # The trapezoid rule cuts corners where a body is curved: under 1 / 400 squared here
    # but at a half-round's lowest line, where it is (1 / 400) to the 1.5.
    assert total / 1000 == pytest.approx(volume_ml(shape), rel=2e-4)


@pytest.mark.parametrize("shape", SHAPES)
def test_a_profile_goes_from_the_bottom_to_the_open_face(shape: Shape) -> None:
    slices = profile(shape)
    assert len(slices) == 61
    assert slices[0][0] == 0
    assert slices[-1] == pytest.approx((height_mm(shape), opening_mm2(shape)))


@given(st.floats(1, 5000))
def test_water_only_stands_as_the_half_sphere_that_holds_it(water: float) -> None:
    across = 2 * height_mm(WaterOnly(water_ml=water))
    assert volume_ml(HalfSphere(diameter_mm=across)) == pytest.approx(water)


@pytest.mark.parametrize("at", [-0.1, 34.01])
def test_a_section_outside_the_body_is_refused(at: float) -> None:
    with pytest.raises(
        ValueError, match=rf"^a section at {at:g} mm misses a body 34 mm high$"
    ):
        section_mm2(PEBBLE, at)
