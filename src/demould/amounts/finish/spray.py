"""How much spray to make and load."""

import math
from dataclasses import dataclass

from demould.amounts.counts.rounding import SPECK
from demould.amounts.layers.piece import Part
from demould.matter.grams import share
from demould.mise.component import Component, InSteps
from demould.mise.dessert import Spray
from demould.mise.figure import Figure, worked
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Sprayed:
    """Spray for so many pieces, in g. `made` is loaded and left; `load` lands or is lost."""

    lands: Figure
    load: Figure
    made: Figure
    lost: Figure
    left: Figure


def sprayed(spray: Spray, part: Part, component: Component, pieces: int) -> Sprayed:
    """Spray `pieces`; made in the component's steps, where it has some."""
    lands_share = share(spray.lands)
    each = part.grams
    lands = worked(
        each.name,
        pieces * each.value,
        "g",
        Words("{n} pieces x {g:.1f} g", n=pieces, g=each.value),
        each,
    )
    load = worked(
        f"{component.name} to load",
        lands.value / lands_share,
        "g",
        Words("{lands:g} % of it lands", lands=100 * lands_share),
        lands,
        spray.lands,
    )
    made = in_steps(component, load)
    lost = worked(
        f"{component.name} lost in the air",
        load.value - lands.value,
        "g",
        "loaded less what lands",
        load,
        lands,
    )
    left = worked(
        f"{component.name} left",
        made.value - load.value,
        "g",
        "made less loaded",
        made,
        load,
    )
    return Sprayed(lands=lands, load=load, made=made, lost=lost, left=left)


def in_steps(component: Component, need: Figure) -> Figure:
    """Give `need`, or the next step up where the component is made in steps [g]."""
    match component.making:
        case InSteps(of=step):
            value = step.value * math.ceil(need.value / step.value - SPECK)
            rule = Words("up to the next {step:g} g", step=step.value)
            name = f"{component.name} to make"
            return worked(name, value, "g", rule, need, step)
        case _:
            return need


def fillings(load: Figure, component: Component, cup: Figure | None) -> int | None:
    """How often the gun's cup, or a can, is filled; None where nobody said its ml."""
    if cup is None:
        return None
    return max(1, math.ceil(load.value / (cup.value * component.density.value) - SPECK))
