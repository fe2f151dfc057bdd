"""How many public project instances are closed, and how fast, beside PyJobShop.

Files of PSPLIB (``.sm``: R. Kolisch and A. Sprecher, PSPLIB - A project scheduling
problem library, European Journal of Operational Research 96 (1996) 205-216) and of
RCPSP/max (``.sch``: least and longest waits) in a folder, beside a ``manifest.json`` with
the best known makespans where there is one. Each is one order with a soft due time at 0,
so that its tardiness is the makespan.

    python benchmarks/plan_projects.py --instances DIR --limit 10 --json out.json
"""

from __future__ import annotations

import argparse
import json
import os
import time
from pathlib import Path

import psplib

from demould.plan.answer.schedule import Schedule
from demould.plan.judge.check import check
from demould.plan.problem.steps import Lag, Order, Problem, Resource, Step, exactly
from demould.plan.solve.search import solve
from demould.plan.solve.wish import Wish

MAKESPAN: tuple[Wish, ...] = ("tardiness",)


def read(file: Path) -> psplib.ProjectInstance:
    form = "patterson" if file.suffix == ".rcp" else "psplib"
    if file.suffix == ".sch":
        form = "rcpsp_max"
    return psplib.parse(file, instance_format=form)


def problem_of(name: str, project: psplib.ProjectInstance) -> Problem:
    """Give a project as one order, all of whose work is late from the first minute."""
    names = [f"R{number}" for number in range(len(project.resources))]
    lags: list[Lag] = []
    longest = 0
    steps = []
    for at, activity in enumerate(project.activities):
        mode = activity.modes[0]
        longest += mode.duration
        uses = {n: d for n, d in zip(names, mode.demands, strict=True) if d}
        steps.append(
            Step(
                id=f"s{at}", order=("all",), duration=exactly(mode.duration), uses=uses
            )
        )
        waits = activity.delays or [mode.duration] * len(activity.successors)
        for after, wait in zip(activity.successors, waits, strict=True):
            lags.append(Lag(from_=f"s{at}", from_at="start", to=f"s{after}", min=wait))
            longest += max(0, wait - mode.duration)
    return Problem(
        id=name,
        origin="2026-03-02T00:00",
        horizon=longest,
        resources=tuple(
            Resource(name=n, capacity=one.capacity)
            for n, one in zip(names, project.resources, strict=True)
        ),
        orders=(Order(id="all", due=0, soft_due=True),),
        steps=tuple(steps),
        lags=tuple(lags),
    )


def ours(problem: Problem, limit: float) -> tuple[str, int | None, float]:
    began = time.perf_counter()
    found: Schedule = solve(problem, seconds=limit, wishes=MAKESPAN, steady=False)
    took = time.perf_counter() - began
    assert check(problem, found) == ()
    makespan = found.objective.tardiness if found.steps else None
    return found.status, makespan, took


def theirs(
    project: psplib.ProjectInstance, limit: float
) -> tuple[str, int | None, float]:
    """Plan the same project with PyJobShop."""
    import pyjobshop

    model = pyjobshop.Model()
    resources = [model.add_renewable(one.capacity) for one in project.resources]
    tasks = []
    for activity in project.activities:
        task = model.add_task()
        mode = activity.modes[0]
        model.add_mode(task, resources, mode.duration, mode.demands)
        tasks.append(task)
    for at, activity in enumerate(project.activities):
        wait_for = activity.delays or [activity.modes[0].duration] * len(
            activity.successors
        )
        for after, wait in zip(activity.successors, wait_for, strict=True):
            model.add_start_before_start(tasks[at], tasks[after], wait)
    began = time.perf_counter()
    found = model.solve(time_limit=limit, num_workers=2, display=False)
    took = time.perf_counter() - began
    status = found.status.value.lower()
    planned = status in ("optimal", "feasible")
    return status, int(found.objective) if planned else None, took


def main() -> None:
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("--instances", type=Path, required=True)
    ask.add_argument("--limit", type=float, default=10.0)
    ask.add_argument("--json", type=Path, default=None)
    ask.add_argument("--alone", action="store_true", help="without PyJobShop")
    asked = ask.parse_args()
    listed = asked.instances / "manifest.json"
    known = {}
    if listed.exists():
        rows = json.loads(listed.read_text())
        known = {row["file"]: row["best_known"] for row in rows}
    rows = []
    print(f"load {os.getloadavg()[0]:.1f}, {asked.limit:g} s each, 2 workers")
    print(f"{'file':24}{'known':>10}{'ours':>18}{'s':>6}{'PyJobShop':>20}{'s':>6}")
    for file in sorted(asked.instances.iterdir()):
        if file.suffix not in (".sm", ".sch", ".rcp"):
            continue
        project = read(file)
        one = ours(problem_of(file.stem, project), asked.limit)
        other = ("-", None, 0.0) if asked.alone else theirs(project, asked.limit)
        best = known.get(file.name, {})
        told = str(best.get("ub", best.get("status", "?")))
        print(
            f"{file.name:24}{told:>10}{one[0] + ' ' + str(one[1]):>18}{one[2]:6.1f}"
            f"{other[0] + ' ' + str(other[1]):>20}{other[2]:6.1f}",
            flush=True,
        )
        rows.append({"file": file.name, "known": best, "ours": one, "pyjobshop": other})
    closed = sum(row["ours"][0] in ("optimal", "infeasible") for row in rows)
    print(f"closed {closed} of {len(rows)}; load {os.getloadavg()[0]:.1f}")
    if asked.json is not None:
        asked.json.write_text(json.dumps(rows, indent=1))


if __name__ == "__main__":
    main()
