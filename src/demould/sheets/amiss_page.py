"""It went wrong: what to do now, then why, then how to tell, then next time."""

from collections.abc import Iterator

from demould.advice.troubles.ranked import Suspect, Trouble
from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table, Text

TO_PREVENT = 3


def amiss_page(found: Trouble, dessert: str) -> Page:
    """Lay a trouble out in the order a cook with it on the bench wants to know it."""
    where = found.component.name if found.component else dessert
    if _on_the_whole(found):
        where = dessert
    return Page(
        key="amiss",
        title=Words("{sign}", sign=found.sign.name.upper()),
        note=where,
        blocks=tuple(_blocks(found)),
    )


def _on_the_whole(found: Trouble) -> bool:
    """Whether it is a trouble of the piece, and not of one component's formula."""
    first = found.suspects[0]
    return found.component is None or (
        not found.named
        and not found.sign.of
        and (first.by != "the card" or "dew" in first.cause.reading)
    )


def _blocks(found: Trouble) -> Iterator[Block]:
    now: list[Text] = [Words("now: {rescue}", rescue=found.sign.rescue)]
    yield Lines(lines=tuple(now))
    if found.sign.caution:
        yield Lines(lines=(found.sign.caution,), loud=True)
    yield Head(text=Words("why, the likeliest first"))
    yield Table(
        columns=(
            Column(align="right", share=0.3),
            Column(share=2.2),
            Column(share=2.4),
            Column(head=Words("how to tell"), share=2.4),
        ),
        rows=tuple(
            _row(number, one)
            for number, one in enumerate(
                (one for one in found.suspects if not _hardly(one)), start=1
            )
        ),
    )
    yield from _cleared(found)
    yield Head(text=Words("next time"))
    yield Lines(
        lines=tuple(
            Words("{cause}: {prevent}", cause=one.cause.name, prevent=one.cause.prevent)
            for one in found.suspects[:TO_PREVENT]
            if not _hardly(one)
        )
        or (Words("nothing that was read speaks for any of these: read more"),)
    )


def _cleared(found: Trouble) -> Iterator[Block]:
    """Name what hardly is the cause, apart by what says so."""
    cleared = [one for one in found.suspects if _hardly(one)]
    read = [str(one.says) for one in cleared if one.by == "your reading"]
    card = [one.cause.name for one in cleared if one.by != "your reading"]
    lines: list[Text] = []
    if read:
        lines.append(Words("hardly: {all}", all="; ".join(read)))
    if card:
        lines.append(Words("hardly, by the formula: {all}", all="; ".join(card)))
    if lines:
        yield Lines(lines=tuple(lines))


def _hardly(one: Suspect) -> bool:
    """Whether a number, and not only what the card means to do, speaks against it."""
    return one.weighed == "speaks against it" and not one.meant


def _row(number: int, one: Suspect) -> tuple[Cell, ...]:
    sure = one.weighed == "speaks for it"
    known = one.says if one.value is not None else Words("not read yet")
    if one.meant:
        known = Words("{says}: measured?", says=one.says)
    return (
        Cell(text=str(number)),
        Cell(text=one.cause.name, strong=sure),
        Cell(text=known),
        Cell(text="" if one.by == "your reading" else one.cause.test),
    )
