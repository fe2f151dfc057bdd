"""How soon one moment can follow another, through waits and open hours."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from demould.plan.problem.steps import due_order, hands_needed, roads
from demould.plan.problem.windows import Ranges, first_from, starts_attended

if TYPE_CHECKING:
    from collections.abc import Mapping

    from demould.plan.problem.steps import At, Problem, Step

Moment = tuple[str, "At"]
NEVER = 1 << 40


@dataclass(frozen=True)
class Chains:
    """The least waits of a problem, walked forward as a cook would work them off."""

    problem: Problem
    between: dict[tuple[Moment, Moment], list[Moment]] = field(default_factory=dict)

    @cached_property
    def steps(self) -> Mapping[str, Step]:
        """Every step by its name."""
        return {step.id: step for step in self.problem.steps}

    @cached_property
    def ranges(self) -> Mapping[Moment, Ranges]:
        """Where an attended start or end can be; unattended ones are not in it."""
        found: dict[Moment, Ranges] = {}
        for step in self.problem.steps:
            for at, shift in (("start", 0), ("end", 1)):
                allowed = _allowed(self.problem, step, shift)
                if allowed is not None:
                    found[step.id, "start" if at == "start" else "end"] = allowed
        return found

    @cached_property
    def after(self) -> Mapping[Moment, tuple[tuple[Moment, int], ...]]:
        """What follows a moment, and after how long at the least."""
        links: defaultdict[Moment, list[tuple[Moment, int]]] = defaultdict(list)
        for step in self.problem.steps:
            least = min(road.duration.min for road in roads(step))
            links[step.id, "start"].append(((step.id, "end"), least))
        for lag in self.problem.lags:
            if lag.min is None or lag.min < 0 or due_order(lag.to) is not None:
                continue
            if due_order(lag.from_) is None:
                here: Moment = (lag.from_, lag.from_at)
                links[here].append(((lag.to, lag.to_at), lag.min))
        return {moment: tuple(found) for moment, found in links.items()}

    def soonest(self, start: Moment, end: Moment, minute: int) -> int:
        """Give how early `end` can be where `start` is at `minute` or later.

        Hands and machines are taken to be free. `NEVER` where no open hours are left; what
        no wait ties to the start may come at once.
        """
        earliest: dict[Moment, int] = {start: self._open(start, minute)}
        for here in self._order(start, end):
            at = earliest.get(here)
            if at is None:
                continue
            for there, least in self.after.get(here, ()):
                reached = self._open(there, at + least)
                earliest[there] = max(earliest.get(there, reached), reached)
        return earliest.get(end, self._open(end, minute))

    def least(self, start: Moment, end: Moment) -> int:
        """Give the minutes from one moment to another at the least, open or not."""
        reached = {start: 0}
        for here in self._order(start, end):
            for there, wait in self.after.get(here, ()):
                at = reached[here] + wait
                reached[there] = max(reached.get(there, at), at)
        return reached.get(end, 0)

    def open_until(self, minute: int) -> int:
        """Give the last minute up to `minute` at which anybody is there."""
        closes = [
            min(window.close, minute)
            for windows in self.problem.calendars.values()
            for window in windows
            if window.open <= minute
        ]
        return max(closes, default=minute)

    def _open(self, here: Moment, minute: int) -> int:
        ranges = self.ranges.get(here)
        if ranges is None or minute >= NEVER:
            return minute
        found = first_from(ranges, minute)
        return NEVER if found is None else found

    def _order(self, start: Moment, end: Moment) -> list[Moment]:
        """Give the moments between two, each after all it waits for."""
        if (start, end) not in self.between:
            self.between[start, end] = self._walk(start, end)
        return self.between[start, end]

    def _walk(self, start: Moment, end: Moment) -> list[Moment]:
        leads = self._leading(end)
        if start not in leads:
            return []
        done: list[Moment] = []
        seen: set[Moment] = set()
        waiting: list[tuple[Moment, bool]] = [(start, False)]
        while waiting:
            here, over = waiting.pop()
            if over:
                done.append(here)
            elif here not in seen:
                seen.add(here)
                waiting.append((here, True))
                waiting += [
                    (there, False)
                    for there, _ in self.after.get(here, ())
                    if there in leads and there not in seen
                ]
        return done[::-1]

    def _leading(self, end: Moment) -> set[Moment]:
        before: defaultdict[Moment, list[Moment]] = defaultdict(list)
        for here, links in self.after.items():
            for there, _ in links:
                before[there].append(here)
        found, waiting = {end}, [end]
        while waiting:
            for here in before[waiting.pop()]:
                if here not in found:
                    found.add(here)
                    waiting.append(here)
        return found


def _allowed(problem: Problem, step: Step, shift: int) -> Ranges | None:
    """Give where the start (shift 0) or the end (1) of a step may be, by any road."""
    if step.attended == "none":
        return None
    allowed: set[tuple[int, int]] = set()
    for road in roads(step):
        length = road.duration.min
        if step.attended == "ends":
            length = step.attend_end if shift else step.attend_start
        hands = hands_needed(problem, step, road)
        found = starts_attended(problem, step, length, hands)
        if found is None:
            return None
        allowed |= {(a + shift * length, b + shift * length) for a, b in found}
    return tuple(sorted(allowed))
