from dataclasses import fields, replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from demould.cold.around.moist import settling
from demould.cold.body.profile import raised, sphere
from demould.cold.follow import Corner, follow
from demould.cold.piece import FrozenPiece, Humid, Part, Place, place_of
from demould.cold.run.readout import passing
from demould.cold.thaw import thaw
from demould.cold.wait import Curve
from demould.larder.ingredient import Composition

MOUSSE = Composition(
    water=50, fat=27, sucrose=15, lactose=4, protein=3, ash=0.7, sodium_mg=50
)
CENTRE = Composition(water=68, sucrose=18, fructose=5, glucose=5, fibre=3, acid=1)


def ball(start_c: float = -18) -> FrozenPiece:
    return FrozenPiece(
        body=Part(
            name="mousse",
            profile=sphere(0.056),
            made_of=MOUSSE,
            air=0.35,
            start_c=start_c,
        ),
        inside=(
            Part(
                name="centre",
                profile=raised(sphere(0.03), 0.013),
                made_of=CENTRE,
                start_c=start_c,
            ),
        ),
    )


def dense(start_c: float) -> FrozenPiece:
    whipped = ball(start_c)
    return replace(whipped, body=replace(whipped.body, air=0.0))


def test_open_in_a_fan_fridge_is_about_twice_as_fast_as_boxed() -> None:
    # Films of 12 and 5 W/(m2 K): their ratio is 2.4, the piece's own way levels it.
    open_ = thaw(ball(), place_of("fan_fridge_open", 3)).hours
    boxed = thaw(ball(), place_of("fridge_closed_box", 3)).hours
    assert open_ is not None
    assert boxed is not None
    assert 1.6 < boxed.likely / open_.likely < 2.4
    assert open_.low < open_.likely < open_.high
    assert boxed.low < boxed.likely < boxed.high


def test_the_time_is_the_heat_over_the_film_and_more() -> None:
    # No thaw is faster than its heat through the film at the whole difference of
    # temperature at all times, 3 - (-18), nor slower than at a twelfth of it.
    wait = thaw(ball(), place_of("fan_fridge_open", 3))
    assert wait.hours is not None
    area = 3.14159 * 0.056**2
    fastest = -wait.heat_kj * 1000 / (12 * area * 21) / 3600
    assert fastest < wait.hours.likely < 12 * fastest
    assert wait.heat_kj < 0
    assert wait.residual <= 1e-10


def test_served_means_no_ice_and_a_core_over_one_degree() -> None:
    wait = thaw(ball(), place_of("fan_fridge_open", 3))
    assert wait.hours is not None
    hours, core, surface, _ = wait.curve[-1]
    assert core >= 1.0 - 1e-9
    assert surface > core
    assert hours >= wait.hours.likely - 1e-9


def test_a_core_asked_below_its_ice_still_waits_for_the_ice() -> None:
    early = thaw(ball(), place_of("fan_fridge_open", 3), core_c=-10).hours
    late = thaw(ball(), place_of("fan_fridge_open", 3), core_c=1).hours
    assert early is not None
    assert late is not None
    assert 0.5 * late.likely < early.likely < late.likely


def test_the_warmer_piece_is_ready_sooner() -> None:
    cold, warm = (
        thaw(ball(start), place_of("fan_fridge_open", 3)).hours for start in (-24, -12)
    )
    assert cold is not None
    assert warm is not None
    assert warm.likely < cold.likely


def test_what_is_thawed_already_waits_no_time() -> None:
    wait = thaw(replace(ball(5), start_unsure_k=1), place_of("fan_fridge_open", 8))
    assert wait.hours is not None
    assert (wait.hours.low, wait.hours.likely, wait.hours.high) == (0, 0, 0)


def test_air_as_cold_as_the_goal_never_thaws() -> None:
    wait = thaw(ball(), place_of("fan_fridge_open", 1))
    assert wait.hours is None
    assert str(wait.never) == (
        "air of 1 °C does not bring the core to 1 °C in any time worth waiting"
    )


def test_the_quick_corner_starts_warm_and_dry_and_the_slow_one_cold_and_wet() -> None:
    # One film and nothing whipped leave start and water: the corners are plain solves.
    fridge = replace(place_of("fan_fridge_open", 3), film_low=12, film_high=12)
    unsure = thaw(replace(dense(-18), start_unsure_k=5), fridge).hours
    assert unsure is not None
    for start, water, found in ((-13, 48.5, unsure.low), (-23, 51.5, unsure.high)):
        piece = dense(start)
        parts = [
            replace(
                part.made_of, **shrunk(part.made_of, part.made_of.water * water / 50)
            )
            for part in (piece.body, *piece.inside)
        ]
        body, centre = (
            replace(part, made_of=made_of)
            for part, made_of in zip((piece.body, *piece.inside), parts, strict=True)
        )
        plain = replace(piece, body=body, inside=(centre,))
        done = follow(
            plain, fridge, Corner(film=12), until=1e5,
            done=lambda one: one.margin >= 0 and one.core >= 1,
        )  # fmt: skip
        at = passing(done.run.seconds, done.run.core, 1.0)
        assert at is not None
        assert found * 3600 == pytest.approx(at, rel=1e-6)


def shrunk(made_of: Composition, water: float) -> dict[str, float]:
    """So much water, all else shrunk to leave 100 g as they were."""
    rest = (made_of.total - water) / (made_of.total - made_of.water)
    parts = {one.name: getattr(made_of, one.name) * rest for one in fields(made_of)}
    return parts | {"water": water}


def test_a_night_in_the_freezer_first_delays_by_about_its_length() -> None:
    straight = thaw(ball(), place_of("fan_fridge_open", 3)).hours
    later = thaw(
        ball(), place_of("fan_fridge_open", ((0.0, -18.0), (7200.0, 3.0)))
    ).hours
    assert straight is not None
    assert later is not None
    assert later.likely - straight.likely == pytest.approx(2, abs=0.02)


def damp(relative: float, reach: float) -> Place:
    steady = (relative, relative, relative), (reach, reach, reach)
    return replace(
        place_of("fan_fridge_open", 3), humid=Humid(relative=steady[0], reach=steady[1])
    )


def at(curve: Curve, hours: float) -> float:
    """Core along a curve [°C]."""
    return float(np.interp(hours, [row[0] for row in curve], [row[1] for row in curve]))


def test_damp_air_warms_sooner_and_tells_its_water() -> None:
    dry = thaw(ball(), place_of("fan_fridge_open", 3))
    wet = thaw(ball(), damp(0.75, 7.8))
    assert dry.hours is not None
    assert wet.hours is not None
    # Water brings its heat while the skin is under the dew point, and takes it again as
    # it dries: the core warms sooner at first, and the end may come no sooner.
    sooner = at(wet.curve, 1.5) - at(dry.curve, 1.5)
    assert 0.2 < sooner < 3
    assert 0.80 < wet.hours.likely / dry.hours.likely < 1.05
    assert dry.wet is None
    assert wet.wet is not None
    assert 0.2 < wet.wet.grams.likely < 1.0
    assert 0 <= wet.wet.left_g < wet.wet.grams.likely
    assert wet.residual <= 1e-10


def test_the_water_is_what_settles_on_the_skin_as_it_warms() -> None:
    # Plainly: the flux at the mean skin's temperature, row by row, never below none.
    place = damp(0.75, 7.8)
    corner = Corner(film=12, relative=0.75, reach=7.8)
    done = follow(ball(), place, corner, until=6 * 3600, done=lambda _: False)
    area, lies, most = 3.14159265 * 0.056**2, 0.0, 0.0
    run = done.run
    for n in range(1, run.seconds.size):
        skin = float(run.skin[n] + run.skin[n - 1]) / 2
        span = float(run.seconds[n] - run.seconds[n - 1])
        lies = max(0.0, lies + settling(7.8, 3, 0.75, skin) * span * area)
        most = max(most, lies)
    assert done.open_m2 == pytest.approx(area, rel=1e-3)
    # A ball in even air has one skin temperature; trapezia and steps leave some per cent.
    assert float(run.water.max()) == pytest.approx(most, rel=0.04)
    told = thaw(ball(), place).wet
    assert told is not None
    assert told.grams.likely == pytest.approx(most * 1000, rel=0.04)
    assert told.film_um == pytest.approx(most * 1000 / area, rel=0.04)


def test_a_cover_keeps_the_water_off() -> None:
    open_ = thaw(ball(), damp(0.75, 7.8)).wet
    under = thaw(ball(), damp(0.75, 0.15)).wet
    assert open_ is not None
    assert under is not None
    assert under.grams.likely < 0.1 * open_.grams.likely


def test_no_water_settles_on_the_end_it_stands_on() -> None:
    # Half of a ball's water stays away where its flat end, a third of its skin,
    # stands; heat there is held back too, so the rest is a little more than 2/3.
    from demould.cold.body.profile import half_sphere

    half = FrozenPiece(
        body=Part(
            name="mousse",
            profile=half_sphere(0.07),
            made_of=MOUSSE,
            air=0.35,
            start_c=-18,
        )
    )
    free = follow(
        half, damp(0.9, 5), Corner(film=12, relative=0.9, reach=5),
        until=900, done=lambda _: False,
    )  # fmt: skip
    stood = follow(
        half, replace(damp(0.9, 5), lying="on a tray"),
        Corner(film=12, relative=0.9, reach=5), until=900, done=lambda _: False,
    )  # fmt: skip
    assert stood.open_m2 / free.open_m2 == pytest.approx(2 / 3, rel=1e-3)
    assert 0.6 < float(stood.run.water[-1]) / float(free.run.water[-1]) < 0.75


def test_how_damp_it_is_moves_the_water_most_of_all() -> None:
    unsure = replace(
        damp(0.75, 7.8), humid=Humid(relative=(0.6, 0.75, 0.9), reach=(7.8, 7.8, 7.8))
    )
    told = thaw(ball(), unsure).wet
    assert told is not None
    assert told.grams.low < told.grams.likely < told.grams.high
    assert str(told.grams.reason) == "how damp the air is (between 60 and 90 %)"


def test_air_that_may_be_too_cold_is_said_with_what_is_likely() -> None:
    # 1.5 °C air, unsure by 0.5: at the slow end 1.0 °C never warms a core to 1 °C.
    wait = thaw(ball(), replace(place_of("fan_fridge_open", 1.5), air_unsure_k=0.5))
    assert wait.hours is None
    assert wait.never is None
    assert wait.at_best is not None
    assert wait.at_best.likely is not None
    assert 0 < wait.at_best.low < wait.at_best.likely
    assert (
        str(wait.at_best.unless) == "the air at the pieces is 0.5 °C colder than said"
    )


def test_humidities_and_films_for_water_must_be_in_order() -> None:
    with pytest.raises(
        ValueError, match=r"^relative humidities of \(0.9, 0.8, 1.0\) are out of order$"
    ):
        Humid(relative=(0.9, 0.8, 1.0), reach=(1, 1, 1))
    with pytest.raises(
        ValueError, match=r"^films for water of \(1, 1, 0\) are out of order$"
    ):
        Humid(relative=(0.6, 0.8, 1.0), reach=(1, 1, 0))


@settings(max_examples=6)
@given(damp_air=st.floats(0.5, 0.85), reach=st.floats(1.0, 10.0))
def test_damper_air_leaves_more_water_and_never_less_than_none(
    damp_air: float, reach: float
) -> None:
    drier, damper = (
        follow(
            ball(), damp(share, reach), Corner(film=12, relative=share, reach=reach),
            until=3 * 3600, done=lambda _: False,
        ).run
        for share in (damp_air, damp_air + 0.1)
    )  # fmt: skip
    assert float(drier.water.min()) >= -1e-12
    assert float(drier.water.max()) <= float(damper.water.max()) + 1e-9
    # Its heat comes with it: the damper one has taken up no less by then.
    assert float(damper.heat[-1]) <= float(drier.heat[-1]) + 1.0
