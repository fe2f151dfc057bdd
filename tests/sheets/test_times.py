import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.mise.figure import Estimate
from demould.mise.words import Words
from demould.sheets.times import between, clock, day_time, grams, span
from tests.week.demo_week import at


def hours(low: float, high: float) -> Estimate:
    middle = (low + high) / 2
    return Estimate(low=low, likely=middle, high=high, unit="h", reason=Words("air"))


def test_a_moment_is_a_day_and_a_clock() -> None:
    assert day_time(at("Thu 16:05")) == "Thu 16:05"
    assert clock(at("Thu 09:00")) == "09:00"


@pytest.mark.parametrize(
    ("minutes", "told"),
    [
        (0, "0 min"),
        (25, "25 min"),
        (59.4, "59 min"),
        (59.6, "1 h 00"),
        (65, "1 h 05"),
        (-5, "-5 min"),
        (-65, "-1 h 05"),
        (24 * 60, "24 h 00"),
    ],
)
def test_a_span_is_told_in_minutes_then_in_hours(minutes: float, told: str) -> None:
    assert span(minutes) == told


@pytest.mark.parametrize(
    ("low", "high", "told"),
    [
        (0.41, 0.57, "20 - 35 min"),
        (1.01, 2.0, "60 - 120 min"),
        (1.01, 2.01, "1 - 2.5 h"),
        (4.49, 6.8, "4 - 7 h"),
        (8, 12, "8 - 12 h"),
    ],
)
def test_an_estimate_is_told_between_its_ends(
    low: float, high: float, told: str
) -> None:
    assert between(hours(low, high)) == told


# Five minutes or half an hour outwards at the most, and never inwards.
@given(low=st.floats(0, 30), wide=st.floats(0, 20))
def test_rounding_never_promises_more_than_the_estimate(
    low: float, wide: float
) -> None:
    high = low + wide
    first, last, unit = between(hours(low, high)).replace(" - ", " ").split()
    step, an_hour = (5, 60) if unit == "min" else (0.5, 1)
    assert low * an_hour - step <= float(first) <= low * an_hour + 1e-9
    assert high * an_hour - 1e-9 <= float(last) <= high * an_hour + step


@pytest.mark.parametrize(
    ("value", "told"),
    [
        (1166.4, "1166"),
        (488.6, "489"),
        (282.0, "282"),
        (99.95, "100"),
        (38.504, "38.5"),
        (9.0, "9"),
        (-38.504, "-38.5"),
    ],
)
def test_grams_are_whole_from_a_hundred_on(value: float, told: str) -> None:
    assert grams(value) == told
