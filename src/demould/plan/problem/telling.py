"""How minutes, moments and steps are said to a cook."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

from demould.mise.clock import MONTHS, WEEKDAYS
from demould.plan.problem.steps import due_order

if TYPE_CHECKING:
    from demould.plan.problem.steps import At, Problem, Step

DAY_MIN = 24 * 60
WEEK_MIN = 7 * DAY_MIN


def clock(problem: Problem, minute: int) -> str:
    """Give day and wall clock of an elapsed minute, ``"Thu 09:10"``.

    From a week on the date stands in it: ``"Tue 24 Nov 09:00"``. With a zone, minutes run through a change of the clocks as real ones do.
    """
    midnight = datetime.fromisoformat(problem.origin)
    passed = timedelta(minutes=minute)
    if problem.zone is None:
        then = midnight + passed
    else:
        zone = ZoneInfo(problem.zone)
        then = (midnight.replace(tzinfo=zone).astimezone(UTC) + passed).astimezone(zone)
    date = f" {then.day} {MONTHS[then.month - 1]}" if minute >= WEEK_MIN else ""
    return f"{WEEKDAYS[then.weekday()]}{date} {then:%H:%M}"


def minutes(count: int) -> str:
    """Give a stretch of time: ``"45 min"``, ``"12 h"``, ``"19 h 10"``, ``"14 d"``."""
    if count < 60:
        return f"{count} min"
    if count % DAY_MIN == 0 and count > DAY_MIN:
        return f"{count // DAY_MIN} d"
    hours, rest = divmod(count, 60)
    return f"{hours} h {rest:02d}" if rest else f"{hours} h"


def called(step: Step) -> str:
    """Give the name of a step: its label and the orders it is for, or its id."""
    if not step.label:
        return step.id
    return f"{step.label} for {', '.join(step.order)}" if step.order else step.label


def moment(steps: dict[str, Step], name: str, at: At) -> str:
    """Give the name of a moment: "the start of whip", "the due time of o1"."""
    order = due_order(name)
    if order is not None:
        return f"the due time of {order}"
    return f"the {at} of {called(steps[name])}"
