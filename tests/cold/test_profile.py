import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.cold.body.profile import (
    area,
    checked,
    cylinder,
    dome,
    half_sphere,
    raised,
    sphere,
    turned,
    volume,
)


@given(diameter=st.floats(0.005, 0.3), height=st.floats(0.005, 0.3))
def test_round_bodies_have_their_formulas_volumes(
    diameter: float, height: float
) -> None:
    r = diameter / 2
    straight = math.pi * r**2 * height
    assert volume(sphere(diameter)) == pytest.approx(math.pi / 6 * diameter**3)
    assert volume(half_sphere(diameter)) == pytest.approx(math.pi / 12 * diameter**3)
    assert volume(cylinder(diameter, height)) == pytest.approx(straight)
    # The dome's cap is stretched a hair sideways, and its cylinder with it: 24 chords a
    # quarter turn give away some (pi / 48)^2 / 4 = 0.1 % of the radius.
    assert volume(dome(r, height)) == pytest.approx(
        straight + math.pi / 12 * diameter**3, rel=2e-3
    )
    assert area(cylinder(diameter, height)) == pytest.approx(
        2 * math.pi * r * (r + height)
    )


def test_chords_give_away_little_surface() -> None:
    # 48 chords stretched to the volume: a part in some 5000 too much area.
    assert area(sphere(0.05)) == pytest.approx(math.pi * 0.05**2, rel=3e-4)
    assert area(half_sphere(0.05)) == pytest.approx(math.pi * 0.05**2 * 0.75, rel=6e-4)


def test_an_oval_becomes_a_circle_of_its_area_at_each_level() -> None:
    # A straight oval 60 x 42 mm, 5 mm high: 9.9 ml by pi/4 L W H.
    oval = math.pi / 4 * 0.060 * 0.042
    disc = turned([(0.0, oval), (0.005, oval)])
    assert volume(disc) * 1e6 == pytest.approx(9.896, abs=5e-4)
    assert disc[-1] == (0.0, 0.005)


def test_a_pointed_body_needs_no_flat_ends() -> None:
    cone = turned([(0.0, 0.0), (0.03, math.pi * 0.01**2)])
    assert volume(cone) == pytest.approx(math.pi * 0.01**2 * 0.03 / 3)
    assert volume(turned([(0.0, math.pi * 0.01**2), (0.03, 0.0)])) == pytest.approx(
        volume(cone)
    )


def test_radii_stretch_to_the_water_a_cavity_holds() -> None:
    square = turned([(0.0, 0.001), (0.02, 0.002), (0.03, 0.001)], holding=45e-6)
    assert volume(square) == pytest.approx(45e-6)
    assert square[-1][1] == 0.03


def test_raising_moves_and_keeps() -> None:
    low = cylinder(0.02, 0.01)
    high = raised(low, 0.005)
    assert volume(high) == pytest.approx(volume(low))
    assert high[0] == (0.0, 0.005)


@pytest.mark.parametrize(
    ("points", "wrong"),
    [
        ([(0, 0), (0, 1)], r"^a profile of 2 points; it takes at least 3$"),
        (
            [(0.1, 0), (1, 1), (0, 1)],
            r"^a profile must start and end on the axis, at radius 0$",
        ),
        ([(0, 0), (-1, 0.5), (0, 1)], r"^a profile has a radius below 0$"),
        (
            [(0, 1), (1, 1), (1, 0), (0, 0)],
            r"^a profile must run from the bottom of the axis to the top$",
        ),
    ],
)
def test_unsound_outlines_are_refused(
    points: list[tuple[float, float]], wrong: str
) -> None:
    with pytest.raises(ValueError, match=wrong):
        checked(points)


def test_unsound_levels_are_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^levels must be two or more, each higher than the one"
    ):
        turned([(0.0, 1.0), (0.0, 1.0)])
    with pytest.raises(ValueError, match=r"^a level has an area below 0$"):
        turned([(0.0, 1.0), (1.0, -1.0)])
