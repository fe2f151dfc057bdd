"""Sugar temperatures on the card, where the kitchen lies so high that they change."""

import re
from collections.abc import Iterator

from demould.matter.boiling import cook_sugar_to, water_boils_c
from demould.mise.component import Component
from demould.mise.degrees import degrees_in
from demould.mise.dessert import Dessert
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words

NEWS_K = 1.0
HOT_C, BURNT_C = 103.0, 190.0
_SUGAR = re.compile(r"\b(sugar|syrup|caramel\w*|glaze|fudge|nougat|honey|meringue)\b")


def sugar_up_here(dessert: Dessert, kitchen: Kitchen) -> Iterator[tuple[Words, Words]]:
    """What the card says and what to cook to, a step a line; nothing near the sea."""
    if kitchen.height is None:
        return
    water = water_boils_c(kitchen.height.value)
    if 100 - water < NEWS_K:
        return
    for component in dessert.components:
        for said in _sugar_steps(component):
            for one in degrees_in(said):
                if HOT_C <= one.high <= BURNT_C:
                    yield _line(component, said, one.high, water, kitchen.height.value)


def _sugar_steps(component: Component) -> Iterator[str]:
    for step in component.method:
        for remark in step.remarks:
            named = f"{step.key} {component.kind} {remark}".casefold()
            if _SUGAR.search(named):
                yield remark


def _line(
    component: Component, said: str, high: float, water: float, height: float
) -> tuple[Words, Words]:
    return (
        Words(
            "{name}: '{said}', and water boils at {water:.0f} °C at {height:g} m",
            name=component.name,
            said=said,
            water=water,
            height=height,
        ),
        Words(
            "{to:.0f} °C here for {high:g} °C; better by your own boiling water:"
            " demould sugar",
            to=cook_sugar_to(high, water).likely,
            high=high,
        ),
    )
