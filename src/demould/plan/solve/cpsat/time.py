"""How long a search may take, and when somebody says stop."""

from __future__ import annotations

import time
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

STEADY = 0.3
"""Deterministic seconds in a real one, measured with two workers on two cores."""

SLOWER = 3.0
"""So much longer a deterministic second lasts in a quick look, which is mostly layout."""

LOOK = 0.01
"""Deterministic seconds that laying out and reading one look stands for."""


@dataclass(slots=True)
class Stop:
    """Somebody's wish to have the best plan so far, now."""

    asked: bool = False
    running: cp_model.CpSolver | None = None

    def __call__(self) -> None:
        """Stop the search, also one that is under way."""
        self.asked = True
        if self.running is not None:
            self.running.stop_search()


@dataclass(slots=True, kw_only=True)
class Time:
    """The seconds given to a search, and how many are left.

    ``steady`` ones are the solver's own deterministic seconds, so that the same
    problem, seed and seconds give the same plan on a busy machine too; else they are
    those on the wall, and no search goes on for longer.
    """

    seconds: float
    steady: bool = True
    stop: Stop = field(default_factory=Stop)
    began: float = field(default_factory=time.monotonic)
    spent: float = 0.0

    @property
    def left(self) -> float:
        """Give the seconds that are left, as the solver counts them; 0 when stopped."""
        if self.stop.asked:
            return 0.0
        if self.steady:
            return max(0.0, self.seconds * STEADY - self.spent)
        return max(0.0, self.seconds - (time.monotonic() - self.began))

    def limit(self, solver: cp_model.CpSolver, seconds: float) -> None:
        """Give the solver its part of the time that is left."""
        seconds = max(0.001, min(seconds, self.left))
        if self.steady:
            solver.parameters.max_deterministic_time = seconds
        else:
            solver.parameters.max_time_in_seconds = seconds

    def quick(self, solver: cp_model.CpSolver, steady: float) -> None:
        """Give the solver so many deterministic seconds, and no more than are left."""
        self.limit(solver, self.left)
        limit = min(steady, self.left) if self.steady else steady
        solver.parameters.max_deterministic_time = max(0.001, limit)

    def spend(self, solver: cp_model.CpSolver, *, quick: bool) -> None:
        """Count what a look took."""
        took = solver.response_proto.deterministic_time
        self.spent += LOOK + took * (SLOWER if quick else 1)
