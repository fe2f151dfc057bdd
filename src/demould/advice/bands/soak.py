"""What goes with an agent: water that soaks the gelatin, sugar dry with the pectin."""

import math
from collections.abc import Iterator

from demould.advice.bands.change import soaking_lines
from demould.advice.bands.judged import Judged, verdict_of
from demould.larder.fact import Band
from demould.larder.read import agent_of, agents
from demould.matter.gelatin import water_for
from demould.matter.grams import Find, weighed_lines
from demould.mise.component import Component
from demould.mise.figure import worked
from demould.mise.words import Words


def soaked(component: Component, find: Find) -> Iterator[Judged]:
    """Judge the water on the line for the gelatin against what gelatin takes up."""
    gelatin = [
        grams
        for line, grams in weighed_lines(component.formula, find)
        if line.ingredient is not None
        and not line.strained_out
        and (agent := agent_of(find(line.ingredient))) is not None
        and agent.name == "gelatin"
    ]
    total = sum(grams.value for grams in gelatin)
    if total <= 0:
        return
    least, _, most = water_for(total)
    lines = soaking_lines(component)
    water = [line.amount for line in lines if line.amount is not None]
    usual = agents()["gelatin"].facts["soak"]
    grams = sum(one.value for one in water)
    times = grams / total
    verdict = verdict_of(times, usual.low, usual.high, 0.05) if water else "not said"
    figure = worked(
        "water to soak the gelatin",
        times,
        "times",
        "its water by its grams",
        *water,
        *gelatin,
    )
    yield Judged(
        component=component.key,
        name=component.name,
        what="water to soak the gelatin",
        figure=figure if water else None,
        low=usual.low,
        high=usual.high,
        unit="times its weight",
        verdict=verdict,
        change=None
        if verdict == "inside"
        else Words(
            "{grams:g} g gelatin takes up {least:.0f} to {most:.0f} g: write that as a"
            " line of its own, once",
            grams=total,
            least=least,
            most=most,
        ),
    )


def dry_sugar(component: Component, band: Band) -> Iterator[Judged]:
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
