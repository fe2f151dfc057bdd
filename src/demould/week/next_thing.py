"""Only the next thing: what, when, and what has to be set out for it now."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from demould.mise.entry import Happened
from demould.mise.words import Words
from demould.plan.kitchen.from_kitchen import Laid
from demould.week.timing import Entry

THEN = 2
"""So many steps after the next are told, without what they need."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Next:
    """The next step of one person, or of anybody, and what to set out for it.

    `then` are the steps after it. `running` are the waits that are not over, the first
    to end first. `unsaid` are steps that should be over and that nobody has spoken of.
    """

    entry: Entry | None
    set_out: tuple[Words, ...]
    then: tuple[Entry, ...]
    running: tuple[Entry, ...]
    unsaid: tuple[Entry, ...]


def next_thing(
    laid: Laid,
    entries: Iterable[Entry],
    done: Mapping[str, Happened],
    now: datetime,
    who: str | None = None,
) -> Next:
    """Give the first step that is not over, of one person or of anybody.

    What was planned to be over is taken as over, as long as nobody has said that it has
    only begun.
    """
    entries = tuple(entries)
    mine = [
        one
        for one in entries
        if not one.part.stands and (who is None or who in one.who)
    ]
    unsaid = [one for one in mine if one.end <= now and one.id not in done]
    open_ = [one for one in mine if one not in unsaid and not _over(done, one.id)]
    running = [
        one
        for one in entries
        if one.part.stands and one.start <= now < one.end and not _over(done, one.id)
    ]
    first = open_[0] if open_ else None
    return Next(
        entry=first,
        set_out=tuple(set_out(laid, first)) if first else (),
        then=tuple(open_[1 : 1 + THEN]),
        running=tuple(sorted(running, key=lambda one: one.end)),
        unsaid=tuple(unsaid),
    )


def _over(done: Mapping[str, Happened], name: str) -> bool:
    return name in done and done[name].end is not None


def set_out(laid: Laid, entry: Entry) -> list[Words]:
    """Give moulds, jug, tools, and the parts it needs out of the cold."""
    part = entry.part
    found: list[Words] = []
    for hold in laid.problem.holds:
        kind, _, key = hold.resource.partition(":")
        if hold.from_ == entry.id and kind == "mould":
            found.append(Words("{n} {mould} moulds", n=hold.amount, mould=key))
        elif hold.from_ == entry.id and kind == "jug":
            found.append(Words("the {width} jug", width=key))
    found += [Words("the {tool}", tool=tool) for tool in part.step.tools]
    components = {one.key: one for one in part.make.dessert.components}
    for need in part.step.needs:
        component = components[need.component]
        place = _stands_in(laid, part.make.order.key, need.component)
        name = component.name[:1].lower() + component.name[1:]
        if place:
            found.append(Words("{name}, from the {place}", name=name, place=place))
        else:
            found.append(Words("{name}", name=name))
    found += [Words("{remark}", remark=remark) for remark in part.step.remarks[:1]]
    return found


def _stands_in(laid: Laid, order: str, component: str) -> str | None:
    """Give the cold place a component stands in before it is needed."""
    for part in reversed(list(laid.parts.values())):
        if (
            part.make.order.key == order
            and part.component is not None
            and part.component.key == component
            and part.stands
        ):
            if part.step.place:
                return part.step.place
            if part.step.roads:
                return part.step.roads[-1].place
    return None
