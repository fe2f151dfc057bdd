import json
from collections.abc import Callable
from pathlib import Path

import pytest

from demould.plan.problem_json import problem_from_json
from demould.plan.steps import Problem

CASES = Path(__file__).parent / "cases"


@pytest.fixture
def case() -> Callable[[str], Problem]:
    """Read one of the problems in `cases` by its name."""

    def read(name: str) -> Problem:
        problem, faults = problem_from_json(json.loads((CASES / name).read_text()))
        assert problem is not None, faults
        return problem

    return read
