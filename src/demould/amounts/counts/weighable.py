"""Lines as they can be weighed: on the kitchen's scales, adding up to the batch."""

from collections.abc import Sequence
from dataclasses import dataclass

from demould.matter.grams import Find, weighed_lines
from demould.mise.component import Component
from demould.mise.figure import Figure, worked
from demould.mise.formula import FormulaLine
from demould.mise.kitchen import Scale
from demould.mise.words import Words

SETTING_STEP_G = 0.1
SMALL_G = 20.0
COARSE_STEP_G = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighing:
    """One line to weigh: `grams` as the scale shows them, in steps of `step_g`."""

    line: FormulaLine
    grams: Figure
    step_g: float


def weighings(
    component: Component, factor: Figure, scales: Sequence[Scale], find: Find
) -> tuple[Weighing, ...]:
    """All lines by their factor, rounded to what can be weighed. As written, in order.

    What sets, and anything under 20 g, goes on the finest scale that takes it, in steps
    of 0.1 g (a whole gram of 20 is 5 %); the rest in the coarse scale's steps. Of the
    coarse lines as many are rounded up, those nearest to it first, as bring the sum
    nearest to the batch: it is off by half a step at the most, wherever one line is
    coarse. Lines that are strained out are rounded for themselves.
    """
    lines = weighed_lines(component.formula, find)
    exact = [grams.value * factor.value for _, grams in lines]
    steps = [
        _step_g(line, grams, scales, find)
        for (line, _), grams in zip(lines, exact, strict=True)
    ]
    stays = [not line.strained_out for line, _ in lines]
    shown = _rounded(exact, steps, stays)
    return tuple(
        Weighing(line=line, grams=_as_shown(grams, factor, value, step), step_g=step)
        for (line, grams), value, step in zip(lines, shown, steps, strict=True)
    )


def _step_g(
    line: FormulaLine, grams: float, scales: Sequence[Scale], find: Find
) -> float:
    sets = line.ingredient is not None and find(line.ingredient).category == "gelling"
    taking = [scale.step.value for scale in scales if grams <= scale.most.value]
    if not taking:
        return max((scale.step.value for scale in scales), default=COARSE_STEP_G)
    if sets or grams < SMALL_G:
        return max(SETTING_STEP_G, min(taking))
    return max(COARSE_STEP_G, min(taking)) if len(taking) > 1 else taking[0]


def _rounded(
    exact: Sequence[float], steps: Sequence[float], stays: Sequence[bool]
) -> list[float]:
    coarse = max(steps, default=0.0)
    shared = [step == coarse and stay for step, stay in zip(steps, stays, strict=True)]
    shown = [
        (value // step if share else round(value / step)) * step
        for value, step, share in zip(exact, steps, shared, strict=True)
    ]
    short = sum(
        value - rounded
        for value, rounded, stay in zip(exact, shown, stays, strict=True)
        if stay
    )
    nearest = sorted(
        (index for index, share in enumerate(shared) if share),
        key=lambda index: shown[index] - exact[index],
    )
    for index in nearest[: max(0, round(short / coarse))] if nearest else ():
        shown[index] += coarse
    return [round(value, 6) for value in shown]


def _as_shown(grams: Figure, factor: Figure, value: float, step: float) -> Figure:
    rule = Words("line x {factor:.4g}, to {step:g} g", factor=factor.value, step=step)
    return worked(f"{grams.name} to weigh", value, "g", rule, grams, factor)


def dose_as_weighed(agent_g: float, lines: Sequence[Weighing], cooked: float) -> float:
    """Share of a setting agent in what is weighed, after cooking [%].

    `cooked` is the share of the mix that is left after cooking, up to 1.
    """
    whole = sum(one.grams.value for one in lines if not one.line.strained_out)
    return 100 * agent_g / (whole * cooked)
