"""How thick a dip, a glaze or a spray goes on, against what is usual."""

from collections.abc import Iterator

from demould.advice.bands.judged import Judged, verdict_of
from demould.larder.fact import Band, Fact
from demould.matter.grams import share
from demould.mise.component import Component
from demould.mise.dessert import Dessert, Spray
from demould.mise.figure import Figure, worked
from demould.mise.words import Words

MM_TO_G_PER_100_CM2 = 10.0
"""A film of 1 mm of 1 g/ml weighs 10 g on 100 cm2."""


def laid_on(component: Component, dessert: Dessert, band: Band) -> Iterator[Judged]:
    """Judge the film of every finish that is made of this component."""
    for finish in dessert.finish:
        if finish.component != component.key:
            continue
        film = band.more.get("film")
        if film is not None:
            yield _judged(component, "coat", finish.film, film, "mm")
        weight = band.more.get("laid on")
        if weight is not None:
            grams = worked(
                "laid on",
                finish.film.value * component.density.value * MM_TO_G_PER_100_CM2,
                "g",
                "film x density, on 100 cm2",
                finish.film,
                component.density,
            )
            yield _judged(component, "laid on", grams, weight, "g on 100 cm2")
        lands = band.more.get("transfer")
        if lands is not None and isinstance(finish, Spray):
            part = worked(
                "lands", 100 * share(finish.lands), "%", "share", finish.lands
            )
            yield _judged(component, "what lands", part, lands, "%")


def _judged(
    component: Component, what: str, figure: Figure, fact: Fact, unit: str
) -> Judged:
    verdict = verdict_of(figure.value, fact.low, fact.high, 1e-6)
    return Judged(
        component=component.key,
        name=component.name,
        what=what,
        figure=figure,
        low=fact.low,
        high=fact.high,
        unit=unit,
        verdict=verdict,
        change=None
        if verdict == "inside"
        else Words("weigh three pieces before and after"),
    )
