"""A plan as machines write it down, ``demould-plan/1``."""

from __future__ import annotations

from dataclasses import asdict, fields
from typing import TYPE_CHECKING, TypeVar, get_args

from demould.plan.answer.schedule import (
    SCHEDULE_SCHEMA,
    Conflict,
    Explain,
    Kind,
    Objective,
    Planned,
    Relaxation,
    Schedule,
    Status,
)
from demould.plan.problem.problem_json import problem_from_json, problem_to_json
from demould.plan.problem.rows import (
    Row,
    amounts,
    each,
    inner,
    one_of,
    pairs,
    said,
    text,
    text_or_none,
    texts,
    whole,
)

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

Read = TypeVar("Read")


def schedule_from_json(
    raw: Mapping[str, object],
) -> tuple[Schedule | None, list[str]]:
    """Read a plan; give it, or None and every fault found, one sentence each.

    What the plan says of itself, its costs too, is read as it stands;
    `demould.plan.judge.check.check` judges it.
    """
    row = Row(keys=raw, place="", faults=[])
    if raw.get("schema") != SCHEDULE_SCHEMA:
        row.say("schema", f"must be {SCHEDULE_SCHEMA!r}, not {raw.get('schema')!r}")
    costs = inner(row, "objective")
    schedule = Schedule(
        problem=text(row, "problem"),
        status=one_of(row, "status", get_args(Status), "unknown"),
        steps=each(row, "steps", _planned),
        objective=Objective(
            **{cost.name: whole(costs, cost.name, 0) for cost in fields(Objective)}
        ),
        bound=amounts(row, "bound"),
        explain=_explain(inner(row, "explain")) if raw.get("explain") else None,
        moved=texts(row, "moved"),
    )
    return (None if row.faults else schedule), row.faults


def schedule_to_json(schedule: Schedule) -> dict[str, object]:
    """Write a plan so that `schedule_from_json` gives the same one back."""
    explain = {} if schedule.explain is None else _explain_json(schedule.explain)
    moved = {"moved": list(schedule.moved)} if schedule.moved else {}
    return {
        "schema": SCHEDULE_SCHEMA,
        "problem": schedule.problem,
        "status": schedule.status,
        "objective": asdict(schedule.objective),
        "bound": dict(schedule.bound),
        "steps": [
            said(
                {
                    "id": place.id,
                    "start": place.start,
                    "end": place.end,
                    "took": place.took,
                    "who": list(place.who),
                    "segments": [list(pair) for pair in place.segments],
                }
            )
            for place in schedule.steps
        ],
        **moved,
        **explain,
    }


def _planned(row: Row) -> Planned:
    return Planned(
        id=text(row, "id"),
        start=whole(row, "start"),
        end=whole(row, "end"),
        took=text_or_none(row, "took"),
        who=texts(row, "who"),
        segments=pairs(row, "segments"),
    )


def _explain(row: Row) -> Explain:
    return Explain(
        text=text_or_none(row, "text") or "",
        conflict=each(row, "conflict", _conflict),
        relaxations=each(row, "relaxations", _relaxation),
    )


def _conflict(row: Row) -> Conflict:
    return Conflict(
        kind=one_of(row, "kind", get_args(Kind), "lag"),
        id=text(row, "id"),
        text=text(row, "text"),
    )


def _relaxation(row: Row) -> Relaxation:
    return Relaxation(
        text=text(row, "text"),
        changes=tuple(change.keys for change in _changes(row)),
        problem_after=_after(row, "problem_after", problem_from_json),
        plan_after=_after(row, "plan_after", schedule_from_json),
    )


def _after(
    row: Row, key: str, read: Callable[[Mapping[str, object]], tuple[Read, list[str]]]
) -> Read | None:
    if row.keys.get(key) is None:
        return None
    found, faults = read(inner(row, key).keys)
    row.faults.extend(f"{row.place}{key}.{fault}" for fault in faults)
    return found


def _changes(row: Row) -> tuple[Row, ...]:
    return each(row, "changes", lambda change: change)


def _explain_json(explain: Explain) -> dict[str, object]:
    said_all = {
        "text": explain.text,
        "conflict": [asdict(one) for one in explain.conflict],
        "relaxations": [_relaxation_json(one) for one in explain.relaxations],
    }
    return {"explain": said_all}


def _relaxation_json(relaxation: Relaxation) -> dict[str, object]:
    problem, plan = relaxation.problem_after, relaxation.plan_after
    return {
        "text": relaxation.text,
        "changes": [dict(change) for change in relaxation.changes],
        **({} if problem is None else {"problem_after": problem_to_json(problem)}),
        **({} if plan is None else {"plan_after": schedule_to_json(plan)}),
    }
