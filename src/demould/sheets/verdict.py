"""Whether the plan stands: the first thing a cook looks for."""

from collections.abc import Iterator, Sequence

from demould.mise.figure import how_known
from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Lines, Table
from demould.sheets.times import day_time, span
from demould.week.making import Making
from demould.week.timing import Timing


def verdict(makings: Sequence[Making], timing: Timing) -> Iterator[Block]:
    """Say whether it stands and what is tightest, then a row an order."""
    if not timing.stands:
        yield from _does_not_stand(timing)
        return
    yield Lines(lines=(_stands(makings, timing),))
    yield Table(
        columns=(
            Column(align="right", share=0.5),
            Column(share=2),
            Column(share=2),
            Column(share=2),
            Column(share=1.6),
        ),
        rows=tuple(_row(making, timing) for making in makings),
    )


def _does_not_stand(timing: Timing) -> Iterator[Block]:
    """Say why, loudly; then what would make room, where the plan knows."""
    explain = timing.schedule.explain
    broken = tuple(one.text for one in timing.broken)
    if timing.limits:
        why: str | Words = timing.limits[0].text
    elif explain is not None:
        why = explain.text
    elif broken:
        why = Words("the plan that was found breaks what it promises")
    else:
        why = Words("no plan was found in the time given")
    yield Lines(lines=(Words("IT DOES NOT STAND: {why}", why=why), *broken), loud=True)
    if timing.limits:
        then = (one.text for one in timing.limits[1:])
        told = (Words("Then: {what}", what=what) for what in then)
        helps = Words("What helps: {help}", help=timing.limits[0].help)
        yield Lines(lines=(helps, *told))
    if explain is not None and explain.relaxations:
        room = (one.text for one in explain.relaxations)
        yield Lines(lines=(Words("What would make room, one of:"), *room))


def _stands(makings: Sequence[Making], timing: Timing) -> Words:
    names = {making.order.key: making.amounts.dessert.name for making in makings}
    tightest = min(timing.spare, key=lambda key: timing.spare[key], default=None)
    if tightest is None:
        return Words("IT STANDS: everything in time.")
    return Words(
        "IT STANDS: {n} in time. Tightest: {name}, {spare} to spare.",
        n="1 order" if len(makings) == 1 else f"{len(makings)} orders",
        name=names[tightest],
        spare=span(timing.spare[tightest]),
    )


def _row(making: Making, timing: Timing) -> tuple[Cell, ...]:
    order = making.order
    spares = _spares(making.amounts.pieces - order.pieces)
    spare = timing.spare.get(order.key)
    return (
        Cell(text=str(order.pieces)),
        Cell(text=making.amounts.dessert.name),
        Cell(text=Words("{ends} {at}", ends=order.ends, at=day_time(order.due))),
        Cell(
            text=Words("make {n} ({spares})", n=making.amounts.pieces, spares=spares),
            known=how_known(making.amounts.made),
        ),
        Cell(text=Words("spare {span}", span=span(spare)) if spare is not None else ""),
    )


def _spares(n: int) -> Words:
    match n:
        case 0:
            return Words("no spares")
        case 1:
            return Words("1 spare")
        case _:
            return Words("{n} spares", n=n)
