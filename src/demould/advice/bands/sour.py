"""The pH a setting agent asks for, against the band of the mix."""

import math
from collections.abc import Iterator, Sequence

from demould.advice.bands.change import at_amount
from demould.advice.bands.judged import Judged, Verdict
from demould.larder.fact import Fact
from demould.larder.read import agents
from demould.matter.acidity import Acidity, acidity
from demould.matter.grams import Find
from demould.matter.inside import inside
from demould.matter.setting import doses
from demould.mise.component import Component
from demould.mise.figure import Figure, worked
from demould.mise.words import Words

ADDED_ACID = 20.0
"""Acid in 100 g from which a line is there to make it sour, not for its taste [g]."""
ACID_STEP_G = 0.5


def soured(
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
