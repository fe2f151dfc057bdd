"""The unknowns of some steps for the solver, beside those that have their place."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from ortools.sat.python import cp_model

from demould.plan.answer.schedule import attended_parts
from demould.plan.problem.steps import due_order
from demould.plan.solve.asked import moments
from demould.plan.solve.cpsat.hours import keep_hours
from demould.plan.solve.cpsat.sittings import sittings_of
from demould.plan.solve.cpsat.unknown import (
    Doing,
    Part,
    Sum,
    domain_of,
    taken_roads,
    who_may,
)
from demould.plan.solve.net import settle

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from demould.plan.answer.schedule import Planned
    from demould.plan.problem.steps import At, Road, Step, Window
    from demould.plan.solve.asked import Asked
    from demould.plan.solve.net import Limits


@dataclass(frozen=True, slots=True, kw_only=True)
class Week:
    """The model of some steps; ``placed`` have their place, all others are left out."""

    asked: Asked
    limits: Limits
    model: cp_model.CpModel
    doings: Mapping[str, Doing]
    placed: Mapping[str, Doing]
    sessions: dict[tuple[str, Window], cp_model.IntVar | int] = field(
        default_factory=dict
    )

    def at(self, name: str, at: At) -> Sum | None:
        """Give the minute of a start, an end or a due time; None for what is left out."""
        if due_order(name) is not None:
            return self.limits.first[name, "start"]
        doing = self.doings.get(name) or self.placed.get(name)
        if doing is None:
            return None
        return doing.start if at == "start" else doing.end


@dataclass(frozen=True, slots=True, kw_only=True)
class _Set(Mapping[str, Doing]):
    """The steps that have their place, read only where they are asked for."""

    asked: Asked
    places: Mapping[str, Planned]
    read: dict[str, Doing] = field(default_factory=dict)

    def __getitem__(self, name: str) -> Doing:
        if name not in self.read:
            self.read[name] = _set(self.asked, self.places[name])
        return self.read[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self.places)

    def __len__(self) -> int:
        return len(self.places)


def week_of(
    asked: Asked, free: Iterable[str], placed: Mapping[str, Planned]
) -> Week | None:
    """Give the model of the free steps with everything but what they have to share.

    None where waits and hours leave them no room beside those that have their place.
    """
    free = tuple(free)
    limits = asked.limits
    if placed:
        fixed = {
            here: place.start if here[1] == "start" else place.end
            for name in _next_to(asked, free)
            if (place := placed.get(name)) is not None
            for here in moments((name,))
        }
        limits = settle(asked.net, known=limits, fixed=fixed, free=moments(free))
        if limits.clash is not None:
            return None
    model = cp_model.CpModel()
    week = Week(
        asked=asked,
        limits=limits,
        model=model,
        doings={name: _doing(model, asked, limits, name) for name in free},
        placed=_Set(asked=asked, places=placed),
    )
    for doing in week.doings.values():
        keep_hours(model, asked.problem, doing)
    _keep_lags(week)
    return week


def _next_to(asked: Asked, free: tuple[str, ...]) -> Iterator[str]:
    """Walk what waits tie to the free steps."""
    seen = set(free)
    for name in free:
        for lag in asked.lags.get(name, ()):
            for other in (lag.from_, lag.to):
                if other not in seen:
                    seen.add(other)
                    yield other


def _doing(model: cp_model.CpModel, asked: Asked, limits: Limits, name: str) -> Doing:
    step, ways = asked.steps[name], asked.ways[name]
    if step.interruptible:
        return sittings_of(model, asked, limits, step, ways)
    began = asked.problem.done.get(name)
    lengths = {way.duration for way in ways}
    fixed = len(lengths) == 1 and ways[0].duration.min == ways[0].duration.max
    start_in = domain_of(asked.net, limits, (name, "start"))
    end_in = domain_of(asked.net, limits, (name, "end"))
    if fixed and began is None:
        size: Sum = ways[0].duration.min
        start_in = start_in.intersection_with(
            end_in.addition_with(cp_model.Domain(-size, -size))
        )
        start: Sum = model.new_int_var_from_domain(start_in, f"{name} starts")
        end: Sum = start + size
    else:
        start = model.new_int_var_from_domain(start_in, f"{name} starts")
        end = model.new_int_var_from_domain(end_in, f"{name} ends")
        least, most = end_in.min() - start_in.max(), end_in.max() - start_in.min()
        size = model.new_int_var(max(0, least), max(0, most), f"{name} takes")
        model.add(start + size == end)
    took = taken_roads(model, step, ways, size if began is None else None)
    return Doing(
        step=step,
        start=start,
        size=size,
        end=end,
        took=took,
        parts=tuple(_parts(limits, step, ways, start, size, end)),
        who=who_may(model, asked.problem, step, took),
    )


def _parts(
    limits: Limits,
    step: Step,
    ways: tuple[Road, ...],
    start: Sum,
    size: Sum,
    end: Sum,
) -> Iterator[Part]:
    first, last = limits.first[step.id, "start"], limits.last[step.id, "start"]
    if step.attended == "all" and not (isinstance(size, int) and size == 0):
        least = min(way.duration.min for way in ways)
        yield Part(start=start, size=size, end=end, least=least, first=first, last=last)
    if step.attended == "ends" and step.attend_start:
        length = step.attend_start
        over = start + length
        yield Part(
            start=start, size=length, end=over, least=length, first=first, last=last
        )
    if step.attended == "ends" and step.attend_end:
        length = step.attend_end
        yield Part(
            start=end - length,
            size=length,
            end=end,
            least=length,
            first=limits.first[step.id, "end"] - length,
            last=limits.last[step.id, "end"] - length,
        )


def _set(asked: Asked, place: Planned) -> Doing:
    """Give a step that has its place, with nothing unknown in it."""
    step = asked.net.steps[place.id]
    every = asked.ways[place.id]
    road = next((way for way in every if way.name == place.took), every[0])
    return Doing(
        step=step,
        start=place.start,
        size=place.end - place.start,
        end=place.end,
        took=((road, True),),
        parts=tuple(
            Part(
                start=begin,
                size=over - begin,
                end=over,
                least=over - begin,
                first=begin,
                last=begin,
            )
            for begin, over in attended_parts(step, place)
        ),
        who=dict.fromkeys(place.who, True),
    )


def _keep_lags(week: Week) -> None:
    """Keep the waits between free steps; those to set minutes are in the limits."""
    for name in week.doings:
        for lag in week.asked.lags.get(name, ()):
            both = lag.from_ in week.doings and lag.to in week.doings
            if not both or name != lag.from_:
                continue
            after, before = week.at(lag.to, lag.to_at), week.at(lag.from_, lag.from_at)
            assert after is not None
            assert before is not None
            if lag.min is not None:
                week.model.add(after - before >= lag.min)
            if lag.max is not None:
                week.model.add(after - before <= lag.max)
