"""What sets a component, against the usual dose."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from demould.advice.bands.change import Bound
from demould.advice.bands.judged import Judged, rounded, verdict_of
from demould.advice.bands.quantity import Quantity
from demould.advice.bands.shares import SLACK, judged_share
from demould.larder.fact import Band
from demould.larder.read import agents
from demould.matter.gelatin import APART
from demould.matter.grams import Find
from demould.matter.setting import Dose, doses
from demould.mise.component import Component
from demould.mise.words import Words

SETS = {"melts", "sets"}
"""Facts of an agent that sets; the others only thicken."""


def set_by(
    component: Component,
    band: Band | None,
    bounds: Sequence[Bound],
    find: Find,
    parts: Sequence[Component],
) -> Iterator[Judged]:
    """Judge the dose of what sets it: by its kind's band, every other agent by its own."""
    every = doses(component, find, parts)
    wrong = next((bound for bound in bounds if bound[0].step < 1), None)
    family = wrong[0].name if wrong else ""
    for dose in every:
        if not family or not dose.agent.startswith(family):
            yield from _by_its_own(component, dose)
    if wrong is None or band is None:
        return
    what, low, high = wrong
    there = [one for one in every if SETS & set(agents()[one.agent].facts)]
    own = [one for one in there if one.agent.startswith(what.name)]
    if not own:
        if low > 0:
            yield _without_its_agent(component, what, low, high, there)
        return
    one = judged_share(component, wrong, bounds, find, parts)
    yield replace(one, what=_called(own), remark=_both_laws(own, band))


def _by_its_own(component: Component, dose: Dose) -> Iterator[Judged]:
    """Hold an agent against its own usual dose, where its kind has no band for it."""
    fact = agents()[dose.agent].facts.get("dose")
    if fact is None:
        return
    value = dose.whole.value
    verdict = verdict_of(value, fact.low, fact.high, SLACK["agent"])
    yield Judged(
        component=component.key,
        name=component.name,
        what=dose.agent,
        figure=dose.whole,
        low=fact.low,
        high=fact.high,
        unit="%",
        verdict=verdict,
        change=None
        if verdict == "inside"
        else Words("the dose anywhere is meant; the maker's sheet goes before it"),
        remark=Words("{note}", note=fact.note) if fact.note else None,
    )


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
