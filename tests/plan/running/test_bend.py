"""A plan that runs late, worked off by hand; and never better than it was planned."""

from collections.abc import Mapping
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from demould.plan.answer.schedule import Planned
from demould.plan.problem.steps import (
    Hold,
    Lag,
    Order,
    Person,
    Problem,
    Resource,
    Span,
    Step,
    Window,
    exactly,
)
from demould.plan.running.bend import Bends
from demould.plan.running.follow import After, afters
from demould.plan.running.sampled import Breaks, Spread, sampled, together

DAY = 1440
HOURS = {
    "open": tuple(
        Window(open=day * DAY + 480, close=day * DAY + 1020) for day in (0, 1)
    )
}


def hands(name: str, minutes: int, **rest: object) -> Step:
    plain = Step(
        id=name,
        order=("o",),
        duration=exactly(minutes),
        attended="all",
        calendar="open",
    )
    return replace(plain, **rest)  # type: ignore[arg-type]


def week(**rest: object) -> Problem:
    """Whip 5 min, fill 20 within 30 of the whip, freeze 2 h or more, take out, serve."""
    plain = Problem(
        id="tiny",
        origin="2026-03-02T00:00",
        horizon=DAY + 1020,
        calendars=HOURS,
        orders=(Order(id="o", due=DAY + 600),),
        people=(Person(name="Mirel"),),
        resources=(Resource(name="mould:dome", capacity=1),),
        steps=(
            hands("whip", 5),
            hands("fill", 20),
            Step(
                id="freeze",
                order=("o",),
                duration=Span(min=120, max=None),
                attended="ends",
                attend_end=1,
                hands=0,
                calendar="open",
            ),
            hands("serve", 30),
        ),
        lags=(
            Lag(from_="whip", to="fill"),
            Lag(from_="whip", to="fill", to_at="end", min=None, max=30, why="grips"),
            Lag(from_="fill", to="freeze", min=0, max=0),
            Lag(from_="freeze", to="serve"),
        ),
        holds=(Hold(resource="mould:dome", amount=1, from_="fill", to="freeze"),),
    )
    return replace(plain, **rest)  # type: ignore[arg-type]


PLAN = {
    "whip": Planned(id="whip", start=480, end=485, who=("Mirel",)),
    "fill": Planned(id="fill", start=485, end=505, who=("Mirel",)),
    "freeze": Planned(id="freeze", start=505, end=625),
    "serve": Planned(id="serve", start=700, end=730, who=("Mirel",)),
}


def bends(problem: Problem | None = None) -> Bends:
    return Bends(problem or week(), PLAN)


def where(problem: Problem, takes: Mapping[str, int]) -> dict[str, tuple[int, int]]:
    bent = Bends(problem, PLAN).bend(takes)
    return {name: (bent.start[name], bent.end[name]) for name in bent.start}


def test_a_plan_that_keeps_its_minutes_stays_as_it_is() -> None:
    bent = bends().bend({})
    assert {name: (bent.start[name], bent.end[name]) for name in PLAN} == {
        name: (place.start, place.end) for name, place in PLAN.items()
    }
    assert (bent.late, bent.broken, bent.pushed) == ({}, (), {})


# The freeze goes from 8:25; two hours and a half are over at 10:55, 655: 45 min before
# the serving at 11:40, so nothing else moves.
def test_what_takes_longer_moves_only_what_waits_for_it() -> None:
    assert where(week(), {"freeze": 150})["serve"] == (700, 730)
    assert where(week(), {"freeze": 150})["freeze"] == (505, 655)
    assert where(week(), {"freeze": 250})["serve"] == (755, 785)


# 505 + 520 min is 17:05, five minutes after closing: taken out at 8:01 next morning.
def test_what_is_over_after_closing_is_taken_out_in_the_morning() -> None:
    assert where(week(), {"freeze": 520})["freeze"] == (505, DAY + 481)
    assert where(week(), {"freeze": 520})["serve"] == (DAY + 481, DAY + 511)


def test_what_begins_later_is_late_only_past_its_due_time() -> None:
    early = bends().bend({}, {"serve": DAY + 570})
    assert early.late == {}
    late = bends().bend({}, {"serve": DAY + 571})
    assert late.late == {"o": 1}


# Whipping later by 7 min keeps the 30 min to the end of a filling that is held up.
def test_a_hold_is_kept_by_beginning_later_where_that_helps() -> None:
    held = bends().bend({}, {"fill": 502})
    assert held.start["whip"] == 480 + 7
    assert held.end["fill"] - held.end["whip"] == 30
    assert held.broken == ()


# A filling of 31 min cannot be over 30 min after the whip, whenever that is.
def test_a_hold_that_cannot_be_kept_is_named_and_moves_nothing() -> None:
    bent = bends().bend({"fill": 31})
    assert bent.broken == ("fill",)
    assert bent.start["whip"] == 480


def test_the_same_hands_and_the_same_mould_follow_each_other() -> None:
    links = set(afters(week(), PLAN))
    assert After(early=("fill", "end"), late=("serve", "start"), wait=0) in links
    two = week(
        holds=(
            Hold(resource="mould:dome", amount=1, from_="whip", to="fill"),
            Hold(resource="mould:dome", amount=1, from_="serve", to="serve"),
        )
    )
    mould = After(early=("fill", "end"), late=("serve", "start"), wait=0)
    assert mould in set(afters(replace(two, people=()), PLAN))


@settings(deadline=None, max_examples=60)
@given(
    takes=st.fixed_dictionaries(
        {name: st.integers(1, 250) for name in ("whip", "fill", "freeze", "serve")}
    ),
    more=st.sampled_from(["whip", "fill", "freeze", "serve"]),
)
def test_longer_steps_never_end_anything_sooner(
    takes: dict[str, int], more: str
) -> None:
    loose = week(lags=tuple(lag for lag in week().lags if lag.max != 30))
    less = Bends(loose, PLAN).bend(takes)
    longer = Bends(loose, PLAN).bend(takes | {more: takes[more] + 30})
    for name, place in PLAN.items():
        assert longer.end[name] >= less.end[name]
        assert less.start[name] >= place.start


# Serving ends at 10:00 of the second day at the latest. A freeze of 120 to 1000 min, all
# alike (a triangle with its top at one end would not be): it is taken out in open hours,
# at 17:00 at the latest, or from 8:01. Every one of them is served by 8:31 + nothing.
def test_luck_without_consequence_leaves_every_week_standing() -> None:
    spread = Spread(step="freeze", low=120, likely=500, high=1000)
    tally = sampled(bends(), (spread,), (), range(50), seed=1)
    assert (tally.weeks, tally.stood, tally.by_order["o"]) == (50, 50, 50)


# A serving planned at 11:40 of 30 min on a day that is due at 12:10: with a freeze
# between 120 and 270 min, most often 120, it is late past 195: the triangle's tail,
# ((270 - 195) / 150) ** 2 = 1 / 4 (worked by hand). 2000 weeks are within 4 sigma.
def test_the_share_of_weeks_is_the_one_the_triangle_gives() -> None:
    tight = week(orders=(Order(id="o", due=730),))
    spread = Spread(step="freeze", low=120, likely=120, high=270)
    tally = sampled(bends(tight), (spread,), (), range(2000), seed=0)
    failed = 1 - tally.stood / tally.weeks
    sigma = (0.25 * 0.75 / 2000) ** 0.5
    assert failed == pytest.approx(0.25, abs=4 * sigma)
    assert set(tally.decides) == {"freeze"}


# 27 made for 24 at 5 % breakage: enough in 0.956 of all weeks (the binomial law).
def test_breakage_alone_is_the_binomial_law() -> None:
    breaks = Breaks(order="o", made=27, needed=24, low=0.05, likely=0.05, high=0.05)
    tally = sampled(bends(), (), (breaks,), range(2000), seed=0)
    sigma = (0.956 * 0.044 / 2000) ** 0.5
    assert tally.stood / 2000 == pytest.approx(0.956, abs=4 * sigma)
    assert dict(tally.decides) == {"breakage": 2000 - tally.stood}


def test_parts_of_the_weeks_add_up_to_all_of_them_and_a_seed_to_itself() -> None:
    spread = Spread(step="freeze", low=120, likely=300, high=1800)
    whole = sampled(bends(), (spread,), (), range(60), seed=3)
    parts = [
        sampled(bends(), (spread,), (), part, seed=3)
        for part in (range(20), range(20, 60))
    ]
    assert together(parts) == whole
    assert sampled(bends(), (spread,), (), range(60), seed=4) != whole
