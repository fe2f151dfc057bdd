"""The planning process: it answers as the planner does, tells of progress, and stops."""

import json
import threading
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from demould.counter.working.planner import Job, Planner
from demould.plan.answer.schedule import Schedule
from demould.plan.judge.check import check
from demould.plan.problem.problem_json import problem_from_json
from demould.plan.problem.steps import Problem

CASES = Path(__file__).parents[2] / "plan" / "cases"


def case(name: str) -> Problem:
    problem, faults = problem_from_json(json.loads((CASES / name).read_text()))
    assert problem is not None, faults
    return problem


@pytest.fixture(scope="module")
def planner() -> Iterator[Planner]:
    one = Planner()
    yield one
    one.close()


def test_one_process_plans_one_problem_after_the_other(planner: Planner) -> None:
    small = case("small-2.json")
    better: list[Schedule] = []
    found = planner.plan(Job(problem=small, seconds=20), better.append)
    assert found.status == "optimal"
    assert found.objective.freshness == 7900
    assert check(small, found) == ()
    assert better[-1].steps
    closed = planner.plan(Job(problem=case("inf-small-closed-morning.json"), seconds=5))
    assert closed.status == "infeasible"
    assert closed.explain is not None


def test_a_stop_keeps_the_best_plan_so_far(planner: Planner) -> None:
    medium = case("medium-2.json")
    seen = threading.Event()

    def stop_at_the_first(_: Schedule) -> None:
        if not seen.is_set():
            seen.set()
            planner.stop()

    found = planner.plan(Job(problem=medium, seconds=500), stop_at_the_first)
    assert found.status == "feasible"
    assert check(medium, found) == ()


def test_a_problem_that_means_nothing_is_refused_and_the_process_lives_on(
    planner: Planner,
) -> None:
    small = case("small-2.json")
    with pytest.raises(
        ValueError, match="is there 2 times; each needs a name of its own"
    ):
        planner.plan(
            Job(problem=replace(small, steps=(*small.steps, small.steps[0])), seconds=5)
        )
    assert planner.plan(Job(problem=small, seconds=20)).status == "optimal"
