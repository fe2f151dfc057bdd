"""Acid where it does harm: boiled with agar, into hot dairy, against gelatin."""

from collections.abc import Iterator

from demould.advice.clashes.clash import Clash, clash
from demould.advice.clashes.heat import cooked_together, goes_in_late, hottest_c
from demould.larder.ingredient import Ingredient
from demould.larder.read import agents
from demould.matter.acidity import acidity
from demould.matter.grams import Find, weighed_lines
from demould.matter.inside import Inside, inside
from demould.matter.setting import doses
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.words import Words

CURDLES_HOT_PH, CURDLES_COLD_PH = 5.2, 4.6
HOT_C = 60.0
SOUR = 0.8
"""Acid in 100 g from which an ingredient can curdle milk [g]."""
CULTURED_PH = 5.0
MILK_PROTEIN_SHARE = 0.5
"""Protein of fresh dairy in 100 g of the mix from which curdling shows [g]."""
SOFTENS_GELATIN_PH = 3.5


def acid(dessert: Dessert, find: Find) -> Iterator[Clash]:
    """Every clash of acid in the dessert's components."""
    for component in dessert.components:
        agents_there = {dose.agent for dose in doses(component, find)}
        yield from _boiled(component, agents_there, find)
        yield from _dairy(component, find)
        if "gelatin" in agents_there:
            yield from _soft_gelatin(component, dessert, find)


def _boiled(component: Component, there: set[str], find: Find) -> Iterator[Clash]:
    """Agar and carrageenan break down when they boil in acid."""
    hot = hottest_c(component)
    pan = acidity(cooked_together(component, find))
    if pan is None:
        return
    for name in sorted(there & {"agar", "carrageenan iota", "carrageenan kappa"}):
        least = agents()[name].facts["ph"].low
        if pan.likely >= least or (hot is not None and hot < HOT_C):
            continue
        says = Words(
            "{agent} boiled in acid (pH {band} in the pan) loses its strength",
            agent=name,
            band=str(pan),
        )
        do = Words(
            "boil the {agent} in the water and sugar; warm the juice to 50 °C, stir it in"
            " off the heat, and keep the mix at 50 °C or more until it is poured",
            agent=name,
        )
        yield clash(component, says, do, certain=hot is not None)


def _is_fresh_dairy(what: Ingredient) -> bool:
    return what.category == "dairy" and (what.ph is None or what.ph > CULTURED_PH)


def _without_cultured(mix: Inside) -> Inside:
    """Leave out yoghurt and its kind, which have curdled already."""
    return tuple(
        (what, grams)
        for what, grams in mix
        if what.category != "dairy" or _is_fresh_dairy(what)
    )


def _dairy(component: Component, find: Find) -> Iterator[Clash]:
    """Juice or acid that goes into hot milk or cream."""
    mix = inside(component, find)
    total = sum(grams for _, grams in mix)
    milk = sum(
        grams * what.per_100g.protein / 100
        for what, grams in mix
        if _is_fresh_dairy(what)
    )
    if total <= 0 or 100 * milk / total < MILK_PROTEIN_SHARE:
        return
    hot = hottest_c(component)
    pan = acidity(_without_cultured(cooked_together(component, find)))
    if pan is None or pan.likely >= CURDLES_HOT_PH or hot is None or hot < HOT_C:
        return
    sour = [
        (grams.value * find(line.ingredient).per_100g.acid, line.what)
        for line, grams in weighed_lines(component.formula, find)
        if line.ingredient is not None
        and not goes_in_late(line)
        and find(line.ingredient).category != "dairy"
        and find(line.ingredient).per_100g.acid >= SOUR
    ]
    if not sour:
        return
    yield clash(
        component,
        Words(
            "{what} in hot milk or cream curdles it (pH {band}; it curdles from"
            " {hot:g} hot, {cold:g} cold)",
            what=max(sour)[1],
            band=str(pan),
            hot=CURDLES_HOT_PH,
            cold=CURDLES_COLD_PH,
        ),
        Words("put it in last, below 40 °C"),
    )


def _soft_gelatin(
    component: Component, dessert: Dessert, find: Find
) -> Iterator[Clash]:
    mix = acidity(inside(component, find, dessert.components))
    if mix is not None and mix.high < SOFTENS_GELATIN_PH:
        yield clash(
            component,
            Words("gelatin sets softer at pH {band}", band=str(mix)),
            Words(
                "a fifth to a third more gelatin, and do not keep it hot; trial first"
            ),
            certain=False,
        )
