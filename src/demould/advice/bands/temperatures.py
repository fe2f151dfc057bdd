"""Temperatures, rests and bake losses that a card says, against what is usual."""

import math
from collections.abc import Iterable, Iterator

from demould.advice.bands.judged import Judged, verdict_of
from demould.larder.fact import Band, Fact
from demould.larder.read import hold
from demould.matter.grams import share
from demould.mise.component import Component
from demould.mise.degrees import Degrees, degrees_in
from demould.mise.dessert import Dessert
from demould.mise.figure import Figure, Stated
from demould.mise.method import Step
from demould.mise.words import Words

SLACK_K = 0.5
SLACK_LOSS = 0.05
RESTS = {"whipped ganache": "ganache resting", "mirror glaze": "mirror glaze"}
"""Kinds that need a rest, and the hold of the larder that says how long."""


def temperatures(
    component: Component, dessert: Dessert, band: Band
) -> Iterator[Judged]:
    """Judge every temperature of the band that the method says something of."""
    for what, fact in band.more.items():
        if not what.endswith("temperature"):
            continue
        for said in _said(what, component, dessert):
            judged = _judge(component, what, fact, said)
            if judged is not None:
                yield judged
                break
    yield from _rest(component, band)


def _said(what: str, component: Component, dessert: Dessert) -> Iterator[Degrees]:
    match what:
        case "fold temperature":
            yield from _in_steps(component.method, "fold")
        case "final mix temperature":
            mixed = list(_in_steps(component.method, "mix"))
            yield from mixed[-1:] if len(mixed) > 1 else ()
        case "whipping temperature":
            whips = (
                step
                for step in dessert.method
                if step.key == "whip"
                and any(need.component == component.key for need in step.needs)
            )
            yield from _in_steps(whips, "whip")
        case "working temperature":
            for finish in dessert.finish:
                if finish.component == component.key:
                    yield from (d for one in finish.remarks for d in degrees_in(one))
        case "serving temperature":
            yield from _in_steps(dessert.method, "slice")


def _in_steps(steps: Iterable[Step], key: str) -> Iterator[Degrees]:
    for step in steps:
        if step.key == key:
            for remark in step.remarks:
                yield from degrees_in(remark)


def _judge(component: Component, what: str, fact: Fact, said: Degrees) -> Judged | None:
    over = said.high > fact.high + SLACK_K
    under = said.low < fact.low - SLACK_K
    end = said.high if over else said.low
    return Judged(
        component=component.key,
        name=component.name,
        what=what,
        figure=Figure(name=what, value=end, unit="°C", origin=Stated()),
        low=fact.low,
        high=fact.high,
        unit="°C",
        verdict="over" if over else "under" if under else "inside",
    )


def _rest(component: Component, band: Band) -> Iterator[Judged]:
    usual = hold(RESTS.get(band.kind, ""))
    stands = [step for step in component.method if step.key == "rest" and step.stand]
    if usual is None or usual.least is None or not stands:
        return
    stand = stands[0].stand
    assert stand is not None
    hours = stand.least.value / 60
    least = usual.least.value / 60
    yield Judged(
        component=component.key,
        name=component.name,
        what="rest",
        figure=Figure(name="rest", value=hours, unit="h", origin=stand.least.origin),
        low=least,
        high=math.inf,
        unit="h",
        verdict="under" if hours < least else "inside",
        change=Words("let it rest {least:g} h or more", least=least)
        if hours < least
        else None,
    )


def baked(component: Component, band: Band) -> Iterator[Judged]:
    """Judge what the oven takes away."""
    fact = band.more.get("bake loss")
    if fact is None or component.cooked_away is None:
        return
    lost = 100 * share(component.cooked_away)
    verdict = verdict_of(lost, fact.low, fact.high, SLACK_LOSS)
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
