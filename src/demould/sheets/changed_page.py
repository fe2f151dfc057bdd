"""What changed between two versions: the lines, then what they do."""

from collections.abc import Iterator, Sequence

from demould.advice.versions.allergens import Named
from demould.advice.versions.effects import Effect
from demould.advice.versions.lines import LineChanged
from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table


def changed_page(
    name: str, lines: Sequence[LineChanged], effects: Sequence[Effect], named: Named
) -> Page:
    """Give the page of a dessert in two versions."""
    return Page(
        key="changed",
        title=Words("{name}: what changed", name=name.upper()),
        blocks=tuple(_blocks(lines, effects, named)),
    )


def _blocks(
    lines: Sequence[LineChanged], effects: Sequence[Effect], named: Named
) -> Iterator[Block]:
    if not lines:
        yield Lines(lines=(Words("Nothing: the two say the same."),))
        return
    yield Head(text=Words("lines"), note=Words("{n} changed", n=len(lines)))
    yield Table(
        columns=(
            Column(share=2),
            Column(head=Words("was"), share=3),
            Column(head=Words("now"), share=3),
        ),
        rows=tuple(
            (
                Cell(text=one.where),
                Cell(text=one.was or Words("(not there)")),
                Cell(text=one.now or Words("(gone)")),
            )
            for one in lines
        ),
    )
    if named.new:
        yield Lines(
            lines=(Words("NOW NAMES: {them}", them=", ".join(named.new)),), loud=True
        )
    if named.gone:
        said = "no longer in the formula: {them}; traces and tools are not counted"
        yield Lines(lines=(Words(said, them=", ".join(named.gone)),))
    yield Head(text=Words("what that does"))
    told = tuple(one.says for one in effects)
    yield Lines(lines=told or (Words("no count, set, fat, sweetness or time moves"),))
