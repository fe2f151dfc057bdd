from datetime import datetime
from zoneinfo import ZoneInfo

import pytest

from demould.mise.problem import UnreadableError
from demould.mise.read_asked import read_degrees, read_reading, read_span

ZONE = ZoneInfo("Europe/London")


def at(day: int, hour: int) -> datetime:
    return datetime(2026, 11, day, hour, tzinfo=ZONE)


def test_a_span_of_two_moments_or_one() -> None:
    both = read_span("2026-11-20 22:00 to 2026-11-21 06:00", ZONE)
    assert both == (at(20, 22), at(21, 6))
    assert read_span("2026-11-20 22:00", ZONE) == (at(20, 22), None)


def test_a_reading_in_a_piece_or_of_the_air() -> None:
    said = read_reading("2026-11-21 06:00; -12,5 °C; in the piece", ZONE)
    assert said == (at(21, 6), -12.5, True)
    assert read_reading("2026-11-21 06:00; -12; the air", ZONE)[1:] == (-12.0, False)
    assert read_reading("2026-11-21 06:00; \u22123 °C; of the air", ZONE)[1] == -3.0


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        (
            "2026-11-21 06:00 -12 °C",
            "'2026-11-21 06:00 -12 °C' is no reading of three parts. Write it like"
            " 2026-11-21 06:00; -12 °C; in the piece (or: the air).",
        ),
        (
            "2026-11-21 06:00; -12 °C; on the shelf",
            "'on the shelf' is no place of a reading. Write in the piece, or of the air.",
        ),
        (
            "2026-11-21 06:00; 10 F; the air",
            "the reading, '10 F', is in Fahrenheit. Write it in °C.",
        ),
    ],
)
def test_what_is_no_reading_is_said(text: str, fault: str) -> None:
    with pytest.raises(UnreadableError) as said:
        read_reading(text, ZONE)
    assert str(said.value) == fault


def test_a_span_that_ends_before_it_begins() -> None:
    with pytest.raises(UnreadableError) as said:
        read_span("2026-11-21 22:00 to 2026-11-21 06:00", ZONE)
    assert str(said.value) == (
        "'2026-11-21 22:00 to 2026-11-21 06:00' ends before it begins."
        " Write the earlier moment first."
    )


@pytest.mark.parametrize(
    ("text", "at_c"), [("-18", -18), (" +3 ", 3), ("-18 °C", -18), ("2,5", 2.5)]
)
def test_degrees_with_or_without_their_sign(text: str, at_c: float) -> None:
    assert read_degrees(text, "air") == at_c
