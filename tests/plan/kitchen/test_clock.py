from dataclasses import replace
from datetime import datetime, time
from zoneinfo import ZoneInfo

import pytest

from demould.mise.kitchen import Kitchen, Opening
from demould.plan.kitchen.clock import (
    midnight_of,
    minutes_since,
    moment_at,
    open_windows,
)
from demould.plan.problem.steps import Window
from tests.desserts.kitchen import KITCHEN

LONDON = ZoneInfo("Europe/London")
ALL_DAYS = tuple(range(7))


def open_from(opens: time, closes: time, days: tuple[int, ...] = ALL_DAYS) -> Kitchen:
    opening = Opening(weekdays=days, opens=opens, closes=closes)
    return replace(KITCHEN, zone="Europe/London", openings=(opening,))


# IANA time zone database, Europe/London: clocks go back from 02:00 to 01:00 on
# 25 October 2026 and forward from 01:00 to 02:00 on 29 March 2026.
@pytest.mark.parametrize(
    ("evening", "morning", "hours"),
    [
        (datetime(2026, 10, 24, 20, tzinfo=LONDON), (2026, 10, 25, 8), 13),
        (datetime(2026, 3, 28, 20, tzinfo=LONDON), (2026, 3, 29, 8), 11),
        (datetime(2026, 11, 17, 20, tzinfo=LONDON), (2026, 11, 18, 8), 12),
    ],
)
def test_a_night_is_as_long_as_it_really_is(
    evening: datetime, morning: tuple[int, int, int, int], hours: int
) -> None:
    assert minutes_since(evening, datetime(*morning, tzinfo=LONDON)) == hours * 60


def test_a_minute_and_its_moment_are_the_same_over_a_clock_change() -> None:
    origin = midnight_of(datetime(2026, 10, 24, 14, tzinfo=LONDON), "Europe/London")
    for minute in range(0, 3 * 1440, 7):
        assert minutes_since(origin, moment_at(origin, minute)) == minute


def test_a_rest_of_twelve_hours_ends_an_hour_earlier_on_the_wall_clock() -> None:
    origin = midnight_of(datetime(2026, 10, 24, 14, tzinfo=LONDON), "Europe/London")
    in_the_fridge = minutes_since(origin, datetime(2026, 10, 24, 20, tzinfo=LONDON))
    assert moment_at(origin, in_the_fridge + 720) == datetime(
        2026, 10, 25, 7, tzinfo=LONDON
    )


def test_open_hours_are_cut_at_now_and_at_the_last_due_time() -> None:
    now = datetime(2026, 11, 17, 14, tzinfo=LONDON)
    until = datetime(2026, 11, 19, 10, tzinfo=LONDON)
    kitchen = open_from(time(8), time(17))
    windows = open_windows(kitchen, midnight_of(now, kitchen.zone), now, until)
    assert windows == (
        Window(open=14 * 60, close=17 * 60),
        Window(open=1440 + 8 * 60, close=1440 + 17 * 60),
        Window(open=2 * 1440 + 8 * 60, close=2 * 1440 + 10 * 60),
    )


def test_closed_days_have_no_window() -> None:
    now = datetime(2026, 11, 17, 9, tzinfo=LONDON)
    until = datetime(2026, 11, 23, 9, tzinfo=LONDON)
    kitchen = open_from(time(8), time(17), days=(1, 5))
    windows = open_windows(kitchen, midnight_of(now, kitchen.zone), now, until)
    assert [window.open // 1440 for window in windows] == [0, 4]
