"""Where an attended stretch may begin, given the hours and the people."""

from __future__ import annotations

from typing import TYPE_CHECKING

from demould.plan.problem.steps import skilled

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from demould.plan.problem.steps import Problem, Step, Window

Ranges = tuple[tuple[int, int], ...]
"""Closed ranges of minutes, in order and apart."""


def starts_within(windows: Iterable[Window], length: int) -> Ranges:
    """Give where ``length`` minutes may begin so that one window holds them all."""
    return tuple(
        (window.open, window.close - length)
        for window in windows
        if window.close - window.open >= length
    )


def starts_attended(
    problem: Problem, step: Step, length: int, hands: int
) -> Ranges | None:
    """Give where ``length`` attended minutes of the step may begin.

    The step's own calendar is open, and ``hands`` people who know how are there, each
    within one window of theirs. None means anywhere.
    """
    if length == 0:
        return None
    together = None
    if step.calendar is not None:
        together = starts_within(problem.calendars[step.calendar], length)
    bound = [p.calendar for p in skilled(problem, step) if p.calendar is not None]
    always = len(skilled(problem, step)) - len(bound)
    if hands <= always:
        return together
    there = [starts_within(problem.calendars[name], length) for name in bound]
    peopled = _covered(there, hands - always)
    return peopled if together is None else common(together, peopled)


def common(one: Ranges, other: Ranges) -> Ranges:
    """Give the minutes that lie in both."""
    overlaps = (
        (max(a, c), min(b, d)) for a, b in one for c, d in other if a <= d and c <= b
    )
    return tuple(sorted(overlaps))


def _covered(many: list[Ranges], times: int) -> Ranges:
    """Give the minutes that lie in ``times`` or more of the ranges given."""
    changes = sorted(
        change
        for ranges in many
        for first, last in ranges
        for change in ((first, 0, 1), (last + 1, 1, -1))
    )
    covered: list[tuple[int, int]] = []
    depth = since = 0
    for minute, _, change in changes:
        if depth < times <= depth + change:
            since = minute
        if depth + change < times <= depth and minute > since:
            covered.append((since, minute - 1))
        depth += change
    return tuple(covered)


def inside_windows(
    windows: Iterable[Window], first: int, last: int
) -> Iterator[tuple[int, int]]:
    """Give the stretches between two minutes in which a window is open."""
    for window in windows:
        begin, until = max(window.open, first), min(window.close, last)
        if begin < until:
            yield begin, until


def first_from(ranges: Ranges, minute: int) -> int | None:
    """Give the first minute in the ranges that is not before ``minute``."""
    return min((max(a, minute) for a, b in ranges if minute <= b), default=None)
