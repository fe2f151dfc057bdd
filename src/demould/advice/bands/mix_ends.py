"""How warm a first, hot mix ends with couverture melted or not, by reckoning."""

import re
from collections.abc import Iterator

from demould.advice.bands.judged import Judged, verdict_of
from demould.advice.bands.quantity import couverture
from demould.larder.fact import Band
from demould.matter.grams import Find, weighed_lines
from demould.matter.mixing import Poured, mixed_c
from demould.mise.component import Component
from demould.mise.degrees import degrees_in
from demould.mise.figure import worked
from demould.mise.formula import FormulaLine
from demould.mise.words import Words

WINDOW = "final mix temperature"
ROOM_C, FRIDGE_C, MELTED_C = 20.0, 4.0, 40.0
SLACK_K = 1.0


def mix_ends(component: Component, band: Band, find: Find) -> Iterator[Judged]:
    """Judge where the mix ends; couverture nobody says is melted is taken unmelted.

    Lines marked hot have the first temperature of the step ``mix``, those marked cold
    come from the fridge. Nothing where a hot line, couverture or a temperature lacks.
    """
    fact = band.more.get(WINDOW)
    hot_c = _hot_c(component)
    if fact is None or hot_c is None:
        return
    lines = [
        (line, grams.value)
        for line, grams in weighed_lines(component.formula, find)
        if line.ingredient is not None and not line.strained_out and grams.value > 0
    ]
    chocolate = [
        line for line, _ in lines if couverture(find(line.ingredient or "")) > 0
    ]
    if not chocolate or not any(_says(line, "hot") for line, _ in lines):
        return
    said_melted = _melted(component, chocolate)
    ends = mixed_c(
        [_poured(line, grams, hot_c, find, melted=said_melted) for line, grams in lines]
    )
    verdict = verdict_of(ends.likely, fact.low, fact.high, SLACK_K)
    yield Judged(
        component=component.key,
        name=component.name,
        what=f"mix with {'melted couverture' if said_melted else 'unmelted couverture'}",
        figure=worked(WINDOW, ends.likely, "°C", "heat of all parts, fat melting"),
        low=fact.low,
        high=fact.high,
        unit="°C",
        verdict=verdict,
        change=_do(verdict, melted=said_melted),
    )


def _do(verdict: str, *, melted: bool) -> Words | None:
    if verdict == "under" and not melted:
        return Words(
            "melt the couverture to 40 °C first, and write 'melted' on its line"
        )
    if verdict == "under":
        return Words("pour the hot part hotter, or take the cold one out earlier")
    return Words("let it cool before the cold part") if verdict == "over" else None


def _hot_c(component: Component) -> float | None:
    for step in component.method:
        if step.key == "mix":
            for remark in step.remarks:
                for one in degrees_in(remark):
                    return (one.low + one.high) / 2
    return None


def _says(line: FormulaLine, word: str) -> bool:
    said = " ".join((line.state, *line.remarks)).casefold()
    return bool(re.search(rf"\b{word}\b", said))


def _melted(component: Component, chocolate: list[FormulaLine]) -> bool:
    steps = (remark for step in component.method for remark in step.remarks)
    return all(_says(line, "melted") for line in chocolate) or any(
        re.search(r"\bmelted couverture\b", said.casefold()) for said in steps
    )


def _poured(
    line: FormulaLine, grams: float, hot_c: float, find: Find, *, melted: bool
) -> Poured:
    what = find(line.ingredient or "")
    solid = couverture(what) > 0 and not melted
    at_c = ROOM_C
    if _says(line, "hot"):
        at_c = hot_c
    elif _says(line, "cold"):
        at_c = FRIDGE_C
    elif couverture(what) > 0 and melted:
        at_c = MELTED_C
    return Poured(made_of=what.per_100g, grams=grams, at_c=at_c, unmelted=solid)
