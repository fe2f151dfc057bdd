from datetime import UTC, datetime, timedelta

import pytest

from demould.cold.dead_freezer import Outage, Reading, still_sound

FRIDAY = datetime(2026, 11, 20, 22, 0, tzinfo=UTC)
NOW = FRIDAY + timedelta(hours=10)
STILL_OFF = Outage(last_good=FRIDAY, back=None, now=NOW)
BACK = Outage(last_good=FRIDAY, back=FRIDAY + timedelta(hours=6), now=NOW)


def piece(hours: float, at_c: float) -> Reading:
    return Reading(at=FRIDAY + timedelta(hours=hours), at_c=at_c, in_piece=True)


def air(at_c: float, hours: float, every: float = 0.5) -> list[Reading]:
    count = int(hours / every) + 1
    return [
        Reading(at=FRIDAY + timedelta(hours=n * every), at_c=at_c, in_piece=False)
        for n in range(count)
    ]


def test_without_a_reading_one_is_asked_for_and_none_made_up() -> None:
    judged = still_sound(STILL_OFF, [])
    assert judged.verdict == "take a reading"
    assert str(judged.says) == (
        "nobody knows how warm it is: put a probe in the warmest piece now; without a"
        " reading it is not sound"
    )


def test_what_may_have_thawed_and_frozen_is_not_sound() -> None:
    # Cold now, but the freezer has run again for four hours.
    judged = still_sound(BACK, [piece(10, -18)])
    assert judged.verdict == "not sound"
    assert str(judged.says) == (
        "no reading from before the freezer ran again: it may have thawed and frozen,"
        " and unknown is not sound; is there a log of its air?"
    )


def test_cold_in_the_piece_at_the_end_is_sound() -> None:
    judged = still_sound(STILL_OFF, [piece(9.5, -16)])
    assert judged.verdict == "sound"
    assert str(judged.says) == (
        "-16 °C in the piece at the end, before it could freeze again"
    )
    assert still_sound(BACK, [piece(5.5, -16), piece(10, -19)]).verdict == "sound"


def test_a_reading_long_before_the_end_does_not_carry() -> None:
    assert still_sound(STILL_OFF, [piece(2, -17)]).verdict == "take a reading"
    assert still_sound(BACK, [piece(2, -17)]).verdict == "not sound"


def test_one_warm_reading_settles_it() -> None:
    judged = still_sound(STILL_OFF, [piece(5, -9), piece(9.8, -17)])
    assert judged.verdict == "not sound"
    assert str(judged.says) == (
        "-9 °C in the piece on Sat 03:00, over -15 °C: not sound as frozen stock, and"
        " not to be frozen again"
    )
    assert still_sound(STILL_OFF, [piece(9.8, -16)], limit_c=-18).verdict == "not sound"


def test_an_air_log_without_gaps_will_do() -> None:
    judged = still_sound(STILL_OFF, air(-17, 10))
    assert judged.verdict == "sound"
    assert str(judged.says) == "the air's log never left -15 °C"
    assert still_sound(BACK, air(-17, 6)).verdict == "sound"
    assert still_sound(STILL_OFF, air(-17, 10, every=2)).verdict == "take a reading"
    assert still_sound(STILL_OFF, air(-14, 10)).verdict == "take a reading"


def test_readings_from_before_do_not_count() -> None:
    assert still_sound(STILL_OFF, [piece(-1, -18)]).verdict == "take a reading"


def test_an_outage_has_its_order() -> None:
    with pytest.raises(
        ValueError, match=r"^an outage ends before it began, or after now$"
    ):
        Outage(last_good=NOW, back=FRIDAY, now=NOW)
