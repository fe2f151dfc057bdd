"""The search for a plan with the CP-SAT solver, which nothing else here knows of."""

from demould.plan.solve.cpsat.search import latest_start, latest_starts, solve
from demould.plan.solve.cpsat.wishes import DEFAULT_WISHES, Wish

__all__ = ["DEFAULT_WISHES", "Wish", "latest_start", "latest_starts", "solve"]
