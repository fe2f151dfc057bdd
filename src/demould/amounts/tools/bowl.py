"""Whether a mixer can whip it: not over the brim, not whisking air."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from demould.amounts.counts.rounding import SPECK
from demould.matter.grams import share
from demould.mise.figure import Figure, worked
from demould.mise.kitchen import Tool
from demould.mise.words import Words

Verdict = Literal["fits", "split", "too little"]


@dataclass(frozen=True, slots=True, kw_only=True)
class InBowl:
    """What becomes of one round in one bowl.

    `goes` is in how many whips; `most` and `least` what the bowl takes at once, in g,
    None where the kitchen has not said. `choices` are what a cook can do instead.
    """

    verdict: Verdict
    mass: Figure
    goes: int
    most: Figure | None
    least: Figure | None
    choices: tuple[Words, ...]


def most_g(tool: Tool, whipped: Figure) -> Figure | None:
    """What a bowl takes so that it is as full as allowed once whipped [g]."""
    if tool.bowl is None:
        return None
    fill = 1.0 if tool.fill is None else share(tool.fill)
    parts = [part for part in (tool.bowl, tool.fill, whipped) if part is not None]
    return worked(
        f"most in the {tool.key}",
        tool.bowl.value * fill * whipped.value,
        "g",
        Words(
            "{bowl:g} ml bowl, {fill:g} % full at the end, {density:g} g/ml",
            bowl=tool.bowl.value,
            fill=100 * fill,
            density=whipped.value,
        ),
        *parts,
    )


def whips(round_g: float, tool: Tool | None, whipped: Figure) -> int:
    """In how many goes one round is whipped."""
    most = None if tool is None else most_g(tool, whipped)
    return 1 if most is None else max(1, math.ceil(round_g / most.value - SPECK))


def in_bowl(mass: Figure, tool: Tool, whipped: Figure) -> InBowl:
    """Whip `mass` in one bowl."""
    most, least = most_g(tool, whipped), tool.least
    goes = whips(mass.value, tool, whipped)
    if least is not None and mass.value / goes < least.value:
        verdict: Verdict = "too little"
        choices = _if_too_little(mass, least)
    elif goes > 1:
        verdict, choices = "split", (_split(mass, goes),)
    else:
        verdict, choices = "fits", ()
    return InBowl(
        verdict=verdict,
        mass=mass,
        goes=goes,
        most=most,
        least=least,
        choices=choices,
    )


def _split(mass: Figure, goes: int) -> Words:
    return Words(
        "whip in {goes} goes of {each:.0f} g", goes=goes, each=mass.value / goes
    )


def _if_too_little(mass: Figure, least: Figure) -> tuple[Words, ...]:
    return (
        Words(
            "whisk {mass:.0f} g by hand: it is under the whisk's {least:.0f} g",
            mass=mass.value,
            least=least.value,
        ),
        Words("whip it with the next batch"),
        Words("make up to {least:.0f} g and keep what is over", least=least.value),
        Words("borrow a mould and fill in one round"),
    )


def whips_of_rounds(
    each_round_g: Sequence[float], tool: Tool | None, whipped: Figure
) -> int:
    """Whips over all rounds: at least one a round, more where the bowl is too small."""
    return sum(whips(grams, tool, whipped) for grams in each_round_g)
