"""Will it set, whip and hold: a few lines for the week, all of it for the check."""

from collections.abc import Iterator, Sequence

from demould.advice.findings import Finding
from demould.advice.makeup import Makeup
from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Table

SHOWN = 3


def will_it(found: Sequence[Finding]) -> Iterator[Block]:
    """Show the worst few; nothing where all is as usual."""
    if not found:
        return
    more = len(found) - SHOWN
    note = Words("{n} more: demould check", n=more) if more > 0 else ""
    yield Head(text=Words("will it set and hold"), note=note)
    yield Lines(lines=tuple(_line(one) for one in found[:SHOWN]))


def all_of_it(found: Sequence[Finding], names: dict[str, str]) -> Iterator[Block]:
    """Show everything that speaks up, with what to do."""
    yield Head(
        text=Words("will it set and hold"),
        note=Words("usual bands, not laws: your own figures go before them"),
    )
    if not found:
        yield Lines(lines=(Words("Everything is within what is usual."),))
        return
    yield Table(
        columns=(Column(share=1.2), Column(share=3), Column(share=3)),
        rows=tuple(
            (
                Cell(text=names[one.dessert]),
                Cell(text=one.says),
                Cell(text=one.do or ""),
            )
            for one in found
        ),
    )


def _line(one: Finding) -> Words:
    if one.do is None:
        return Words("{says}", says=one.says)
    return Words("{says}. Try: {do}", says=one.says, do=one.do)


def made_of(found: Sequence[Makeup]) -> Iterator[Block]:
    """Show what each component is made of, in 100 g as it is used."""
    if not found:
        return
    yield Head(
        text=Words("what it is made of"),
        note=Words("in 100 g as it is used; sweet: sugar is 100"),
    )
    heads = ("water", "fat", "milk+cocoa", "sugars", "sweet", "pH")
    yield Table(
        columns=(
            Column(share=2.2),
            *(Column(head=head, align="right", share=0.6) for head in heads),
            Column(head=Words("set by"), share=1.2),
        ),
        rows=tuple(_made_of(one) for one in found),
    )
    coloured = tuple(_coloured(one) for one in found if one.colours)
    if coloured:
        yield Lines(lines=coloured)


def _coloured(one: Makeup) -> Words:
    """Give each colour of a coat in grams and as a share of it."""
    shares = (
        f"{colour.grams:.3g} g {colour.what} in {colour.whole:.0f} g,"
        f" {colour.share:.2g} %"
        for colour in one.colours
    )
    return Words(
        "{name}: {shares} (by the scale, never by the spoon; the shade is your own: note"
        " which it gave)",
        name=one.name,
        shares=", ".join(shares),
    )


def _made_of(one: Makeup) -> tuple[Cell, ...]:
    inside = one.made_of
    origin = f"{inside.milk_fat:.0f}+{inside.cocoa_butter:.0f}"
    return (
        Cell(text=one.name),
        Cell(text=f"{inside.water:.0f}"),
        Cell(text=f"{inside.fat:.0f}"),
        Cell(text=origin if inside.milk_fat + inside.cocoa_butter >= 0.5 else ""),
        Cell(text=f"{inside.sugars:.0f}"),
        Cell(text=f"{one.sweetness:.0f}"),
        Cell(text=f"{one.acidity.likely:.1f}" if one.acidity else "", known="assumed"),
        Cell(
            text=", ".join(
                f"{dose.agent} {dose.to_judge.value:.2g}" for dose in one.doses
            )
        ),
    )
