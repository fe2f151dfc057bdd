from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo

import pytest

from demould.mise.clock import (
    read_coming,
    read_day,
    read_moment,
    read_time,
    read_weekdays,
)
from demould.mise.problem import UnreadableError
from demould.mise.write_quantity import write_moment

LONDON = ZoneInfo("Europe/London")


@pytest.mark.parametrize(
    ("text", "days"),
    [
        ("Tue to Fri", (1, 2, 3, 4)),
        ("Sat", (5,)),
        ("Mon, Wed and Thursday", (0, 2, 3)),
        ("Fri to Mon", (4, 5, 6, 0)),
        ("tuesday\u2013Thu.", (1, 2, 3)),
    ],
)
def test_weekdays_are_spans_and_lists(text: str, days: tuple[int, ...]) -> None:
    assert read_weekdays(text) == days


@pytest.mark.parametrize(
    ("text", "clock"),
    [("09:00", time(9)), ("9.30", time(9, 30)), ("23h59", time(23, 59))],
)
def test_times_of_day(text: str, clock: time) -> None:
    assert read_time(text) == clock


@pytest.mark.parametrize("text", ["24:00", "9:60", "nine", "9:5"])
def test_no_time_of_day(text: str) -> None:
    with pytest.raises(UnreadableError) as fault:
        read_time(text)
    assert str(fault.value) == (
        f"{text!r} is not a time of day. Write it from 00:00 to 23:59, for example 09:30."
    )


def test_a_weekday_in_front_must_be_the_right_one() -> None:
    assert read_day("Sat 2026-11-21") == read_day("2026-11-21") == date(2026, 11, 21)
    with pytest.raises(UnreadableError) as fault:
        read_day("Sun 2026-11-21")
    assert str(fault.value) == (
        "2026-11-21 is a Saturday, not a Sunday. Write Sat 2026-11-21, or the day that"
        " was meant."
    )
    with pytest.raises(UnreadableError) as fault:
        read_day("Xyz 2026-11-21")
    assert str(fault.value) == (
        "'Xyz' is not a weekday. Write Mon, Tue, Wed, Thu, Fri, Sat or Sun."
    )


# Clocks in the United Kingdom: Summer Time Order 2002, SI 2002/262: forward at 01:00
# Greenwich on the last Sunday of March, back at 01:00 on the last of October.
def test_the_night_the_clocks_go_back_has_an_hour_twice() -> None:
    first = read_moment("Sun 2026-10-25 01:30 first", LONDON)
    second = read_moment("Sun 2026-10-25 01:30 second", LONDON)
    assert first.astimezone(UTC) == datetime(2026, 10, 25, 0, 30, tzinfo=UTC)
    assert second.astimezone(UTC) == datetime(2026, 10, 25, 1, 30, tzinfo=UTC)
    assert write_moment(first) == "Sun 2026-10-25 01:30 first"
    assert write_moment(second) == "Sun 2026-10-25 01:30 second"


def test_a_moment_is_aware_in_the_kitchens_zone() -> None:
    summer = read_moment("2026-07-01 19:30", LONDON)
    assert summer.tzinfo is LONDON
    assert summer.astimezone(UTC) == datetime(2026, 7, 1, 18, 30, tzinfo=UTC)


@pytest.mark.parametrize("text", ["tomorrow", "21.11.2026", "Sat 21 Nov"])
def test_no_day(text: str) -> None:
    with pytest.raises(UnreadableError) as fault:
        read_day(text)
    assert str(fault.value) == (
        f"{text!r} is not a day. Write year-month-day, for example 2026-11-21."
    )


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "2026-11-21",
            "'2026-11-21' is not a day and a time. Write it like Sat 2026-11-21 19:30.",
        ),
        (
            "2026-02-30 19:30",
            "there is no 2026-02-30. Look at the calendar; write year-month-day.",
        ),
        (
            "2026-03-29 01:30",
            "the clocks go forward over Sun 2026-03-29 01:30: it never comes. Write a time"
            " before or after the hour that is left out.",
        ),
        (
            "2026-10-25 01:30",
            "the clocks go back that night: Sun 2026-10-25 01:30 comes twice. Write Sun"
            " 2026-10-25 01:30 first, or Sun 2026-10-25 01:30 second.",
        ),
    ],
)
def test_no_moment(text: str, message: str) -> None:
    with pytest.raises(UnreadableError) as fault:
        read_moment(text, LONDON)
    assert str(fault.value) == message


# Tuesday 14:00: the next Saturday, the Tuesday to come, and this very afternoon.
@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("sat 19:30", "2026-11-21 19:30"),
        ("Tue 13:00", "2026-11-24 13:00"),
        ("tuesday 14:00", "2026-11-24 14:00"),
        ("Tue. 15.30", "2026-11-17 15:30"),
        ("Sat 2026-11-28 12:00", "2026-11-28 12:00"),
    ],
)
def test_a_weekday_alone_is_the_next_one(said: str, meant: str) -> None:
    now = datetime(2026, 11, 17, 14, tzinfo=ZoneInfo("Europe/London"))
    assert f"{read_coming(said, now):%Y-%m-%d %H:%M}" == meant
