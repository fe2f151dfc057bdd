"""A dessert as the tree of its file."""

from collections.abc import Iterable, Iterator
from typing import assert_never

from demould.mise.component import Component, InSteps, Loss, Making, Sheet, WholeBatches
from demould.mise.dessert import (
    Cut,
    Dessert,
    Dip,
    Fill,
    Finish,
    FromMould,
    Glaze,
    Laid,
    Layer,
    Lining,
    OnPlate,
    Rest,
    Spray,
    Stands,
    Swap,
)
from demould.mise.figure import Figure
from demould.mise.formula import FormulaLine
from demould.mise.number import written
from demould.mise.read_component import SHIFTED
from demould.mise.read_dessert import FILLED, UPSIDE_DOWN
from demould.mise.tree import Block, Branch, Node
from demould.mise.write_method import write_method
from demould.mise.write_quantity import (
    write_amount,
    write_figure,
    write_origin,
    write_shape,
    write_sizes,
)
from demould.mise.write_tree import block, branch, joined


def write_dessert(dessert: Dessert) -> Branch:
    """The canonical tree: what `read_dessert` reads back to the same dessert."""
    portions = written(dessert.portions.value) if dessert.portions else ""
    filled = UPSIDE_DOWN if dessert.upside_down else FILLED
    components: Iterator[tuple[str, Node | None]] = (
        (f"component {one.key}", _component(one)) for one in dessert.components
    )
    variants: Iterator[tuple[str, Node | None]] = (
        (f"variant {one.name}", block(_swap(swap) for swap in one.swaps))
        for one in dessert.variants
    )
    return branch(
        (
            ("dessert", dessert.name),
            ("written for", dessert.written_for),
            ("mould", dessert.mould),
            ("portions", portions),
            (filled, block(_layer(one) for one in dessert.layers)),
            ("finish", block(_finish(one) for one in dessert.finish)),
            ("plate", block(_on_plate(one) for one in dessert.plate)),
            *components,
            ("method", write_method(dessert.method)),
            *variants,
            ("notes", block(dessert.notes)),
            ("called for", block(dessert.called_for)),
        )
    )


def _layer(layer: Layer) -> str:
    return joined(
        (
            layer.component,
            _fill(layer.fill),
            _stands(layer.stands) if layer.stands else None,
            "small side up" if layer.turned_over else None,
            *layer.remarks,
        )
    )


def _stands(stands: Stands) -> str:
    if stands.apart.value == 0:
        return f"on the {stands.of}"
    return f"{write_figure(stands.apart)} from the {stands.of}"


def _fill(fill: Fill) -> str:
    match fill:
        case Rest(words=words):
            return words or "the rest"
        case Cut(shape=shape):
            return write_shape(shape)
        case FromMould(mould=mould):
            return f"from the {mould} mould"
        case Lining(film=film):
            return f"coat {write_figure(film)}"
        case _:
            assert_never(fill)


def _figure(words: str, figure: Figure | None) -> str | None:
    return f"{words} {write_figure(figure)}" if figure else None


def _finish(finish: Finish) -> str:
    return joined((finish.component, *_how(finish), *finish.remarks))


def _how(finish: Finish) -> tuple[str | None, ...]:
    film = _figure("film", finish.film)
    match finish:
        case Dip():
            return (
                "dipped",
                film,
                _figure("clearance", finish.clearance),
                _figure("heel", finish.heel),
                _figure("depth", finish.depth),
            )
        case Glaze():
            ends = "both ends" if finish.faces == "face and ends" else None
            return _figure("poured", finish.pour), film, ends
        case Spray():
            lands = f"{write_amount(finish.lands)} lands {write_origin(finish.lands)}"
            return "sprayed", film, lands.strip()
        case Laid(how=how, covers=covers, on=on):
            where = None if on == "face" else f"on {on}"
            return how, film, _figure("covers", covers), where
        case _:
            assert_never(finish)


def _on_plate(thing: OnPlate) -> str:
    return joined((thing.what, write_figure(thing.amount), *thing.remarks))


def _component(one: Component) -> Branch:
    return branch(
        (
            ("name", one.name),
            ("kind", one.kind),
            ("formula", write_formula(one.formula)),
            ("in all", write_figure(one.in_all) if one.in_all else ""),
            ("density", write_figure(one.density)),
            ("whipped", write_figure(one.whipped) if one.whipped else ""),
            ("cooked away", write_figure(one.cooked_away) if one.cooked_away else ""),
            ("lost", _lost(one.loss)),
            ("made", _made(one.making)),
            ("sheet", _sheet(one.sheet)),
            ("method", write_method(one.method)),
        )
    )


def write_formula(formula: Iterable[FormulaLine]) -> Block | None:
    """A formula as a block, amounts in a column."""
    lines = [(_amount(line), line) for line in formula]
    width = max((len(amount) for amount, _ in lines), default=0)
    return block(f"{amount:{width}}  {_what(line)}" for amount, line in lines)


def _amount(line: FormulaLine) -> str:
    return write_figure(line.amount) if line.amount else "?"


def _what(line: FormulaLine) -> str:
    keeps = line.keeps
    said = (
        "strained out" if line.strained_out else None,
        "made up" if line.made_up else None,
        f"keeps {written(keeps.value)} {write_origin(keeps)}".strip()
        if keeps
        else None,
    )
    what = ", ".join(filter(None, (line.what, line.state)))
    return joined((what, ", ".join(filter(None, said)), *line.remarks))


def _lost(loss: Loss) -> str:
    fixed = f", then {write_figure(loss.fixed)} a {loss.once_a}" if loss.fixed else ""
    return f"{write_figure(loss.share)}{fixed}"


def _made(making: Making) -> str:
    match making:
        case WholeBatches():
            return "whole batches"
        case InSteps(of=step):
            return f"in steps of {write_figure(step)}"
        case _:
            return ""


def _sheet(sheet: Sheet | None) -> str:
    if sheet is None:
        return ""
    tray = sheet.tray
    sides = write_sizes(tray.length_mm, tray.width_mm)
    rows = f"; {SHIFTED}" if sheet.shifted else ""
    return f"{sides} mm; gap {write_figure(sheet.gap)}{rows}"


def _swap(swap: Swap) -> str:
    into = " + ".join(f"{write_figure(amount)} {what}" for amount, what in swap.into)
    return f"{swap.component}; {swap.out} becomes {into}"
