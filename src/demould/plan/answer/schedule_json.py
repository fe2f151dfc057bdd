"""A plan as machines write it down, ``demould-plan/1``."""

from __future__ import annotations

from dataclasses import asdict, fields
from typing import TYPE_CHECKING, get_args

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
from demould.plan.problem.rows import (
    Row,
    amounts,
    each,
    inner,
    one_of,
    said,
    text,
    text_or_none,
    texts,
    whole,
)

if TYPE_CHECKING:
    from collections.abc import Mapping


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
    )
    return (None if row.faults else schedule), row.faults


def schedule_to_json(schedule: Schedule) -> dict[str, object]:
    """Write a plan so that `schedule_from_json` gives the same one back."""
    explain = {} if schedule.explain is None else {"explain": asdict(schedule.explain)}
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
                }
            )
            for place in schedule.steps
        ],
        **explain,
    }


def _planned(row: Row) -> Planned:
    return Planned(
        id=text(row, "id"),
        start=whole(row, "start"),
        end=whole(row, "end"),
        took=text_or_none(row, "took"),
        who=texts(row, "who"),
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
        changes=tuple(inner_row.keys for inner_row in _changes(row)),
    )


def _changes(row: Row) -> tuple[Row, ...]:
    return each(row, "changes", lambda change: change)
