"""Everything that speaks up about a dessert, worst first, in one form."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from demould.advice.bands.judge import out_of_band
from demould.advice.clashes.find import clashes
from demould.advice.height import sugar_up_here
from demould.advice.sinking import sinkings
from demould.matter.grams import Find
from demould.matter.setting import weeps
from demould.mise.dessert import Dessert
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words

Kind = Literal["clash", "height", "band", "sinks", "weeps"]
WORSE = {"clash": 10.0, "may clash": 4.0, "height": 3.0, "sinks": 2.0, "weeps": 1.5}
"""What these count beside a band, whose weight is how many widths it is missed by."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing to look at: what it is, and what to do. `weight` puts the worst first."""

    dessert: str
    kind: Kind
    says: Words
    do: Words | None
    weight: float


def findings(dessert: Dessert, kitchen: Kitchen, find: Find) -> tuple[Finding, ...]:
    """Give what clashes, is outside its band, sinks or weeps."""
    found = [
        *_clashes(dessert, find),
        *_height(dessert, kitchen),
        *_bands(dessert, find),
        *_sinks(dessert, kitchen),
        *_weeps(dessert, find),
    ]
    return tuple(sorted(found, key=lambda one: -one.weight))


def _clashes(dessert: Dessert, find: Find) -> Iterator[Finding]:
    for one in clashes(dessert, find):
        yield Finding(
            dessert=dessert.key,
            kind="clash",
            says=one.says,
            do=one.do,
            weight=WORSE["clash"] if one.certain else WORSE["may clash"],
        )


def _height(dessert: Dessert, kitchen: Kitchen) -> Iterator[Finding]:
    for says, do in sugar_up_here(dessert, kitchen):
        yield Finding(
            dessert=dessert.key,
            kind="height",
            says=says,
            do=do,
            weight=WORSE["height"],
        )


def _bands(dessert: Dessert, find: Find) -> Iterator[Finding]:
    for one in out_of_band(dessert, find):
        yield Finding(
            dessert=dessert.key,
            kind="band",
            says=one.says,
            do=one.change or one.remark,
            weight=one.outside,
        )


def _sinks(dessert: Dessert, kitchen: Kitchen) -> Iterator[Finding]:
    for one in sinkings(dessert, kitchen):
        if one.stays != "holds":
            yield Finding(
                dessert=dessert.key,
                kind="sinks",
                says=one.says,
                do=one.do,
                weight=WORSE["sinks"],
            )


def _weeps(dessert: Dessert, find: Find) -> Iterator[Finding]:
    for component in dessert.components:
        one = weeps(component, find, dessert.components)
        if one is not None and one.much:
            yield Finding(
                dessert=dessert.key,
                kind="weeps",
                says=Words(
                    "{name}: {agent} weeps after freezing",
                    name=component.name,
                    agent=one.agent,
                ),
                do=Words(
                    "0.1 to 0.3 % locust bean gum or xanthan in it, sugars over 30 %,"
                    " and the blast rather than the freezer; trial first"
                ),
                weight=WORSE["weeps"],
            )
