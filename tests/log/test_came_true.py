from datetime import UTC, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from demould.log.came_true import CameTrue, came_true, record_of
from demould.mise.entry import Happened, TakenBack
from demould.mise.figure import Estimate
from demould.mise.words import Words


def came(hours: float, low: float = 4, likely: float = 5, high: float = 8) -> CameTrue:
    estimate = Estimate(
        low=low, likely=likely, high=high, unit="h", reason=Words("air")
    )
    return CameTrue(estimate=estimate, came=hours)


def test_right_is_within_both_ends() -> None:
    record = record_of([came(4), came(8), came(3.9), came(8.1)])
    assert (record.right, record.of) == (2, 4)


def test_a_rule_takes_three() -> None:
    assert str(record_of([came(6)]).says) == "right 1 times of 1"
    assert str(record_of([came(6), came(6), came(6)]).says) == (
        "right 3 times of 3; it took 20 % longer than likely, as a rule"
    )
    assert str(record_of([came(4), came(4), came(9)]).says) == (
        "right 2 times of 3; it took 20 % less than likely, as a rule"
    )


def test_none_is_said_so() -> None:
    assert str(record_of([]).says) == (
        "no estimate has been put beside what came true yet"
    )
    assert record_of([]).ratio is None


@given(st.lists(st.floats(0.1, 100), min_size=1, max_size=30))
def test_never_right_more_often_than_asked(hours: list[float]) -> None:
    record = record_of([came(one) for one in hours])
    assert 0 <= record.right <= record.of == len(hours)
    assert record.ratio is not None
    assert min(hours) / 5 <= record.ratio <= max(hours) / 5


NOON = datetime(2026, 11, 19, 12, tzinfo=UTC)


def froze(name: str, step: str, hours: float | None) -> Happened:
    end = None if hours is None else NOON + timedelta(hours=hours)
    return Happened(id=name, at=NOON, step=step, start=NOON, end=end)


def test_steps_that_are_over_stand_beside_their_estimates() -> None:
    estimate = came(0).estimate
    told = came_true(
        [
            froze("1", "pebbles.freeze", 5.5),
            froze("2", "domes.freeze", None),
            froze("3", "ring.freeze", 9.0),
            froze("4", "log.freeze", 6.0),
            TakenBack(id="5", at=NOON, entry="3"),
        ],
        dict.fromkeys(("pebbles.freeze", "domes.freeze", "ring.freeze"), estimate),
    )
    assert told == (CameTrue(estimate=estimate, came=5.5),)
