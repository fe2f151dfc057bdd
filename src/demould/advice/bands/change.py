"""What to change by how much, so that a component comes inside its bands."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from demould.advice.bands.quantity import Quantity, kept, measured
from demould.matter.grams import Find, batch, weighed_lines
from demould.mise.component import Component
from demould.mise.figure import Figure, Stated
from demould.mise.formula import FormulaLine
from demould.mise.words import Words

SOAKS = ("for the gelatin", "for it")
MOST_TIMES = 3.0
LEAST_LEFT = 0.3
"""A change that leaves less of the batch than this is another formula [g/g]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One line at another amount: `by` grams more or less, `to` grams in all."""

    line: FormulaLine
    by: float
    to: float
    changed: Component

    @property
    def says(self) -> Words:
        """The change in a cook's words."""
        return Words(
            "{by:g} g {way} {what} ({to:g} g in all)",
            by=abs(self.by),
            way="more" if self.by > 0 else "less",
            what=self.line.what,
            to=self.to,
        )


Bound = tuple[Quantity, float, float]


def change(
    component: Component,
    wrong: Bound,
    others: Sequence[Bound],
    find: Find,
    parts: Sequence[Component] = (),
) -> Change | None:
    """The one line that best brings `wrong` inside: fewest others out, least grams.

    Setting agents move only for their own dose, with the water that soaks them. None
    where no single line can do it.
    """
    ways = list(_ways(component, wrong, find, parts))
    if not ways:
        return None
    whole = batch(component, find).value

    def badness(way: Change) -> tuple[float, float]:
        out = sum(
            _outside(measured(way.changed, what, find, parts).value, low, high)
            for what, low, high in others
        )
        return round(out, 3), abs(way.by) / whole

    return min(ways, key=badness)


def _outside(value: float, low: float, high: float) -> float:
    return max(low - value, value - high, 0.0) / max(high - low, 1e-9)


def _ways(
    component: Component, wrong: Bound, find: Find, parts: Sequence[Component]
) -> Iterator[Change]:
    what, low, high = wrong
    now = measured(component, what, find, parts).value
    edge = low if now < low else high
    whole = batch(component, find).value
    for line, grams in weighed_lines(component.formula, find):
        if line.ingredient is None or line.strained_out or line.amount is None:
            continue
        if line.amount.unit != "g":
            continue
        ingredient = find(line.ingredient)
        if (ingredient.category == "gelling") != (what.step < 1):
            continue
        soak = _soaking(component, line) if what.step < 1 else 0.0
        brings = what.of(ingredient)
        target = edge * kept(component)
        if what.name == "water":
            target += 100 * (1 - kept(component))
        # (now + x brings) / (whole + x (1 + soak)) = target, in grams of 100
        slope = brings - target * (1 + soak)
        lack = whole * (edge - now) * kept(component)
        if abs(slope) < 10 or lack / slope > MOST_TIMES * whole:
            continue
        by = _to_the_inside(lack / slope, what.step)
        to = round(grams.value + by, 6)
        if whole + by < LEAST_LEFT * whole:
            continue
        if to < 0 or to > max(MOST_TIMES * grams.value, grams.value + 0.3 * whole):
            continue
        yield Change(
            line=line, by=by, to=to, changed=at_amount(component, line, to, soak)
        )


def _to_the_inside(by: float, step: float) -> float:
    steps = by / step
    return round((math.ceil(steps) if steps > 0 else math.floor(steps)) * step, 6)


def _soaking(component: Component, line: FormulaLine) -> float:
    """Grams of the water that soaks a gelatin, a gram of it; 0 where none is named."""
    water = _soaking_line(component)
    if water is None or water.amount is None or line.amount is None:
        return 0.0
    return water.amount.value / line.amount.value if line.amount.value else 0.0


def soaking_lines(component: Component) -> tuple[FormulaLine, ...]:
    """The lines of water that say they are for the gelatin."""
    return tuple(
        line
        for line in component.formula
        if "water" in line.what.casefold()
        and any(
            word in " ".join((line.state, *line.remarks)).casefold() for word in SOAKS
        )
    )


def _soaking_line(component: Component) -> FormulaLine | None:
    return next(iter(soaking_lines(component)), None)


def at_amount(
    component: Component, line: FormulaLine, grams: float, soak: float = 0.0
) -> Component:
    """The component with one line at another amount, its soaking water with it."""
    water = _soaking_line(component) if soak else None

    def moved(one: FormulaLine) -> FormulaLine:
        if one.ordinal == line.ordinal:
            return replace(one, amount=_grams(one, grams))
        if water is not None and one.ordinal == water.ordinal:
            return replace(one, amount=_grams(one, grams * soak))
        return one

    return replace(component, formula=tuple(moved(one) for one in component.formula))


def _grams(line: FormulaLine, grams: float) -> Figure:
    return Figure(name=line.what, value=grams, unit="g", origin=Stated(line=line.line))
