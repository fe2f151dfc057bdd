"""A problem as machines write it down, ``demould-plan-problem/1``."""

from __future__ import annotations

from typing import TYPE_CHECKING, get_args

from demould.plan.problem.faults import problem_faults
from demould.plan.problem.rows import (
    Row,
    amounts,
    each,
    flag,
    inner,
    items,
    named,
    one_of,
    pairs,
    said,
    text,
    text_or_none,
    texts,
    whole,
    whole_or_none,
)
from demould.plan.problem.steps import (
    At,
    Attended,
    ChangeKey,
    Changeover,
    Fact,
    Hold,
    Lag,
    Order,
    Other,
    Person,
    Problem,
    Resource,
    Road,
    Span,
    Step,
    Window,
)

if TYPE_CHECKING:
    from collections.abc import Mapping

PROBLEM_SCHEMA = "demould-plan-problem/1"


def problem_from_json(raw: Mapping[str, object]) -> tuple[Problem | None, list[str]]:
    """Read a problem; give it, or None and every fault found, one sentence each.

    Keys that the schema does not know are ignored.
    """
    row = Row(keys=raw, place="", faults=[])
    if raw.get("schema") != PROBLEM_SCHEMA:
        row.say("schema", f"must be {PROBLEM_SCHEMA!r}, not {raw.get('schema')!r}")
    problem = _problem(row)
    if not row.faults:
        row.faults.extend(problem_faults(problem))
    return (None if row.faults else problem), row.faults


def problem_to_json(problem: Problem) -> dict[str, object]:
    """Write a problem so that `problem_from_json` gives the same one back."""
    zone = {} if problem.zone is None else {"zone": problem.zone}
    return {
        "schema": PROBLEM_SCHEMA,
        "id": problem.id,
        "origin": problem.origin,
        **zone,
        "horizon": problem.horizon,
        "calendars": {
            name: [
                [w.open, w.close, "overtime"] if w.overtime else [w.open, w.close]
                for w in windows
            ]
            for name, windows in problem.calendars.items()
        },
        "resources": {r.name: _resource_json(r) for r in problem.resources},
        "orders": [_order_json(order) for order in problem.orders],
        "steps": [_step_json(step) for step in problem.steps],
        "lags": [_lag_json(lag) for lag in problem.lags],
        "holds": [_hold_json(hold) for hold in problem.holds],
        "people": {
            person.name: {
                "calendar": person.calendar,
                "skills": sorted(person.skills),
            }
            for person in problem.people
        },
        **said(
            {
                "changeovers": [_change_json(one) for one in problem.changeovers],
                "now": problem.now,
                "done": {name: fact_json(one) for name, one in problem.done.items()},
                "previous": _previous_json(problem),
            }
        ),
    }


def _problem(row: Row) -> Problem:
    calendars = inner(row, "calendars")
    return Problem(
        id=text(row, "id"),
        origin=text(row, "origin"),
        zone=text_or_none(row, "zone"),
        horizon=whole(row, "horizon"),
        calendars={name: _windows(calendars, name) for name in calendars.keys},
        resources=named(row, "resources", _resource),
        orders=each(row, "orders", _order),
        steps=each(row, "steps", _step),
        lags=each(row, "lags", _lag),
        holds=each(row, "holds", _hold),
        people=named(row, "people", _person),
        changeovers=each(row, "changeovers", _change),
        now=whole_or_none(row, "now"),
        done=dict(named(row, "done", lambda found, name: (name, fact(found)))),
        previous=dict(each(inner(row, "previous"), "steps", _agreed)),
    )


def _windows(row: Row, name: str) -> tuple[Window, ...]:
    windows = []
    for raw in items(row, name):
        match raw:
            case [bool(), *_] | [_, bool(), *_]:
                row.say(name, f"{raw!r} must be [open, close], in whole minutes")
            case [int(opens), int(closes), *rest] if rest in ([], ["overtime"]):
                windows.append(Window(open=opens, close=closes, overtime=bool(rest)))
            case _:
                row.say(name, f"{raw!r} must be [open, close], in whole minutes")
    return tuple(windows)


def _resource(row: Row, name: str) -> Resource:
    profile = []
    for raw in items(row, "profile"):
        match raw:
            case [int(start), int(end), int(capacity)]:
                profile.append(Other(start=start, end=end, capacity=capacity))
            case _:
                row.say("profile", f"{raw!r} must be [from, to, capacity]")
    return Resource(name=name, capacity=whole(row, "capacity"), profile=tuple(profile))


def _person(row: Row, name: str) -> Person:
    return Person(
        name=name,
        calendar=text_or_none(row, "calendar"),
        skills=frozenset(texts(row, "skills")),
    )


def _order(row: Row) -> Order:
    return Order(
        id=text(row, "id"), due=whole(row, "due"), soft_due=flag(row, "soft_due")
    )


def _step(row: Row) -> Step:
    return Step(
        id=text(row, "id"),
        order=texts(row, "order"),
        label=text_or_none(row, "label") or "",
        duration=_span(row) if "duration" in row.keys else None,
        either=each(row, "either", _road),
        attended=one_of(row, "attended", get_args(Attended), "none"),
        attend_start=whole(row, "attend_start", 0),
        attend_end=whole(row, "attend_end", 0),
        interruptible=flag(row, "interruptible"),
        calendar=text_or_none(row, "calendar"),
        uses=amounts(row, "uses"),
        attend_uses=amounts(row, "attend_uses"),
        clean=amounts(row, "clean"),
        earliest=whole_or_none(row, "earliest"),
        latest_end=whole_or_none(row, "latest_end"),
        fresh=whole(row, "fresh", 0),
        family=text_or_none(row, "family"),
        hands=whole_or_none(row, "hands"),
        skill=text_or_none(row, "skill"),
        margin=whole(row, "margin", 0),
    )


def _road(row: Row) -> Road:
    return Road(
        name=text(row, "name"),
        duration=_span(row),
        uses=amounts(row, "uses"),
        attend_uses=amounts(row, "attend_uses"),
        hands=whole_or_none(row, "hands"),
    )


def _lag(row: Row) -> Lag:
    return Lag(
        from_=text(row, "from"),
        to=text(row, "to"),
        from_at=one_of(row, "from_at", get_args(At), "end"),
        to_at=one_of(row, "to_at", get_args(At), "start"),
        min=whole_or_none(row, "min"),
        max=whole_or_none(row, "max"),
        why=text_or_none(row, "why") or "",
    )


def _hold(row: Row) -> Hold:
    return Hold(
        resource=text(row, "resource"),
        amount=whole(row, "amount"),
        from_=text(row, "from"),
        to=text(row, "to"),
        from_at=one_of(row, "from_at", get_args(At), "start"),
        to_at=one_of(row, "to_at", get_args(At), "end"),
    )


def _change(row: Row) -> Changeover:
    matrix = inner(row, "matrix")
    return Changeover(
        resource=text(row, "resource"),
        key=one_of(row, "key", get_args(ChangeKey), "family"),
        minutes=whole(row, "minutes", 0),
        matrix={name: amounts(matrix, name) for name in matrix.keys},
    )


def fact(row: Row) -> Fact:
    """Read when a step was, or is to be; without an end it is running."""
    return Fact(
        start=whole(row, "start"),
        end=whole_or_none(row, "end"),
        took=text_or_none(row, "took"),
        who=texts(row, "who"),
        segments=pairs(row, "segments"),
    )


def _agreed(row: Row) -> tuple[str, Fact]:
    return text(row, "id"), fact(row)


def _span(row: Row) -> Span:
    match row.keys.get("duration"):
        case bool():
            pass
        case int(minutes) if minutes >= 0:
            return Span(min=minutes, max=minutes)
        case [int(low), None] if low >= 0:
            return Span(min=low, max=None)
        case [int(low), int(high)] if 0 <= low <= high:
            return Span(min=low, max=high)
        case _:
            pass
    found = row.keys.get("duration")
    row.say("duration", f"must be whole minutes, or [min, max], not {found!r}")
    return Span(min=0, max=0)


def _span_json(span: Span | None) -> object:
    if span is None:
        return None
    return span.min if span.min == span.max else [span.min, span.max]


def _resource_json(resource: Resource) -> dict[str, object]:
    profile = [[other.start, other.end, other.capacity] for other in resource.profile]
    return said({"capacity": resource.capacity, "profile": profile})


def _order_json(order: Order) -> dict[str, object]:
    return said({"id": order.id, "due": order.due, "soft_due": order.soft_due or None})


def _step_json(step: Step) -> dict[str, object]:
    return said(
        {
            "id": step.id,
            "order": step.order[0] if len(step.order) == 1 else list(step.order),
            "label": step.label,
            "duration": _span_json(step.duration),
            "either": [_road_json(road) for road in step.either],
            "attended": step.attended,
            "attend_start": step.attend_start or None,
            "attend_end": step.attend_end or None,
            "interruptible": step.interruptible or None,
            "calendar": step.calendar,
            "uses": dict(step.uses),
            "attend_uses": dict(step.attend_uses),
            "clean": dict(step.clean),
            "earliest": step.earliest,
            "latest_end": step.latest_end,
            "fresh": step.fresh or None,
            "family": step.family,
            "hands": step.hands,
            "skill": step.skill,
            "margin": step.margin or None,
        }
    )


def _road_json(road: Road) -> dict[str, object]:
    return said(
        {
            "name": road.name,
            "duration": _span_json(road.duration),
            "uses": dict(road.uses),
            "attend_uses": dict(road.attend_uses),
            "hands": road.hands,
        }
    )


def _lag_json(lag: Lag) -> dict[str, object]:
    return {
        "from": lag.from_,
        "from_at": lag.from_at,
        "to": lag.to,
        "to_at": lag.to_at,
        "min": lag.min,
        "max": lag.max,
        "why": lag.why,
    }


def _change_json(change: Changeover) -> dict[str, object]:
    return said(
        {
            "resource": change.resource,
            "key": change.key,
            "minutes": change.minutes,
            "matrix": {name: dict(row) for name, row in change.matrix.items()},
        }
    )


def fact_json(fact: Fact) -> dict[str, object]:
    """Write when a step was; an end that is not known yet is written as null."""
    more = {
        "took": fact.took,
        "who": list(fact.who),
        "segments": [list(pair) for pair in fact.segments],
    }
    return {"start": fact.start, "end": fact.end, **said(more)}


def _previous_json(problem: Problem) -> dict[str, object]:
    steps = [{"id": name, **fact_json(one)} for name, one in problem.previous.items()]
    return {"steps": steps} if steps else {}


def _hold_json(hold: Hold) -> dict[str, object]:
    return {
        "resource": hold.resource,
        "amount": hold.amount,
        "from": hold.from_,
        "from_at": hold.from_at,
        "to": hold.to,
        "to_at": hold.to_at,
    }
