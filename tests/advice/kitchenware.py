"""Small components made of the larder's own rows, to judge."""

from dataclasses import replace

from demould.larder.read import ingredient
from demould.mise.component import Component
from demould.mise.dessert import Dessert, Layer, Rest
from demould.mise.figure import Figure, Stated
from demould.mise.formula import FormulaLine
from tests.desserts.build import component, stated

FIND = ingredient


def line(number: int, text: str) -> FormulaLine:
    """Read ``3.6 gelatin_200; a remark``: grams and an id of the table."""
    head, _, remark = text.partition("; ")
    grams, _, what = head.partition(" ")
    return FormulaLine(
        ordinal=number,
        amount=Figure(value=float(grams), unit="g", name=what, origin=Stated()),
        what=what,
        ingredient=what,
        remarks=(remark,) if remark else (),
    )


def made(kind: str, *lines: str, density: float = 1.05, away: float = 0.0) -> Component:
    formula = tuple(line(n, text) for n, text in enumerate(lines, start=1))
    return component("it", formula, density, name="It", kind=kind, away=away)


def airy(one: Component, whipped: float) -> Component:
    return replace(one, whipped=stated(whipped, "g/ml", "density when whipped of it"))


def dessert(*components: Component) -> Dessert:
    return Dessert(
        key="sweet",
        name="Sweet",
        mould="dome",
        layers=(Layer(component=components[0].key, fill=Rest()),),
        components=components,
    )
