"""What a component is made of, after straining and cooking."""

from collections.abc import Sequence
from dataclasses import fields

from demould.larder.ingredient import Composition
from demould.larder.read import energy_factors
from demould.matter.grams import Find, after_cooking, share, weighed_lines
from demould.mise.component import Component
from demould.mise.figure import Figure, Stated, worked
from demould.mise.formula import FormulaLine
from demould.mise.words import Words

PARTS = tuple(part.name for part in fields(Composition))


def composition(
    component: Component, find: Find, parts: Sequence[Component] = ()
) -> Composition:
    """Grams of each constituent in 100 g of the component as it is used.

    `parts` are the dessert's components, for lines that take one of them. Lines that are strained out do not count, nor lines without an amount or an
    ingredient; what cooks away is water; what strained solids keep has the make-up of
    the mix.

    Raises
    ------
    ValueError
        If nothing in the formula can be weighed, or more cooks away than there is water.
    """
    lines = _in_the_mix(component, find, parts)
    mixed = sum(grams.value for _, grams, _ in lines)
    if mixed <= 0:
        raise ValueError(f"nothing in {component.name} can be weighed")
    away = 0.0 if component.cooked_away is None else share(component.cooked_away)
    inside = {
        part: sum(grams.value * getattr(made_of, part) for _, grams, made_of in lines)
        / mixed
        for part in PARTS
    }
    inside["water"] -= 100 * away
    if inside["water"] < -1e-9:
        raise ValueError(
            f"{100 * away:g} % of {component.name} cooks away,"
            f" but only {inside['water'] + 100 * away:.1f} % of it is water"
        )
    return Composition(**{part: value / (1 - away) for part, value in inside.items()})


def _in_the_mix(
    component: Component, find: Find, parts: Sequence[Component]
) -> list[tuple[FormulaLine, Figure, Composition]]:
    told = (
        (line, grams, _made_of(line, find, parts))
        for line, grams in weighed_lines(component.formula, find)
        if not line.strained_out
    )
    return [(line, grams, made_of) for line, grams, made_of in told if made_of]


def _made_of(
    line: FormulaLine, find: Find, parts: Sequence[Component]
) -> Composition | None:
    if line.ingredient is not None:
        return find(line.ingredient).per_100g
    part = next((one for one in parts if one.key == line.component), None)
    return None if part is None else composition(part, find, parts)


def share_of(
    component: Component, part: str, find: Find, parts: Sequence[Component] = ()
) -> Figure:
    """One constituent of the component as it is used, with all it hangs on [%].

    `part` is a field of `Composition` or ``sugars``. Its figure unfolds to each line's
    grams and the ingredient's own share, which is as its sheet or table row says.
    """
    grams = [
        worked(
            f"{part.replace('_', ' ')} from {line.what}",
            weighed.value * getattr(made_of, part) / 100,
            "g",
            "grams of the line x what is in 100 g, by 100",
            weighed,
            _of_line(line, part, find, parts),
        )
        for line, weighed, made_of in _in_the_mix(component, find, parts)
        if getattr(made_of, part)
    ]
    name = f"{part.replace('_', ' ')} in {component.name}"
    cooked = after_cooking(component, find)
    hangs_on = [*grams, cooked]
    value = getattr(composition(component, find, parts), part)
    rule = "all of it together, in 100 g of what is left after cooking"
    if part == "water" and component.cooked_away is not None:
        hangs_on.append(component.cooked_away)
        rule = "all of it together less what cooks away, in 100 g of what is left"
    return worked(name, value, "%", rule, *hangs_on)


def _of_line(
    line: FormulaLine, part: str, find: Find, parts: Sequence[Component]
) -> Figure:
    if line.ingredient is None:
        made = next(one for one in parts if one.key == line.component)
        return share_of(made, part, find, parts)
    ingredient = find(line.ingredient)
    return Figure(
        name=f"{part.replace('_', ' ')} in {ingredient.name}",
        value=getattr(ingredient.per_100g, part),
        unit="%",
        origin=Stated(by=ingredient.source),
    )


def energy_eu(made_of: Composition) -> tuple[float, float]:
    """Energy of 100 g by the EU's factors, unrounded [kJ, kcal].

    Kilojoules and kilocalories have factors of their own and are not converted.
    Salatrims are not in the larder. Regulation (EU) 1169/2011, Annex XIV.
    """
    inside = {
        "carbohydrate": made_of.sugars + made_of.starch + made_of.other_carb,
        "polyols": made_of.polyols,
        "erythritol": made_of.erythritol,
        "protein": made_of.protein,
        "fat": made_of.fat,
        "alcohol": made_of.alcohol,
        "acid": made_of.acid,
        "fibre": made_of.fibre,
    }
    factors = energy_factors()
    return (
        sum(grams * factors[name].kj for name, grams in inside.items()),
        sum(grams * factors[name].kcal for name, grams in inside.items()),
    )


def cook_to(component: Component, weighed_g: Figure) -> Figure:
    """What `weighed_g` of the mix must weigh when it is cooked [g]."""
    away = component.cooked_away
    if away is None:
        return weighed_g
    value = weighed_g.value * (1 - share(away))
    rule = Words(
        "grams weighed less {away:g} % that cooks away", away=100 * share(away)
    )
    return worked(f"cook {component.name} to", value, "g", rule, weighed_g, away)
