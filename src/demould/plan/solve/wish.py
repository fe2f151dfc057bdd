"""What a plan is wished to be, first things first."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Sequence

    from demould.plan.answer.schedule import Objective

Wish = Literal[
    "late_orders",
    "tardiness",
    "margins_missed",
    "sessions",
    "overtime",
    "freshness",
    "tidy",
]
"""What to make small. ``tidy``: all early, so that nothing floats, no short wait long."""

DEFAULT_WISHES: tuple[Wish, ...] = (
    "late_orders",
    "tardiness",
    "margins_missed",
    "sessions",
    "overtime",
    "freshness",
    "tidy",
)


def worth(objective: Objective, moved: int, wishes: Sequence[Wish]) -> tuple[int, ...]:
    """Give what a plan costs, first things first, to be compared with another's.

    Steps moved from the agreed plan come before all wishes; ``tidy`` is no promise.
    """
    costs = (getattr(objective, wish) for wish in wishes if wish != "tidy")
    return (moved, *costs)
