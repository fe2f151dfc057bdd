from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from demould.plan.problem.steps import Person, Problem, Step, Window, exactly
from demould.plan.problem.windows import (
    common,
    first_from,
    inside_windows,
    starts_attended,
    starts_within,
)

HOURS = (Window(open=10, close=20), Window(open=25, close=28))


def test_a_stretch_begins_early_enough_to_end_before_closing() -> None:
    assert starts_within(HOURS, 3) == ((10, 17), (25, 25))
    assert starts_within(HOURS, 4) == ((10, 16),)


PIPE = Step(id="pipe", duration=exactly(3), attended="all", calendar="kitchen")
PLAIN = Problem(
    id="tiny",
    origin="2026-03-02T00:00",
    horizon=60,
    calendars={"kitchen": HOURS, "late": (Window(open=15, close=27),)},
    steps=(PIPE,),
)


def starts(problem: Problem, hands: int) -> object:
    return starts_attended(problem, PIPE, 3, hands)


def people(*calendars: str | None) -> Problem:
    named = tuple(
        Person(name=str(number), calendar=calendar)
        for number, calendar in enumerate(calendars)
    )
    return Problem(
        id="tiny",
        origin=PLAIN.origin,
        horizon=60,
        calendars=PLAIN.calendars,
        steps=(PIPE,),
        people=named,
    )


def test_hours_are_those_of_the_kitchen_and_of_enough_people() -> None:
    assert starts(people(None), 1) == ((10, 17), (25, 25))
    assert starts(people("late"), 1) == ((15, 17),)
    assert starts(people("late", "kitchen"), 2) == ((15, 17),)
    assert starts(people("late", "kitchen"), 1) == ((10, 17), (25, 25))
    assert starts(people("late", None), 2) == ((15, 17),)
    assert starts(people("late"), 2) == ()


def test_no_minutes_and_no_calendar_leave_all_hours() -> None:
    anytime = Step(id="pipe", duration=exactly(3), attended="all")
    assert starts_attended(PLAIN, PIPE, 0, 0) is None
    assert starts_attended(PLAIN, anytime, 3, 0) is None
    assert starts_attended(people("late"), anytime, 3, 1) == ((15, 24),)


Ranges = st.lists(st.integers(0, 40), min_size=2, max_size=8, unique=True).map(
    lambda edges: tuple(pairwise(sorted(edges)))[::2]
)


@given(Ranges, Ranges)
def test_common_minutes_are_in_both(
    one: tuple[tuple[int, int], ...], other: tuple[tuple[int, int], ...]
) -> None:
    def minutes(ranges: tuple[tuple[int, int], ...]) -> set[int]:
        return {minute for a, b in ranges for minute in range(a, b + 1)}

    assert minutes(common(one, other)) == minutes(one) & minutes(other)


def test_the_next_minute_in_open_hours() -> None:
    ranges = ((10, 17), (12, 13), (25, 25))
    found = [first_from(ranges, minute) for minute in (0, 11, 18, 26)]
    assert found == [10, 11, 25, None]


def test_what_is_open_between_two_minutes_may_be_less_than_a_window() -> None:
    assert list(inside_windows(HOURS, 12, 26)) == [(12, 20), (25, 26)]
    assert list(inside_windows(HOURS, 20, 25)) == []
