from dataclasses import replace

from demould.plan.answer.schedule import (
    Objective,
    Planned,
    attended_parts,
    objective_of,
    road_taken,
    spare,
)
from demould.plan.problem.steps import (
    Lag,
    Order,
    Problem,
    Road,
    Span,
    Step,
    Window,
    exactly,
)

FREEZE = Step(
    id="freeze",
    either=(
        Road(name="blast", duration=exactly(150)),
        Road(name="freezer", duration=Span(min=720, max=None)),
    ),
    margin=50,
)
WEEK = Problem(
    id="week",
    origin="2026-03-02T00:00",
    horizon=3000,
    calendars={
        "kitchen": (
            Window(open=0, close=60),
            Window(open=900, close=990, overtime=True),
        )
    },
    orders=(Order(id="o", due=985, soft_due=True), Order(id="p", due=2000)),
    steps=(
        FREEZE,
        Step(
            id="bake",
            order=("o", "p"),
            duration=exactly(40),
            attended="ends",
            attend_start=5,
            attend_end=10,
            calendar="kitchen",
            fresh=3,
        ),
    ),
    lags=(Lag(from_="freeze", to="bake", min=20),),
)
DONE = {
    "freeze": Planned(id="freeze", start=200, end=940, took="freezer"),
    "bake": Planned(id="bake", start=950, end=990),
}


def test_costs_are_those_worked_out_by_hand() -> None:
    # 5 min late against 985; 30 spare (950 - 20 - 200 - 720 = 10) asked 50; one window,
    # both ends in it, 15 min; 3 x (985 - 950).
    assert objective_of(WEEK, DONE.values()) == Objective(
        late_orders=1,
        tardiness=5,
        margins_missed=40,
        sessions=1,
        overtime=15,
        freshness=105,
    )


def test_spare_time_runs_to_whatever_would_have_to_move_first() -> None:
    assert spare(WEEK, FREEZE, DONE) == 10
    quick = {**DONE, "freeze": replace(DONE["freeze"], took="blast")}
    assert spare(WEEK, FREEZE, quick) == 580
    assert spare(WEEK, replace(FREEZE, latest_end=600), quick) == 250
    assert spare(WEEK, replace(FREEZE, order=("p",)), quick) == 580
    due = replace(WEEK, lags=(Lag(from_="freeze", to="due:p", min=600),))
    assert spare(due, FREEZE, quick) == 1050
    alone = replace(WEEK, lags=())
    assert spare(alone, FREEZE, quick) == 2650
    late = {**DONE, "freeze": replace(DONE["freeze"], start=900)}
    assert spare(WEEK, FREEZE, late) == 0


def test_a_road_the_step_does_not_have_is_none() -> None:
    assert road_taken(FREEZE, replace(DONE["freeze"], took="sea")) is None
    assert road_taken(FREEZE, DONE["freeze"]) == FREEZE.either[1]


def test_somebody_is_there_for_all_of_it_for_the_ends_or_not_at_all() -> None:
    bake = WEEK.steps[1]
    place = Planned(id="bake", start=100, end=140)
    assert attended_parts(bake, place) == ((100, 105), (130, 140))
    assert attended_parts(replace(bake, attend_end=0), place) == ((100, 105),)
    assert attended_parts(replace(bake, attended="none"), place) == ()
    whole = replace(bake, attended="all")
    assert attended_parts(whole, place) == ((100, 140),)
    sittings = ((100, 120), (130, 140))
    assert attended_parts(whole, replace(place, segments=sittings)) == sittings
