"""A few hands to write small desserts down in Python."""

from demould.mise.component import Component, Loss, Making, Scaled, Sheet
from demould.mise.dessert import Cut, Fill, FromMould, Layer, Rest
from demould.mise.figure import Assumed, Figure, Line, Stated
from demould.mise.formula import Formula, FormulaLine
from demould.mise.shape import Shape

FILE = "desserts/test.yaml"


def stated(value: float, unit: str, name: str = "") -> Figure:
    return Figure(value=value, unit=unit, name=name, origin=Stated())


def assumed(value: float, unit: str, low: float, high: float, name: str = "") -> Figure:
    return Figure(value=value, unit=unit, name=name, origin=Assumed(low=low, high=high))


def formula(*lines: str) -> Formula:
    """Read ``280 cream 35 %``, with ``; strained out`` or ``; made up`` behind."""
    return tuple(_line(number, line) for number, line in enumerate(lines, start=1))


def _line(number: int, text: str) -> FormulaLine:
    head, _, remark = text.partition("; ")
    grams, _, what = head.partition(" ")
    written = Line(FILE, number, text)
    return FormulaLine(
        ordinal=number,
        amount=Figure(
            value=float(grams), unit="g", name=what, origin=Stated(line=written)
        ),
        what=what,
        ingredient=what,
        remarks=(remark,) if remark else (),
        strained_out=remark == "strained out",
        made_up=remark == "made up",
        line=written,
    )


def component(
    key: str,
    lines: Formula,
    density: Figure | float,
    *,
    name: str = "",
    kind: str = "",
    whipped: Figure | None = None,
    away: float = 0.0,
    lost: float = 0.0,
    fixed: float = 0.0,
    whip: bool = False,
    making: Making | None = None,
    sheet: Sheet | None = None,
) -> Component:
    return Component(
        key=key,
        name=name or key,
        kind=kind,
        formula=lines,
        density=stated(density, "g/ml", f"density of {key}")
        if isinstance(density, float | int)
        else density,
        whipped=whipped,
        cooked_away=stated(away, "%", f"cooked away from {key}") if away else None,
        loss=Loss(
            share=stated(lost, "%", f"lost of {key}"),
            fixed=stated(fixed, "g", f"stuck of {key}") if fixed else None,
            once_a="whip" if whip else "batch",
        ),
        making=making or Scaled(),
        sheet=sheet,
    )


def layer(key: str, what: Shape | str | None = None) -> Layer:
    """A layer cut to a shape, from a mould of that key, or the rest."""
    fill: Fill
    match what:
        case None:
            fill = Rest()
        case str():
            fill = FromMould(mould=what)
        case _:
            fill = Cut(shape=what)
    return Layer(component=key, fill=fill)
