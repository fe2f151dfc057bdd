"""Water that soaks the gelatin: written once, neither forgotten nor counted twice."""

from collections.abc import Iterator

from demould.advice.bands.change import soaking_lines
from demould.advice.bands.judged import Judged, verdict_of
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
