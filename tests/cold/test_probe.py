import math
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from demould.cold.around.air import Air
from demould.cold.follow import Corner, follow
from demould.cold.piece import Place, place_of
from demould.cold.probe import Fit, Readings, air_log, fit_film
from demould.cold.probe_place import probe_place
from tests.cold.pieces import ball

PLACE = place_of("upright_freezer", -20)
AT = np.arange(0, 5 * 3600, 180.0)


def made(
    film: float,
    air: Air = -20.0,
    *,
    noise: float = 0.0,
    beside: float = 0.0,
    place: Place = PLACE,
) -> tuple[float, ...]:
    """What a probe reads in a run with that film."""
    run = follow(
        ball(6), replace(place, air_c=air), Corner(film=film),
        until=float(AT[-1]), done=lambda _: False,
    ).run  # fmt: skip
    core, skin = (np.interp(AT, run.seconds, v) for v in (run.core, run.surface))
    tip = core + beside * (skin - core)
    return tuple((tip + np.random.default_rng(7).normal(0, noise, AT.size)).tolist())


def fitted(at_c: tuple[float, ...], air: Air = -20.0, unsure: float = 0.0) -> Fit:
    readings = Readings(
        seconds=tuple(AT.tolist()), at_c=at_c, air_c=air, air_unsure_k=unsure
    )
    return fit_film(ball(6), PLACE, readings)


@pytest.mark.parametrize("film", [7.0, 18.0])
def test_the_film_that_made_the_readings_is_found(film: float) -> None:
    fit = fitted(made(film))
    # Without noise: the minimiser's own 1e-4 of ln h and its steps of 1 %.
    assert fit.film == pytest.approx(film, rel=0.01)
    assert fit.off_k < 0.05
    assert fit.used > 20
    assert len(fit.rows) == AT.size


def test_noise_is_no_more_wrong_than_it_says() -> None:
    fit = fitted(made(11, noise=0.3))
    assert abs(math.log(fit.film / 11)) < 3 * fit.unsure
    assert 0.002 < fit.unsure < 0.15
    # What is left over is the noise that was put in.
    assert 0.2 < fit.off_k < 0.4


def test_a_tip_beside_the_middle_is_told_from_the_film() -> None:
    share = probe_place(ball(6)).share
    fit = fitted(made(11, beside=share))
    assert fit.film == pytest.approx(11, rel=0.05)
    assert fit.beside == pytest.approx(share, rel=0.3)


def test_air_that_was_not_logged_makes_it_unsure() -> None:
    at_c = made(11, -21.0, noise=0.1)
    known = fitted(at_c, -21.0)
    guessed = fitted(at_c, -20.0, unsure=1.0)
    assert known.by_air == 0
    # Film and air go together (published: to 0.99): colder air is a stronger film.
    assert guessed.film > 1.05 * known.film
    assert guessed.by_air > 0.05
    assert guessed.unsure > 2 * known.unsure
    assert abs(math.log(guessed.film / 11)) < 2 * guessed.unsure


def test_air_that_moved_is_followed_as_it_was_logged() -> None:
    logged = tuple(-15 - 5 * min(1.0, at / 7200) for at in AT.tolist())
    air = air_log(tuple(AT.tolist()), logged)
    assert not isinstance(air, float)
    assert air[0] == (0.0, -15.0)
    assert all(b - a <= -0.2 for (_, a), (_, b) in pairwise(air))
    at_c = made(11, air)
    assert fitted(at_c, air).film == pytest.approx(11, rel=0.02)
    # Taken as steady, the same readings tell another film.
    assert abs(fitted(at_c, -20.0).film / 11 - 1) > 0.05


def test_a_log_that_is_all_at_the_airs_temperature_tells_nothing() -> None:
    with pytest.raises(
        ValueError,
        match=r"^only 0 readings are over 2 °C away from the air and past the first"
        r" 5 min: log from the door on, into the deep part$",
    ):
        fitted((-19.5,) * AT.size)


def test_readings_of_something_else_are_refused() -> None:
    wild = tuple(6 - 20 * ((n // 10) % 2) for n in range(AT.size))
    with pytest.raises(
        ValueError,
        match=r"^no film follows these readings \(they stay \d+\.\d °C apart\): is it"
        r" this dessert, this place, and the tip in the centre\?$",
    ):
        fitted(tuple(float(one) for one in wild))
