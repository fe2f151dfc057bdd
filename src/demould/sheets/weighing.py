"""A weighing sheet: one component in order of use, to tick, with tare and lot lines."""

from collections.abc import Iterator, Sequence

from demould.amounts.counts.factors import Make
from demould.amounts.counts.weighable import Weighing, weighings
from demould.care.cautions import of_component
from demould.matter.grams import Find
from demould.mise.component import Component
from demould.mise.dessert import component_of
from demould.mise.figure import Figure, assumed_in, how_known, worked
from demould.mise.formula import FormulaLine
from demould.mise.kitchen import Scale
from demould.mise.version import formula_version
from demould.mise.words import Words
from demould.office.needs import still_to_make
from demould.sheets.bank_blocks import goes_first
from demould.sheets.care_blocks import minded
from demould.sheets.make_table import cooked_to
from demould.sheets.page import Blanks, Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import day_time, grams
from demould.week.making import Making


def weighing_sheets(
    making: Making, scales: Sequence[Scale], find: Find
) -> tuple[Page, ...]:
    """Give a sheet for every component of an order."""
    return tuple(
        weighing_sheet(making, make, scales, find) for make in making.amounts.makes
    )


def weighing_sheet(
    making: Making, make: Make, scales: Sequence[Scale], find: Find
) -> Page:
    """Give the sheet of one component, each line by its factor."""
    component = component_of(making.amounts.dessert, make.component)
    banked = making.banked.get(make.component, 0.0)
    new = still_to_make(make, banked)
    factor = make.factor if new == 1 else _of_the_rest(make, new)
    lines = weighings(component, factor, scales, find)
    assumed = assumed_in([make.weigh, *(one.grams for one in lines)])
    return Page(
        key=f"weigh-{making.order.key}-{make.component}",
        title=make.name,
        note=Words(
            "{dessert}, {n} for {due}",
            dessert=making.amounts.dessert.name,
            n=making.amounts.pieces,
            due=day_time(making.order.due),
        ),
        blocks=(*_first(make, banked), *_blocks(make, component, lines)),
        foot=(
            Words("formula {version}", version=formula_version(making.amounts.dessert)),
            Words("numbers assumed: {n}", n=len(assumed)),
        ),
    )


def _of_the_rest(make: Make, new: float) -> Figure:
    rule = Words("{new:.0f} % of it is made new", new=100 * new)
    value = make.factor.value * new
    return worked(f"factor of {make.name}", value, "x", rule, make.factor)


def _first(make: Make, banked: float) -> Iterator[Block]:
    """Say loudly that what is left over goes in first: the grams below are the rest."""
    if banked:
        yield Lines(lines=(goes_first(make, banked),), loud=True)


def _blocks(
    make: Make, component: Component, lines: tuple[Weighing, ...]
) -> Iterator[Block]:
    yield Lines(lines=tuple(_heading(make, component)))
    yield Table(
        columns=(
            Column(head=Words("ingredient"), share=3.2),
            Column(head=Words("g"), align="right", share=1.1),
            Column(head=Words("in all"), align="right"),
            Column(head=Words("lot"), share=1.6),
        ),
        rows=tuple(_rows(lines)),
        ticks=True,
    )
    yield Blanks(labels=(Words("tare"), Words("weighed by"), Words("day and time")))
    if make.cook_to is not None and component.sheet is None:
        yield Blanks(labels=(Words("pan, empty"), Words("pan, cooked")))
    yield from _method(component)
    minds = of_component(component)
    if minds:
        yield Lines(lines=tuple(minded(minds)), loud=True)


def _heading(make: Make, component: Component) -> Iterator[Words]:
    if make.made == "scaled":
        yield Words(
            "{g} g in all: {written} g as written x {factor:.3f}",
            g=grams(make.weigh.value),
            written=f"{make.written.value:.5g}",
            factor=make.factor.value,
        )
    else:
        yield Words(
            "{g} g in all ({made}; {written} g as written)",
            g=grams(make.weigh.value),
            made=make.made,
            written=f"{make.written.value:.5g}",
        )
    if make.cook_to is not None:
        yield cooked_to(component, make.cook_to)


def _rows(lines: tuple[Weighing, ...]) -> Iterator[tuple[Cell, ...]]:
    total = 0.0
    for one in lines:
        line = one.line
        if not line.strained_out:
            total += one.grams.value
        said = ", ".join(part for part in (line.what, line.state) if part)
        remarks = "; ".join(_remarks(line))
        yield (
            Cell(text=f"{said}; {remarks}" if remarks else said),
            Cell(text=_shown(one), known=how_known(one.grams)),
            Cell(text="--" if line.strained_out else f"{round(total, 1):g}"),
            Cell(text=""),
        )


def _remarks(line: FormulaLine) -> Iterator[str]:
    yield from line.remarks
    if line.strained_out:
        yield "strained out"
    if line.made_up:
        yield "made up to this again"


def _method(component: Component) -> Iterator[Block]:
    """Give the steps as the card has them, each with a box to tick."""
    lines = [step.line.text for step in component.method if step.line]
    if not lines:
        return
    yield Head(text=Words("method"))
    yield Table(
        columns=(Column(),),
        rows=tuple((Cell(text=" ".join(line.split())),) for line in lines),
        ticks=True,
    )


def _shown(one: Weighing) -> str:
    return f"{one.grams.value:.1f}" if one.step_g < 1 else f"{one.grams.value:.0f}"
