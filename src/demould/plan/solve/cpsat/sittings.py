"""A step that may be left when a window closes and taken up in another."""

from __future__ import annotations

from typing import TYPE_CHECKING

from demould.plan.problem.windows import inside_windows
from demould.plan.solve.asked import windows_of
from demould.plan.solve.cpsat.unknown import (
    Doing,
    Part,
    domain_of,
    taken_roads,
    who_may,
)

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

    from demould.plan.problem.steps import Road, Step
    from demould.plan.solve.asked import Asked
    from demould.plan.solve.net import Limits


def sittings_of(
    model: cp_model.CpModel,
    asked: Asked,
    limits: Limits,
    step: Step,
    ways: tuple[Road, ...],
) -> Doing:
    """Give a step as at most one sitting a window, which together are its work."""
    name, now = step.id, asked.problem.now or 0
    fact = asked.problem.done.get(name)
    before: tuple[tuple[int, int], ...] = ()
    if fact is not None:
        before = fact.segments or tuple(
            inside_windows(windows_of(asked.problem, step), fact.start, now)
        )
    start = model.new_int_var_from_domain(
        domain_of(asked.net, limits, (name, "start")), f"{name} starts"
    )
    end = model.new_int_var_from_domain(
        domain_of(asked.net, limits, (name, "end")), f"{name} ends"
    )
    since = limits.first[name, "start"] if fact is None else now
    parts = []
    for window in windows_of(asked.problem, step):
        first, last = (
            max(window.open, since),
            min(window.close, limits.last[name, "end"]),
        )
        if first < last:
            parts.append(_sitting(model, name, first, last))
    worked = sum(until - begin for begin, until in before)
    work = model.new_int_var(0, limits.last[name, "end"], f"{name} takes")
    model.add(work == sum(part.size for part in parts) + worked)
    if fact is None:
        _meet(model, parts, start, first=True)
        _meet(model, parts, end, first=False)
    else:
        for part in parts:
            model.add(part.end <= end).only_enforce_if(part.there)
        _ends_with_the_last(model, parts, end, now)
    took = taken_roads(model, step, ways, work)
    return Doing(
        step=step,
        start=start,
        size=end - start,
        end=end,
        took=took,
        parts=tuple(parts),
        who=who_may(model, asked.problem, step, took),
        before=before,
    )


def _sitting(model: cp_model.CpModel, name: str, first: int, last: int) -> Part:
    there = model.new_bool_var(f"{name} in {first}")
    begin = model.new_int_var(first, last, f"{name} sits {first}")
    size = model.new_int_var(0, last - first, f"{name} works {first}")
    over = model.new_int_var(first, last, f"{name} rises {first}")
    model.add(begin + size == over)
    model.add(size >= 1).only_enforce_if(there)
    model.add(size == 0).only_enforce_if(~there)
    model.add(begin == first).only_enforce_if(~there)
    return Part(
        start=begin,
        size=size,
        end=over,
        least=1,
        first=first,
        last=last - 1,
        there=there,
    )


def _meet(
    model: cp_model.CpModel, parts: list[Part], edge: cp_model.IntVar, *, first: bool
) -> None:
    """Let the step begin with its first sitting, or end with its last."""
    chosen = []
    for part in parts:
        it = model.new_bool_var("")
        model.add_implication(it, part.there)
        if first:
            model.add(edge <= part.start).only_enforce_if(part.there)
            model.add(edge == part.start).only_enforce_if(it)
        else:
            model.add(edge >= part.end).only_enforce_if(part.there)
            model.add(edge == part.end).only_enforce_if(it)
        chosen.append(it)
    model.add_exactly_one(chosen)


def _ends_with_the_last(
    model: cp_model.CpModel, parts: list[Part], end: cp_model.IntVar, now: int
) -> None:
    """Let a running step end with its last sitting, or now where none is left."""
    none_left = model.new_bool_var("")
    model.add(end == now).only_enforce_if(none_left)
    chosen = [none_left]
    for part in parts:
        model.add_implication(none_left, ~part.there)
        it = model.new_bool_var("")
        model.add_implication(it, part.there)
        model.add(end == part.end).only_enforce_if(it)
        chosen.append(it)
    model.add_exactly_one(chosen)
