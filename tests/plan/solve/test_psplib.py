"""Shortest makespans of two classical instances, with nothing of a kitchen in them.

R. Kolisch and A. Sprecher, PSPLIB - A project scheduling problem library, European
Journal of Operational Research 96 (1996) 205-216; set j30, its table of optimal
solutions: j3029_5 takes 98, j3041_1 takes 86.
"""

from dataclasses import replace
from pathlib import Path

import pytest

from demould.plan.judge.check import check
from demould.plan.problem.steps import Lag, Problem, Resource, Step, exactly
from demould.plan.solve.search import solve

CASES = Path(__file__).parents[1] / "cases"


def read_project(name: str, horizon: int) -> Problem:
    """Read a single-mode ``.sm`` file: successors, durations, demands, capacities."""
    blocks = (CASES / name).read_text().split("*" * 72)
    successors = [list(map(int, line.split())) for line in blocks[4].splitlines()[3:]]
    work = [list(map(int, line.split())) for line in blocks[5].splitlines()[4:]]
    capacities = list(map(int, blocks[6].splitlines()[3].split()))
    names = [f"R{number}" for number in range(1, len(capacities) + 1)]
    return Problem(
        id=name,
        origin="2026-03-02T00:00",
        horizon=horizon,
        resources=tuple(
            Resource(name=resource, capacity=capacity)
            for resource, capacity in zip(names, capacities, strict=True)
        ),
        steps=tuple(
            Step(
                id=str(job),
                duration=exactly(took),
                uses={n: d for n, d in zip(names, demands, strict=True) if d},
            )
            for job, _, took, *demands in work
        ),
        lags=tuple(
            Lag(from_=str(job), to=str(after))
            for job, _, _, *many in successors
            for after in many
        ),
    )


@pytest.mark.parametrize(("name", "shortest"), [("j3029_5.sm", 98), ("j3041_1.sm", 86)])
def test_the_shortest_makespan_is_the_published_one(name: str, shortest: int) -> None:
    project = read_project(name, shortest)
    assert len(project.steps) == 32
    found = solve(project, seconds=30, wishes=())
    assert found.status == "optimal"
    assert check(project, found) == ()
    assert max(place.end for place in found.steps) == shortest
    shorter = solve(replace(project, horizon=shortest - 1), seconds=30, wishes=())
    assert shorter.status == "infeasible"
