import json
from collections.abc import Callable
from pathlib import Path

import pytest

from demould.plan.problem.problem_json import problem_from_json
from demould.plan.problem.steps import Problem

CASES = Path(__file__).parent / "cases"


@pytest.fixture
def case() -> Callable[[str], Problem]:
    """Read one of the problems in `cases` by its name."""

    def read(name: str) -> Problem:
        problem, faults = problem_from_json(json.loads((CASES / name).read_text()))
        assert problem is not None, faults
        return problem

    return read


@pytest.fixture
def small_2_plan() -> dict[str, object]:
    """Read the plan for the small case that an earlier search found."""
    plan: dict[str, object] = json.loads((CASES / "small-2.plan.json").read_text())
    return plan
