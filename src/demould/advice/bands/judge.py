"""A component against every band of its kind, worst first."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from demould.advice.bands.change import Bound, Change, at_amount, change
from demould.advice.bands.judged import Judged, Verdict, rounded, verdict_of
from demould.advice.bands.mix_ends import mix_ends
from demould.advice.bands.quantity import (
    Quantity,
    has_weight,
    measured,
    quantity,
)
from demould.advice.bands.soak import soaked
from demould.advice.bands.temperatures import temperatures
from demould.larder.fact import Band, Fact
from demould.larder.read import agents, bands
from demould.matter.acidity import Acidity, acidity
from demould.matter.composition import composition
from demould.matter.density import mix_density, overrun
from demould.matter.gelatin import APART
from demould.matter.grams import Find, share
from demould.matter.inside import inside
from demould.matter.setting import Dose, doses
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.figure import Figure, worked
from demould.mise.words import Words

ADDED_ACID = 20.0
"""Acid in 100 g from which a line is there to make it sour, not for its taste [g]."""
ACID_STEP_G = 0.5
BAKED = ("sponge", "crisp base")
DENSITY_APART = 0.06
"""Stated and worked-out density further apart than this ask for a cup to be weighed."""
SLACK = {"%": 0.05, "g/ml": 0.005, "agent": 0.005, "solids": 1.0}
"""How far outside is no news: a dose by its second decimal, fruit by its harvest."""


def judged(component: Component, dessert: Dessert, find: Find) -> tuple[Judged, ...]:
    """Everything of the component that has a band, worst first; empty without one."""
    band = bands(component.kind) if component.kind else None
    parts = dessert.components
    if band is None or not has_weight(component, find, parts):
        return ()
    bounds = tuple(_bounds(band))
    found = [
        *_dose(component, band, bounds, find, parts),
        *(
            _share(component, bound, bounds, find, parts)
            for bound in bounds
            if bound[0].step >= 1
        ),
        *_density(component, band, find, parts),
        *_sour(component, find, parts),
        *_dry_sugar(component, band),
        *soaked(component, find),
        *_bake(component, band),
        *temperatures(component, dessert, band),
        *mix_ends(component, band, find),
    ]
    return tuple(sorted(found, key=lambda one: -one.outside))


def out_of_band(dessert: Dessert, find: Find) -> tuple[Judged, ...]:
    """What is outside its band in the whole dessert, worst first."""
    found = (
        one
        for component in dessert.components
        for one in judged(component, dessert, find)
        if one.verdict != "inside"
    )
    return tuple(sorted(found, key=lambda one: -one.outside))


def _bounds(band: Band) -> Iterator[Bound]:
    """Every band that goes with grams."""
    facts: list[tuple[str, Fact | None]] = [
        (band.agent or "", band.dose),
        ("fat", band.fat),
        ("sugars", band.sugars),
        *band.more.items(),
    ]
    for name, fact in facts:
        what = quantity(name)
        if what is not None and fact is not None and fact.unit == "%":
            yield what, fact.low, fact.high


def _dose(
    component: Component,
    band: Band,
    bounds: Sequence[Bound],
    find: Find,
    parts: Sequence[Component],
) -> Iterator[Judged]:
    wrong = next((bound for bound in bounds if bound[0].step < 1), None)
    if wrong is None:
        return
    what, low, high = wrong
    there = [
        one
        for one in doses(component, find, parts)
        if "melts" in agents()[one.agent].facts or "sets" in agents()[one.agent].facts
    ]
    own = [one for one in there if one.agent.startswith(what.name)]
    if not own:
        if low > 0:
            yield _without_its_agent(component, what, low, high, there)
        return
    one = _share(component, wrong, bounds, find, parts)
    yield replace(one, what=_called(own), remark=_both_laws(own, band))


def _without_its_agent(
    component: Component, what: Quantity, low: float, high: float, there: list[Dose]
) -> Judged:
    other = Words(
        "it is set with {agent}: no band is known for that here, trial first",
        agent=" and ".join(one.agent for one in there),
    )
    return Judged(
        component=component.key,
        name=component.name,
        what=what.name,
        figure=None,
        low=low,
        high=high,
        unit="%",
        verdict="inside" if there else "not said",
        remark=other if there else None,
    )


def _called(own: Sequence[Dose]) -> str:
    if any(one.by_root is not None for one in own):
        return f"{own[0].agent} as 200 bloom"
    return own[0].agent


def _both_laws(own: Sequence[Dose], band: Band) -> Words | None:
    both = own[0].at_200
    if both is not None and both.apart > APART:
        return Words(
            "{root} % as 200 bloom by the root law, {ratio} % by the straight ratio",
            root=rounded(both.root, "%"),
            ratio=rounded(both.ratio, "%"),
        )
    return (
        Words("{note}", note=band.dose.note) if band.dose and band.dose.note else None
    )


def _share(
    component: Component,
    bound: Bound,
    bounds: Sequence[Bound],
    find: Find,
    parts: Sequence[Component],
) -> Judged:
    what, low, high = bound
    figure = measured(component, what, find, parts)
    slack = SLACK.get(what.name, SLACK["%"] if what.step >= 1 else SLACK["agent"])
    verdict = verdict_of(figure.value, low, high, slack)
    way = None
    if verdict != "inside":
        others = [one for one in bounds if one[0] != what]
        way = change(component, bound, others, find, parts)
    return Judged(
        component=component.key,
        name=component.name,
        what="soluble solids" if what.name == "solids" else what.name,
        figure=figure,
        low=low,
        high=high,
        unit="°Brix" if what.name == "solids" else "%",
        verdict=verdict,
        change=_do(verdict, way),
    )


def _do(verdict: Verdict, way: Change | None) -> Words | None:
    if verdict == "inside":
        return None
    if way is None:
        return Words("no one line brings it inside: take another ingredient for one")
    return way.says


def _density(
    component: Component, band: Band, find: Find, parts: Sequence[Component]
) -> Iterator[Judged]:
    filled = component.whipped or component.density
    if band.density is not None:
        low, high = band.density.low, band.density.high
        verdict = verdict_of(filled.value, low, high, SLACK["g/ml"])
        airy = component.whipped is not None
        yield Judged(
            component=component.key,
            name=component.name,
            what="density, whipped" if airy else "density",
            figure=filled,
            low=low,
            high=high,
            unit="g/ml",
            verdict=verdict,
            change=None if verdict == "inside" else Words("weigh a known cup of it"),
            remark=_overrun(component),
        )
    if band.kind in BAKED:
        return
    worked_out = mix_density(composition(component, find, parts))
    stated = component.density.value
    if abs(stated / worked_out - 1) > DENSITY_APART:
        yield _apart(component, stated, worked_out)


def _overrun(component: Component) -> Words | None:
    if component.whipped is None:
        return None
    return Words(
        "{n:.0f} % overrun", n=overrun(component.density, component.whipped).value
    )


def _apart(component: Component, stated: float, worked_out: float) -> Judged:
    return Judged(
        component=component.key,
        name=component.name,
        what="density without air",
        figure=component.density,
        low=worked_out * (1 - DENSITY_APART),
        high=worked_out * (1 + DENSITY_APART),
        unit="g/ml",
        verdict="under" if stated < worked_out else "over",
        change=Words(
            "{stated:.2f} stated, {worked:.2f} by composition: weigh a cup",
            stated=stated,
            worked=worked_out,
        ),
    )


def _sour(
    component: Component, find: Find, parts: Sequence[Component]
) -> Iterator[Judged]:
    """The pH that the setting agent asks for, against the band of the mix."""
    mix = inside(component, find, parts)
    sour = acidity(mix)
    if sour is None:
        return
    for dose in doses(component, find, parts):
        fact = agents()[dose.agent].facts.get("ph")
        if fact is None or dose.agent in ("gelatin", "agar"):
            continue
        verdict = _of_band(sour, fact)
        yield Judged(
            component=component.key,
            name=component.name,
            what="pH",
            figure=_as_figure(component, sour),
            low=fact.low,
            high=fact.high,
            unit="",
            verdict=verdict,
            change=_less_sour(component, fact.low, find, parts)
            if verdict == "under"
            else None,
            remark=Words(
                "pH {band} by what is in it ({reason}); a meter decides",
                band=str(sour),
                reason=sour.reason,
            ),
        )


def _of_band(sour: Acidity, fact: Fact) -> Verdict:
    """Only a band of pH that lies wholly outside is news."""
    if sour.high < fact.low:
        return "under"
    return "over" if sour.low > fact.high else "inside"


def _as_figure(component: Component, sour: Acidity) -> Figure:
    rule = "the charges of acid, protein and salts cancel"
    return worked(f"pH of {component.name}", sour.likely, "", rule)


def _less_sour(
    component: Component, low: float, find: Find, parts: Sequence[Component]
) -> Words:
    """Say how much of the added acid would do, if there is any."""
    for line in component.formula:
        if line.ingredient is None or line.amount is None or line.strained_out:
            continue
        if find(line.ingredient).per_100g.acid < ADDED_ACID:
            continue
        steps = math.ceil(line.amount.value / ACID_STEP_G)
        for n in range(steps - 1, -1, -1):
            less = at_amount(component, line, n * ACID_STEP_G)
            sour = acidity(inside(less, find, parts))
            if sour is not None and sour.likely >= low:
                return Words(
                    "{grams:g} g {what} is enough, last, off the heat",
                    grams=n * ACID_STEP_G,
                    what=line.what,
                )
    return Words(
        "the fruit alone is as sour as that: add no acid, pour at once; trial first"
    )


def _dry_sugar(component: Component, band: Band) -> Iterator[Judged]:
    """Sugar to mix the pectin with: all sugar lines over all pectin lines."""
    fact = band.more.get("sugar per pectin")
    if fact is None:
        return
    grams = {"pectin": 0.0, "sugar": 0.0}
    for line in component.formula:
        said = line.what.casefold()
        if line.amount is not None and line.amount.unit == "g":
            for name in grams:
                grams[name] += line.amount.value if name in said.split() else 0.0
    if not grams["pectin"]:
        return
    ratio = grams["sugar"] / grams["pectin"]
    least = fact.low * grams["pectin"]
    yield Judged(
        component=component.key,
        name=component.name,
        what="sugar to mix dry with the pectin",
        figure=worked(
            "sugar to a gram of pectin", ratio, "times", "sugar lines by pectin lines"
        ),
        low=fact.low,
        high=math.inf,
        unit="times its weight",
        verdict="under" if ratio < fact.low else "inside",
        change=Words("mix it with {least:g} g of sugar or more", least=least)
        if ratio < fact.low
        else None,
    )


def _bake(component: Component, band: Band) -> Iterator[Judged]:
    fact = band.more.get("bake loss")
    if fact is None or component.cooked_away is None:
        return
    lost = 100 * share(component.cooked_away)
    verdict = verdict_of(lost, fact.low, fact.high, SLACK["%"])
    yield Judged(
        component=component.key,
        name=component.name,
        what="bake loss",
        figure=component.cooked_away,
        low=fact.low,
        high=fact.high,
        unit="%",
        verdict=verdict,
        change=None
        if verdict == "inside"
        else Words("weigh the sheet before and after the oven"),
    )
