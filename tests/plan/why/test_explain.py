"""What cannot all be kept, and what makes room: small weeks worked out by hand."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from demould.plan.answer.schedule import Conflict
from demould.plan.judge.check import check
from demould.plan.problem.steps import (
    Hold,
    Lag,
    Order,
    Person,
    Problem,
    Resource,
    Step,
    Window,
    exactly,
)
from demould.plan.solve.search import solve
from demould.plan.why.conflict import conflict_of
from demould.plan.why.explain import explain, told
from demould.plan.why.mend import changed, mends
from demould.plan.why.subset import members_of, only

DAY = 24 * 60


def order_of(name: str, due: int) -> tuple[Order, tuple[Step, ...], Lag, Hold]:
    """Fill 30 min, freeze 12 h, demould 15 min: one mould from filling to demoulding."""
    fill, demould = (
        Step(
            id=f"{name}.{what}",
            order=(name,),
            label=what,
            duration=exactly(length),
            attended="all",
            calendar="open",
        )
        for what, length in (("fill", 30), ("demould", 15))
    )
    freeze = Lag(
        from_=fill.id, to=demould.id, min=720, why=f"{name} freezes in the upright"
    )
    tied = Hold(resource="mould:pebble", amount=2, from_=fill.id, to=demould.id)
    return Order(id=name, due=due), (fill, demould), freeze, tied


def two_orders(moulds: int = 3, days: int = 2) -> Problem:
    """Two orders due at 17:00 on the last day, two moulds each, open 8:00 to 17:00."""
    due = (days - 1) * DAY + 17 * 60
    laid = [order_of(name, due) for name in ("domes", "pebbles")]
    return Problem(
        id="two",
        origin="2026-11-17T00:00",
        horizon=days * DAY,
        calendars={
            "open": tuple(
                Window(open=day * DAY + 480, close=day * DAY + 1020)
                for day in range(days)
            )
        },
        resources=(Resource(name="mould:pebble", capacity=moulds),),
        orders=tuple(one[0] for one in laid),
        steps=tuple(step for one in laid for step in one[1]),
        lags=tuple(one[2] for one in laid),
        holds=tuple(one[3] for one in laid),
        people=(Person(name="Mirel", calendar="open"),),
    )


def test_one_night_and_three_moulds_are_not_enough_for_two_of_two_worked_by_hand() -> (
    None
):
    """Over one night each mould freezes once: 2 + 2 moulds are needed, there are 3."""
    why = explain(two_orders())
    assert why.text == (
        "domes and pebbles cannot all be kept: there are 3 pebble moulds; open hours;"
        " domes freezes in the upright (at least 12 h)"
    )
    assert why.conflict == (
        Conflict(kind="order", id="domes", text="domes is due Wed 17:00"),
        Conflict(kind="order", id="pebbles", text="pebbles is due Wed 17:00"),
        Conflict(kind="resource", id="mould:pebble", text="there are 3 pebble moulds"),
        Conflict(kind="calendar", id="open", text="open hours"),
        Conflict(
            kind="lag",
            id="domes.fill -> domes.demould",
            text="domes freezes in the upright (at least 12 h)",
        ),
        Conflict(
            kind="lag",
            id="pebbles.fill -> pebbles.demould",
            text="pebbles freezes in the upright (at least 12 h)",
        ),
    )


def test_without_any_one_member_there_is_a_plan() -> None:
    problem = two_orders()
    conflict, sure = conflict_of(problem, seconds=2)
    assert sure
    assert solve(only(problem, frozenset(conflict)), seconds=1).status == "infeasible"
    for member in conflict:
        fewer = only(problem, frozenset(conflict) - {member})
        plan = solve(fewer, seconds=1, wishes=())
        assert plan.status == "optimal", member
        assert check(fewer, plan) == (), member


def test_one_more_mould_makes_room_and_is_said_first_worked_by_hand() -> None:
    """Four moulds hold both; a longer day does not, 12 h from 8:30 end at 20:30.

    Open until 20:00 on the first day the first is filled by 8:30 and free by 20:45: no.
    Opening at 5:00 it is filled by 5:30 and demoulded by 17:45: no window yet.
    """
    problem = two_orders()
    conflict, _ = conflict_of(problem, seconds=2)
    found = mends(problem, conflict, seconds=4)
    assert [mend.text for mend in found] == [
        "1 more pebble mould",
        "without domes",
        "without pebbles",
    ]
    for mend in found:
        assert check(mend.problem, mend.plan) == ()
        (change,) = mend.changes
        assert changed(problem, change) == mend.problem


def test_a_third_day_is_a_plan_and_nothing_is_in_the_way() -> None:
    assert explain(two_orders(days=3)).text == (
        "there is a plan: nothing is in the way"
    )


def test_a_wait_alone_can_be_in_the_way_worked_by_hand() -> None:
    """One order on one day of 9 h: 12 h of freezing has no room, with any moulds."""
    why = explain(two_orders(moulds=9, days=1))
    assert [(one.kind, one.id) for one in why.conflict] == [
        ("order", "domes"),
        ("calendar", "open"),
        ("lag", "domes.fill -> domes.demould"),
    ]


def test_a_published_case_names_only_what_it_needs(
    case: Callable[[str], Problem],
) -> None:
    problem = case("inf-small-closed-morning.json")
    conflict, sure = conflict_of(problem, seconds=2)
    assert sure
    for member in conflict:
        fewer = only(problem, frozenset(conflict) - {member})
        assert solve(fewer, seconds=1, wishes=()).status == "optimal", member


def test_hands_let_go_are_there_in_plenty() -> None:
    problem = replace(two_orders(moulds=4), people=())
    steps = tuple(replace(step, hands=None) for step in problem.steps)
    with_people = replace(problem, steps=steps, people=(Person(name="Mirel"),))
    kept = frozenset(
        member for member in members_of(with_people) if member.id != "people"
    )
    assert only(with_people, kept).people == ()


def test_a_change_nobody_knows_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^no change is called 'wish'$"):
        changed(two_orders(), {"op": "wish"})


def test_an_order_taken_out_takes_its_steps_and_waits_with_it() -> None:
    less = changed(two_orders(), {"op": "drop_order", "order": "domes"})
    assert [one.id for one in less.orders] == ["pebbles"]
    assert {step.order for step in less.steps} == {("pebbles",)}
    assert len(less.lags) == len(less.holds) == 1


def test_a_longer_day_joins_the_hours_it_touches() -> None:
    change = {"op": "extend_window", "calendar": "open", "from": 1020, "to": 1080}
    longer = changed(two_orders(), change)
    assert longer.calendars["open"][0] == Window(open=480, close=1080)


def test_a_later_due_time_moves_only_that_order() -> None:
    later = changed(two_orders(), {"op": "move_due", "order": "domes", "minutes": 60})
    assert [one.due for one in later.orders] == [DAY + 1080, DAY + 1020]


def test_tools_cold_and_people_are_named_as_a_cook_names_them() -> None:
    problem = replace(
        two_orders(moulds=1),
        resources=(
            Resource(name="mould:pebble", capacity=1),
            Resource(name="tool:mixer", capacity=1),
            Resource(name="cold:blast", capacity=5000),
            Resource(name="shelf:freezer", capacity=6),
            Resource(name="cooks", capacity=2),
        ),
    )
    limits = [one for one in members_of(problem) if one.kind == "resource"]
    assert [told(problem, limit) for limit in limits] == [
        "there is 1 pebble mould",
        "there is 1 mixer",
        "the blast takes 5000 g at once",
        "the freezer has 6 shelf places",
        "there is 2 of cooks",
        "the hands of Mirel",
    ]


def test_a_longest_wait_says_at_most() -> None:
    problem = two_orders()
    soon = Lag(from_="domes.fill", to="domes.demould", min=None, max=45)
    problem = replace(problem, lags=(soon,))
    (lag,) = (one for one in members_of(problem) if one.kind == "lag")
    assert told(problem, lag) == "domes.demould after domes.fill (at most 45 min)"


def test_waits_in_a_ring_are_told_by_the_names_of_their_steps() -> None:
    steps = tuple(
        Step(id=name, order=("o",), duration=exactly(10)) for name in ("mix", "bake")
    )
    asked = Problem(
        id="ring",
        origin="2026-03-02T00:00",
        horizon=1000,
        orders=(Order(id="o", due=900),),
        steps=steps,
        lags=(Lag(from_="mix", to="bake"), Lag(from_="bake", to="mix", min=5)),
    )
    told = explain(asked, seconds=5)
    assert told.text.endswith(
        "; bake and mix wait for each other in a ring, so none can begin"
    )
    assert [one.kind for one in told.conflict] == ["order", "lag", "lag"]
