"""Two orders of one dessert: what is made once for both, and what is already frozen."""

from dataclasses import replace
from datetime import date, datetime, time, timedelta

from demould.demo import NOW
from demould.mise.kitchen import Away, Opening
from demould.plan.judge.check import check
from demould.plan.kitchen.clock import midnight_of, minutes_since, moment_at
from demould.plan.kitchen.from_kitchen import lay_out
from demould.plan.kitchen.parts import ToMake
from demould.plan.kitchen.shared import shared_batches
from demould.plan.problem.steps import Step, Window
from demould.plan.solve.search import solve
from tests.demo_folder import demo_folder
from tests.plan.kitchen.test_from_kitchen import wanted

KITCHEN = demo_folder().kitchen
DINNER = next(one for one in wanted() if one.order.dessert == "river-pebble")


def second(later: timedelta, pieces: int = 8) -> ToMake:
    """Another order of pebbles, due so much later than the dinner."""
    due = DINNER.order.due + later
    order = replace(DINNER.order, key="lunch", due=due, pieces=pieces)
    return replace(
        DINNER,
        order=order,
        pieces=pieces,
        rounds=(pieces,),
        own_rounds={"centre": (pieces,)},
        counts=dict.fromkeys(DINNER.counts, pieces),
    )


def test_centre_base_and_ganache_are_made_once_for_two_orders_worked_by_hand() -> None:
    """Due 4 h apart: 14 d and 36 h reach, the dip is used up at once."""
    batches = shared_batches(KITCHEN, (DINNER, second(timedelta(hours=4))))
    assert set(batches["lunch"]) == {"ganache", "centre", "base", "sauce"}
    assert batches["lunch"] == batches["saturday dinner"]
    assert batches["lunch"]["centre"].pieces == 27 + 8


def test_a_ganache_that_does_not_hold_so_long_is_made_twice_worked_by_hand() -> None:
    """It rests 12 h and holds 48 h: 36 h are left for what is due later."""
    just, over = timedelta(hours=36), timedelta(hours=36, minutes=1)
    assert "ganache" in shared_batches(KITCHEN, (DINNER, second(just)))["lunch"]
    assert "ganache" not in shared_batches(KITCHEN, (DINNER, second(over)))["lunch"]


def test_centres_that_do_not_fit_into_their_moulds_at_once_are_made_apart() -> None:
    """2 x 24 cavities: 27 + 21 are one filling, 27 + 22 are not."""
    few, many = (second(timedelta(hours=4), pieces) for pieces in (21, 22))
    assert "centre" in shared_batches(KITCHEN, (DINNER, few))["lunch"]
    assert "centre" not in shared_batches(KITCHEN, (DINNER, many))["lunch"]


def test_a_shared_plan_has_one_ganache_for_both_and_the_judge_agrees() -> None:
    laid = lay_out(KITCHEN, (DINNER, second(timedelta(hours=1))), NOW)
    rests = [step for step in laid.problem.steps if step.id.endswith("ganache.0.rest")]
    assert [step.order for step in rests] == [("saturday dinner", "lunch")]
    assert laid.parts[rests[0].id].pieces == 35
    schedule = solve(laid.problem, seconds=4, wishes=())
    assert schedule.steps
    assert check(laid.problem, schedule) == ()


def test_unshared_every_order_makes_its_own() -> None:
    laid = lay_out(KITCHEN, (DINNER, second(timedelta(hours=1))), NOW, share=False)
    assert sum(one.id.endswith("ganache.0.rest") for one in laid.problem.steps) == 2


def test_what_is_frozen_is_not_made_again() -> None:
    """12 whole ones: a round of 15, no second; all centres: none cooked."""
    make = replace(
        DINNER, rounds=(15,), counts={"centre": 0, "base": 15, "ganache": 15}
    )
    steps = {step.id for step in lay_out(KITCHEN, (make,), NOW).problem.steps}
    assert not any(".centre." in name for name in steps)
    assert not any(".piece.2." in name for name in steps)
    dip = next(
        part
        for part in lay_out(KITCHEN, (make,), NOW).parts.values()
        if part.step.key == "dip" and part.component is None
    )
    assert dip.pieces == 27


def test_the_jug_is_tied_from_melting_to_the_last_dip() -> None:
    make = replace(DINNER, jug=("dip", 100.0))
    holds = lay_out(KITCHEN, (make,), NOW).problem.holds
    (jug,) = (hold for hold in holds if hold.resource == "jug:100 mm")
    assert jug.from_.endswith("dip.0.melt")
    assert jug.to.endswith("piece.0.dip")


def absent(*away: Away) -> tuple[Step, tuple[Window, ...]]:
    mirel, jonne = KITCHEN.people
    kitchen = replace(KITCHEN, people=(mirel, replace(jonne, away=away)))
    problem = lay_out(kitchen, (DINNER,), NOW).problem
    fill = next(one for one in problem.steps if one.id.endswith("piece.1.fill"))
    return fill, problem.calendars["hours of Jonne"]


def test_somebody_away_has_hours_of_their_own_worked_by_hand() -> None:
    """Away on Thursday from 12:00 to 13:30, open from 8:00 to 17:00."""
    away = Away(day=date(2026, 11, 19), from_=time(12), to=time(13, 30))
    thursday = 2 * 24 * 60
    _, hours = absent(away)
    assert [w for w in hours if thursday <= w.open < thursday + 1440] == [
        Window(open=thursday + 480, close=thursday + 720),
        Window(open=thursday + 810, close=thursday + 1020),
    ]


def test_all_hands_are_those_that_are_there_worked_by_hand() -> None:
    """24 x 1.5 min: 18 min for two, 36 for one, who can do it alone that day."""
    fill, _ = absent(Away(day=date(2026, 11, 19)))
    assert [(road.hands, road.duration.min) for road in fill.either] == [
        (2, 18),
        (1, 36),
    ]


def test_a_person_away_always_leaves_what_the_other_can_do_worked_by_hand() -> None:
    """Piped within 45 min at 1.5 min a piece: one pair of hands does 30, never 31."""
    days = [date(2026, 11, 17) + timedelta(days=n) for n in range(6)]
    mirel, jonne = KITCHEN.people
    gone = replace(jonne, away=tuple(Away(day=day) for day in days))
    moulds = tuple(
        replace(one, trays=4) if one.key == "pebble" else one for one in KITCHEN.moulds
    )
    kitchen = replace(KITCHEN, people=(mirel, gone), moulds=moulds)

    def in_one_round(pieces: int) -> ToMake:
        counts = dict.fromkeys(DINNER.counts, pieces)
        own = {"centre": (pieces,)}
        return replace(
            DINNER, pieces=pieces, rounds=(pieces,), own_rounds=own, counts=counts
        )

    many = lay_out(kitchen, (in_one_round(31),), NOW).problem
    assert solve(many).status == "infeasible"
    problem = lay_out(kitchen, (in_one_round(30),), NOW).problem
    assert problem.calendars["hours of Jonne"] == ()
    schedule = solve(problem, seconds=6, wishes=())
    assert check(problem, schedule) == ()
    assert {name for step in schedule.steps for name in step.who} == {"Mirel"}


def test_overtime_is_marked_in_the_hours() -> None:
    early = Opening(weekdays=(5,), opens=time(8), closes=time(10), overtime=True)
    kitchen = replace(KITCHEN, openings=(*KITCHEN.openings, early))
    hours = lay_out(kitchen, (DINNER,), NOW).problem.calendars["open"]
    assert [window.close - window.open for window in hours if window.overtime] == [120]


def test_a_rest_over_the_night_the_clocks_go_back_is_12_real_hours() -> None:
    """Sun 2026-10-25, 02:00 comes twice: in at 20:00, out at 07:00 by the clock."""
    evening = datetime(2026, 10, 24, 20, tzinfo=NOW.tzinfo)
    origin = midnight_of(evening, KITCHEN.zone)
    out = moment_at(origin, minutes_since(origin, evening) + 720)
    assert f"{out:%a %H:%M}" == "Sun 07:00"
    opens = datetime(2026, 10, 25, 8, tzinfo=NOW.tzinfo)
    assert minutes_since(origin, opens) - minutes_since(origin, evening) == 13 * 60


def test_a_skill_goes_with_the_step_and_the_people() -> None:
    mirel, jonne = KITCHEN.people
    kitchen = replace(KITCHEN, people=(replace(mirel, can=("temper",)), jonne))
    method = tuple(
        replace(step, skill="temper") if step.key == "dip" else step
        for step in DINNER.dessert.method
    )
    make = replace(DINNER, dessert=replace(DINNER.dessert, method=method))
    problem = lay_out(kitchen, (make,), NOW).problem
    dip = next(one for one in problem.steps if one.id.endswith("piece.0.dip"))
    assert dip.skill == "temper"
    assert [sorted(one.skills) for one in problem.people] == [["temper"], []]
