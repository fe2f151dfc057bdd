"""What can be seen at once, worked out by hand; and never a limit where there is a plan."""

from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from demould.demo import NOW
from demould.mise.find import find_in
from demould.office.buying import arrivals_of
from demould.plan.kitchen.from_kitchen import Laid, lay_out
from demould.plan.problem.steps import (
    Hold,
    Lag,
    Order,
    Person,
    Problem,
    Resource,
    Road,
    Span,
    Step,
    Window,
    exactly,
)
from demould.plan.quick.limit import Limit
from demould.plan.quick.look import first_look
from demould.plan.solve.search import solve
from demould.week.office import needs_of_all
from demould.week.orders import makings_of
from demould.week.to_plan import to_make
from tests.demo_folder import demo_folder

DAY = 1440
OPEN = 480
CLOSE = 1080


def days(count: int) -> Mapping[str, tuple[Window, ...]]:
    """Open from 8:00 to 18:00 on so many days from a Monday."""
    return {
        "open": tuple(
            Window(open=day * DAY + OPEN, close=day * DAY + CLOSE)
            for day in range(count)
        )
    }


def hands(name: str, minutes: int, **rest: object) -> Step:
    plain = Step(
        id=name,
        order=("o",),
        label=name,
        duration=exactly(minutes),
        attended="all",
        calendar="open",
    )
    return replace(plain, **rest)  # type: ignore[arg-type]


def wait(name: str, least: int, most: int | None = None, **rest: object) -> Step:
    plain = Step(
        id=name,
        order=("o",),
        label=name,
        duration=Span(min=least, max=least if most is None else most),
    )
    return replace(plain, **rest)  # type: ignore[arg-type]


def problem(*steps: Step, days_open: int = 3, **rest: object) -> Problem:
    last = (days_open - 1) * DAY + CLOSE
    plain = Problem(
        id="tiny",
        origin="2026-03-02T00:00",
        horizon=last,
        calendars=days(days_open),
        orders=(Order(id="o", due=last),),
        steps=steps,
    )
    return replace(plain, **rest)  # type: ignore[arg-type]


def rounds(count: int, moulds: int, freeze: int, days_open: int = 3) -> Problem:
    """Fill 10 min, freeze, take out 10 min; every round fills every mould."""
    steps: list[Step] = []
    lags: list[Lag] = []
    holds: list[Hold] = []
    for turn in range(count):
        names = f"fill {turn}", f"freeze {turn}", f"empty {turn}"
        steps += [
            hands(names[0], 10),
            wait(names[1], freeze, 3 * DAY),
            hands(names[2], 10),
        ]
        lags += [Lag(from_=a, to=b) for a, b in pairwise(names)]
        holds.append(
            Hold(resource="mould:dome", amount=moulds, from_=names[0], to=names[2])
        )
    return problem(
        *steps,
        days_open=days_open,
        resources=(Resource(name="mould:dome", capacity=moulds),),
        lags=tuple(lags),
        holds=tuple(holds),
    )


def said(asked: Problem) -> list[tuple[str, str]]:
    return [(limit.over, limit.text) for limit in first_look(asked)]


# Filled at 8:00, frozen from 8:10 to 20:10, out at 8:00 next morning, filled again from
# 8:10: out at 8:00 of the third day. The third filling would come out on a fourth.
def test_with_a_twelve_hour_freeze_a_mould_gives_about_one_round_a_day() -> None:
    assert first_look(rounds(2, 2, 720)) == ()
    assert said(rounds(3, 2, 720)) == [
        (
            "mould",
            "2 dome moulds: 3 rounds are needed and 2 can be out by Wed 18:00; each"
            " ties a mould for 12 h 20 or more, about one round a day",
        )
    ]
    assert first_look(rounds(3, 2, 720))[0].help == (
        "1 more dome mould, fewer pieces, or a later day"
    )


# Two hours in the blast: 10 + 120 + 10 min a round. Day one has four out by 17:20; the
# fifth goes in then and comes out at 8:10 in the morning, and four more by 17:30, and
# so on the third day: 4 + 5 + 5.
def test_in_two_hours_of_blast_and_the_nights_a_mould_goes_fourteen_times() -> None:
    assert first_look(rounds(14, 1, 120)) == ()
    assert solve(rounds(14, 1, 120), seconds=5, wishes=()).steps
    (limit,) = first_look(rounds(15, 1, 120))
    assert "15 rounds are needed and 14 can be out by Wed 18:00" in limit.text
    assert "about 5 rounds a day" in limit.text


def test_more_at_once_than_a_place_takes_is_said_with_both_numbers() -> None:
    freeze = wait(
        "freeze",
        120,
        either=(
            Road(
                name="blast",
                duration=exactly(120),
                uses={"cold:blast": 6200, "shelf:blast": 4},
            ),
            Road(name="freezer", duration=exactly(720), uses={"shelf:freezer": 7}),
        ),
    )
    asked = problem(
        replace(freeze, duration=None),
        resources=(
            Resource(name="cold:blast", capacity=5000),
            Resource(name="shelf:blast", capacity=3),
            Resource(name="shelf:freezer", capacity=6),
        ),
    )
    assert said(asked) == [
        (
            "cold",
            "freeze for o: 6.2 kg at once, and the blast takes 5.0 kg; 4 shelves at"
            " once, and the blast has 3; 7 shelves at once, and the freezer has 6",
        )
    ]


def test_a_tool_nobody_has_and_moulds_that_are_too_few() -> None:
    asked = problem(
        hands("whip", 10, uses={"tool:mixer": 1}),
        hands("fill", 10),
        resources=(
            Resource(name="tool:mixer", capacity=0),
            Resource(name="mould:dome", capacity=3),
        ),
        holds=(Hold(resource="mould:dome", amount=4, from_="whip", to="fill"),),
    )
    assert said(asked) == [
        ("mould", "whip for o: 4 dome moulds at once, and there are 3"),
        ("tool", "whip for o: there is no mixer"),
    ]


def test_a_step_longer_than_any_day_is_named_with_both_lengths() -> None:
    assert said(problem(hands("dip", 625))) == [
        ("hours", "dip for o takes 10 h 25 in one go, and the longest day has 10 h")
    ]


def test_who_is_always_away_or_cannot_do_it_is_named() -> None:
    away = Person(name="Jonne", calendar="never")
    asked = problem(hands("dip", 30), people=(away,))
    asked = replace(asked, calendars={**asked.calendars, "never": ()})
    assert said(asked) == [
        ("hours", "dip for o takes 30 min, and Jonne is never there so long")
    ]
    glaze = hands("glaze", 30, skill="glaze")
    asked = problem(glaze, people=(Person(name="Jonne"),))
    assert said(asked) == [
        ("hours", "glaze for o needs 1 who can glaze, and there are 0")
    ]


# Three days of 10 h for one pair of hands are 30 h; four steps of 8 h are 32 h.
def test_more_work_than_hands_is_said_in_hours() -> None:
    work = tuple(hands(f"work {number}", 480) for number in range(4))
    one = (Person(name="Mirel"),)
    assert said(problem(*work[:3], people=one)) == []
    assert said(problem(*work, people=one)) == [
        ("hands", "32 h of work by Wed 18:00, and Mirel has 30 h")
    ]
    both = (*one, Person(name="Jonne"))
    assert said(problem(*work, people=both)) == []


# Monday and Thursday are open. What is whipped on Monday and holds 24 h is used by
# Tuesday evening at the latest; the piece is due on Thursday, filled on Thursday.
def test_a_hold_that_ends_on_a_closed_day_names_the_days() -> None:
    monday, thursday = days(4)["open"][0], days(4)["open"][3]
    asked = problem(
        hands("boil", 30, latest_end=2 * DAY),
        hands("fill", 30, earliest=DAY),
        days_open=4,
        calendars={"open": (monday, thursday)},
        lags=(Lag(from_="boil", to="fill", min=None, max=DAY, why="boil holds 24 h"),),
    )
    (limit,) = first_look(asked)
    assert limit.over == "hold"
    assert limit.text == (
        "boil holds 24 h: the end of boil for o is Mon 18:00 at the latest, the start"
        " of fill for o Thu 08:00 at the earliest; closed from Mon 18:00 to Thu 08:00,"
        " 62 h"
    )
    longer = replace(asked.lags[0], max=62 * 60)
    assert first_look(replace(asked, lags=(longer,))) == ()


def test_what_comes_after_it_is_needed_is_a_delivery() -> None:
    asked = problem(hands("cook", 60, earliest=5 * DAY))
    assert said(asked) == [
        (
            "delivery",
            "cook for o waits for a delivery until Sat 00:00, and has to begin by"
            " Wed 17:00",
        )
    ]


def test_waits_that_go_round_in_a_circle_are_named() -> None:
    asked = problem(
        hands("whip", 10),
        hands("fill", 10),
        lags=(Lag(from_="whip", to="fill"), Lag(from_="fill", to="whip")),
    )
    (limit,) = first_look(asked)
    assert limit.over == "wait"
    assert limit.orders == ("o",)
    assert "whip for o" in limit.text or "fill for o" in limit.text


@cache
def pebbles(pieces: int) -> Laid:
    """Lay the demo's week out with another number of pebbles, all of it in the house."""
    folder = demo_folder()
    orders = tuple(
        replace(order, pieces=pieces) if order.dessert == "river-pebble" else order
        for order in folder.orders
    )
    makings = makings_of(replace(folder, orders=orders), NOW)
    return lay_out(folder.kitchen, [to_make(making, {}) for making in makings], NOW)


def test_ten_twenty_four_and_fifty_pebbles_have_no_limit_and_a_plan() -> None:
    for pieces in (10, 24, 50):
        assert first_look(pebbles(pieces).problem) == ()
        assert solve(pebbles(pieces).problem, seconds=5, wishes=()).steps


# 535 pieces in 24 cavities: 23 rounds. At three a day, the third over night, they need
# eight days, and the week to Saturday has four and a half (worked by hand).
def test_five_hundred_pebbles_fail_on_the_moulds_first_then_on_the_cold() -> None:
    found = first_look(pebbles(500).problem)
    assert found[0].id == "mould:pebble"
    assert "23 rounds are needed" in found[0].text
    assert "about 3 rounds a day" in found[0].text
    assert "cold" in {limit.over for limit in found}


def test_more_centres_than_their_mould_holds_are_made_in_turns() -> None:
    """56 centres in 48 cavities: 48, and 8 when the mould is free again."""
    parts = pebbles(50).parts
    turns = [
        (part.round, part.pieces)
        for part in parts.values()
        if part.component
        and part.component.name == "Blackcurrant-pear centre"
        and part.step.key == "cook"
    ]
    assert turns == [(1, 48), (2, 8)]


@st.composite
def kitchens(draw: st.DrawFn) -> Problem:
    """A few steps with waits, holds, hours, people and a mould, feasible or not."""
    count = draw(st.integers(2, 5))
    steps: list[Step] = []
    lags: list[Lag] = []
    for number in range(count):
        minutes = draw(st.sampled_from([5, 60, 200, 400]))
        name = f"s{number}"
        if draw(st.booleans()):
            uses = {"tool:mixer": 1} if draw(st.booleans()) else {}
            steps.append(hands(name, minutes, uses=uses))
        else:
            most = minutes + draw(st.sampled_from([0, 300, DAY]))
            steps.append(wait(name, minutes, most))
        if number and draw(st.booleans()):
            most_between = draw(st.sampled_from([None, 0, 30, 700]))
            least = draw(st.sampled_from([0, 0, 120]))
            if most_between is not None:
                least = min(least, most_between)
            lags.append(
                Lag(from_=f"s{number - 1}", to=name, min=least, max=most_between)
            )
    holds = tuple(
        Hold(resource="mould:dome", amount=draw(st.integers(1, 2)), from_=a, to=b)
        for a, b in draw(
            st.lists(
                st.sampled_from(
                    [(steps[at].id, steps[at + 1].id) for at in range(count - 1)]
                ),
                max_size=2,
            )
        )
    )
    opened = draw(st.sampled_from([(0,), (0, 1), (0, 2)]))
    windows = tuple(days(3)["open"][day] for day in opened)
    people = draw(st.sampled_from([(), (Person(name="Mirel"),)]))
    due = draw(st.sampled_from([900, CLOSE, DAY + 700, 2 * DAY + CLOSE]))
    return problem(
        *steps,
        calendars={"open": windows},
        orders=(Order(id="o", due=due),),
        resources=(
            Resource(name="tool:mixer", capacity=1),
            Resource(name="mould:dome", capacity=2),
        ),
        lags=tuple(lags),
        holds=holds,
        people=people,
    )


@settings(deadline=None, max_examples=150)
@given(asked=kitchens())
def test_where_a_limit_is_seen_the_solver_finds_no_plan(asked: Problem) -> None:
    found: tuple[Limit, ...] = first_look(asked)
    if found:
        assert solve(asked, seconds=3, wishes=()).status == "infeasible", found


def test_the_demo_has_no_limit() -> None:
    folder = demo_folder()
    makings = makings_of(folder, NOW)
    arrivals = arrivals_of(
        needs_of_all(makings, folder, find_in(folder.larder)), folder.kitchen, NOW
    )
    laid = lay_out(
        folder.kitchen,
        [to_make(making, arrivals[making.order.key]) for making in makings],
        NOW,
    )
    assert first_look(laid.problem) == ()
