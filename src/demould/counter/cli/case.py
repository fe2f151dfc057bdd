"""``demould case``: the machine's door, one JSON case in, one JSON answer out."""

from __future__ import annotations

import json
import time
from importlib import import_module
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    Raw = Mapping[str, object]
    Answered = tuple[Mapping[str, object] | None, list[str]]

ANSWERED_BY = {
    "demould-cold-case/1": "demould.counter.cli.case:answer_cold",
    "demould-formula-case/1": "demould.counter.cli.case:answer_formula",
    "demould-plan-problem/1": "demould.counter.cli.case:answer_plan",
}
"""Who answers a schema: a function from (case, limit in seconds) to its answer, or None
and every fault as a sentence that begins with its place. Imported when it is asked."""


PLAN_S = 10.0
"""Seconds for a plan where the limit is not said."""


@click.command()
@click.argument("files", nargs=-1, required=True, metavar="FILE...")
@click.option(
    "--limit",
    type=click.FloatRange(min=0, min_open=True),
    default=None,
    help="Seconds a search may take, 10 where it is not said; cold cases need none.",
)
def case(files: tuple[str, ...], limit: float | None) -> None:
    """Answer JSON cases, one line of JSON each, in the order of the FILEs.

    The "schema" in a case says what it is. "-" reads from standard input. Faults go to
    the error stream, one line each with its place in the file; then the exit is 1.
    """
    sound = True
    for file in files:
        answer, faults = answered(file, limit)
        if answer is not None:
            click.echo(json.dumps(answer, allow_nan=False))
        for fault in faults:
            click.echo(f"{file}: {fault}", err=True)
            sound = False
    if not sound:
        raise SystemExit(1)


def answered(file: str, limit: float | None) -> Answered:
    """Read one file and answer it; None and the faults where it is no sound case."""
    try:
        with click.open_file(file, encoding="utf-8") as opened:
            raw = json.load(opened, object_pairs_hook=_once_each)
    except OSError as fault:
        return None, [f"the file cannot be read ({fault.strerror}); check its name"]
    except UnicodeDecodeError as fault:
        return None, [f"byte {fault.start} is no UTF-8; save the file as UTF-8"]
    except json.JSONDecodeError as fault:
        where = f"line {fault.lineno}, column {fault.colno}"
        return None, [f"{where}: this is no JSON ({fault.msg}); mend it there"]
    except _TwiceError as fault:
        return None, [str(fault)]
    except RecursionError:
        return None, ["objects lie too deep in one another; no case needs that"]
    if not isinstance(raw, dict):
        return None, ["a case is one object in braces; this is something else"]
    schema = raw.get("schema")
    if not isinstance(schema, str) or schema not in ANSWERED_BY:
        known = ", ".join(repr(name) for name in ANSWERED_BY)
        return None, [f"schema: {schema!r} is not known; write one of {known}"]
    return _by_name(ANSWERED_BY[schema])(raw, limit)


def answer_cold(raw: Raw, limit: float | None) -> Answered:
    """Answer a cold case, with all that is compiled or read once out of the way."""
    from demould.cold.case.answer import answer, warm

    del limit
    warm()
    return answer(raw, time.perf_counter)


def answer_formula(raw: Raw, limit: float | None) -> Answered:
    """Answer a formula; it takes no time worth a limit."""
    from demould.matter.formula_answer import answer

    del limit
    return answer(raw)


def answer_plan(raw: Raw, limit: float | None) -> Answered:
    """Plan a problem in so many seconds, judge the plan, or say why there is none.

    Interrupted, it answers with the best plan so far.
    """
    from demould.counter.working.planner import Job, Planner
    from demould.plan.answer.schedule_json import schedule_to_json
    from demould.plan.judge.check import check
    from demould.plan.problem.problem_json import problem_from_json

    problem, faults = problem_from_json(raw)
    if problem is None:
        return None, faults
    planner = Planner()
    job = Job(problem=problem, seconds=PLAN_S if limit is None else limit)
    try:
        found = planner.plan(job)
    finally:
        planner.close()
    broken = check(problem, found)
    if broken:
        wrong = [
            f"the plan found does not hold, a fault of the planner: {one.text}"
            for one in broken
        ]
        return None, wrong
    return schedule_to_json(found), []


class _TwiceError(ValueError):
    """A key that an object has twice: nobody can say which is meant."""


def _once_each(pairs: list[tuple[str, object]]) -> dict[str, object]:
    found: dict[str, object] = {}
    for key, value in pairs:
        if key in found:
            raise _TwiceError(f"{key}: this key is there twice; keep one of them")
        found[key] = value
    return found


def _by_name(path: str) -> Callable[[Raw, float | None], Answered]:
    module, name = path.split(":")
    answers: Callable[[Raw, float | None], Answered] = getattr(
        import_module(module), name
    )
    return answers
