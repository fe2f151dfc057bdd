import json
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.plan.problem.problem_json import problem_from_json, problem_to_json
from demould.plan.problem.steps import (
    Fact,
    Lag,
    Order,
    Other,
    Person,
    Problem,
    Resource,
    Road,
    Span,
    Step,
    Window,
    exactly,
)

CASES = Path(__file__).parents[1] / "cases"

# One of everything the schema knows, as plan files write it.
WRITTEN: dict[str, object] = {
    "schema": "demould-plan-problem/1",
    "id": "log",
    "origin": "2026-03-02T00:00",
    "zone": "Europe/Vienna",
    "horizon": 2000,
    "calendars": {"kitchen": [[480, 1020], [1020, 1080, "overtime"]]},
    "resources": {"oven": {"capacity": 2, "profile": [[0, 60, 1]]}},
    "orders": [
        {"id": "log", "due": 1500},
        {"id": "tray", "due": 1600, "soft_due": True},
    ],
    "people": {"Mirel": {"calendar": "kitchen", "skills": ["spray"]}, "Jonne": {}},
    "steps": [
        {
            "id": "bake",
            "order": ["log", "tray"],
            "label": "sponge",
            "duration": [9, None],
            "attended": "ends",
            "attend_start": 2,
            "attend_end": 3,
            "calendar": "kitchen",
            "uses": {"oven": 1},
            "clean": {"oven": 5},
            "earliest": 500,
            "latest_end": 900,
            "fresh": 2,
            "family": "sponge",
            "hands": 1,
            "skill": "spray",
            "margin": 30,
        },
        {
            "id": "freeze",
            "order": "log",
            "either": [
                {"name": "blast", "duration": 150, "uses": {"oven": 1}},
                {"name": "freezer", "duration": [720, 900]},
            ],
        },
        {
            "id": "cut",
            "duration": 10,
            "attended": "all",
            "attend_uses": {"oven": 1},
        },
    ],
    "lags": [
        {"from": "bake", "to": "freeze", "min": 0, "max": None, "why": "cools"},
        {"from": "freeze", "from_at": "start", "to": "due:log", "max": 9},
    ],
    "holds": [{"resource": "oven", "amount": 1, "from": "bake", "to": "cut"}],
    "pieces": 24,
}


def test_everything_written_is_read() -> None:
    problem, faults = problem_from_json(WRITTEN)
    assert faults == []
    assert problem is not None
    assert problem.zone == "Europe/Vienna"
    assert problem.calendars["kitchen"][1] == Window(
        open=1020, close=1080, overtime=True
    )
    assert problem.resources == (
        Resource(
            name="oven", capacity=2, profile=(Other(start=0, end=60, capacity=1),)
        ),
    )
    assert problem.orders[1] == Order(id="tray", due=1600, soft_due=True)
    assert problem.people == (
        Person(name="Mirel", calendar="kitchen", skills=frozenset({"spray"})),
        Person(name="Jonne"),
    )
    bake, freeze, cut = problem.steps
    assert bake == Step(
        id="bake",
        order=("log", "tray"),
        label="sponge",
        duration=Span(min=9, max=None),
        attended="ends",
        attend_start=2,
        attend_end=3,
        calendar="kitchen",
        uses={"oven": 1},
        clean={"oven": 5},
        earliest=500,
        latest_end=900,
        fresh=2,
        family="sponge",
        hands=1,
        skill="spray",
        margin=30,
    )
    assert freeze.either == (
        Road(name="blast", duration=exactly(150), uses={"oven": 1}),
        Road(name="freezer", duration=Span(min=720, max=900)),
    )
    assert (freeze.order, cut.order, cut.duration) == (("log",), (), exactly(10))
    assert problem.lags == (
        Lag(from_="bake", to="freeze", min=0, max=None, why="cools"),
        Lag(from_="freeze", from_at="start", to="due:log", min=None, max=9),
    )
    assert (problem.holds[0].from_at, problem.holds[0].to_at) == ("start", "end")


@pytest.mark.parametrize(
    "name", ["small-2.json", "medium-2.json", "pebbles-and-domes.json"]
)
def test_what_is_written_is_read_back(
    name: str, case: Callable[[str], Problem]
) -> None:
    problem = case(name)
    written = json.loads(json.dumps(problem_to_json(problem)))
    assert problem_from_json(written) == (problem, [])


def test_one_of_everything_is_read_back() -> None:
    problem, _ = problem_from_json(WRITTEN)
    assert problem is not None
    written = json.loads(json.dumps(problem_to_json(problem)))
    assert problem_from_json(written) == (problem, [])


def faults_with(**change: object) -> list[str]:
    problem, faults = problem_from_json({**WRITTEN, **change})
    assert problem is None
    return faults


def faulty_step(**change: object) -> list[str]:
    return faults_with(
        steps=[{"id": "cut", "duration": 1, **change}], lags=[], holds=[]
    )


def test_what_happened_and_what_was_agreed_is_read_back() -> None:
    more = {
        "now": 520,
        "done": {
            "bake": {"start": 500, "end": 515},
            "cut": {"start": 510, "end": None},
        },
        "previous": {
            "steps": [{"id": "freeze", "start": 600, "end": 750, "took": "blast"}]
        },
        "changeovers": [
            {"resource": "mixer", "minutes": 15, "matrix": {"nuts": {"plain": 30}}}
        ],
        "resources": {"oven": {"capacity": 2}, "mixer": {"capacity": 1}},
    }
    problem, faults = problem_from_json({**WRITTEN, **more})
    assert faults == []
    assert problem is not None
    assert problem.done["cut"] == Fact(start=510)
    assert problem.previous["freeze"] == Fact(start=600, end=750, took="blast")
    assert problem.changeovers[0].matrix == {"nuts": {"plain": 30}}
    written = json.loads(json.dumps(problem_to_json(problem)))
    assert problem_from_json(written) == (problem, [])


@pytest.mark.parametrize(
    ("change", "fault"),
    [
        (
            {"origin": "Monday"},
            "origin 'Monday' is no date and time; write the local midnight all minutes"
            " are counted from, as 2026-03-02T00:00",
        ),
        (
            {"zone": "Brackmoor"},
            "no zone is called 'Brackmoor'; write one as Europe/Rome",
        ),
        (
            {"done": {"bake": {"start": 5, "end": 9}}},
            "something is done, but 'now' is not there; say at which minute it is now",
        ),
        (
            {"now": 600, "done": {"bake": {"start": 590, "end": 610}}},
            "done 'bake': it was over at 610, and now it is only 600; leave the end out"
            " while it is running",
        ),
        (
            {"now": 9, "done": {"trim": {"start": 5}}},
            "done 'trim': no step is called 'trim'",
        ),
        (
            {"changeovers": [{"resource": "oven"}]},
            "changeover of 'oven': there are 2 of it; one is changed over between users"
            " only where there is one of it",
        ),
        (
            {"horizon": 10**10},
            "horizon: 10000000000 is past all counting; at most 1000000000 can be"
            " planned with",
        ),
    ],
)
def test_what_can_not_have_been_meant_is_told(
    change: dict[str, object], fault: str
) -> None:
    assert fault in faults_with(**change)


def test_every_fault_is_told_with_its_place() -> None:
    assert faults_with(schema="x", id=5, horizon=1.5, orders=[7], lags="no") == [
        "schema: must be 'demould-plan-problem/1', not 'x'",
        "id: must be a text, not 5",
        "horizon: must be a whole number, not 1.5",
        "orders[0]: must be an object, not 7",
        "lags: must be a list, not 'no'",
    ]


@pytest.mark.parametrize(
    ("change", "fault"),
    [
        (
            {"interruptible": True},
            "step 'cut': it is interrupted where a window closes, so it must be"
            " attended all the time and have a calendar",
        ),
        (
            {"interruptible": "yes"},
            "steps[0].interruptible: must be true or false, not 'yes'",
        ),
        (
            {"duration": -1},
            "steps[0].duration: must be whole minutes, or [min, max], not -1",
        ),
        (
            {"duration": True},
            "steps[0].duration: must be whole minutes, or [min, max], not True",
        ),
        (
            {"duration": [5, 4]},
            "steps[0].duration: must be whole minutes, or [min, max], not [5, 4]",
        ),
        (
            {"duration": [-5, None]},
            "steps[0].duration: must be whole minutes, or [min, max], not [-5, None]",
        ),
        (
            {"attended": "some"},
            "steps[0].attended: must be one of all, ends, none, not 'some'",
        ),
        (
            {"order": 5},
            "steps[0].order: must be a text or a list of texts, not 5",
        ),
        (
            {"order": ["log", 5]},
            "steps[0].order: must be a text or a list of texts, not ['log', 5]",
        ),
        ({"margin": True}, "steps[0].margin: must be a whole number, not True"),
        (
            {"uses": {"oven": "one"}},
            "steps[0].uses.oven: must be a whole number, not 'one'",
        ),
        (
            {"uses": 5},
            "steps[0].uses: must be an object of names and values, not 5",
        ),
        ({"label": 5}, "steps[0].label: must be a text, not 5"),
        ({"hands": "two"}, "steps[0].hands: must be a whole number, not 'two'"),
        ({"calendar": "nights"}, "step 'cut': no calendar is called 'nights'"),
    ],
)
def test_a_faulty_step_is_told_where_it_stands(
    change: dict[str, object], fault: str
) -> None:
    assert faulty_step(**change) == [fault]


def test_windows_and_profiles_have_their_shape() -> None:
    assert faults_with(
        calendars={"kitchen": [[1, 2, "late"], [3]]},
        resources={"oven": {"capacity": 1, "profile": [[1, 2]]}},
    ) == [
        "calendars.kitchen: [1, 2, 'late'] must be [open, close], in whole minutes",
        "calendars.kitchen: [3] must be [open, close], in whole minutes",
        "resources.oven.profile: [1, 2] must be [from, to, capacity]",
    ]


ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.sampled_from(["", "log", "all"]),
    lambda inner: (
        st.lists(inner, max_size=2)
        | st.dictionaries(st.sampled_from(["id", "due", "duration", "min"]), inner)
    ),
    max_leaves=5,
)


@given(st.dictionaries(st.sampled_from(sorted(WRITTEN)), ANYTHING))
def test_nothing_written_makes_reading_fall_over(change: dict[str, object]) -> None:
    problem, faults = problem_from_json({**WRITTEN, **change})
    assert (problem is None) == bool(faults)
