import json

from demould.plan.answer.schedule import (
    Conflict,
    Explain,
    Objective,
    Planned,
    Relaxation,
    Schedule,
)
from demould.plan.answer.schedule_json import schedule_from_json, schedule_to_json

PLAN = Schedule(
    problem="log",
    status="feasible",
    steps=(
        Planned(id="fill", start=600, end=630, who=("Mirel", "Jonne")),
        Planned(id="freeze", start=630, end=1920, took="freezer"),
    ),
    objective=Objective(sessions=3, freshness=90),
    bound={"sessions": 2},
)


def test_a_plan_is_written_as_the_schema_says() -> None:
    assert schedule_to_json(PLAN) == {
        "schema": "demould-plan/1",
        "problem": "log",
        "status": "feasible",
        "objective": {
            "late_orders": 0,
            "tardiness": 0,
            "margins_missed": 0,
            "sessions": 3,
            "overtime": 0,
            "freshness": 90,
        },
        "bound": {"sessions": 2},
        "steps": [
            {"id": "fill", "start": 600, "end": 630, "who": ["Mirel", "Jonne"]},
            {"id": "freeze", "start": 630, "end": 1920, "took": "freezer"},
        ],
    }


def test_a_plan_is_read_back() -> None:
    written = json.loads(json.dumps(schedule_to_json(PLAN)))
    assert schedule_from_json(written) == (PLAN, [])


def test_an_explanation_is_read_back() -> None:
    no = Schedule(
        problem="log",
        status="infeasible",
        explain=Explain(
            text="the whip can not be before noon",
            conflict=(Conflict(kind="order", id="o", text="the order o"),),
            relaxations=(
                Relaxation(
                    text="one more mould",
                    changes=({"op": "add_capacity", "resource": "mould", "amount": 1},),
                ),
            ),
        ),
    )
    written = json.loads(json.dumps(schedule_to_json(no)))
    assert schedule_from_json(written) == (no, [])


def test_times_that_are_no_whole_minutes_are_told() -> None:
    written = {
        "schema": "plan",
        "problem": "log",
        "status": "good",
        "steps": [{"id": "fill", "start": 1.5, "end": "noon"}],
    }
    assert schedule_from_json(written) == (
        None,
        [
            "schema: must be 'demould-plan/1', not 'plan'",
            "status: must be one of optimal, feasible, infeasible, unknown, not 'good'",
            "steps[0].start: must be a whole number, not 1.5",
            "steps[0].end: must be a whole number, not 'noon'",
        ],
    )
