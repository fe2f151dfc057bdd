"""The agreed plan, kept as an entry, and what has happened since, as the plan reads it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from zoneinfo import ZoneInfo

from demould.log.now import agreed_plan, done_steps
from demould.mise.entry import Agreed, AgreedStep, Entries, Happened
from demould.mise.folder import Folder
from demould.plan.answer.schedule import Planned
from demould.plan.kitchen.clock import minutes_since, moment_at
from demould.plan.kitchen.from_kitchen import Laid, lay_out
from demould.plan.problem.steps import Fact
from demould.week.making import Making
from demould.week.orders import makings_of, wanted
from demould.week.sections import planned
from demould.week.timing import Entry, Timing


@dataclass(frozen=True, slots=True, kw_only=True)
class Running:
    """A week under way: its problem from now on, the plan agreed on, what is done.

    `agreed_at` is None where nobody has agreed: then the plan is the one made now.
    `gone` are agreed steps the week no longer has, `fresh` its steps nobody agreed on.
    """

    makings: tuple[Making, ...]
    laid: Laid
    agreed: Mapping[str, Planned]
    agreed_at: datetime | None
    changed: bool
    done: Mapping[str, Happened]
    gone: tuple[str, ...]
    fresh: tuple[str, ...]
    entries: tuple[Entry, ...]


def agreement(timing: Timing, *, id_: str, at: datetime, inputs: str) -> Agreed:
    """Give a plan as the entry that keeps it."""
    return Agreed(
        id=id_,
        at=at,
        inputs=inputs,
        steps=tuple(
            AgreedStep(
                step=one.id, start=one.start, end=one.end, who=one.who, took=one.took
            )
            for one in timing.entries
        ),
    )


def running(
    folder: Folder, entries: Entries, now: datetime, inputs: str
) -> Running | Timing:
    """Give the week as it runs, or the plan made now where that does not stand.

    Things are delivered as they were called when the plan was agreed on.
    """
    makings = makings_of(folder, now)
    agreed = agreed_plan(entries)
    if agreed is None:
        timing = planned(folder, makings, now)
        if not timing.stands:
            return timing
        steps = {place.id: place for place in timing.schedule.steps}
        return _running(folder, makings, timing.laid, steps, entries, None)
    since = min(agreed.at, now)
    makes = wanted(folder, makings, since)
    laid = lay_out(folder.kitchen, makes, now, since=since)
    steps = {one.step: _place(laid, one) for one in agreed.steps}
    found = _running(folder, makings, laid, steps, entries, agreed.at)
    return replace(found, changed=agreed.inputs != inputs)


def _running(
    folder: Folder,
    makings: Sequence[Making],
    laid: Laid,
    steps: Mapping[str, Planned],
    entries: Entries,
    at: datetime | None,
) -> Running:
    zone = ZoneInfo(folder.kitchen.zone)
    done = done_steps(entries)
    facts = {name: _fact(laid, one) for name, one in done.items() if name in laid.parts}
    laid = replace(laid, problem=replace(laid.problem, done=facts))
    kept = {name: one for name, one in steps.items() if name in laid.parts}
    return Running(
        makings=tuple(makings),
        laid=laid,
        agreed=kept,
        agreed_at=at.astimezone(zone) if at else None,
        changed=False,
        done=done,
        gone=tuple(name for name in steps if name not in laid.parts),
        fresh=tuple(name for name in laid.parts if name not in steps),
        entries=entries_of(laid, kept),
    )


def entries_of(laid: Laid, places: Mapping[str, Planned]) -> tuple[Entry, ...]:
    """Give planned steps on the clock of the kitchen, in its order."""
    found = [
        Entry(
            id=name,
            part=laid.parts[name],
            start=moment_at(laid.origin, one.start),
            end=moment_at(laid.origin, one.end),
            who=one.who,
            took=one.took,
        )
        for name, one in places.items()
    ]
    return tuple(sorted(found, key=lambda one: (one.start, one.end, one.id)))


def _place(laid: Laid, one: AgreedStep) -> Planned:
    return Planned(
        id=one.step,
        start=minutes_since(laid.origin, one.start),
        end=minutes_since(laid.origin, one.end),
        took=one.took,
        who=one.who,
    )


def _fact(laid: Laid, one: Happened) -> Fact:
    end = None if one.end is None else minutes_since(laid.origin, one.end)
    return Fact(start=minutes_since(laid.origin, one.start), end=end)
