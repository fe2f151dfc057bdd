"""Logs against rules: the Food Code's own two stages, gaps, refreezing, bad input."""

from datetime import datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.care.growth import grown_log10, growth_rate, lets_listeria_grow
from demould.care.hygiene import fresh_minutes, judge, thermometer_fits
from demould.larder.hygiene import hygiene_rules
from demould.mise.read_temperatures import Reading, read_temperatures

LONDON = ZoneInfo("Europe/London")
START = datetime(2026, 11, 20, 14, 0, tzinfo=LONDON)


def log(*points: tuple[float, float]) -> tuple[Reading, ...]:
    """Give readings at so many minutes from the start, every 15 min in between."""
    found: list[Reading] = []
    for (m0, c0), (m1, c1) in pairwise(points):
        minutes = m0
        while minutes < m1:
            c = c0 + (c1 - c0) * (minutes - m0) / (m1 - m0)
            found.append(Reading(at=START + timedelta(minutes=minutes), c=round(c, 6)))
            minutes += 15
    minutes, c = points[-1]
    return (*found, Reading(at=START + timedelta(minutes=minutes), c=c))


# Food Code 3-501.14(A): 57 to 21 C within 2 h and to 5 C within 6 h in all (from memory).
@pytest.mark.parametrize(
    ("points", "verdict"),
    [
        (((0, 57), (60, 21), (330, 5)), "within"),
        (((0, 57), (120, 21), (360, 5)), "within"),
        (((0, 57), (125, 21), (300, 5)), "broken"),
        (((0, 57), (60, 21), (370, 5)), "broken"),
        (((0, 57), (60, 21), (300, 8)), "not shown"),
        (((0, 57), (60, 20), (75, 25), (150, 20), (300, 5)), "broken"),
        (((0, 40), (60, 21), (200, 5)), "not shown"),
    ],
)
def test_cooling_counts_the_whole_time(
    points: tuple[tuple[float, float], ...], verdict: str
) -> None:
    assert judge(log(*points), hygiene_rules()["us cooling"]).verdict == verdict


def test_what_is_broken_asks_what_was_done_and_never_says_what() -> None:
    found = judge(log((0, 57), (125, 21), (300, 5)), hygiene_rules()["us cooling"])
    assert "TOO LATE" in str(found.says[0])
    assert "after 2 h 05" in str(found.says[0])
    assert str(found.asks[0]).startswith("what was done about it")
    within = judge(log((0, 57), (60, 21), (330, 5)), hygiene_rules()["us cooling"])
    assert within.asks == ()


def test_gaps_are_shown_as_gaps_and_are_not_sound() -> None:
    rule = hygiene_rules()["us chilled"]
    readings = (
        Reading(at=START, c=3),
        Reading(at=START + timedelta(hours=9), c=3),
    )
    found = judge(readings, rule)
    assert found.verdict == "not shown"
    assert found.gaps == ((readings[0].at, readings[1].at),)
    assert judge(log((0, 3), (540, 3)), rule).verdict == "within"


def test_no_log_shows_nothing() -> None:
    assert judge((), hygiene_rules()["us chilled"]).verdict == "not shown"


# One time over 8 C for up to 4 h is allowed in England; 5 h is not (from memory).
@pytest.mark.parametrize(("minutes", "verdict"), [(195, "within"), (300, "broken")])
def test_the_one_time_that_may_be_warmer(minutes: float, verdict: str) -> None:
    points = ((0, 3), (15, 12), (15 + minutes, 12), (30 + minutes, 3), (600, 3))
    assert judge(log(*points), hygiene_rules()["uk chilled"]).verdict == verdict


def test_frozen_again_after_a_thaw_is_broken() -> None:
    rule = hygiene_rules()["deep frozen"]
    assert judge(log((0, -20), (600, -19)), rule).verdict == "within"
    found = judge(log((0, -20), (60, 2), (240, -20)), rule)
    assert found.verdict == "broken"
    assert any("frozen again" in str(one) for one in found.says)
    brief = judge(log((0, -20), (15, -16), (30, -20), (60, -20)), rule)
    assert brief.verdict == "within"


def test_a_cold_log_in_fahrenheit_is_not_believed() -> None:
    found = judge(log((0, 37), (240, 39)), hygiene_rules()["us chilled"])
    assert found.verdict == "not shown"
    assert "Fahrenheit" in str(found.says[0])


# Freezing pauses the clock: two days fresh before it and one after it are three.
def test_days_before_freezing_count() -> None:
    day = 1440
    whole = log(
        (0, 3), (2 * day, 3), (2 * day + 15, -20), (20 * day, -20), (20 * day + 15, 3),
        (21 * day + 15, 3),
    )  # fmt: skip
    assert fresh_minutes(whole) == pytest.approx(3 * day, abs=31)


@pytest.mark.parametrize(("c", "fits"), [(0.9, True), (-1, True), (1.1, False)])
def test_thermometers_are_checked_in_ice_water(c: float, *, fits: bool) -> None:
    assert thermometer_fits(c) is fits


# Generation times in milk and cream, Rosenow & Marth 1987, J. Food Prot. 50 (from memory):
# hours. The estimate may be up to twice as fast, and never slower than the slowest.
@pytest.mark.parametrize(
    ("c", "fastest", "slowest"),
    [
        (4, 29.7, 45.6),
        (8, 10.8, 14.2),
        (13, 5.0, 6.0),
        (21, 1.7, 1.9),
        (35, 0.65, 0.69),
    ],
)
def test_growth_is_within_twice_the_published_and_not_slower(
    c: float, fastest: float, slowest: float
) -> None:
    hours = 0.693147 / growth_rate(c)
    assert fastest / 2 <= hours <= slowest


# By hand with 0.95 per h, pH 6.6 and aw 0.99: 25.7 h at 4 C, 9.0 h at 8 C; 1.05 is used.
def test_growth_by_the_worked_values() -> None:
    for c, hours in ((4, 25.7), (8, 9.0)):
        found = 0.693147 / growth_rate(c, 6.6, 0.99) * 1.05 / 0.95
        assert found == pytest.approx(hours, rel=0.02)


@given(c=st.floats(-30, 45), ph=st.floats(3, 9), aw=st.floats(0.8, 1))
def test_nothing_grows_frozen_sour_or_dry_and_never_backwards(
    c: float, ph: float, aw: float
) -> None:
    rate = growth_rate(c, ph, aw)
    assert rate >= 0
    if c <= -1.72 or ph <= 4.71 or aw <= 0.913:
        assert rate == 0


def test_a_warm_day_grows_more_than_a_cold_one() -> None:
    cold, warm = log((0, 3), (1440, 3)), log((0, 10), (1440, 10))
    assert 0 < grown_log10(cold) < grown_log10(warm)
    assert grown_log10(log((0, -20), (1440, -20))) == 0


# Regulation (EC) 2073/2005, Annex I 1.3 (from memory).
@pytest.mark.parametrize(
    ("ph", "aw", "days", "grows"),
    [
        (4.4, None, None, False),
        (4.5, None, None, True),
        (None, 0.92, None, False),
        (5.0, 0.94, None, False),
        (5.1, 0.94, None, True),
        (5.0, 0.95, None, True),
        (None, None, 4.9, False),
        (None, None, 5.0, True),
        (None, None, None, True),
    ],
)
def test_what_counts_as_a_food_it_grows_in(
    ph: float | None, aw: float | None, days: float | None, *, grows: bool
) -> None:
    assert lets_listeria_grow(ph, aw, days) is grows


def test_a_log_is_read_line_by_line() -> None:
    text = "time,temperature\n2026-11-20 14:00, 57\n2026-11-20 15:00; 21,5 °C\n"
    readings, problems = read_temperatures(text, "log.csv", LONDON)
    assert problems == ()
    assert [(one.at.hour, one.c) for one in readings] == [(14, 57), (15, 21.5)]


def test_every_bad_line_is_said_at_once() -> None:
    text = (
        "2026-11-20 14:00, 135 F\n2026-11-20 14:30\n2026-11-20 14:20, hot\n"
        "2026-11-20 15:00, 570\n2026-11-20 16:00, 20\n2026-11-20 15:30, 18\n"
    )
    readings, problems = read_temperatures(text, "log.csv", LONDON)
    assert [one.line for one in problems] == [1, 2, 3, 4, 6]
    said = " ".join(map(str, problems))
    assert "Fahrenheit" in said
    assert "no temperature" in said
    assert "not after the line above" in said
    assert [one.c for one in readings] == [20]
