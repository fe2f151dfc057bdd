"""Earliest and latest minutes worked out by hand, and words where there are none."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from demould.plan.answer.schedule import Conflict, Explain
from demould.plan.problem.steps import (
    Hold,
    Lag,
    Order,
    Person,
    Problem,
    Road,
    Span,
    Step,
    Window,
    exactly,
)
from demould.plan.solve.lags import limits_of
from demould.plan.solve.net import Limits
from demould.plan.solve.search import solve

HOURS = {"kitchen": (Window(open=480, close=1020), Window(open=1920, close=2460))}


def problem(*steps: Step, **rest: object) -> Problem:
    plain = Problem(
        id="tiny",
        origin="2026-03-02T00:00",
        horizon=2880,
        calendars=HOURS,
        steps=steps,
        orders=(Order(id="o", due=2400),),
    )
    return replace(plain, **rest)  # type: ignore[arg-type]


def attended(name: str, minutes: int, **rest: object) -> Step:
    plain = Step(id=name, duration=exactly(minutes), attended="all", calendar="kitchen")
    return replace(plain, **rest)  # type: ignore[arg-type]


def limits(asked: Problem) -> dict[str, tuple[int, int, int, int]]:
    """Give first and last start, first and last end of each step."""
    found = limits_of(asked)
    assert isinstance(found, Limits)
    return {
        step.id: (
            found.first[step.id, "start"],
            found.last[step.id, "start"],
            found.first[step.id, "end"],
            found.last[step.id, "end"],
        )
        for step in asked.steps
    }


def told(asked: Problem) -> tuple[str, list[tuple[str, str, str]]]:
    found = limits_of(asked)
    assert isinstance(found, Explain)
    return found.text, [(c.kind, c.id, c.text) for c in found.conflict]


def test_waits_are_rounded_into_open_hours_from_both_sides() -> None:
    # 480 + 55 + 720 = 1255 is closed: the whip waits for 1920. It must be over when
    # the doors close at 2460, but the ganache is in the fridge at 17:00 at the latest,
    # since on the second day 12 h more are not left.
    asked = problem(
        attended("ganache", 55),
        attended("whip", 5, order=("o",)),
        lags=(Lag(from_="ganache", to="whip", min=720),),
    )
    assert limits(asked) == {
        "ganache": (480, 965, 535, 1020),
        "whip": (1920, 2395, 1925, 2400),
    }


def test_a_longest_wait_pulls_what_comes_before_it() -> None:
    asked = problem(
        attended("ganache", 55, order=("o",)),
        attended("whip", 5, order=("o",), earliest=2000),
        lags=(Lag(from_="ganache", to="whip", min=None, max=60),),
    )
    assert limits(asked)["ganache"] == (1920, 2345, 1975, 2400)


def test_the_shortest_and_the_longest_road_count() -> None:
    either = (
        Road(name="blast", duration=exactly(150)),
        Road(name="freezer", duration=Span(min=720, max=900)),
    )
    asked = problem(
        Step(id="freeze", either=either, latest_end=1000),
        Step(id="demould", duration=exactly(15), earliest=950),
        Step(id="rest", duration=Span(min=5, max=None), order=("o",)),
        lags=(Lag(from_="freeze", to="demould", max=0),),
    )
    assert limits(asked) == {
        "freeze": (50, 850, 950, 1000),
        "demould": (950, 1000, 965, 1015),
        "rest": (0, 2395, 5, 2400),
    }


def test_ends_are_attended_each_in_its_own_hours() -> None:
    bake = attended(
        "bake", 0, duration=Span(min=300, max=960), attend_start=5, attend_end=10
    )
    asked = problem(replace(bake, attended="ends"))
    # Out at the last minute of the second day, 17:00, so in 5 h before at the latest.
    assert limits(asked) == {"bake": (480, 2160, 780, 2460)}
    only_out = problem(replace(bake, attended="ends", attend_start=0))
    assert limits(only_out) == {"bake": (0, 2160, 490, 2460)}


def test_a_mould_is_given_back_after_it_is_taken() -> None:
    asked = problem(
        Step(id="fill", duration=exactly(10), earliest=100),
        Step(id="demould", duration=exactly(10)),
        holds=(Hold(resource="mould", amount=1, from_="fill", to="demould"),),
    )
    assert limits(asked)["demould"][2] == 100


def test_waits_to_a_due_time_count_from_it() -> None:
    asked = problem(
        Step(id="thaw", duration=exactly(300), order=("o",)),
        lags=(Lag(from_="thaw", to="due:o", min=60, max=180),),
    )
    assert limits(asked)["thaw"] == (1920, 2040, 2220, 2340)


def test_a_soft_due_time_is_no_limit() -> None:
    asked = problem(
        Step(id="thaw", duration=exactly(300), order=("o",)),
        orders=(Order(id="o", due=100, soft_due=True),),
    )
    assert limits(asked)["thaw"][3] == 2880


def test_what_is_impossible_is_told_with_all_that_leads_there() -> None:
    asked = problem(
        attended("ganache", 55, label="ganache", order=("o",)),
        attended("whip", 5, order=("o",)),
        orders=(Order(id="o", due=1200),),
        lags=(Lag(from_="ganache", to="whip", min=720, why="sets in the cold"),),
    )
    text, conflict = told(asked)
    assert text == (
        "the end of whip can not be before Tue 08:05 and would have to be by Mon 17:00"
    )
    assert conflict == [
        ("order", "o", "the order o"),
        (
            "calendar",
            "kitchen",
            "the start of ganache for o needs open hours and people",
        ),
        ("lag", "ganache", "ganache for o takes at least 55 min"),
        (
            "lag",
            "ganache -> whip",
            "the start of whip comes at least 12 h after the end of ganache for o"
            " (sets in the cold)",
        ),
        ("calendar", "kitchen", "the start of whip needs open hours and people"),
        ("lag", "whip", "whip takes at least 5 min"),
        ("calendar", "kitchen", "the end of whip needs open hours and people"),
        ("due", "o", "o is due Mon 20:00"),
    ]


def test_waits_that_chase_each_other_are_impossible() -> None:
    asked = problem(
        Step(id="a", duration=exactly(10)),
        Step(id="b", duration=exactly(10)),
        lags=(
            Lag(from_="a", to="b"),
            Lag(from_="b", to="a", min=-5, why="too soon"),
        ),
    )
    text, conflict = told(asked)
    assert text == "b and a wait for each other in a ring, so none can begin"
    assert {"a -> b", "b -> a"} <= {name for _, name, _ in conflict}


def test_limits_of_single_steps_are_told() -> None:
    late = Step(id="pears", duration=exactly(30), earliest=600, latest_end=620)
    text, conflict = told(problem(late))
    assert text == (
        "the end of pears can not be before Mon 10:30 and would have to be by Mon 10:20"
    )
    assert conflict == [
        ("calendar", "pears", "pears can not begin before Mon 10:00"),
        ("lag", "pears", "pears takes at least 30 min"),
        ("due", "pears", "pears must be done by Mon 10:20"),
    ]


@pytest.mark.parametrize(
    ("lag", "text"),
    [
        (Lag(from_="a", to="b"), "the start of b comes not before the end of a"),
        (
            Lag(from_="a", to="b", min=-90),
            "the start of b comes at most 1 h 30 before the end of a",
        ),
        (
            Lag(from_="a", to="b", min=None, max=0),
            "the start of b comes not after the end of a",
        ),
        (
            Lag(from_="a", to="b", min=None, max=-5),
            "the start of b comes at least 5 min before the end of a",
        ),
        (
            Lag(from_="a", to="due:o", min=5, max=600),
            "the due time of o comes at most 10 h after the end of a",
        ),
    ],
)
def test_every_kind_of_wait_has_its_words(lag: Lag, text: str) -> None:
    first, then = (2000, 500) if lag.max is None else (500, 2000)
    asked = problem(
        Step(id="a", duration=exactly(10), earliest=first, latest_end=first + 10),
        Step(id="b", duration=exactly(10), earliest=then, latest_end=then + 10),
        lags=(lag,),
    )
    assert text in [words for _, _, words in told(asked)[1]]


def test_hours_without_enough_people_are_closed() -> None:
    pipe = attended("pipe", 18, hands=2)
    mirel = Person(name="Mirel", calendar="kitchen")
    assert told(problem(pipe, people=(mirel,)))[0] == (
        "the start of pipe would be between Mon 00:00 and Wed 00:00,"
        " and nobody is there for so long"
    )
    two = problem(pipe, people=(mirel, Person(name="Jonne")))
    assert limits(two)["pipe"] == (480, 2442, 498, 2460)


def test_the_thaw_that_is_too_long_is_named(case: Callable[[str], Problem]) -> None:
    found = solve(case("inf-small-closed-morning.json"))
    assert found.status == "infeasible"
    assert found.explain is not None
    assert found.explain.text == (
        "the end of thaw1 for o1 can not be before Wed 18:25 and would have to be by"
        " Wed 15:00"
    )
    assert found.explain.conflict[0] == Conflict(
        kind="order", id="o1", text="the order o1"
    )
    assert found.explain.conflict[-1] == Conflict(
        kind="due", id="o1", text="o1 is due Wed 15:00"
    )
