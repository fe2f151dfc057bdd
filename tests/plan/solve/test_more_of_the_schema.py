"""Changeovers, sittings, facts and agreed plans, each small enough to work out by hand."""

from dataclasses import replace

import pytest

from demould.plan.answer.schedule import Planned, Schedule
from demould.plan.judge.check import check
from demould.plan.problem.steps import (
    Changeover,
    Fact,
    Hold,
    Lag,
    Order,
    Other,
    Problem,
    Resource,
    Span,
    Step,
    Window,
    exactly,
)
from demould.plan.solve.search import solve

HOURS = {"kitchen": (Window(open=60, close=100), Window(open=200, close=240))}


def problem(*steps: Step, **rest: object) -> Problem:
    plain = Problem(
        id="tiny", origin="2026-03-02T00:00", horizon=400, calendars=HOURS, steps=steps
    )
    return replace(plain, **rest)  # type: ignore[arg-type]


def whip(name: str, family: str, **rest: object) -> Step:
    plain = Step(id=name, duration=exactly(10), uses={"mixer": 1}, family=family)
    return replace(plain, **rest)  # type: ignore[arg-type]


def planned(asked: Problem) -> dict[str, Planned]:
    found = solve(asked, seconds=5, workers=1)
    assert found.status == "optimal"
    assert check(asked, found) == ()
    for wish, bound in found.bound.items():
        assert getattr(found.objective, wish) == bound
    return {place.id: place for place in found.steps}


MIXER = (Resource(name="mixer", capacity=1),)
NUTS = Changeover(resource="mixer", minutes=5, matrix={"nuts": {"plain": 30}})


# Three whips of 10 min. Plain before nuts costs 5, nuts before plain 30: the two plain
# ones come first, 10 + 10 + 5 + 10 = 35. The other way round it would be 60.
def test_allergens_come_last_where_cleaning_after_them_is_long() -> None:
    steps = (whip("a", "nuts"), whip("b", "plain"), whip("c", "plain"))
    asked = problem(*steps, resources=MIXER, changeovers=(NUTS,), horizon=35)
    places = planned(asked)
    assert places["a"].start == 25
    assert solve(replace(asked, horizon=34), seconds=5).status == "infeasible"


# Straight from x to z takes 50; through y 5 + 10 + 5 = 20. Only who follows whom counts,
# so x, y, z end at 10 + 5 + 10 + 5 + 10 = 40.
def test_a_third_user_between_two_may_be_the_quicker_way() -> None:
    rows = {"x": {"y": 5, "z": 50}, "y": {"x": 50, "z": 5}, "z": {"x": 50, "y": 50}}
    asked = problem(
        whip("a", "x"),
        whip("b", "y"),
        whip("c", "z"),
        resources=MIXER,
        changeovers=(Changeover(resource="mixer", matrix=rows),),
        horizon=40,
    )
    starts = {name: place.start for name, place in planned(asked).items()}
    assert starts == {"a": 0, "b": 15, "c": 30}
    assert solve(replace(asked, horizon=39), seconds=5).status == "infeasible"


# 60 min of trimming, 40 a window: whole it fits none, in two sittings both.
def test_long_work_is_taken_up_again_after_the_door_was_closed() -> None:
    trim = Step(
        id="trim",
        duration=exactly(60),
        attended="all",
        calendar="kitchen",
        interruptible=True,
        attend_uses={"hands": 1},
        uses={"table": 1},
    )
    room = (Resource(name="hands", capacity=1), Resource(name="table", capacity=1))
    asked = problem(trim, resources=room)
    place = planned(asked)["trim"]
    assert sum(until - begin for begin, until in place.segments) == 60
    assert len(place.segments) == 2
    assert place.segments[0][1] <= 100
    assert place.segments[1][0] >= 200
    # What it uses stays taken in between, hands do not.
    wipe = Step(id="wipe", duration=exactly(95), uses={"table": 1})
    knead = Step(
        id="knead", duration=exactly(95), attended="all", attend_uses={"hands": 1}
    )
    tight = replace(asked, horizon=240)
    assert solve(replace(tight, steps=(trim, wipe)), seconds=5).status == "infeasible"
    assert len(planned(replace(tight, steps=(trim, knead)))) == 2
    whole = replace(trim, interruptible=False)
    assert solve(problem(whole, resources=room), seconds=5).status == "infeasible"


def bake(**rest: object) -> Step:
    plain = Step(id="bake", duration=exactly(50), uses={"oven": 1}, order=("o",))
    return replace(plain, **rest)  # type: ignore[arg-type]


# The first tray went in at 20 and is out at 70; the second follows it.
def test_a_running_step_keeps_its_start_and_the_rest_comes_after_now() -> None:
    again = bake(id="again")
    asked = problem(
        bake(),
        again,
        orders=(Order(id="o", due=300),),
        resources=(Resource(name="oven", capacity=1),),
        now=40,
        done={"bake": Fact(start=20)},
    )
    places = planned(asked)
    assert (places["bake"].start, places["bake"].end) == (20, 70)
    assert places["again"].start == 70
    free = replace(asked, resources=(Resource(name="oven", capacity=2),))
    assert planned(free)["again"].start == 40


# 50 min were planned and 75 have gone by: it cannot be over before now.
def test_a_step_that_overran_is_over_now_at_the_earliest() -> None:
    asked = problem(
        bake(),
        bake(id="cut", duration=exactly(5), uses={}),
        orders=(Order(id="o", due=300),),
        resources=(Resource(name="oven", capacity=1),),
        lags=(Lag(from_="bake", to="cut"),),
        now=95,
        done={"bake": Fact(start=20)},
    )
    places = planned(asked)
    assert places["bake"].end == 95
    assert places["cut"].start == 95


# The wait of at most 10 between two facts was not kept; nobody can help that now. The
# one from a fact to what is open still has to be.
def test_what_is_past_is_not_judged_and_what_follows_is() -> None:
    steps = (bake(uses={}), bake(id="cool", uses={}), bake(id="cut", uses={}))
    asked = problem(
        *steps,
        orders=(Order(id="o", due=300),),
        lags=(
            Lag(from_="bake", to="cool", max=10),
            Lag(from_="cool", to="cut", max=20),
        ),
        now=150,
        done={"bake": Fact(start=0, end=50), "cool": Fact(start=90, end=140)},
    )
    assert planned(asked)["cut"].start == 150
    late = replace(asked, now=161)
    found = solve(late, seconds=5)
    assert found.status == "infeasible"
    assert found.explain is not None
    assert "cut" in found.explain.text


# Two ovens were working when one broke, at now: what is in it stays, nothing new goes in
# until the first is empty at 60.
def test_work_in_progress_is_not_thrown_out_of_a_broken_oven() -> None:
    steps = (bake(), bake(id="other"), bake(id="third"))
    asked = problem(
        *steps,
        orders=(Order(id="o", due=300),),
        resources=(
            Resource(
                name="oven", capacity=2, profile=(Other(start=30, end=400, capacity=1),)
            ),
        ),
        now=30,
        done={"bake": Fact(start=10), "other": Fact(start=20)},
    )
    assert planned(asked)["third"].start == 70


# Filled at 0, demouldable from 120 on; the mould is tied since then.
def test_a_mould_filled_before_now_is_tied_until_it_is_demoulded() -> None:
    fill = Step(id="fill", duration=exactly(20))
    out = Step(id="out", duration=exactly(10))
    fill2 = Step(id="fill2", duration=exactly(20))
    asked = problem(
        fill,
        out,
        fill2,
        resources=(Resource(name="mould", capacity=1),),
        lags=(Lag(from_="fill", to="out", min=100),),
        holds=(
            Hold(resource="mould", amount=1, from_="fill", to="out"),
            Hold(resource="mould", amount=1, from_="fill2", to="fill2"),
        ),
        now=50,
        done={"fill": Fact(start=0, end=20)},
    )
    places = planned(asked)
    assert places["out"].start == 120
    assert places["fill2"].start == 130


# a, b, c one after the other on one table; a is 15 late. Moving b and c both is needed,
# since b was to begin when a ended; d elsewhere stays though it would be fresher later.
def test_as_few_steps_as_can_be_leave_their_agreed_minute() -> None:
    table = {"table": 1}
    steps = (
        Step(id="a", duration=exactly(20), uses=table, order=("o",)),
        Step(id="b", duration=exactly(20), uses=table, order=("o",)),
        Step(id="c", duration=exactly(20), uses=table, order=("o",)),
        Step(id="d", duration=exactly(20), order=("o",), fresh=5),
    )
    asked = problem(
        *steps,
        orders=(Order(id="o", due=300),),
        resources=(Resource(name="table", capacity=1),),
        now=15,
        done={"a": Fact(start=15)},
        previous={
            "a": Fact(start=0, end=20),
            "b": Fact(start=20, end=40),
            "c": Fact(start=60, end=80),
            "d": Fact(start=100, end=120),
        },
    )
    found = solve(asked, seconds=5, workers=1)
    assert check(asked, found) == ()
    assert found.status == "optimal"
    assert found.moved == ("b",)
    assert found.bound["moved"] == 1
    lied = replace(found, moved=())
    assert [one.rule for one in check(asked, lied)] == ["objective"]


@pytest.mark.parametrize(
    ("place", "rule"),
    [
        (
            Planned(id="trim", start=60, end=220, segments=((60, 100), (200, 215))),
            "segments",
        ),
        (
            Planned(id="trim", start=60, end=215, segments=((60, 100), (200, 215))),
            "duration",
        ),
        (
            Planned(id="trim", start=70, end=230, segments=((70, 110), (210, 230))),
            "hours",
        ),
        (
            Planned(
                id="trim", start=60, end=220, segments=((60, 60), (60, 100), (200, 220))
            ),
            "segments",
        ),
    ],
)
def test_the_judge_sees_sittings_that_are_none(place: Planned, rule: str) -> None:
    trim = Step(
        id="trim",
        duration=exactly(60),
        attended="all",
        calendar="kitchen",
        interruptible=True,
    )
    asked = problem(trim)
    schedule = Schedule(problem="tiny", status="feasible", steps=(place,))
    assert rule in [one.rule for one in check(asked, schedule)]


def test_the_judge_sees_a_changeover_that_is_too_short() -> None:
    asked = problem(
        whip("a", "nuts"), whip("b", "plain"), resources=MIXER, changeovers=(NUTS,)
    )
    steps = (Planned(id="a", start=0, end=10), Planned(id="b", start=39, end=49))
    schedule = Schedule(problem="tiny", status="feasible", steps=steps)
    assert [one.text for one in check(asked, schedule)] == [
        "mixer needs 30 min between a and b, and has 29 min, Mon 00:10"
    ]


def test_a_blast_may_run_on_until_somebody_is_there() -> None:
    freeze = Step(id="freeze", duration=Span(min=30, max=150), earliest=70)
    out = Step(id="out", duration=exactly(5), attended="all", calendar="kitchen")
    asked = problem(freeze, out, lags=(Lag(from_="freeze", to="out", max=0),))
    places = planned(asked)
    assert (
        places["freeze"].end == places["out"].start >= 200 or places["out"].end <= 100
    )
