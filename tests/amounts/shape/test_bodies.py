"""Every kind of body against exact solids, Pappus, and geometry libraries."""

import math

import numpy as np
import pytest
import shapely
import trimesh
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import dblquad

from demould.amounts.shape.area import area_cm2
from demould.amounts.shape.free_form import AREA_WITHIN
from demould.amounts.shape.section import (
    across_mm,
    box_mm,
    height_mm,
    opening_mm2,
    section_mm2,
)
from demould.amounts.shape.skin import skin_of
from demould.amounts.shape.volume import volume_ml, volume_up_to_ml
from demould.mise.shape import (
    Cone,
    CutEllipsoid,
    Cylinder,
    Dome,
    Egg,
    FreeForm,
    HalfEgg,
    HalfSphere,
    HollowRing,
    Savarin,
    Shape,
    Sphere,
    TaperedBox,
)
from demould.mise.shape_points import Outlined, Turned
from tests.desserts.kitchen import DOME, LOG, OVAL_INSERT, PEBBLE, RING, TERRINE

SIZE = st.floats(5, 200)
L_SHAPE = Outlined(
    points=((0, 0), (80, 0), (80, 30), (30, 30), (30, 60), (0, 60), (0, 0)),
    height_mm=25,
)
EVERY: list[Shape] = [
    DOME,
    LOG,
    OVAL_INSERT,
    PEBBLE,
    RING,
    TERRINE,
    Sphere(diameter_mm=60),
    Dome(diameter_mm=80, height_mm=25),
    Dome(diameter_mm=60, height_mm=50),
    Cone(diameter_mm=60, small_mm=0, height_mm=80),
    Cone(diameter_mm=60, small_mm=20, height_mm=80),
    HollowRing(diameter_mm=180, hole_mm=60, height_mm=45),
    Savarin(diameter_mm=70, hole_mm=20, height_mm=25),
    TaperedBox(
        length_mm=300, width_mm=80, small_length_mm=290, small_width_mm=70, height_mm=70
    ),
    Egg(length_mm=60, width_mm=42),
    HalfEgg(length_mm=60, width_mm=42),
    Turned(points=((10, 0), (20, 0), (20, 15), (35, 15), (30, 40))),
    L_SHAPE,
]


# Solid geometry: ball, cap, cone and its frustum, annulus, ellipsoid.
@given(SIZE)
def test_a_ball_is_two_halves(across: float) -> None:
    ball = Sphere(diameter_mm=across)
    half = HalfSphere(diameter_mm=across)
    assert volume_ml(ball) == pytest.approx(2 * volume_ml(half), rel=1e-12)
    assert volume_ml(ball) == pytest.approx(math.pi / 6000 * across**3, rel=1e-12)
    assert area_cm2(ball, "all round") == pytest.approx(
        math.pi / 100 * across**2, rel=1e-9
    )
    assert opening_mm2(ball) == pytest.approx(0, abs=1e-6)


def test_a_60_mm_sphere_with_a_40_mm_one_takes_39_8_ml_in_each_half() -> None:
    left = volume_ml(Sphere(diameter_mm=60)) - volume_ml(Sphere(diameter_mm=40))
    assert left / 2 == pytest.approx(39.8, abs=0.05)
    assert left / 2 * 0.62 == pytest.approx(24.7, abs=0.05)
    assert volume_ml(Sphere(diameter_mm=40)) == pytest.approx(33.51, abs=0.005)


@given(SIZE, SIZE)
def test_a_flat_dome_is_a_cap_and_a_high_one_stands_on_straight_sides(
    across: float, high: float
) -> None:
    half = across / 2
    if high <= half:
        held = math.pi * high / 6 * (3 * half**2 + high**2)
        face = math.pi * (half**2 + high**2)
    else:
        held = 2 / 3 * math.pi * half**3 + math.pi * half**2 * (high - half)
        face = 2 * math.pi * half**2 + 2 * math.pi * half * (high - half)
    dome = Dome(diameter_mm=across, height_mm=high)
    assert volume_ml(dome) == pytest.approx(held / 1000, rel=1e-9)
    assert area_cm2(dome, "face") == pytest.approx(face / 100, rel=1e-9)
    assert box_mm(dome) == pytest.approx((across, across, high))


@given(SIZE, st.floats(0, 1), SIZE)
def test_a_cone_and_its_frustum(across: float, part: float, high: float) -> None:
    large, small = across / 2, part * across / 2
    cone = Cone(diameter_mm=across, small_mm=2 * small, height_mm=high)
    held = math.pi * high / 3 * (large**2 + large * small + small**2)
    slant = math.hypot(large - small, high)
    face = math.pi * (large + small) * slant + math.pi * small**2
    assert volume_ml(cone) == pytest.approx(held / 1000, rel=1e-12)
    assert area_cm2(cone, "face") == pytest.approx(face / 100, rel=1e-9)


@given(SIZE, st.floats(0.05, 0.9), SIZE)
def test_a_savarin_is_what_pappus_says(across: float, part: float, high: float) -> None:
    # Pappus of Alexandria: a turned area by the way of its middle. The middle of half an
    # ellipse lies over the middle of its base, so the way is that of the ring's middle.
    hole = part * across
    ring = Savarin(diameter_mm=across, hole_mm=hole, height_mm=high)
    wide = (across - hole) / 2
    area, way = math.pi / 4 * wide * high, math.pi * (across + hole) / 2
    assert volume_ml(ring) == pytest.approx(area * way / 1000, rel=1e-9)


def test_half_a_round_tyre_has_the_area_pappus_says() -> None:
    # The arc of half a circle, 25 mm across, turned 45 mm from the axis: its middle lies
    # as far out as the circle's, so area = arc x way.
    ring = Savarin(diameter_mm=115, hole_mm=65, height_mm=12.5)
    arc, way = math.pi * 12.5, 2 * math.pi * 45
    assert area_cm2(ring, "face") == pytest.approx(arc * way / 100, rel=1e-9)
    assert opening_mm2(ring) == pytest.approx(math.pi / 4 * (115**2 - 65**2))


def test_a_ring_with_a_hole_is_one_disc_less_another() -> None:
    ring = HollowRing(diameter_mm=180, hole_mm=60, height_mm=45)
    both = [volume_ml(Cylinder(diameter_mm=d, height_mm=45)) for d in (180, 60)]
    assert volume_ml(ring) == pytest.approx(both[0] - both[1], rel=1e-12)
    flat = math.pi / 4 * (180**2 - 60**2)
    sides = math.pi * (180 + 60) * 45
    assert area_cm2(ring, "all round") == pytest.approx((2 * flat + sides) / 100)


@given(SIZE, SIZE)
def test_an_egg_holds_an_ellipsoid_wherever_it_is_widest(
    long: float, wide: float
) -> None:
    egg = Egg(length_mm=long, width_mm=wide)
    held = math.pi / 6 * long * wide**2 / 1000
    assert volume_ml(egg) == pytest.approx(held, rel=1e-12)
    half = HalfEgg(length_mm=long, width_mm=wide)
    assert volume_ml(half) == pytest.approx(held / 2, rel=1e-12)
    assert box_mm(egg)[2] == pytest.approx(wide)


@given(SIZE, SIZE, SIZE)
def test_an_ellipsoid_has_the_area_of_its_integral(
    long: float, wide: float, high: float
) -> None:
    a, b, c = sorted((long / 2, wide / 2, high / 2))
    if c > 10 * a:
        return
    whole = CutEllipsoid(half_length_mm=a, half_width_mm=b, half_height_mm=c, cut_mm=c)

    def stretch(polar: float, about: float) -> float:
        # Of (a sin p cos q, b sin p sin q, c cos p), over one eighth.
        sin, cos = math.sin(polar), math.cos(polar)
        level = (math.cos(about) / a) ** 2 + (math.sin(about) / b) ** 2
        return a * b * c * sin * math.sqrt(sin**2 * level + (cos / c) ** 2)

    eighth, _ = dblquad(stretch, 0, math.pi / 2, 0, math.pi / 2, epsrel=1e-9)
    assert area_cm2(whole, "all round") == pytest.approx(8 * eighth / 100, rel=1e-6)


def test_a_turned_profile_is_what_a_mesh_library_turns() -> None:
    points = np.array([(0, 0), (20, 0), (20, 15), (35, 15), (30, 40), (0, 40)])
    mesh = trimesh.creation.revolve(points, sections=720)
    shape = Turned(points=((20, 0), (20, 15), (35, 15), (30, 40)))
    # Of a polygon of 720 sides area and volume are 1.3e-5 under the circle's.
    assert volume_ml(shape) == pytest.approx(mesh.volume / 1000, rel=3e-5)
    assert area_cm2(shape, "all round") == pytest.approx(mesh.area / 100, rel=3e-5)


def test_a_half_round_turned_is_the_half_sphere() -> None:
    turns = [math.pi / 2 * step / 400 for step in range(401)]
    points = tuple((35 * math.sin(turn), 35 - 35 * math.cos(turn)) for turn in turns)
    assert volume_ml(Turned(points=points)) == pytest.approx(89.80, abs=0.01)


def test_an_outline_with_a_height_is_its_polygon() -> None:
    polygon = shapely.Polygon(L_SHAPE.points)
    assert volume_ml(L_SHAPE) == pytest.approx(polygon.area * 25 / 1000)
    assert area_cm2(L_SHAPE, "all round") == pytest.approx(
        (2 * polygon.area + polygon.length * 25) / 100
    )
    assert box_mm(L_SHAPE) == (80, 60, 25)


def test_a_leaning_loaf_is_a_hull() -> None:
    loaf = TaperedBox(
        length_mm=300, width_mm=80, small_length_mm=290, small_width_mm=70, height_mm=70
    )
    corners = [
        (x * long / 2, y * wide / 2, up)
        for long, wide, up in ((290, 70, 0), (300, 80, 70))
        for x in (-1, 1)
        for y in (-1, 1)
    ]
    hull = trimesh.convex.convex_hull(np.array(corners))
    assert volume_ml(loaf) == pytest.approx(hull.volume / 1000, rel=1e-9)
    assert area_cm2(loaf, "all round") == pytest.approx(hull.area / 100, rel=1e-9)


@pytest.mark.parametrize("shape", EVERY)
def test_sections_from_bottom_to_top_add_up_to_the_volume(shape: Shape) -> None:
    # Midpoints of 4000 slices; a shelf of the turned profile lies between two of them.
    top, slices = height_mm(shape), 4000
    total = sum(
        section_mm2(shape, top * (step + 0.5) / slices) for step in range(slices)
    )
    assert total * top / slices / 1000 == pytest.approx(volume_ml(shape), rel=3e-4)


@pytest.mark.parametrize("shape", EVERY)
@pytest.mark.parametrize("share", [0.1, 0.5, 0.9, 1.0])
def test_what_lies_under_a_height_adds_up(shape: Shape, share: float) -> None:
    level = share * height_mm(shape)
    slices = 4000
    total = sum(section_mm2(shape, level * (s + 0.5) / slices) for s in range(slices))
    assert volume_up_to_ml(shape, level) == pytest.approx(
        total * level / slices / 1000, rel=5e-4
    )


@pytest.mark.parametrize("shape", EVERY)
def test_the_skin_is_as_wide_as_the_sections(shape: Shape) -> None:
    skin = skin_of(shape)
    for half_long, half_wide, up in skin.meridian[2:-1:9]:
        long, wide = across_mm(shape, float(up))
        if not isinstance(shape, Turned):
            assert (2 * half_long, 2 * half_wide) == pytest.approx((long, wide))


@pytest.mark.parametrize("shape", EVERY)
def test_water_and_three_sizes_give_the_area_within_what_is_said(shape: Shape) -> None:
    long, wide, high = box_mm(shape)
    hollow = isinstance(shape, HollowRing | Savarin | Turned | Outlined | Egg)
    if hollow or isinstance(shape, Sphere):
        pytest.skip("a free form has no hole, no shelf and no second half")
    free = FreeForm(
        water_ml=volume_ml(shape), length_mm=long, width_mm=wide, height_mm=high
    )
    assert volume_up_to_ml(free) == pytest.approx(volume_ml(shape), rel=5e-4)
    assert box_mm(free) == pytest.approx((long, wide, high))
    true = area_cm2(shape, "all round")
    assert area_cm2(free, "all round") == pytest.approx(true, rel=AREA_WITHIN)
