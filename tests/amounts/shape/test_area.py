"""Areas to coat."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.shape.area import Faces, area, area_cm2, face_mm2
from demould.mise.figure import Assumed, Line, unfold
from demould.mise.shape import CutEllipsoid, HalfSphere, Oval, Shape, WaterOnly
from tests.amounts.meshes import cut_mesh, oval_mesh, trough_mesh
from tests.desserts.kitchen import DOME, LOG, OVAL_INSERT, PEBBLE, RING, TERRINE


@pytest.mark.parametrize(
    ("shape", "faces", "printed", "off"),
    [
        # Pebble: face 84.0, flat side 23.8, together 107.8 cm2, to the printed digit.
        (PEBBLE, "face", 84.0, 0.05),
        (PEBBLE, "all round", 107.8, 0.05),
        # Half-sphere 2 π r2; ring top and side; log without its bottom, both ends.
        (DOME, "face", 77, 0.5),
        (RING, "face", 509, 0.5),
        (LOG, "face and ends", 1027, 0.5),
        (TERRINE, "all round", 2 * (30 * 8 + 30 * 7 + 8 * 7), 1e-9),
        (TERRINE, "face", 30 * 8 + 2 * 30 * 7, 1e-9),
    ],
)
def test_areas_are_the_printed_ones(
    shape: Shape, faces: Faces, printed: float, off: float
) -> None:
    assert area_cm2(shape, faces) == pytest.approx(printed, abs=off)


def test_an_ellipsoid_is_near_the_usual_approximation() -> None:
    # 78 x 58 x 34 mm: 99.3 cm2 by the approximation with p = 1.6075 (K. Thomsen, from
    # memory: off by 1.061 % at the most).
    whole = CutEllipsoid(
        half_length_mm=39, half_width_mm=29, half_height_mm=17, cut_mm=17
    )
    assert area_cm2(whole, "face") == pytest.approx(99.3, rel=0.0107)


def test_the_pebble_has_the_area_of_its_mesh() -> None:
    # Facets inside a curved face lack area, about half of what they lack in volume.
    mesh = cut_mesh(PEBBLE).area
    assert face_mm2(PEBBLE) == pytest.approx(mesh, rel=5e-4)
    assert face_mm2(PEBBLE) > mesh


def test_a_tapering_oval_has_the_area_of_its_hull() -> None:
    hull = oval_mesh(OVAL_INSERT).area / 100
    assert area_cm2(OVAL_INSERT, "all round") == pytest.approx(hull, rel=2e-5)


def test_a_log_has_the_area_of_its_hull() -> None:
    hull = trough_mesh(LOG).area / 100
    assert area_cm2(LOG, "all round") == pytest.approx(hull, rel=2e-5)


@given(st.floats(5, 50), st.floats(-0.99, 1))
def test_a_cut_ball_has_the_area_of_its_zone(radius: float, cut: float) -> None:
    # Archimedes: 2 π r by the height of the zone.
    ball = CutEllipsoid(
        half_length_mm=radius,
        half_width_mm=radius,
        half_height_mm=radius,
        cut_mm=cut * radius,
    )
    zone = 2 * math.pi * radius * (radius + cut * radius)
    assert face_mm2(ball) == pytest.approx(zone, rel=1e-9)


@given(st.floats(5, 50), st.floats(5, 50))
def test_a_long_thin_body_is_an_ellipsoid_of_revolution(
    short: float, long: float
) -> None:
    # Closed form of the prolate and the oblate spheroid, axis along the length.
    low, high = sorted((short, long))
    if high / low < 1.01 or high / low > 4:
        return
    eccentric = math.sqrt(1 - (low / high) ** 2)
    exact = 2 * math.pi * low**2 * (1 + high / (low * eccentric) * math.asin(eccentric))
    body = CutEllipsoid(
        half_length_mm=high, half_width_mm=low, half_height_mm=low, cut_mm=low
    )
    assert face_mm2(body) == pytest.approx(exact, rel=1e-6)


def test_a_round_oval_is_a_cone_with_its_top_off() -> None:
    # Lateral area π (r + R) slant, and the small face.
    cone = Oval(
        length_mm=60,
        width_mm=60,
        small_length_mm=40,
        small_width_mm=40,
        height_mm=20,
    )
    slant = math.hypot(10, 20)
    assert face_mm2(cone) == pytest.approx(math.pi * (50 * slant + 400), rel=1e-9)


def test_an_area_unfolds_to_the_sizes() -> None:
    figure = area(DOME, "face", "to coat")
    assert [part.name for _, part in unfold(figure)] == ["to coat", "diameter"]


def test_the_area_of_water_only_is_assumed_and_never_under_a_ball() -> None:
    line = Line("kitchen.yaml", 3, "free; 90 ml")
    free = area(WaterOnly(water_ml=90), "all round", "to coat", line)
    assert isinstance(free.origin, Assumed)
    radius = (90 / (2 / 3 * math.pi)) ** (1 / 3)
    ball = (36 * math.pi * 90**2) ** (1 / 3)
    assert free.value == pytest.approx(3 * math.pi * radius**2)
    assert free.origin.low == pytest.approx(ball)
    assert free.origin.low <= 107.8 <= free.origin.high
    assert free.origin.line == line
    face = area(WaterOnly(water_ml=90), "face", "to coat")
    assert face.value == pytest.approx(2 * math.pi * radius**2)


@given(st.floats(0.3, 3))
def test_area_goes_with_the_square_of_size(factor: float) -> None:
    larger = HalfSphere(diameter_mm=70 * factor)
    assert area_cm2(larger, "face") == pytest.approx(area_cm2(DOME, "face") * factor**2)
