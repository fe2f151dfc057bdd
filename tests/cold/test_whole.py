import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.cold.follow import Corner, follow
from demould.cold.piece import place_of, thermal_of
from demould.cold.whole import even_c, heat_j, mass_kg, masses_kg, start_heat_j
from tests.cold.pieces import ball


def test_a_piece_weighs_what_its_parts_do() -> None:
    # By hand: shells of 56 and 30 mm at the parts' own densities.
    whole, heart = math.pi / 6 * 0.056**3, math.pi / 6 * 0.03**3
    piece = ball(-18)
    mousse, centre = (thermal_of(one.made_of, one.air).density for one in piece.parts)
    by_hand = (whole - heart) * mousse, heart * centre
    # Profiles are drawn by chords and hold the ball's volume: to a thousandth.
    assert masses_kg(piece) == pytest.approx(by_hand, rel=2e-3)
    assert mass_kg(piece) == pytest.approx(sum(by_hand), rel=2e-3)
    # 35 % of its volume is air: between half and three quarters of water's weight.
    assert 500 < mousse < 750 < 1000 < centre < 1250


@given(at_c=st.floats(-35, 25))
def test_a_piece_of_one_temperature_has_evened_out(at_c: float) -> None:
    piece = ball(at_c)
    assert even_c(piece, start_heat_j(piece)) == pytest.approx(at_c, abs=1e-6)


def test_the_heat_of_a_long_run_is_the_difference_of_two_states() -> None:
    # 20 h in -25 °C leave the ball within a hundredth of the air: what left it is what
    # the tables say it holds less.
    piece = ball(5)
    done = follow(
        piece, place_of("blast_chiller", -25), Corner(film=30),
        until=20 * 3600, done=lambda _: False,
    )  # fmt: skip
    left = float(done.run.heat[-1])
    assert left == pytest.approx(heat_j(piece, 5) - heat_j(piece, -25), rel=2e-3)


def test_a_frozen_centre_in_a_warm_body_evens_between_them() -> None:
    piece = ball(5)
    mixed = replace(piece, inside=(replace(piece.inside[0], start_c=-18),))
    even = even_c(mixed, start_heat_j(mixed))
    assert -18 < even < 5
    assert heat_j(mixed, even) == pytest.approx(start_heat_j(mixed), rel=1e-6)


def test_beyond_the_tables_the_nearer_end_is_given() -> None:
    assert even_c(ball(0), -1e9) == pytest.approx(-60)
    assert even_c(ball(0), 1e9) == pytest.approx(60)
    assert np.diff([heat_j(ball(0), at) for at in (-30, -10, 0, 10)]).min() > 0
