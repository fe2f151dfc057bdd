from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.cold.around.air import Film
from demould.cold.around.film import (
    ALONG_A_SHEET,
    CORRELATIONS,
    LYING,
    STILL,
    Near,
    air_conductivity,
    air_viscosity,
    along_a_sheet,
    closed_box,
    fan_flat,
    fan_sphere,
    in_series,
    lone_film,
    natural_flat,
    natural_sphere,
    radiation,
    rayleigh,
    standing,
    wrapped,
)
from demould.larder.read import film

BALL = Near(size=0.059, surface_c=-5, air_c=-18)


# Incropera and DeWitt, 6th ed., example 9.5 manner: values of air at 250 and 300 K as
# printed in Table A.4 (from memory).
@pytest.mark.parametrize(
    ("kelvin", "k", "nu"), [(250, 22.3e-3, 11.44e-6), (300, 26.3e-3, 15.89e-6)]
)
def test_air_is_the_tables(kelvin: float, k: float, nu: float) -> None:
    assert air_conductivity(kelvin - 273.15) == pytest.approx(k)
    assert air_viscosity(kelvin - 273.15) == pytest.approx(nu)


# Worked by another hand for a ball of 59 mm: still freezer 5.5 + 3.7, still fridge
# 4.3 + 4.2 (two digits), blast 3 and 5 m/s 30 and 40 as totals rounded to tens.
@pytest.mark.parametrize(
    ("surface_c", "air_c", "natural", "glow"), [(-5, -18, 5.5, 3.7), (0, 4, 4.3, 4.2)]
)
def test_a_ball_in_still_air(
    surface_c: float, air_c: float, natural: float, glow: float
) -> None:
    near = Near(size=0.059, surface_c=surface_c, air_c=air_c)
    assert natural_sphere(near) == pytest.approx(natural, abs=0.06)
    assert radiation(near) == pytest.approx(glow, abs=0.06)
    assert lone_film(near) == pytest.approx(natural + glow, abs=0.11)


@pytest.mark.parametrize(("speed", "film"), [(3, 30), (5, 40)])
def test_a_ball_in_a_blast(speed: float, film: float) -> None:
    near = Near(size=0.059, surface_c=-35, air_c=-35, speed=speed)
    assert fan_sphere(near) == pytest.approx(film, abs=0.5)


# By hand. Still, level, 60 mm, 13 K about 261.65 K: nu 12.477e-6, Ra = 9.80665 * 13 /
# 261.65 * 0.06^3 * 0.714 / nu^2 = 4.827e5, Nu = 0.54 * 26.36 = 14.23, k 0.023232: 5.511.
# Sheet of 0.3 m at 3 m/s about 248.15 K ... Re 0.9 / 10.831e-6 (air at -30) = 83095.
def test_flat_faces_by_hand() -> None:
    still = Near(size=0.06, surface_c=-5, air_c=-18)
    assert rayleigh(still) == pytest.approx(4.827e5, rel=1e-3)
    assert natural_flat(still) == pytest.approx(5.511, rel=1e-3)
    sheet = Near(size=0.3, surface_c=-30, air_c=-30, speed=3)
    nu = 11.44e-6 + 4.45e-6 * (243.15 - 250) / 50
    nusselt = 0.664 * (0.9 / nu) ** 0.5 * 0.714 ** (1 / 3)
    assert fan_flat(sheet) == pytest.approx(nusselt * 0.021752 / 0.3, rel=1e-4)


def test_every_correlation_rises_with_what_drives_it() -> None:
    for name, rule in CORRELATIONS.items():
        near = replace(BALL, speed=1.0)
        stronger = (
            replace(near, speed=2.0)
            if name.startswith("fan")
            else replace(near, surface_c=5.0)
        )
        assert 0 < rule(near) < rule(stronger), name


def test_still_air_and_sheets_have_the_shares_said() -> None:
    assert natural_sphere(BALL) == pytest.approx(STILL, abs=0.06)
    for speed in (0.5, 1, 2, 3, 5):
        sheet = Near(size=0.3, surface_c=-10, air_c=-30, speed=speed)
        ball = replace(sheet, size=0.059)
        share = fan_flat(sheet) / fan_sphere(ball)
        assert share == pytest.approx(ALONG_A_SHEET, abs=0.03)


def test_the_larders_films_hold_what_is_computed() -> None:
    # The rows a lone ball stands for: it lies between their low and high.
    for kind, near in {
        "still_freezer": BALL,
        "upright_freezer": BALL,
        "still_fridge": Near(size=0.059, surface_c=1.0, air_c=3),
        "fan_fridge_open": Near(size=0.059, surface_c=0, air_c=3, speed=0.5),
        "blast_chiller": Near(size=0.059, surface_c=-15, air_c=-35, speed=3),
    }.items():
        total = film(kind).total
        assert total.low <= lone_film(near) <= total.high + 0.5, kind


def test_series_by_hand() -> None:
    assert in_series(10, 10) == 5
    # 0.3 mm of air at 2 °C, 24.3e-3 W/mK, is 0.0124 m2K/W; with 1/12 beneath it.
    assert standing(12, 2) == pytest.approx(1 / (1 / 12 + 0.0124), rel=2e-3)
    assert wrapped(10, 0.001, 2) == pytest.approx(1 / (0.1 + 0.0412), rel=2e-3)
    # Half a metre of box for each of pieces: wall 0.01 m2K/W.
    assert closed_box(8, 8, 2) == pytest.approx(1 / (1 / 8 + 0.005 + 1 / 16))


def test_a_closed_box_is_what_the_larder_has() -> None:
    total = film("fridge_closed_box").total
    assert total.low <= closed_box(8, 12, 1.5) <= total.high


@given(lone=st.floats(5, 60), at_c=st.floats(-40, 8))
def test_lying_never_does_better_than_air_all_round(lone: float, at_c: float) -> None:
    for name, rule in LYING.items():
        left = rule(lone, at_c)
        for face in (left.bottom, left.top, left.other):
            assert 0 < face <= lone + 1e-9, name
    assert LYING["alone"](lone, at_c) == Film(bottom=lone, top=lone, other=lone)


def test_moulds_leave_less_than_half_to_the_cups() -> None:
    # Cups under a sheet, blast at 30: pocket (2.2 + 1.4 + 0.25 * 27) in series with the
    # tray's underside (30 - 0.57 * 21.5 = 18).
    left = LYING["in moulds"](30, -35)
    assert left.top == pytest.approx(along_a_sheet(30, -35))
    assert left.top == pytest.approx(17.9, abs=0.3)
    assert left.other == pytest.approx(1 / (1 / 10.3 + 1 / 17.9), rel=0.03)
    assert left.bottom < left.top


def test_what_stands_on_its_top_has_the_tray_there() -> None:
    up, down = LYING["on a tray"](12, 3), LYING["on its top"](12, 3)
    assert (up.bottom, up.top) == (down.top, down.bottom)
    big, turned = LYING["large"](12, 3), LYING["large on its top"](12, 3)
    assert (big.bottom, big.top) == (turned.top, turned.bottom)
    assert big.other < up.other
