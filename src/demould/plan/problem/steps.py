"""What has to be done, with what, by whom and by when.

Field for field the neutral schema ``demould-plan-problem/1``. Every time is a whole
number of elapsed minutes from ``origin``, a local midnight, so a rest of 12 h is 720
also in the night the clocks change. Windows and uses are half-open: what ends at 600
leaves room for what begins at 600.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Mapping

Attended = Literal["all", "ends", "none"]
At = Literal["start", "end"]
ChangeKey = Literal["family", "label", "skill"]

DUE = "due:"


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """Open hours without a break: one working session, ``[open, close)`` in min."""

    open: int
    close: int
    overtime: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """How long something may take; no ``max`` [min] means as long as it likes."""

    min: int
    max: int | None

    def __post_init__(self) -> None:
        if self.min < 0 or (self.max is not None and self.max < self.min):
            raise ValueError(f"a span of {self.min} to {self.max} min can never be")


def exactly(minutes: int) -> Span:
    """Give the span of something that takes just these minutes."""
    return Span(min=minutes, max=minutes)


@dataclass(frozen=True, slots=True, kw_only=True)
class Other:
    """A stretch ``[start, end)`` [min] in which a resource has another capacity."""

    start: int
    end: int
    capacity: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Resource:
    """What there is a limited number of: moulds, levels of the blast chiller, cooks."""

    name: str
    capacity: int
    profile: tuple[Other, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """One cook by name; no ``calendar`` means always there."""

    name: str
    calendar: str | None = None
    skills: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """What must be done by ``due`` [min]; a soft due time may be passed, at a cost."""

    id: str
    due: int
    soft_due: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Road:
    """One way to do a step. ``hands`` of None means as many as the step says."""

    name: str = ""
    duration: Span
    uses: Mapping[str, int] = field(default_factory=dict)
    attend_uses: Mapping[str, int] = field(default_factory=dict)
    hands: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """Something to do.

    It has a ``duration``, or ``either`` with two roads or more of which one is taken;
    a road's uses come on top of the step's own. ``attended`` says when somebody is
    there: ``all`` of it (within one open window), the ``ends`` (``attend_start`` and
    ``attend_end`` minutes), or ``none``. The same people do both ends.

    ``hands`` people of the problem's ``people`` are needed, all with ``skill``; None
    means one where the step is attended. ``margin`` is spare time asked for [min].
    ``fresh`` is the cost of each minute between its start and the due time.

    An ``interruptible`` step attended all the time may be left at a window's close and
    taken up in another, in at most one sitting a window; what it uses stays taken.
    """

    id: str
    order: tuple[str, ...] = ()
    label: str = ""
    duration: Span | None = None
    either: tuple[Road, ...] = ()
    attended: Attended = "none"
    attend_start: int = 0
    attend_end: int = 0
    interruptible: bool = False
    calendar: str | None = None
    uses: Mapping[str, int] = field(default_factory=dict)
    attend_uses: Mapping[str, int] = field(default_factory=dict)
    clean: Mapping[str, int] = field(default_factory=dict)
    earliest: int | None = None
    latest_end: int | None = None
    fresh: int = 0
    family: str | None = None
    hands: int | None = None
    skill: str | None = None
    margin: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Lag:
    """``min <= t(to) - t(from_) <= max`` [min], for the cook's reason ``why``.

    ``from_`` and ``to`` are steps, or ``due:ORDER`` for an order's due time.
    """

    from_: str
    to: str
    from_at: At = "end"
    to_at: At = "start"
    min: int | None = 0
    max: int | None = None
    why: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hold:
    """A resource tied from one moment to another: a mould from filling to demoulding."""

    resource: str
    amount: int
    from_: str
    to: str
    from_at: At = "start"
    to_at: At = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Changeover:
    """Minutes between the end of one user of a resource and the start of the next.

    They count where the two differ in ``key`` (a step's ``family``, ``label`` or
    ``skill``); ``matrix[from][to]`` wins over ``minutes``. The resource is one of a
    kind, and its users are the steps with it in their ``uses``.
    """

    resource: str
    key: ChangeKey = "family"
    minutes: int = 0
    matrix: Mapping[str, Mapping[str, int]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """When a step was done, or was agreed to be; no ``end`` means it is running."""

    start: int
    end: int | None = None
    took: str | None = None
    who: tuple[str, ...] = ()
    segments: tuple[tuple[int, int], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """All that has to be planned together; ``horizon`` is the last allowed minute.

    ``done`` has what happened before ``now`` [min], by step; what is not in it begins
    at ``now`` or later. With ``previous``, the agreed plan, as few open steps as can
    be are moved from it.
    """

    id: str
    origin: str
    horizon: int
    zone: str | None = None
    calendars: Mapping[str, tuple[Window, ...]] = field(default_factory=dict)
    resources: tuple[Resource, ...] = ()
    orders: tuple[Order, ...] = ()
    steps: tuple[Step, ...] = ()
    lags: tuple[Lag, ...] = ()
    holds: tuple[Hold, ...] = ()
    people: tuple[Person, ...] = ()
    changeovers: tuple[Changeover, ...] = ()
    now: int | None = None
    done: Mapping[str, Fact] = field(default_factory=dict)
    previous: Mapping[str, Fact] = field(default_factory=dict)


def roads(step: Step) -> tuple[Road, ...]:
    """Give every way to do the step, each with the step's own uses and hands in it."""
    if step.duration is not None:
        plain = Road(
            duration=step.duration,
            uses=step.uses,
            attend_uses=step.attend_uses,
            hands=step.hands,
        )
        return (plain,)
    return tuple(
        Road(
            name=road.name,
            duration=road.duration,
            uses=Counter(step.uses) + Counter(road.uses),
            attend_uses=Counter(step.attend_uses) + Counter(road.attend_uses),
            hands=step.hands if road.hands is None else road.hands,
        )
        for road in step.either
    )


def hands_needed(problem: Problem, step: Step, road: Road) -> int:
    """Count the people by name that the step needs on this road."""
    if not problem.people or step.attended == "none":
        return 0
    return 1 if road.hands is None else road.hands


def skilled(problem: Problem, step: Step) -> tuple[Person, ...]:
    """Give those who know how to do the step."""
    return tuple(
        person
        for person in problem.people
        if step.skill is None or step.skill in person.skills
    )


def orders_of(problem: Problem, step: Step) -> tuple[Order, ...]:
    """Give the orders the step is done for."""
    return tuple(order for order in problem.orders if order.id in step.order)


def strictest_due(problem: Problem, step: Step) -> int | None:
    """Give the earliest due time [min] among the step's orders, None without one."""
    return min((order.due for order in orders_of(problem, step)), default=None)


def due_order(name: str) -> str | None:
    """Give the order's id out of ``due:ORDER``, None where ``name`` is a step."""
    return name.removeprefix(DUE) if name.startswith(DUE) else None


def over(problem: Problem, name: str, at: At) -> bool:
    """Say whether a moment has passed: such moments are not judged any more."""
    fact = problem.done.get(name)
    return fact is not None and (at == "start" or fact.end is not None)


def change_min(change: Changeover, one: Step, other: Step) -> int:
    """Give the minutes a resource needs between two users, 0 where they are alike."""
    before, after = getattr(one, change.key), getattr(other, change.key)
    if before == after:
        return 0
    row = change.matrix.get(str(before), {})
    return row.get(str(after), change.minutes)
