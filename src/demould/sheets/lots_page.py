"""One lot, both ways in one look, and the sheet to call it back by."""

from collections.abc import Iterable, Iterator

from demould.log.lots import Traced, allergens_in_lots
from demould.mise.own_larder import Larder
from demould.mise.own_lots import Came, Entry, Made, Went
from demould.mise.words import Words
from demould.sheets.page import Blanks, Block, Cell, Column, Head, Lines, Page, Table


def lots_page(entries: Iterable[Entry], late: Iterable[Words]) -> Page:
    """Lay out every lot with what it is made of, the last first."""
    lots = [one for one in entries if isinstance(one, Came | Made)]
    late = tuple(late)
    return Page(
        key="lots",
        title=Words("lots"),
        blocks=(
            *([Lines(lines=late, loud=True)] if late else []),
            _table(sorted(lots, key=lambda one: one.on, reverse=True)),
        ),
    )


def lot_page(traced: Traced, larder: Larder | None = None) -> Page:
    """Lay out one lot: what is in it, what it went into, who has it.

    `larder` is None where it could not be read: then allergens are not known.
    """
    return Page(
        key=f"recall-{traced.lot.lot}",
        title=Words("lot {lot}: {what}", lot=traced.lot.lot, what=traced.lot.what),
        note=f"{traced.lot.on:%a %Y-%m-%d}",
        blocks=tuple(_blocks(traced, larder)),
        foot=(
            Words(
                "Calling back is decided by a person, with the local authority. A dip"
                " that was topped up keeps the lots, and the allergens, of the old one."
            ),
        ),
    )


def _carries(traced: Traced, larder: Larder | None) -> Iterator[Words]:
    if larder is None:
        yield Words("its allergens are NOT KNOWN: the kitchen folder has faults")
        return
    found, unknown = allergens_in_lots(traced, larder)
    if found:
        yield Words("carries {what}", what=", ".join(found))
    if unknown:
        yield Words("allergens NOT KNOWN of {what}", what=", ".join(unknown))


def _blocks(traced: Traced, larder: Larder | None) -> Iterator[Block]:
    yield Lines(lines=tuple(_carries(traced, larder)))
    if isinstance(traced.lot, Came):
        yield Lines(
            lines=(
                Words(
                    "came from {who}", who=traced.lot.supplier or Words("NOBODY NAMED")
                ),
            )
        )
    yield Head(text=Words("who has it"), note=Words("call these"))
    if traced.orders:
        yield Table(
            columns=(
                Column(share=1),
                Column(share=2),
                Column(share=1),
                Column(share=2),
            ),
            rows=tuple(_went(one) for one in traced.orders),
            ticks=True,
        )
    else:
        yield Lines(lines=(Words("nothing written down went to anybody"),))
    if traced.asks:
        yield Lines(lines=traced.asks, loud=True)
    if traced.went_into:
        yield Head(text=Words("went into"))
        yield _table(traced.went_into)
    if traced.made_of:
        yield Head(text=Words("made of"))
        yield _table(traced.made_of)
    yield Blanks(labels=(Words("called by"), Words("day"), Words("signed")))


def _went(one: Went) -> tuple[Cell, ...]:
    return (
        Cell(text=one.lot),
        Cell(text=one.to),
        Cell(text=f"{one.on:%a %Y-%m-%d}"),
        Cell(text=one.how_much),
    )


def _table(lots: Iterable[Came | Made]) -> Table:
    return Table(
        columns=(
            Column(head=Words("lot"), share=1),
            Column(head=Words("what"), share=2),
            Column(head=Words("day"), share=1.3),
            Column(head=Words("from"), share=2.5),
        ),
        rows=tuple(
            (
                Cell(text=one.lot),
                Cell(text=one.what),
                Cell(text=f"{one.on:%a %Y-%m-%d}"),
                Cell(text=one.supplier if isinstance(one, Came) else ", ".join(one.of)),
            )
            for one in lots
        ),
    )
