"""What can not be in two places: resources and people, for the solver.

What has its place already is taken off what there is, minute by minute, and only what
is left is shared among the steps that are free.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from typing import TYPE_CHECKING

from ortools.sat.python import cp_model

from demould.plan.problem.steps import hands_needed

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from demould.plan.problem.steps import Resource, Road
    from demould.plan.solve.cpsat.unknown import Doing, Part, Sum, When
    from demould.plan.solve.cpsat.week import Week


@dataclass(frozen=True, slots=True, kw_only=True)
class _Demand:
    """A use that is not set, and the minutes it must lie between."""

    interval: cp_model.IntervalVar
    amount: int
    least: int
    first: int
    last: int


@dataclass(slots=True, kw_only=True)
class _Taken:
    """What is set: ``begin, until, amount``; and what still has to be placed."""

    set: list[tuple[int, int, int]]
    open: list[_Demand]


def share_resource(week: Week, resource: Resource) -> None:
    """Never let more of a resource be taken than there is."""
    name = resource.name
    touched = any(user in week.doings for user in week.asked.users.get(name, ()))
    held = week.asked.holds.get(name, ())
    if not touched and not any(
        one in week.doings for hold, _ in held for one in (hold.from_, hold.to)
    ):
        return
    taken = _Taken(set=[], open=[])
    for user in week.asked.users.get(name, ()):
        doing = week.doings.get(user) or week.placed.get(user)
        if doing is not None:
            _step_takes(week, taken, doing, name)
    for hold, least in held:
        begin, until = week.at(hold.from_, hold.from_at), week.at(hold.to, hold.to_at)
        if begin is not None and until is not None and hold.amount:
            _hold_takes(week, taken, begin, until, hold.amount, least)
    if taken.open:
        _cumulate(week, resource, taken)


def _step_takes(week: Week, taken: _Taken, doing: Doing, name: str) -> None:
    clean = doing.step.clean.get(name, 0)
    for road, chosen in doing.took:
        amount = road.uses.get(name, 0)
        if amount:
            least = road.duration.min + clean
            until = doing.end + clean
            _take(week, taken, doing.start, until, amount, least, chosen)
        hands = road.attend_uses.get(name, 0)
        for part in doing.parts if hands else ():
            there = _both(week, chosen, part.there)
            _take(week, taken, part.start, part.end, hands, part.least, there)
        for begin, over in doing.before if hands else ():
            taken.set.append((begin, over, hands))


def _hold_takes(
    week: Week, taken: _Taken, begin: Sum, until: Sum, amount: int, least: int
) -> None:
    _take(week, taken, begin, until, amount, least, True)  # noqa: FBT003 - always there


def _take(
    week: Week,
    taken: _Taken,
    begin: Sum,
    until: Sum,
    amount: int,
    least: int,
    there: When,
) -> None:
    """Note a use; what began before it is now is set as far as it must last."""
    model, now = week.model, week.asked.problem.now or 0
    if isinstance(begin, int) and isinstance(until, int) and there is True:
        taken.set.append((begin, until, amount))
        return
    first, last = _span(week, begin, until)
    begun = _constant(week, begin)
    if begun is not None and begun < now and there is True:
        so_far = max(now, begun + least)
        taken.set.append((begun, so_far, amount))
        begin, first, least = so_far, so_far, 0
    size = _difference(until, begin)
    if isinstance(size, int):
        interval = model.new_optional_fixed_size_interval_var(begin, size, there, "")
    else:
        length = model.new_int_var(least, max(least, last - first), "")
        interval = model.new_optional_interval_var(begin, length, until, there, "")
    taken.open.append(
        _Demand(interval=interval, amount=amount, least=least, first=first, last=last)
    )


def _difference(until: Sum, begin: Sum) -> Sum:
    """Give what lies between, as a number where it is one whatever the unknowns are."""
    if isinstance(until, int) and isinstance(begin, int):
        return until - begin
    return _flat(until - begin)


def _flat(sum_: Sum) -> Sum:
    if isinstance(sum_, int):
        return sum_
    flat = _terms(sum_)
    return flat[1] if not flat[0] else sum_


def _terms(sum_: cp_model.LinearExpr) -> tuple[dict[int, int], int]:
    flat = cp_model.FlatIntExpr(sum_)
    terms: dict[int, int] = defaultdict(int)
    for var, coeff in zip(flat.vars, flat.coeffs, strict=True):
        terms[var.index] += coeff
    return {var: coeff for var, coeff in terms.items() if coeff}, int(flat.offset)


def _span(week: Week, begin: Sum, until: Sum) -> tuple[int, int]:
    return _bound(week, begin, least=True), _bound(week, until, least=False)


def _bound(week: Week, sum_: Sum, *, least: bool) -> int:
    """Give the least, or the most, a sum of unknowns can be."""
    if isinstance(sum_, int):
        return sum_
    terms, offset = _terms(sum_)
    total = offset
    for index, coeff in terms.items():
        domain = week.model.get_int_var_from_proto_index(index).domain
        total += coeff * (domain.min() if (coeff > 0) == least else domain.max())
    return total


def _constant(week: Week, sum_: Sum) -> int | None:
    least = _bound(week, sum_, least=True)
    return least if least == _bound(week, sum_, least=False) else None


def _both(week: Week, one: When, other: When) -> When:
    if one is True or other is True:
        return other if one is True else one
    both = week.model.new_bool_var("")
    week.model.add_bool_or(~one, ~other, both)
    week.model.add_implication(both, one)
    week.model.add_implication(both, other)
    return both


def _cumulate(week: Week, resource: Resource, taken: _Taken) -> None:
    first = min(use.first for use in taken.open)
    last = max(use.last for use in taken.open)
    levels = list(_left(resource, taken.set, first, max(last, first + 1)))
    top = max(left for _, _, left in levels)
    if sum(use.amount for use in taken.open) <= min(left for _, _, left in levels):
        return
    blocks = [
        (week.model.new_fixed_size_interval_var(begin, until - begin, ""), top - left)
        for begin, until, left in levels
        if left < top
    ]
    alone = all(top < 2 * use.amount <= 2 * top and use.least for use in taken.open)
    if alone and all(top < 2 * amount for _, amount in blocks):
        week.model.add_no_overlap(
            [use.interval for use in taken.open] + [block for block, _ in blocks]
        )
        return
    week.model.add_cumulative(
        [use.interval for use in taken.open] + [block for block, _ in blocks],
        [use.amount for use in taken.open] + [amount for _, amount in blocks],
        top,
    )


def _left(
    resource: Resource, set_: Iterable[tuple[int, int, int]], first: int, last: int
) -> Iterator[tuple[int, int, int]]:
    """Give what is left of a resource between two minutes, as even stretches."""
    change: dict[int, int] = defaultdict(int)
    change[first] = resource.capacity
    for other in resource.profile:
        begin, until = max(other.start, first), min(other.end, last)
        if begin < until:
            change[begin] += other.capacity - resource.capacity
            change[until] -= other.capacity - resource.capacity
    for start, end, amount in set_:
        begin, until = max(start, first), min(end, last)
        if begin < until:
            change[begin] -= amount
            change[until] += amount
    left = 0
    minutes = sorted(minute for minute in change if minute < last)
    for begin, until in zip(minutes, [*minutes[1:], last], strict=True):
        left += change[begin]
        yield begin, until, max(0, left)


def share_people(week: Week) -> None:
    """Let nobody be in two places, nor all of them together be more than they are."""
    problem = week.asked.problem
    if not problem.people:
        return
    busy: dict[str, list[cp_model.IntervalVar]] = defaultdict(list)
    parts: list[cp_model.IntervalVar] = []
    hands: list[int] = []
    for doing in week.doings.values():
        needed = _hands(week, doing)
        for part in doing.parts:
            if needed and doing.step.id not in problem.done:
                parts.append(_during(week, part, part.there))
                hands.append(needed)
            for name, there in doing.who.items():
                busy[name].append(_during(week, part, _both(week, part.there, there)))
    lasts = [part.last + 1 for d in week.doings.values() for part in d.parts]
    firsts = [part.first for d in week.doings.values() for part in d.parts]
    for name, begin, until in _busy(week.placed, min(firsts, default=0)):
        if begin <= max(lasts, default=0) and name in busy:
            block = week.model.new_fixed_size_interval_var(begin, until - begin, "")
            busy[name].append(block)
            parts.append(block)
            hands.append(1)
    for intervals in busy.values():
        week.model.add_no_overlap(intervals)
    if parts:
        week.model.add_cumulative(parts, hands, len(problem.people))


def _busy(placed: Mapping[str, Doing], since: int) -> Iterator[tuple[str, int, int]]:
    for doing in placed.values():
        for part in doing.parts:
            if isinstance(part.end, int) and part.end > since:
                for name in doing.who:
                    yield name, part.first, part.end


def _hands(week: Week, doing: Doing) -> int:
    def needed(road: Road) -> int:
        return hands_needed(week.asked.problem, doing.step, road)

    return min(needed(road) for road, _ in doing.took)


def _during(week: Week, part: Part, there: When) -> cp_model.IntervalVar:
    return week.model.new_optional_interval_var(
        part.start, part.size, part.end, there, ""
    )
