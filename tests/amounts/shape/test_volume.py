"""Volumes of shapes and cavities against formulas, meshes and laws."""

import math
from dataclasses import fields, replace
from typing import Any

import numpy as np
import pytest
import trimesh
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.shape.volume import (
    cavity,
    mould_of,
    sizes,
    volume,
    volume_ml,
    water_against_shape,
)
from demould.mise.figure import Figure, Line, Stated, unfold
from demould.mise.shape import (
    Box,
    CutEllipsoid,
    Cylinder,
    HalfSphere,
    Oval,
    Shape,
    Trough,
    WaterOnly,
)
from tests.amounts.meshes import (
    ball_deficit,
    cut_ellipsoid_mesh,
    oval_mesh,
    trough_mesh,
)
from tests.desserts.kitchen import (
    DOME,
    FRAME,
    KITCHEN,
    LOG,
    OVAL_INSERT,
    PEBBLE,
    RING,
    SMALL_DOME,
    TERRINE,
    mould,
)

# Closed formulas: ball π/6 d3, half of it, cylinder π/4 d2 h. To the printed digit.
PRINTED = [
    (HalfSphere(diameter_mm=30), 7.07, 0.005),
    (SMALL_DOME, 16.76, 0.005),
    (DOME, 89.80, 0.005),
    (RING, 1145, 0.5),
    (PEBBLE, 90.0, 0.05),
    (OVAL_INSERT, 18.0, 0.05),
    (LOG, 2457, 0.5),
    (FRAME, 576, 0.0001),
    (TERRINE, 1680, 0.0001),
    (WaterOnly(water_ml=90), 90, 0.0001),
]


@pytest.mark.parametrize(("shape", "printed", "off"), PRINTED)
def test_volumes_are_the_printed_ones(shape: Shape, printed: float, off: float) -> None:
    assert volume_ml(shape) == pytest.approx(printed, abs=off)


def test_two_half_spheres_are_a_ball() -> None:
    assert 2 * volume_ml(SMALL_DOME) == pytest.approx(math.pi / 6 * 4**3)


def test_a_whole_ellipsoid_is_a_sixth_of_pi_by_its_axes() -> None:
    whole = CutEllipsoid(
        half_length_mm=39, half_width_mm=29, half_height_mm=17, cut_mm=17
    )
    assert volume_ml(whole) == pytest.approx(math.pi / 6 * 7.8 * 5.8 * 3.4)


def test_a_cut_ellipsoid_holds_what_its_mesh_holds() -> None:
    # Flat facets lie inside the body; an ellipsoid is a stretched ball, so the mesh is
    # short by about what the same mesh of a ball is short of, 5e-4 here.
    mesh = cut_ellipsoid_mesh(PEBBLE)
    short = 1 - mesh / 1000 / volume_ml(PEBBLE)
    assert 0 < short < 1.5 * ball_deficit()


def test_a_tapering_oval_holds_what_its_hull_holds() -> None:
    # A polygon of 720 corners in a circle lacks (2π/720)2/6 = 1.3e-5 of its area.
    hull = oval_mesh(OVAL_INSERT).volume / 1000
    assert volume_ml(OVAL_INSERT) == pytest.approx(hull, rel=2e-5)
    assert volume_ml(OVAL_INSERT) > hull


def test_a_trough_holds_what_its_hull_holds() -> None:
    hull = trough_mesh(LOG).volume / 1000
    assert volume_ml(LOG) == pytest.approx(hull, rel=2e-5)
    assert volume_ml(LOG) > hull


def test_a_revolved_arc_is_the_half_sphere() -> None:
    turns = np.linspace(0, np.pi / 2, 200)
    arc = np.column_stack((35 * np.sin(turns), -35 * np.cos(turns)))
    body = trimesh.creation.revolve(np.vstack((arc, [0, 0])), sections=360)
    # 360 sides lack (2π/360)2/6 = 5e-5, 200 steps of the arc under 2e-5.
    assert volume_ml(DOME) == pytest.approx(abs(body.volume) / 1000, rel=1e-4)


@given(
    st.floats(0.2, 5), st.sampled_from([DOME, RING, PEBBLE, OVAL_INSERT, LOG, FRAME])
)
def test_volume_goes_with_the_cube_of_size(factor: float, shape: Shape) -> None:
    drawn: Any = shape
    grown = {part.name: getattr(drawn, part.name) * factor for part in fields(drawn)}
    larger: Shape = replace(drawn, **grown)
    assert volume_ml(larger) == pytest.approx(volume_ml(shape) * factor**3)


@given(st.floats(-0.99, 0.99))
def test_an_ellipsoid_and_what_was_cut_off_are_whole(cut: float) -> None:
    one = CutEllipsoid(
        half_length_mm=40, half_width_mm=28, half_height_mm=20, cut_mm=20 * cut
    )
    other = replace(one, cut_mm=-20 * cut)
    whole = math.pi / 6 * 8 * 5.6 * 4
    assert volume_ml(one) + volume_ml(other) == pytest.approx(whole)


def test_the_water_wins_over_the_shape_and_the_difference_is_told() -> None:
    pebble = mould_of(KITCHEN, "pebble")
    assert cavity(pebble).value == 90
    more = water_against_shape(pebble)
    assert more is not None
    assert more.value == pytest.approx(0.034, abs=0.001)
    assert water_against_shape(mould_of(KITCHEN, "dome")) is None
    free = mould("free", 1, 1, WaterOnly(water_ml=90), 90)
    assert water_against_shape(free) is None


def test_a_cavity_unfolds_to_its_sizes_and_their_line() -> None:
    line = Line("kitchen.yaml", 7, "dome; 3 x 6; half-sphere 70 mm")
    dome = replace(mould_of(KITCHEN, "dome"), line=line)
    leaves = [part for depth, part in unfold(cavity(dome)) if depth == 1]
    assert leaves == [
        Figure(name="diameter", value=70, unit="mm", origin=Stated(line=line))
    ]


@pytest.mark.parametrize(
    "shape",
    [
        DOME,
        RING,
        PEBBLE,
        OVAL_INSERT,
        LOG,
        TERRINE,
        Box(length_mm=1, width_mm=1, height_mm=1),
        Cylinder(diameter_mm=1, height_mm=1),
        Oval(length_mm=2, width_mm=1, small_length_mm=2, small_width_mm=1, height_mm=1),
        Trough(length_mm=2, width_mm=2, height_mm=1),
        WaterOnly(water_ml=1),
    ],
)
def test_every_volume_says_how(shape: Shape) -> None:
    worked = volume(shape, "it")
    assert worked.value == volume_ml(shape)
    assert str(getattr(worked.origin, "rule", ""))
    assert len(getattr(worked.origin, "parts", ())) == len(sizes(shape))
