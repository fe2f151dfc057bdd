"""From orders, desserts and a kitchen to the problem of when and by whom."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, time
from itertools import pairwise
from math import ceil

from demould.mise.component import Component
from demould.mise.dessert import FromMould
from demould.mise.kitchen import Kitchen, Person
from demould.mise.method import Method, Step
from demould.plan.kitchen.clock import (
    hours_of,
    midnight_of,
    minutes_since,
    open_windows,
)
from demould.plan.kitchen.limits import jug_name, resources
from demould.plan.kitchen.lines import OPEN, plan_steps
from demould.plan.kitchen.parts import Part, ToMake, count_of, rounds_of, step_name
from demould.plan.kitchen.shared import Shared, shared_batches
from demould.plan.problem import steps as problem
from demould.plan.problem.telling import minutes

SPARE_BEFORE_DUE_MIN = 30
"""Spare minutes wished for between the last step and a collection."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """The problem, what each of its steps is, and the midnight it counts from."""

    origin: datetime
    problem: problem.Problem
    parts: Mapping[str, Part]


PlanSteps = tuple[problem.Step, ...]


@dataclass(frozen=True, slots=True)
class _Group:
    """One line of a method, laid out: its plan steps by round (0: once for all)."""

    step: Step
    by_round: Mapping[int, PlanSteps]


@dataclass(slots=True)
class _Sheet:
    """What is gathered while one order is laid out."""

    kitchen: Kitchen
    make: ToMake
    origin: datetime
    steps: list[problem.Step] = field(default_factory=list)
    lags: list[problem.Lag] = field(default_factory=list)
    holds: list[problem.Hold] = field(default_factory=list)
    parts: dict[str, Part] = field(default_factory=dict)
    shared: Mapping[str, Shared] = field(default_factory=dict)
    chains: dict[str, tuple[_Group, ...]] = field(default_factory=dict)


def lay_out(
    kitchen: Kitchen,
    makes: Iterable[ToMake],
    now: datetime,
    *,
    share: bool = True,
    since: datetime | None = None,
) -> Laid:
    """Lay all orders out as one problem, from `now` (aware) to the last due time.

    With `share` what two orders of one dessert both need is made once, where its hold
    reaches from the first to the last of them. Minutes count from the midnight before
    `since`, where a week is under way, else before `now`.
    """
    makes = tuple(makes)
    origin = midnight_of(since or now, kitchen.zone)
    until = max(make.order.due for make in makes)
    sheets = [_Sheet(kitchen, make, origin) for make in makes]
    batches = shared_batches(kitchen, makes) if share else {}
    evening = datetime.combine(until.date(), time(23, 59), until.tzinfo)
    windows = open_windows(kitchen, origin, now, evening)
    for sheet in sorted(sheets, key=lambda one: one.make.order.due):
        sheet.shared = batches.get(sheet.make.order.key, {})
        leads = {one.make.order.key: one for one in sheets}
        _lay_out_one(sheet, leads)
    return Laid(
        origin=origin,
        problem=problem.Problem(
            id="week",
            origin=origin.replace(tzinfo=None).isoformat(timespec="minutes"),
            zone=kitchen.zone,
            horizon=minutes_since(origin, until),
            calendars={
                OPEN: windows,
                **{
                    _hours(person): hours_of(person, windows, origin)
                    for person in kitchen.people
                    if person.away
                },
            },
            resources=tuple(resources(kitchen)),
            orders=tuple(
                problem.Order(
                    id=make.order.key, due=minutes_since(origin, make.order.due)
                )
                for make in makes
            ),
            steps=tuple(step for sheet in sheets for step in sheet.steps),
            lags=tuple(lag for sheet in sheets for lag in sheet.lags),
            holds=tuple(hold for sheet in sheets for hold in sheet.holds),
            people=tuple(
                problem.Person(
                    name=person.name,
                    calendar=_hours(person),
                    skills=frozenset(person.can),
                )
                for person in kitchen.people
            ),
        ),
        parts={name: part for sheet in sheets for name, part in sheet.parts.items()},
    )


def _hours(person: Person) -> str:
    return f"hours of {person.name}" if person.away else OPEN


def _lay_out_one(sheet: _Sheet, leads: Mapping[str, _Sheet]) -> None:
    dessert = sheet.make.dessert
    for component in dessert.components:
        lead = sheet.shared[component.key].lead if component.key in sheet.shared else ""
        if lead in leads and leads[lead] is not sheet:
            sheet.chains[component.key] = leads[lead].chains[component.key]
        elif count_of(sheet.make, component):
            sheet.chains[component.key] = _chain(sheet, component, component.method)
    piece = _chain(sheet, None, dessert.method)
    for key, chain in sheet.chains.items():
        if chain and piece:
            _follow(sheet, chain[-1], _first_that_needs(piece, key))
    _tie_jug(sheet, piece)
    if piece:
        _end_at_due(sheet, piece[-1])
        _hold_till_due(sheet, piece)


def _chain(
    sheet: _Sheet, component: Component | None, method: Method
) -> tuple[_Group, ...]:
    """Lay out one method, its lines after each other."""
    batch = sheet.shared.get(component.key) if component else None
    arrives = sheet.make.arrivals.get(component.key) if component else None
    if batch is not None:
        arrives = batch.arrives
    earliest = minutes_since(sheet.origin, arrives) if arrives else None
    groups: list[_Group] = []
    turns = _in_turns(sheet, component, method)
    for index, step in enumerate(method):
        group = _group(
            sheet,
            component,
            step,
            None if index else earliest,
            turns=step.each_round or index < turns,
        )
        groups.append(group)
        if index:
            _follow(sheet, groups[-2], groups[-1])
    _round_by_round(sheet, groups)
    _tie_moulds(sheet, component, groups)
    return tuple(groups)


def _in_turns(sheet: _Sheet, component: Component | None, method: Method) -> int:
    """Count the lines that go by the fillings of a component's own mould.

    Where all of it does not fit at once, each filling is made, frozen and taken out
    before the next: nothing that sets stands about until a mould comes free.
    """
    if component is None or component.key in sheet.shared:
        return 0
    frozen = next((i for i, step in enumerate(method) if step.roads), None)
    if frozen is None or _mould_of(sheet, component) is None:
        return 0
    once = len(rounds_of(sheet.make, component)) == 1
    return 0 if once else min(len(method), frozen + 2)


def _group(
    sheet: _Sheet,
    component: Component | None,
    step: Step,
    earliest: int | None,
    *,
    turns: bool,
) -> _Group:
    make = sheet.make
    batch = sheet.shared.get(component.key) if component else None
    sizes = (
        dict(enumerate(rounds_of(make, component), start=1))
        if turns
        else {0: batch.pieces if batch else count_of(make, component)}
    )
    by_round = {}
    for number, pieces in sizes.items():
        laid = plan_steps(
            sheet.kitchen,
            make,
            component,
            step,
            name=step_name(make, component, number, step.key),
            pieces=pieces,
            earliest=earliest,
        )
        if batch is not None:
            laid = tuple(replace(one, order=batch.orders) for one in laid)
        for one in laid:
            sheet.parts[one.id] = Part(
                make=make,
                component=component,
                step=step,
                round=number,
                pieces=pieces,
                stands=one.attended != "all",
            )
        sheet.steps.extend(laid)
        sheet.lags.extend(_at_once(laid))
        by_round[number] = laid
    return _Group(step, by_round)


def _round_by_round(sheet: _Sheet, groups: list[_Group]) -> None:
    """Full rounds come first: none overtakes the one before it."""
    for group in groups:
        for early, late in pairwise(group.by_round.values()):
            sheet.lags.append(
                problem.Lag(
                    from_=early[0].id,
                    from_at="start",
                    to=late[0].id,
                    why=f"{early[0].label}: one round after the other",
                )
            )


def _at_once(laid: PlanSteps) -> Iterator[problem.Lag]:
    """What stands begins the moment the hands are off it."""
    for hands, stands in pairwise(laid):
        why = f"{stands.label}: it stands from the moment the hands are off"
        yield problem.Lag(from_=hands.id, to=stands.id, min=0, max=0, why=why)


def _follow(sheet: _Sheet, before: _Group, after: _Group) -> None:
    """One line after another: round by round where both go by rounds."""
    for number, early in before.by_round.items():
        for other, late in after.by_round.items():
            if not (number and other and number != other):
                sheet.lags.extend(_one_after_another(before.step, early, late))


def _one_after_another(
    step: Step, early: PlanSteps, late: PlanSteps
) -> Iterator[problem.Lag]:
    last, first = early[-1], late[0]
    at_once = 0 if step.roads == () and first.attended != "all" else None
    yield problem.Lag(
        from_=last.id,
        to=first.id,
        max=at_once,
        why=f"{first.label} after {last.label}",
    )
    if step.within:
        yield problem.Lag(
            from_=last.id,
            to=first.id,
            to_at="end",
            min=None,
            max=int(step.within.value),
            why=f"{last.label} is used up within {minutes(int(step.within.value))}",
        )
    longest = [step.hold] if step.hold else []
    if step.stand and step.stand.most:
        longest.append(step.stand.most)
    for figure in longest:
        yield problem.Lag(
            from_=last.id,
            from_at="start" if step.stand else "end",
            to=first.id,
            min=None,
            max=int(figure.value),
            why=f"{last.label} holds {minutes(int(figure.value))}",
        )


def _first_that_needs(piece: tuple[_Group, ...], key: str) -> _Group:
    """Find the step that names the component, or the first of all."""
    naming = (
        group
        for group in piece
        if any(need.component == key for need in group.step.needs)
    )
    return next(naming, piece[0])


def _tie_moulds(
    sheet: _Sheet, component: Component | None, groups: list[_Group]
) -> None:
    """A mould is tied from the hands before the freeze to the end of those after."""
    mould = _mould_of(sheet, component)
    frozen = next((i for i, group in enumerate(groups) if group.step.roads), None)
    if mould is None or frozen is None:
        return
    filled = groups[max(0, frozen - 1)]
    freed = groups[min(len(groups) - 1, frozen + 1)]
    batch = sheet.shared.get(component.key) if component else None
    rounds = (batch.pieces,) if batch else rounds_of(sheet.make, component)
    for number, size in enumerate(rounds, start=1):
        sheet.holds.append(
            problem.Hold(
                resource=f"mould:{mould}",
                amount=ceil(size / _cavities_each(sheet.kitchen, mould)),
                from_=_of_round(filled, number)[0].id,
                to=_of_round(freed, number)[-1].id,
            )
        )


def _tie_jug(sheet: _Sheet, piece: tuple[_Group, ...]) -> None:
    """A jug is tied from melting what is dipped into to the last piece dipped."""
    if sheet.make.jug is None or not piece:
        return
    key, width = sheet.make.jug
    melted, dipped = sheet.chains.get(key), _first_that_needs(piece, key)
    if melted and dipped.by_round:
        sheet.holds.append(
            problem.Hold(
                resource=jug_name(width),
                amount=1,
                from_=next(iter(melted[0].by_round.values()))[0].id,
                to=list(dipped.by_round.values())[-1][0].id,
            )
        )


def _of_round(group: _Group, number: int) -> PlanSteps:
    return group.by_round[number if number in group.by_round else 0]


def _mould_of(sheet: _Sheet, component: Component | None) -> str | None:
    if component is None:
        return sheet.make.dessert.mould
    for layer in sheet.make.dessert.layers:
        if layer.component == component.key and isinstance(layer.fill, FromMould):
            return layer.fill.mould
    return None


def _cavities_each(kitchen: Kitchen, key: str) -> int:
    return next(mould.cavities_each for mould in kitchen.moulds if mould.key == key)


def _end_at_due(sheet: _Sheet, last: _Group) -> None:
    """Plates are served as they are plated; what is collected may stand ready."""
    order = sheet.make.order
    served = order.ends == "plates"
    for laid in last.by_round.values():
        sheet.lags.append(
            problem.Lag(
                from_=laid[-1].id,
                to=f"{problem.DUE}{order.key}",
                max=0 if served else None,
                why=f"{laid[-1].label} ready for {order.key}",
            )
        )
        if not served:
            at = sheet.steps.index(laid[-1])
            sheet.steps[at] = replace(laid[-1], margin=SPARE_BEFORE_DUE_MIN)


def _hold_till_due(sheet: _Sheet, piece: tuple[_Group, ...]) -> None:
    """What thaws holds until it is fetched or served, not only to the next step."""
    due = f"{problem.DUE}{sheet.make.order.key}"
    for group in reversed(piece):
        if group.step.roads:
            return
        if group.step.stand and group.step.hold:
            hold = minutes(int(group.step.hold.value))
            for laid in group.by_round.values():
                sheet.lags.append(
                    problem.Lag(
                        from_=laid[-1].id,
                        from_at="start",
                        to=due,
                        min=None,
                        max=int(group.step.hold.value),
                        why=f"{laid[-1].label} holds {hold} from the door",
                    )
                )
            return
