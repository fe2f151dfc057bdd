from dataclasses import replace

import pytest

from demould.cold.body.profile import raised, sphere
from demould.cold.piece import FrozenPiece, Part, place_of
from demould.cold.thaw import thaw
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


def test_the_quick_corner_starts_warm_and_the_slow_one_cold() -> None:
    # One film and nothing whipped leave only the start: the corners are plain solves.
    fridge = replace(place_of("fan_fridge_open", 3), film_low=12, film_high=12)
    unsure = thaw(replace(dense(-18), start_unsure_k=5), fridge).hours
    warm = thaw(dense(-13), fridge).hours
    cold = thaw(dense(-23), fridge).hours
    assert unsure is not None
    assert warm is not None
    assert cold is not None
    assert unsure.low == pytest.approx(warm.likely)
    assert unsure.high == pytest.approx(cold.likely)


def test_a_night_in_the_freezer_first_delays_by_about_its_length() -> None:
    straight = thaw(ball(), place_of("fan_fridge_open", 3)).hours
    later = thaw(
        ball(), place_of("fan_fridge_open", ((0.0, -18.0), (7200.0, 3.0)))
    ).hours
    assert straight is not None
    assert later is not None
    assert later.likely - straight.likely == pytest.approx(2, abs=0.02)
