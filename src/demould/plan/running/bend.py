"""A plan worked off with steps that take longer, or begin later, than was planned."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import Planned, road_taken
from demould.plan.problem.steps import due_order, hands_needed
from demould.plan.problem.windows import Ranges, first_from, starts_attended
from demould.plan.running.follow import Moment, Within, afters, withins

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from demould.plan.problem.steps import Problem, Step

PASSES = 12
"""So often at most a step is put later so that a hold after it is kept."""

NEVER = 1 << 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Bent:
    """Where every step ends up, and what that breaks.

    `late` has the minutes each late order is late, `broken` the steps that come too
    late for a hold. `pushed` names, for each step held up, the one that holds it up.
    """

    start: Mapping[str, int]
    end: Mapping[str, int]
    late: Mapping[str, int]
    broken: tuple[str, ...]
    pushed: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class _Broken:
    """A hold by its number, the step before it, the one too late, by how much."""

    hold: int
    early: str
    late: str
    excess: int


@dataclass(frozen=True)
class Bends:
    """A plan with all that follows from it, made ready once to be bent many times."""

    problem: Problem
    places: Mapping[str, Planned]
    order: tuple[Step, ...] = field(init=False)
    before_start: Mapping[str, Sequence[tuple[Moment, int]]] = field(init=False)
    before_end: Mapping[str, Sequence[tuple[Moment, int]]] = field(init=False)
    holds: tuple[Within, ...] = field(init=False)
    open: dict[tuple[str, int], Ranges | None] = field(default_factory=dict)

    def __post_init__(self) -> None:
        steps = sorted(
            self.problem.steps,
            key=lambda one: (self.places[one.id].start, self.places[one.id].end),
        )
        starts: dict[str, list[tuple[Moment, int]]] = {one.id: [] for one in steps}
        ends: dict[str, list[tuple[Moment, int]]] = {one.id: [] for one in steps}
        for after in afters(self.problem, self.places):
            into = starts if after.late[1] == "start" else ends
            into[after.late[0]].append((after.early, after.wait))
        object.__setattr__(self, "order", tuple(steps))
        object.__setattr__(self, "before_start", starts)
        object.__setattr__(self, "before_end", ends)
        object.__setattr__(self, "holds", withins(self.problem))

    def bend(
        self,
        takes: Mapping[str, int],
        earliest: Mapping[str, int] | None = None,
    ) -> Bent:
        """Work the plan off in its own order.

        Parameters
        ----------
        takes
            Minutes each step takes at the least; those not named take what they did.
        earliest
            The first minute of steps that begin later than planned.

        Nothing begins before its planned minute. What is attended goes on in the next
        open hours. A step is put later where a hold after it would else run out.
        """
        floor = dict(earliest or {})
        tried: dict[int, tuple[int, int | None]] = {}
        hopeless: set[int] = set()
        for tries in range(PASSES):
            start, end, pushed = self._forward(takes, floor)
            broken = self._broken(start, end)
            later: dict[str, int | None] = {}
            for one in broken:
                if one.hold in hopeless:
                    continue
                excess, before = tried.get(one.hold, (NEVER, floor.get(one.early)))
                if one.excess >= excess:
                    hopeless.add(one.hold)
                    later[one.early] = before
                elif start[one.early] + one.excess < NEVER:
                    tried[one.hold] = one.excess, before
                    later[one.early] = start[one.early] + one.excess
            if not later or tries == PASSES - 1:
                return self._bent(start, end, broken, pushed)
            floor = {name: at for name, at in (floor | later).items() if at is not None}
        raise AssertionError("there is always a last pass")

    def _bent(
        self,
        start: Mapping[str, int],
        end: Mapping[str, int],
        broken: Sequence[_Broken],
        pushed: Mapping[str, str],
    ) -> Bent:
        return Bent(
            start=start,
            end=end,
            late=self._late(end),
            broken=tuple(dict.fromkeys(one.late for one in broken)),
            pushed=pushed,
        )

    def least_of(self, name: str) -> int:
        """Give the minutes a step takes at the least as planned. [min]."""
        step = next(one for one in self.order if one.id == name)
        return _planned_min(step, self.places[name])

    def _forward(
        self, takes: Mapping[str, int], floor: Mapping[str, int]
    ) -> tuple[dict[str, int], dict[str, int], dict[str, str]]:
        start: dict[str, int] = {}
        end: dict[str, int] = {}
        pushed: dict[str, str] = {}
        for step in self.order:
            place = self.places[step.id]
            begin = max(place.start, floor.get(step.id, 0))
            for early, wait in self.before_start[step.id]:
                at = (start if early[1] == "start" else end).get(early[0])
                if at is not None and NEVER > at + wait > begin:
                    begin, pushed[step.id] = at + wait, early[0]
            least = takes.get(step.id, _planned_min(step, place))
            begin, over = self._open(step, place, begin, least)
            for early, wait in self.before_end[step.id]:
                at = (start if early[1] == "start" else end).get(early[0])
                if at is not None and NEVER > at + wait > over:
                    over = at + wait
            start[step.id], end[step.id] = begin, over
        return start, end, pushed

    def _open(
        self, step: Step, place: Planned, begin: int, least: int
    ) -> tuple[int, int]:
        """Move a step on to hours in which somebody is there for its attended parts."""
        if step.attended == "none":
            return begin, begin + least
        road = road_taken(step, place)
        hands = hands_needed(self.problem, step, road) if road else 0
        if step.attended == "all":
            begin = _first(self._ranges(step, least, hands), begin)
            return begin, begin + least
        if step.attend_start:
            begin = _first(self._ranges(step, step.attend_start, hands), begin)
        over = max(begin + least, min(place.end, NEVER))
        if step.attend_end:
            ranges = self._ranges(step, step.attend_end, hands)
            over = _first(ranges, over - step.attend_end) + step.attend_end
        return begin, over

    def _ranges(self, step: Step, length: int, hands: int) -> Ranges | None:
        key = step.id, length
        if key not in self.open:
            self.open[key] = starts_attended(self.problem, step, length, hands)
        return self.open[key]

    def _broken(
        self, start: Mapping[str, int], end: Mapping[str, int]
    ) -> list[_Broken]:
        """Give every hold that runs out, for which step, and by how much."""
        dues = {order.id: order.due for order in self.problem.orders}
        found = []
        for number, within in enumerate(self.holds):
            early = (start if within.early[1] == "start" else end)[within.early[0]]
            due = due_order(within.late[0])
            late = (
                dues[due]
                if due is not None
                else (start if within.late[1] == "start" else end)[within.late[0]]
            )
            if within.most < late - early and late < NEVER:
                step = within.early[0] if due is not None else within.late[0]
                found.append(
                    _Broken(number, within.early[0], step, late - early - within.most)
                )
        return found

    def _late(self, end: Mapping[str, int]) -> dict[str, int]:
        late: dict[str, int] = {}
        for order in self.problem.orders:
            last = max(
                (end[one.id] for one in self.problem.steps if order.id in one.order),
                default=order.due,
            )
            if last > order.due:
                late[order.id] = last - order.due
        return late


def _planned_min(step: Step, place: Planned) -> int:
    road = road_taken(step, place)
    if road is None or step.attended == "all":
        return place.end - place.start
    return road.duration.min


def _first(ranges: Ranges | None, minute: int) -> int:
    if ranges is None:
        return minute
    found = first_from(ranges, minute)
    return NEVER if found is None else found
