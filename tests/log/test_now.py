"""Where the kitchen stands: what is agreed, done, taken back."""

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from demould.log.now import agreed_plan, done_steps, standing
from demould.mise.entry import Agreed, Happened, TakenBack

NOW = datetime(2026, 11, 19, 11, 20, tzinfo=ZoneInfo("Europe/London"))


def agreed(name: str) -> Agreed:
    return Agreed(id=name, at=NOW, inputs="a1", steps=())


def happened(name: str, step: str, minutes: int | None = None) -> Happened:
    end = None if minutes is None else NOW + timedelta(minutes=minutes)
    return Happened(id=name, at=NOW, step=step, start=NOW, end=end)


def test_the_last_plan_agreed_on_counts_unless_it_was_taken_back() -> None:
    both = (agreed("first"), agreed("second"))
    assert agreed_plan(()) is None
    assert agreed_plan(both) == both[1]
    assert agreed_plan((*both, TakenBack(id="t", at=NOW, entry="second"))) == both[0]


def test_a_step_begun_then_over_is_over() -> None:
    entries = (happened("a", "whip"), happened("b", "whip", 5), happened("c", "fill"))
    done = done_steps(entries)
    assert done["whip"].end == NOW + timedelta(minutes=5)
    assert done["fill"].end is None


def test_what_is_taken_back_never_happened() -> None:
    entries = (happened("a", "whip", 5), TakenBack(id="t", at=NOW, entry="a"))
    assert standing(entries) == ()
    assert done_steps(entries) == {}


def test_nothing_is_over_before_it_begins() -> None:
    with pytest.raises(ValueError, match="before it begins") as fault:
        happened("a", "whip", -5)
    assert str(fault.value) == (
        "whip would be over at Thu 11:15, before it begins at Thu 11:20"
    )
