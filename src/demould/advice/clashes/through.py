"""What has to go through a sieve or a nozzle, and what stays behind."""

import re
from collections.abc import Iterator

from demould.advice.clashes.clash import Clash, clash
from demould.advice.clashes.heat import said_of
from demould.larder.read import density as practice
from demould.matter.grams import Find, share
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.words import Words

_SIEVE = re.compile(r"\b(sieve|sieved|pass through|through a sieve)\b")
_MM = re.compile(r"(\d+(?:[.,]\d+)?)\s*mm")
_DICE = re.compile(r"\b(dice|diced|brunoise|cubes|pieces)\b")
_NOZZLE = re.compile(
    r"\bnozzle\b[^;]*?(\d+(?:[.,]\d+)?)\s*mm|(\d+(?:[.,]\d+)?)\s*mm nozzle"
)
NOZZLE_TIMES = 3.0
"""A nozzle is at least so many times as wide as what goes through; common practice."""


def through(dessert: Dessert, find: Find) -> Iterator[Clash]:
    """Give dice too large for their nozzle, and sieves whose loss is not counted."""
    del find
    for component in dessert.components:
        yield from _nozzle(component)
        yield from _sieve(component)


def _steps(component: Component) -> str:
    return "; ".join(
        " ".join((step.key, *step.remarks)) for step in component.method
    ).casefold()


def _nozzle(component: Component) -> Iterator[Clash]:
    found = _NOZZLE.search(_steps(component))
    if not found:
        return
    wide = _number(found[1] or found[2])
    for line in component.formula:
        said = said_of(line)
        size = _MM.search(said)
        if size and _DICE.search(said) and _number(size[1]) * NOZZLE_TIMES > wide:
            yield clash(
                component,
                Words(
                    "{what} of {mm:g} mm block a nozzle of {wide:g} mm",
                    what=line.what,
                    mm=_number(size[1]),
                    wide=wide,
                ),
                Words(
                    "cut them to {mm:.1f} mm or less, a third of it",
                    mm=wide / NOZZLE_TIMES,
                ),
            )


def _sieve(component: Component) -> Iterator[Clash]:
    usual = practice("sieve", "kept back")
    lost = 100 * share(component.loss.share)
    if usual is None or not _SIEVE.search(_steps(component)) or lost >= usual.low:
        return
    yield clash(
        component,
        Words(
            "{low:g} to {high:g} % stays in a sieve, and {lost:g} % is counted as lost",
            low=usual.low,
            high=usual.high,
            lost=lost,
        ),
        Words("weigh what comes through, and write it under lost"),
        certain=False,
    )


def _number(text: str) -> float:
    return float(text.replace(",", "."))
