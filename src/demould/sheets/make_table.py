"""What to make of every component: written, factor, weigh, in a piece."""

from collections.abc import Sequence

from demould.amounts.counts.factors import Make
from demould.matter.grams import share
from demould.mise.component import Component
from demould.mise.dessert import Dip, Spray, component_of
from demould.mise.figure import Figure, how_known
from demould.mise.words import Words
from demould.sheets.page import Cell, Column, Table
from demould.sheets.times import grams
from demould.week.making import Amounts

BLANK = Cell(text="")


def make_table(each: Sequence[Amounts]) -> Table:
    """Give the table of all orders, each under its own name."""
    rows: list[tuple[Cell, ...]] = []
    for amounts in each:
        name = Words("{name}, {n}", name=amounts.dessert.name.upper(), n=amounts.pieces)
        rows.append((Cell(text=name), *[BLANK] * 5))
        rows.extend(_row(amounts, make) for make in amounts.makes)
        rows.append(_whole(amounts))
    return Table(
        columns=(
            Column(share=2.6),
            Column(head=Words("written"), align="right"),
            Column(head=Words("factor"), align="right"),
            Column(head=Words("weigh"), align="right"),
            Column(head=Words("a piece"), align="right"),
            Column(share=1.6),
        ),
        rows=tuple(rows),
    )


def _row(amounts: Amounts, make: Make) -> tuple[Cell, ...]:
    inside = [
        part.grams for part in amounts.piece.parts if part.component == make.component
    ]
    stays = sum(one.value for one in inside) if inside else make.each.value
    return (
        Cell(text=make.name),
        _cell(f"{make.written.value:.5g} g", make.written),
        Cell(text=_factor(make)),
        _cell(f"{grams(make.weigh.value)} g", make.weigh),
        _cell(f"{stays:.1f} g", (inside or [make.each])[0]),
        Cell(text=_remark(amounts, make)),
    )


def _whole(amounts: Amounts) -> tuple[Cell, ...]:
    whole = amounts.piece.whole
    return (
        Cell(text=Words("whole piece")),
        *[BLANK] * 3,
        _cell(f"{whole.value:.1f} g", whole),
        BLANK,
    )


def _cell(text: str, figure: Figure) -> Cell:
    return Cell(text=text, known=how_known(figure))


def _factor(make: Make) -> str | Words:
    match make.made:
        case "scaled":
            return f"x {make.factor.value:.3f}"
        case "whole batches" if make.factor.value == 1:
            return Words("as it is")
        case "whole batches":
            return f"x {make.factor.value:g}"
        case _:
            return "--"


def _remark(amounts: Amounts, make: Make) -> str | Words:
    if beside_it(amounts, make.component):
        return Words("beside it")
    if make.cook_to is not None:
        return cooked_to(component_of(amounts.dessert, make.component), make.cook_to)
    for finish in amounts.dessert.finish:
        match finish:
            case Dip(component=make.component, film=film):
                return Words("{mm:g} mm", mm=film.value)
            case Spray(component=make.component, lands=lands):
                return Words("{lands:g} % lands", lands=100 * share(lands))
            case _:
                pass
    for part in amounts.piece.parts:
        if part.component == make.component and part.how == "rest":
            return f"{part.volume.value:.1f} ml"
    return ""


def cooked_to(component: Component, left: Figure) -> Words:
    """Say what it weighs when it comes out of the oven or off the stove."""
    g = grams(left.value)
    if component.sheet is not None:
        return Words("bake to {g} g", g=g)
    return Words("cook to {g} g", g=g)


def beside_it(amounts: Amounts, component: str) -> bool:
    """Whether a component only goes beside the piece, on the plate."""
    return all(part.component != component for part in amounts.piece.parts)
