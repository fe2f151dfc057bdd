"""The week on one page: decisions first, then grams, then hours."""

from collections.abc import Iterable, Iterator

from demould.mise.figure import Figure, how_known
from demould.mise.words import Words
from demould.sheets.days import days
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import between, day_time, grams, span
from demould.week.making import Making
from demould.week.sections import Week
from demould.week.timing import Timing

MOVES_SHOWN = 3
RIGHT = "right"


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


def _blocks(week: Week, papers: str | None) -> Iterator[Block]:
    yield from _stands(week)
    yield from _decide(week)
    yield from _as_written(week)
    yield from _make(week)
    yield from _holds(week)
    yield from _cold(week)
    if week.timing.stands:
        yield from days(week)
        yield from _latest(week.timing)
    yield from _sure(week)
    if papers:
        yield Head(text="papers", note=papers)


def _stands(week: Week) -> Iterator[Block]:
    timing = week.timing
    if not timing.stands:
        why = timing.schedule.explain.text if timing.schedule.explain else ""
        broken = tuple(str(one) for one in timing.broken)
        yield Lines(
            lines=(Words("IT DOES NOT STAND: {why}", why=why), *broken), loud=True
        )
        return
    tightest = min(timing.spare, key=lambda key: timing.spare[key], default=None)
    names = {making.order.key: making.dessert.name for making in week.makings}
    if tightest is None:
        yield Lines(lines=(Words("IT STANDS: everything in time."),))
    else:
        yield Lines(
            lines=(
                Words(
                    "IT STANDS: {n} orders in time. Tightest: {name}, {spare} to spare.",
                    n=len(week.makings),
                    name=names[tightest],
                    spare=span(timing.spare[tightest]),
                ),
            )
        )
    yield Table(
        columns=(
            Column(align="right", share=0.5),
            Column(share=2),
            Column(share=2),
            Column(share=2),
            Column(share=1.6),
        ),
        rows=tuple(_order_row(making, timing) for making in week.makings),
    )


def _order_row(making: Making, timing: Timing) -> tuple[Cell, ...]:
    order = making.order
    spares = making.pieces - order.pieces
    spare = timing.spare.get(order.key)
    return (
        Cell(text=str(order.pieces)),
        Cell(text=making.dessert.name, strong=False),
        Cell(text=Words("{ends} {at}", ends=order.ends, at=day_time(order.due))),
        _cell(
            Words("make {n} ({spares} spares)", n=making.pieces, spares=spares),
            making.made,
        ),
        Cell(text=Words("spare {span}", span=span(spare)) if spare is not None else ""),
    )


def _cell(text: str | Words, figure: Figure | None = None) -> Cell:
    return Cell(text=text, known=how_known(figure) if figure else None)


def _decide(week: Week) -> Iterator[Block]:
    if not week.decisions:
        return
    yield Head(text="you decide", note="by")
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
    yield Head(text="as written it gives, pieces", note="weakest marked <")
    rows = [_gives(making) for making in week.makings]
    width = max(len(row) for row in rows)
    blank = Cell(text="")
    yield Table(
        columns=(Column(share=1.6), *(Column() for _ in range(width - 1))),
        rows=tuple((*row, *[blank] * (width - len(row))) for row in rows),
    )


def _gives(making: Making) -> tuple[Cell, ...]:
    least = min((one.gives.value for one in making.yields), default=0)
    return (
        Cell(text=making.dessert.name),
        *(
            Cell(
                text=f"{one.component} {one.gives.value:.0f}",
                known=how_known(one.gives),
                strong=one.gives.value == least,
            )
            for one in making.yields
            if not _beside(making, one.component)
        ),
    )


def _beside(making: Making, component: str) -> bool:
    """Whether a component only goes beside the piece, on the plate."""
    return all(part.component != component for part in making.piece.parts)


def _make(week: Week) -> Iterator[Block]:
    yield Head(text="make")
    rows: list[tuple[Cell, ...]] = []
    for making in week.makings:
        rows.append(
            (
                Cell(
                    text=Words("{name}, {n}", name=making.dessert.name, n=making.pieces)
                ),
                *(Cell(text="") for _ in range(5)),
            )
        )
        rows.extend(_make_rows(making))
    yield Table(
        columns=(
            Column(share=2.4),
            Column(head="written", align="right"),
            Column(head="factor", align="right"),
            Column(head="weigh", align="right"),
            Column(head="in a piece", align="right"),
            Column(share=1.6),
        ),
        rows=tuple(rows),
    )


def _make_rows(making: Making) -> Iterator[tuple[Cell, ...]]:
    for make in making.makes:
        each = [
            part.grams
            for part in making.piece.parts
            if part.component == make.component
        ]
        yield (
            Cell(text=Words("  {name}", name=make.name)),
            _cell(f"{grams(make.written.value)} g", make.written),
            _cell(_factor(make.made, make.factor.value)),
            _cell(f"{grams(make.weigh.value)} g", make.weigh),
            _cell(f"{sum(one.value for one in each):.1f} g", each[0])
            if each
            else _cell(f"{grams(make.each.value)} g", make.each),
            Cell(text=_remark(making, make.component, make.cook_to)),
        )
    yield (
        Cell(text="  whole piece"),
        *(Cell(text="") for _ in range(3)),
        _cell(f"{making.piece.whole.value:.1f} g", making.piece.whole),
        Cell(text=""),
    )


def _factor(made: str, factor: float) -> str:
    if made == "whole batches":
        return "as it is" if factor == 1 else f"x {factor:g}"
    return f"x {factor:.3f}" if made == "scaled" else "--"


def _remark(making: Making, component: str, cook_to: Figure | None) -> str | Words:
    if _beside(making, component):
        return Words("beside it")
    if cook_to is not None:
        return Words("cook to {g} g", g=grams(cook_to.value))
    for part in making.piece.parts:
        if part.component == component and part.how == "rest":
            return f"{part.volume.value:.1f} ml"
    return ""


def _holds(week: Week) -> Iterator[Block]:
    yield Head(text="what the kitchen holds")
    yield Lines(lines=tuple(_hold_lines(week)))


def _hold_lines(week: Week) -> Iterator[Words]:
    for making in week.makings:
        turns = making.rounds
        yield Words(
            "moulds  {mould}: {made} in {cavities} cavities, {turns}",
            mould=turns.mould,
            made=making.pieces,
            cavities=turns.cavities,
            turns=" + ".join(str(one) for one in turns.each),
        )
    for making in week.makings:
        yield from _jug_lines(making)
        for whip in making.whips:
            yield Words(
                "bowl    {dessert}, round of {n}: {mass:.0f} g{most} ({verdict})",
                dessert=making.dessert.name,
                n=whip.pieces,
                mass=whip.bowl.mass.value,
                most=f" of {whip.bowl.most.value:.0f} g" if whip.bowl.most else "",
                verdict=whip.bowl.verdict,
            )


def _jug_lines(making: Making) -> Iterator[Words]:
    jug = making.jug
    if jug is None:
        return
    yield Words(
        "jug     {wide:g} mm: {least:.0f} to cover + {taken:.0f} on the pieces"
        " + {heel:g} heel = {melt:.0f} g",
        wide=jug.jug.diameter.value,
        least=jug.least.value,
        taken=jug.taken.value,
        heel=jug.heel.value,
        melt=jug.melt.value,
    )
    wider = [
        way
        for way in making.jugs
        if way.on_end == jug.on_end and way.jug.diameter.value > jug.jug.diameter.value
    ]
    if wider:
        yield Words(
            "        ({ways})",
            ways=", ".join(
                f"{way.jug.diameter.value:g} mm would need {way.melt.value:.0f} g"
                for way in wider
            ),
        )


def _cold(week: Week) -> Iterator[Block]:
    yield Head(text="freeze and thaw, between", note="one piece alone, in steady air")
    first = next(iter(week.chilling.values()))
    heads = [
        *(f"{one.place.key} {one.place.air.value:g} °C" for one in first.freezing),
        *(
            f"{one.how or 'open'}, {one.place.key} {one.place.air.value:g} °C"
            for one in first.thawing
        ),
    ]
    yield Table(
        columns=(Column(share=1.4), *(Column(head=head) for head in heads)),
        rows=tuple(
            (
                Cell(text=making.dessert.name),
                *(
                    Cell(
                        text=between(one.wait.hours) if one.wait.hours else "never",
                        known="assumed",
                    )
                    for one in (
                        *week.chilling[making.dessert.key].freezing,
                        *week.chilling[making.dessert.key].thawing,
                    )
                ),
            )
            for making in week.makings
        ),
    )
    yield Lines(
        lines=(
            Words(
                "planned with what the method says; a full load takes longer, and the"
                " habit in an ordinary freezer is 12 h or more"
            ),
        )
    )


def _latest(timing: Timing) -> Iterator[Block]:
    yield Head(text="latest starts")
    named = sorted(timing.latest.items(), key=lambda item: item[1])
    said = [f"{_short(timing, name)} {day_time(at)}" for name, at in named]
    yield Lines(lines=(" . ".join(said),))
    yield Head(text="no way back after")
    yield Lines(lines=(" . ".join(_no_way_back(timing)),))


def _short(timing: Timing, name: str) -> str:
    part = timing.laid.parts[name]
    what = part.component.key if part.component else part.make.dessert.name
    return f"{part.step.key} {what}"


def _no_way_back(timing: Timing) -> Iterable[str]:
    """Give each order's first latest start: past it, nothing in this plan's ways helps."""
    first: dict[str, str] = {}
    for name in sorted(timing.latest, key=lambda one: timing.latest[one]):
        first.setdefault(timing.laid.parts[name].make.order.key, name)
    return [
        f"{day_time(timing.latest[name])} ({_short(timing, name)})"
        for name in first.values()
    ]


def _sure(week: Week) -> Iterator[Block]:
    yield Head(
        text="how sure",
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
