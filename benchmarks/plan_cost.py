"""What a plan costs against the number of orders, and how good it is.

Made-up kitchens (see ``plan_kitchens.py``) are planned in the seconds given, each as
often as asked; medians are printed with the load of the machine. ``--whole S`` has the
whole model look for S seconds more, hinted with the plan, and prints how much fresher it
gets at no more sessions.

    python benchmarks/plan_cost.py --orders 1 12 20 120 --limit 5 --times 3
"""

from __future__ import annotations

import argparse
import json
import os
import statistics
import time
from collections.abc import Iterator
from pathlib import Path

from plan_kitchens import TIGHT, kitchen

from demould.plan.answer.schedule import Explain, Schedule
from demould.plan.judge.check import check
from demould.plan.problem.problem_json import problem_from_json
from demould.plan.problem.steps import Problem
from demould.plan.solve.asked import ask
from demould.plan.solve.cpsat.time import Time
from demould.plan.solve.search import solve
from demould.plan.solve.whole import whole
from demould.plan.solve.wish import DEFAULT_WISHES


def problems(asked: argparse.Namespace) -> Iterator[Problem]:
    raws = [json.loads(Path(file).read_text()) for file in asked.files]
    raws += [
        kitchen(orders, asked.seed, tight)
        for orders in asked.orders
        for tight in asked.tight
    ]
    for raw in raws:
        problem, faults = problem_from_json(raw)
        assert problem is not None, faults
        yield problem


def one(problem: Problem, limit: float) -> tuple[Schedule, float, float]:
    """Plan once: the judged plan, the seconds to the first and to the last."""
    firsts: list[float] = []
    began = time.perf_counter()
    found = solve(
        problem,
        seconds=limit,
        steady=False,
        tell=lambda _: firsts.append(time.perf_counter() - began),
    )
    took = time.perf_counter() - began
    assert check(problem, found) == ()
    return found, firsts[0] if firsts else took, took


def whole_after(problem: Problem, plan: Schedule, seconds: float) -> tuple[int, int]:
    asked = ask(problem)
    assert not isinstance(asked, Explain)
    places = {place.id: place for place in plan.steps}
    begun = Time(seconds=seconds, steady=False)
    found = whole(asked, begun, DEFAULT_WISHES[:-1], places=places)
    steps = tuple(found.places.values())
    from demould.plan.answer.schedule import objective_of

    cost = objective_of(problem, steps)
    return cost.sessions, cost.freshness


def main() -> None:
    ask_ = argparse.ArgumentParser(description=__doc__)
    ask_.add_argument("files", nargs="*")
    ask_.add_argument("--orders", type=int, nargs="*", default=[])
    ask_.add_argument("--tight", nargs="*", choices=TIGHT, default=["moulds"])
    ask_.add_argument("--seed", type=int, default=1)
    ask_.add_argument("--limit", type=float, default=5.0)
    ask_.add_argument("--times", type=int, default=3)
    ask_.add_argument("--whole", type=float, default=0.0)
    asked = ask_.parse_args()
    print(
        f"{'problem':16}{'steps':>6}{'status':>11}{'first s':>9}{'s':>7}{'sessions':>9}{'fresh':>9}{'whole':>16}{'load':>6}"
    )
    for problem in problems(asked):
        runs = [one(problem, asked.limit) for _ in range(asked.times)]
        plan = runs[0][0]
        cost = sorted((r[0].objective.sessions, r[0].objective.freshness) for r in runs)
        middle = cost[len(cost) // 2]
        after = ""
        if asked.whole and plan.steps:
            after = "/".join(map(str, whole_after(problem, plan, asked.whole)))
        print(
            f"{problem.id:16}{len(problem.steps):6}{plan.status:>11}"
            f"{statistics.median(r[1] for r in runs):9.2f}"
            f"{statistics.median(r[2] for r in runs):7.2f}"
            f"{middle[0]:9}{middle[1]:9}{after:>16}{os.getloadavg()[0]:6.1f}",
            flush=True,
        )


if __name__ == "__main__":
    main()
