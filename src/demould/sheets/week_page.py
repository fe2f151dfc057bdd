"""The week on one page: decisions first, then grams, then hours."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from demould.amounts.finish.dip import InJug
from demould.amounts.tools.rounds import Rounds
from demould.mise.figure import how_known
from demould.mise.words import Words
from demould.sheets.bank_blocks import bank_blocks
from demould.sheets.call_page import do_today
from demould.sheets.care_blocks import careful, who_must_not
from demould.sheets.cold_page import beside_lines, hours_said
from demould.sheets.cost_page import cost_blocks
from demould.sheets.days import days
from demould.sheets.deadlines import deadlines
from demould.sheets.loads import loads
from demould.sheets.make_table import beside_it, make_table
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.shelves_page import fullest_rows, no_room
from demould.sheets.times import day_time
from demould.sheets.verdict import verdict
from demould.sheets.will_it import will_it
from demould.week.making import Making, Whip
from demould.week.sections import Week
from demould.week.timing import Timing

MOVES_SHOWN = 3


def week_page(week: Week, papers: str | None = None) -> Page:
    """Lay the week out in the order a cook wants to know it. `papers` says where."""
    last = max(making.order.due for making in week.makings)
    return Page(
        key="week",
        title=Words(
            "{kitchen}, the week to {day}",
            kitchen=week.kitchen.name.upper(),
            day=f"{last:%a}",
        ),
        note=Words("drawn up {now}", now=day_time(week.now)),
        blocks=tuple(_blocks(week, papers)),
    )


def wall_page(week: Week) -> Page:
    """Lay out what hangs on the wall: whether it stands, the days, the deadlines."""
    told = (
        (
            *days(week.kitchen, week.makings, week.timing),
            *deadlines(week.timing),
        )
        if week.timing.stands
        else ()
    )
    return replace(
        week_page(week),
        key="wall",
        paper="wall",
        blocks=(
            *verdict(week.makings, week.timing),
            *_decide(week),
            *do_today(week.buying, week.now),
            *told,
        ),
        foot=(Words("numbers assumed: {n}", n=len(week.sure.assumed)),),
    )


def _blocks(week: Week, papers: str | None) -> Iterator[Block]:
    yield from verdict(week.makings, week.timing)
    yield from _decide(week)
    yield from do_today(week.buying, week.now)
    yield from _as_written(week)
    yield Head(text=Words("make"))
    yield make_table([making.amounts for making in week.makings])
    yield from will_it(week.will_it)
    yield from _holds(week)
    yield from _cold(week)
    if week.timing.stands:
        yield from days(week.kitchen, week.makings, week.timing)
        yield from deadlines(week.timing)
    yield from bank_blocks(week.bank, week.makings)
    yield from who_must_not(week.caring)
    yield from careful(week.caring)
    yield from cost_blocks(week.costings, week.kitchen)
    yield from _sure(week)
    if papers:
        yield Head(text=Words("papers"), note=papers)


def _decide(week: Week) -> Iterator[Block]:
    if not week.decisions:
        return
    yield Head(text=Words("you decide"), note=Words("by"))
    yield Table(
        columns=(
            Column(align="right", share=0.3),
            Column(share=8),
            Column(align="right", share=1.3),
        ),
        rows=tuple(
            (
                Cell(text=str(number)),
                Cell(
                    text=" / ".join(
                        str(one) for one in (decision.asks, *decision.answers)
                    )
                ),
                Cell(text=day_time(decision.by) if decision.by else ""),
            )
            for number, decision in enumerate(week.decisions, start=1)
        ),
    )


def _as_written(week: Week) -> Iterator[Block]:
    yield Head(
        text=Words("as written it gives, pieces"), note=Words("weakest marked <")
    )
    rows = [_gives(making) for making in week.makings]
    width = max(len(row) for row in rows)
    blank = Cell(text="")
    yield Table(
        columns=(Column(share=1.6), *(Column() for _ in range(width - 1))),
        rows=tuple((*row, *[blank] * (width - len(row))) for row in rows),
    )


def _gives(making: Making) -> tuple[Cell, ...]:
    return (
        Cell(text=making.amounts.dessert.name),
        *(
            Cell(
                text=f"{one.component} {one.pieces}",
                known=how_known(one.gives),
                strong=one.weakest,
            )
            for one in making.amounts.counts.each
            if not beside_it(making.amounts, one.component)
        ),
    )


def _holds(week: Week) -> Iterator[Block]:
    yield Head(text=Words("what the kitchen holds"))
    yield Table(
        columns=(Column(share=2), Column(share=0.8), Column(share=5)),
        rows=(
            *(row for making in week.makings for row in _held(making, week.timing)),
            *fullest_rows(week.kitchen, week.timing),
        ),
    )
    yield from no_room(week.kitchen, week.timing)


def _held(making: Making, timing: Timing) -> Iterator[tuple[Cell, ...]]:
    blank = Cell(text="")
    yield (
        Cell(text=making.amounts.dessert.name),
        Cell(text=Words("moulds")),
        Cell(text=_turns(making.amounts.rounds)),
    )
    for whip in making.amounts.whips:
        what, amiss = _whipped(whip), whip.bowl.verdict != "fits"
        yield blank, Cell(text=Words("bowl")), Cell(text=what, strong=amiss)
    for place, load in loads(making, timing):
        yield blank, Cell(text=place), Cell(text=load)
    jug = making.amounts.jug
    if jug is not None:
        yield blank, Cell(text=Words("jug")), Cell(text=_told(jug))
        for wider in _wider(jug, making.amounts.jugs):
            yield blank, blank, Cell(text=wider)


def _whipped(whip: Whip) -> Words:
    most = whip.bowl.most
    return Words(
        "round of {n}: {mass:.0f} g{most}, {verdict}",
        n=whip.pieces,
        mass=whip.bowl.mass.value,
        most=f" of {most.value:.0f} g" if most else "",
        verdict=whip.bowl.verdict,
    )


def _turns(rounds: Rounds) -> Words:
    if rounds.count == 1:
        return Words(
            "{mould}: {made} of {cavities} cavities, one round",
            mould=rounds.mould,
            made=rounds.each[0],
            cavities=rounds.cavities,
        )
    return Words(
        "{mould}: {cavities} cavities, {n} rounds, {turns}",
        mould=rounds.mould,
        cavities=rounds.cavities,
        n=rounds.count,
        turns=" + ".join(str(one) for one in rounds.each),
    )


def _told(jug: InJug) -> Words:
    return Words(
        "{wide:g} mm: {least:.0f} to cover + {taken:.0f} on pieces"
        " + {heel:g} heel = {melt:.0f} g",
        wide=jug.jug.diameter.value,
        least=jug.least.value,
        taken=jug.taken.value,
        heel=jug.heel.value,
        melt=jug.melt.value,
    )


def _wider(jug: InJug, ways: Iterable[InJug]) -> Iterator[Words]:
    """Say what wider jugs would need: the one at hand is seldom the narrowest."""
    wide = [
        f"{way.jug.diameter.value:g} mm would need {way.melt.value:.0f} g"
        for way in ways
        if way.on_end == jug.on_end and way.jug.diameter.value > jug.jug.diameter.value
    ]
    if wide:
        yield Words("({ways})", ways=", ".join(wide))


def _cold(week: Week) -> Iterator[Block]:
    yield Head(
        text=Words("freeze and thaw, between"),
        note=Words("all moulds of one round, put in together"),
    )
    first = next(iter(week.chilling.values()))
    heads = [
        *(f"{one.place.key} {one.place.air.value:g}\xa0°C" for one in first.freezing),
        *(
            f"{one.how}, {one.place.key} {one.place.air.value:g}\xa0°C"
            for one in first.thawing
        ),
    ]
    yield Table(
        columns=(Column(share=1.4), *(Column(head=head) for head in heads)),
        rows=tuple(
            (
                Cell(text=making.amounts.dessert.name),
                *(
                    Cell(
                        text=hours_said(one.wait),
                        known="assumed",
                    )
                    for one in (
                        *week.chilling[making.amounts.dessert.key].freezing,
                        *week.chilling[making.amounts.dessert.key].thawing,
                    )
                ),
            )
            for making in week.makings
        ),
    )
    yield Lines(
        lines=(
            Words(
                "planned with what the method says; estimates are for planning, a probe"
                " in the piece decides; habit in an ordinary freezer: 12 h or more"
            ),
        )
    )
    too_warm = [
        Words("{name}: {says}", name=making.amounts.dessert.name, says=says)
        for making in week.makings
        for says in beside_lines(
            week.chilling[making.amounts.dessert.key], too_warm_only=True
        )
    ]
    if too_warm:
        yield Lines(lines=tuple(too_warm), loud=True)


def _sure(week: Week) -> Iterator[Block]:
    yield Head(
        text=Words("how sure"),
        note=Words("{n} figures assumed", n=len(week.sure.assumed)),
    )
    moves = week.sure.moves[:MOVES_SHOWN]
    if not moves:
        return
    yield Lines(lines=(Words("These move most:"),))
    yield Table(
        columns=(Column(share=2), Column(share=4)),
        rows=tuple(
            (
                Cell(text=f"{move.figure.name} {move.figure}", known="assumed"),
                Cell(text=move.says),
            )
            for move in moves
        ),
    )
    yield Lines(lines=(Words("first: {what}", what=moves[0].settled_by),))
