"""Setting agents that cannot work here: alcohol, calcium, too little sugar, too hot."""

import re
from collections.abc import Iterator

from demould.advice.bands.quantity import kept, solids
from demould.advice.clashes.clash import Clash, clash
from demould.larder.ingredient import Ingredient
from demould.larder.read import agents
from demould.matter.composition import composition
from demould.matter.grams import Find, batch
from demould.matter.inside import Inside, inside
from demould.matter.setting import Dose, doses
from demould.matter.water import freezing_point_c, wet_of
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.words import Words

CALCIUM_OF_DAIRY_PROTEIN = 36.0
"""Calcium in milk a gram of its protein: 113 mg and 3.15 g in 100 g (USDA SR26 01211, from memory) [mg/g]."""
CALCIUM_OF_LACTATE = 130.0
"""Calcium in a gram of calcium lactate pentahydrate, 40.08/308.3 [mg]."""
HM_LEAST_SOLIDS = 55.0
SOFT_C = -8.0
_BOILED_GELATIN = re.compile(r"gelatin[^;,.]*\bboil|\bboil[^;,.]*gelatin")


def setting(dessert: Dessert, find: Find) -> Iterator[Clash]:
    """Every clash of a setting agent in the dessert's components."""
    for component in dessert.components:
        mix = inside(component, find, dessert.components)
        there = {one.agent: one for one in doses(component, find, dessert.components)}
        yield from _alcohol(component, dessert, find, there)
        yield from _calcium(component, mix, there, find)
        yield from _sugar(component, mix, there, find)
        if "gelatin" in there:
            yield from _boiled(component)


def _alcohol(
    component: Component, dessert: Dessert, find: Find, there: dict[str, Dose]
) -> Iterator[Clash]:
    try:
        made_of = composition(component, find, dessert.components)
    except ValueError:
        return
    if made_of.alcohol <= 0:
        return
    share = 100 * made_of.alcohol / (made_of.alcohol + made_of.water)
    most = agents()["gelatin"].facts["alcohol of the water"].high
    if "gelatin" in there and share > most:
        yield clash(
            component,
            Words(
                "{share:.0f} % of its water is alcohol: gelatin is weak over {most:g} %",
                share=share,
                most=most,
            ),
            Words("less spirit, or cook part of it off; trial first"),
        )
    freezes = freezing_point_c(wet_of(made_of))
    if made_of.alcohol > 1 and (freezes is None or freezes < SOFT_C):
        yield clash(
            component,
            Words(
                "{share:.0f} % alcohol: it starts to freeze at {at} and stays soft",
                share=made_of.alcohol,
                at="no cold of yours" if freezes is None else f"{freezes:.0f} °C",
            ),
            Words("less spirit; alcohol goes on the card and the label"),
        )


def calcium_mg(mix: Inside) -> float:
    """Calcium that can reach a pectin, from dairy and from calcium salts [mg]."""
    return sum(grams * _calcium_of(what) for what, grams in mix)


def _calcium_of(what: Ingredient) -> float:
    if "calcium lactate" in what.name.casefold():
        return CALCIUM_OF_LACTATE
    if what.category == "dairy":
        return CALCIUM_OF_DAIRY_PROTEIN * what.per_100g.protein / 100
    return 0.0


def _calcium(
    component: Component, mix: Inside, there: dict[str, Dose], find: Find
) -> Iterator[Clash]:
    for name, dose in there.items():
        fact = agents()[name].facts.get("calcium")
        if fact is None or name == "alginate":
            continue
        grams = dose.whole.value * batch(component, find).value * kept(component) / 100
        each = calcium_mg(mix) / grams if grams > 0 else 0.0
        if each > fact.high:
            yield clash(
                component,
                Words(
                    "{mg:.0f} mg calcium a gram of {agent}: over {high:g} it sets in"
                    " grains, in the pan",
                    mg=each,
                    agent=name,
                    high=fact.high,
                ),
                Words(
                    "keep dairy and calcium out, or take a pectin made for milk;"
                    " trial first"
                ),
            )
        elif each < fact.low:
            yield clash(
                component,
                Words(
                    "{mg:.0f} mg calcium a gram of {agent}: {low:g} to {high:g} set it;"
                    " fruit and tap water bring some",
                    mg=each,
                    agent=name,
                    low=fact.low,
                    high=fact.high,
                ),
                Words(
                    "ask the pectin's own sheet, or a little calcium salt; trial first"
                ),
                certain=False,
            )


def _sugar(
    component: Component, mix: Inside, there: dict[str, Dose], find: Find
) -> Iterator[Clash]:
    if "pectin HM" not in there:
        return
    whole = batch(component, find).value * kept(component)
    brix = sum(grams * solids(what) for what, grams in mix) / whole
    if brix < HM_LEAST_SOLIDS:
        fact = agents()["pectin HM"].facts["solids"]
        yield clash(
            component,
            Words(
                "pectin HM sets only from {low:g} to {high:g} °Brix; this has {brix:.0f}",
                low=fact.low,
                high=fact.high,
                brix=brix,
            ),
            Words("pectin NH is made for soft centres: another formula, trial first"),
        )


def _boiled(component: Component) -> Iterator[Clash]:
    for step in component.method:
        for remark in step.remarks:
            if _BOILED_GELATIN.search(remark.casefold()):
                yield clash(
                    component,
                    Words("gelatin is boiled: it loses its strength"),
                    Words("stir it in below 70 °C, off the heat"),
                )
                return
