"""How long one dessert freezes and thaws, with the way there."""

from collections.abc import Iterator

from demould.mise.dessert import Dessert
from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import between
from demould.week.chilling import Chilling, InPlace

EVERY = 4
"""Of the curve's two dozen points a page shows every fourth."""


def cold_page(dessert: Dessert, chilling: Chilling) -> Page:
    """Give all waits of a dessert in the cold, with what they hang on."""
    return Page(
        key=f"cold-{dessert.key}",
        title=dessert.name,
        note=chilling.load,
        blocks=(
            *_waits(
                Words("freeze, until nowhere is warmer than -18 °C"), chilling.freezing
            ),
            *_waits(
                Words("thaw, until no ice is left and the core is +1 °C"),
                chilling.thawing,
            ),
            Head(text=Words("the probe")),
            Lines(
                lines=(
                    Words(
                        "into the middle of the centre; -18 °C before it is demoulded"
                    ),
                    Words(
                        "these are estimates for planning: a probe in the piece decides"
                    ),
                )
            ),
        ),
    )


def _waits(head: Words, waits: tuple[InPlace, ...]) -> Iterator[Block]:
    if not waits:
        return
    yield Head(text=head)
    yield Table(
        columns=(
            Column(share=1.5),
            Column(head=Words("between"), share=1.3),
            Column(head=Words("likely"), align="right"),
            Column(head=Words("heat"), align="right"),
            Column(head=Words("unsure first of all by"), share=4),
        ),
        rows=tuple(_row(one) for one in waits),
    )
    for one in waits:
        yield from _curve(one)


def _name(one: InPlace) -> str:
    how = f", {one.how}" if one.how else ""
    return f"{one.place.key} {one.place.air.value:g} °C{how}"


def _row(one: InPlace) -> tuple[Cell, ...]:
    hours = one.wait.hours
    if hours is None:
        return (
            Cell(text=_name(one)),
            Cell(text=Words("never")),
            Cell(text=""),
            Cell(text=""),
            Cell(text=one.wait.never or ""),
        )
    return (
        Cell(text=_name(one)),
        Cell(text=between(hours), known="assumed"),
        Cell(text=f"{hours.likely:.1f} h", known="assumed"),
        Cell(text=f"{abs(one.wait.heat_kj):.1f} kJ"),
        Cell(text=hours.reason),
    )


def _curve(one: InPlace) -> Iterator[Block]:
    points = [*one.wait.curve[::EVERY], one.wait.curve[-1]]
    said = [f"{hours:.1f} h {core:.0f}/{skin:.0f}" for hours, core, skin, _ in points]
    lines: list[str | Words] = [
        Words("{name}, core/surface °C: {said}", name=_name(one), said="  ".join(said))
    ]
    if one.wait.remark:
        lines.append(one.wait.remark)
    yield Lines(lines=tuple(lines))
