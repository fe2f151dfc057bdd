"""What a line, a batch and a cooked batch weigh."""

from collections.abc import Callable

from demould.larder.fact import Fact
from demould.larder.ingredient import Ingredient
from demould.larder.read import ingredients, unit_weight
from demould.mise.component import Component
from demould.mise.figure import Assumed, Figure, Stated, worked
from demould.mise.formula import Formula, FormulaLine
from demould.mise.words import Words

Find = Callable[[str], Ingredient]

GRAMS = {"g": 1.0, "kg": 1000.0}
MILLILITRES = {"ml": 1.0, "cl": 10.0, "dl": 100.0, "l": 1000.0}
COUNTED = ("pieces", "leaf")
DRY = 15.0
RUNS = 0.9
"""Drier than 15 % water and lighter in bulk than 0.9 g/ml is a powder, not a liquid."""
KEPT = Figure(
    name="what strained solids keep, times their own weight",
    value=1.1,
    unit="",
    origin=Assumed(low=0.8, high=1.4, source="common_practice"),
)


def share(figure: Figure) -> float:
    """Give a share as a number up to 1, whether it was written as % or as a part."""
    return figure.value / 100 if figure.unit == "%" else figure.value


def known(fact: Fact, name: str) -> Figure:
    """Give a fact of the larder as a figure: assumed, between its bounds."""
    return Figure(
        name=name,
        value=fact.value,
        unit=fact.unit,
        origin=Assumed(low=fact.low, high=fact.high, source=fact.source),
    )


def line_grams(line: FormulaLine, find: Find) -> Figure | None:
    """Grams of one line as written, or None where it cannot be told [g].

    Volumes go through the density of the ingredient, counted things (leaf, egg, pinch)
    through the larder's unit weights. None: no amount, a unit nobody knows, or a volume
    of something whose density is not known.
    """
    amount = line.amount
    if amount is None:
        return None
    if amount.unit == "g":
        return amount
    if amount.unit in GRAMS:
        value = amount.value * GRAMS[amount.unit]
        return worked(line.what, value, "g", "1 kg is 1000 g", amount)
    if amount.unit in MILLILITRES:
        ml = worked(
            line.what,
            amount.value * MILLILITRES[amount.unit],
            "ml",
            Words("as written, in {unit}", unit=amount.unit),
            amount,
        )
        return _weighed(line, amount if amount.unit == "ml" else ml, find)
    return _counted(line, amount, find)


def counted(line: FormulaLine) -> Figure | None:
    """What one of a counted line weighs or holds (leaf, egg, spoon), or None [g or ml].

    Of pieces and leaves the name of the thing counts first: a gold leaf, an egg. A
    spoon or cup of powder holds less surely than one of a liquid.
    """
    if line.amount is None or line.amount.unit in (*GRAMS, *MILLILITRES):
        return None
    unit = line.amount.unit
    one = unit_weight(line.what) if unit in COUNTED else None
    holds = "volume of powder" if _is_powder(line) else "volume"
    one = one or unit_weight(unit) or unit_weight(unit, holds)
    one = one or unit_weight(unit, "volume")
    return None if one is None else known(one, f"{unit}, each")


def _is_powder(line: FormulaLine) -> bool:
    """Whether the table has it as a dry article that does not run."""
    row = ingredients().get(line.ingredient or "")
    if row is None or row.density_g_ml is None:
        return False
    return row.per_100g.water < DRY and row.density_g_ml < RUNS


def _counted(line: FormulaLine, amount: Figure, find: Find) -> Figure | None:
    each = counted(line)
    if each is None:
        return None
    value = amount.value * each.value
    if each.unit == "g":
        return worked(line.what, value, "g", "how many x grams of one", amount, each)
    ml = worked(line.what, value, "ml", "how many x ml of one", amount, each)
    return _weighed(line, ml, find)


def _weighed(line: FormulaLine, ml: Figure, find: Find) -> Figure | None:
    if line.ingredient is None:
        return None
    ingredient = find(line.ingredient)
    if ingredient.density_g_ml is None:
        return None
    density = Figure(
        name=f"density of {ingredient.name}",
        value=ingredient.density_g_ml,
        unit="g/ml",
        origin=Stated(by=ingredient.source),
    )
    value = ml.value * density.value
    return worked(line.what, value, "g", "ml x density", ml, density)


def weighed_lines(
    formula: Formula, find: Find
) -> tuple[tuple[FormulaLine, Figure], ...]:
    """All lines whose grams can be told, each with its grams."""
    told = ((line, line_grams(line, find)) for line in formula)
    return tuple((line, grams) for line, grams in told if grams is not None)


def kept_by_solids(component: Component, find: Find) -> Figure | None:
    """Liquid that strained solids take with them. [g] None where nothing is strained."""
    each = [
        worked(
            f"kept by {line.what}",
            grams.value * (line.keeps or KEPT).value,
            "g",
            "grams of the solids x how much they keep",
            grams,
            line.keeps or KEPT,
        )
        for line, grams in weighed_lines(component.formula, find)
        if line.strained_out
    ]
    if not each:
        return None
    total = sum(part.value for part in each)
    return worked(
        f"kept by the solids of {component.name}", total, "g", "all together", *each
    )


def batch(component: Component, find: Find) -> Figure:
    """What the formula makes as written, before cooking [g].

    Solids that are strained out do not count. Where no liquid is made up again after
    straining, what the solids keep is missing from the batch.
    """
    lines = weighed_lines(component.formula, find)
    stays = [grams for line, grams in lines if not line.strained_out]
    total = sum(grams.value for grams in stays)
    name = f"batch of {component.name}, as written"
    kept = kept_by_solids(component, find)
    if kept is None or any(line.made_up for line in component.formula):
        rule = "all lines together, without what is strained out"
        return worked(name, total, "g", rule, *stays)
    rule = "all lines together, without what is strained out and what that keeps"
    return worked(name, total - kept.value, "g", rule, *stays, kept)


def after_cooking(component: Component, find: Find) -> Figure:
    """What the batch as written weighs after the pan or the oven [g]."""
    mixed = batch(component, find)
    if component.cooked_away is None:
        return mixed
    left = mixed.value * (1 - share(component.cooked_away))
    rule = Words(
        "batch less {away:g} % that cooks away", away=100 * share(component.cooked_away)
    )
    name = f"{component.name}, cooked"
    return worked(name, left, "g", rule, mixed, component.cooked_away)
