"""A share of the whole against its band, and what brings it inside."""

from collections.abc import Sequence

from demould.advice.bands.change import Bound, Change, change
from demould.advice.bands.judged import Judged, Verdict, verdict_of
from demould.advice.bands.quantity import measured
from demould.matter.grams import Find
from demould.mise.component import Component
from demould.mise.words import Words

SLACK = {"%": 0.05, "agent": 0.005, "solids": 1.0}
"""How far outside is no news: a dose by its second decimal, fruit by its harvest."""


def judged_share(
    component: Component,
    bound: Bound,
    bounds: Sequence[Bound],
    find: Find,
    parts: Sequence[Component],
) -> Judged:
    """Judge one share of the whole, with the one change that brings it inside."""
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
