"""How hot a component gets, and which of its lines go in late, by what the card says."""

import re

from demould.larder.names import plain
from demould.matter.grams import Find, weighed_lines
from demould.matter.inside import Inside
from demould.mise.component import Component
from demould.mise.degrees import degrees_in
from demould.mise.formula import FormulaLine

BOILS_C = 100.0
_BOIL = re.compile(
    r"\b(boil|boils|boiled|boiling|simmer|simmers|simmered|poach|poached)\b"
)
_LATE = re.compile(
    r"\b(last|at the end|off the heat|once cool|when cool|cold|below \d+|under \d+)\b"
)
_COOKED = re.compile(
    r"\b(boiled|cooked|poached|canned|tinned|blanched|roasted|candied|dried|jam)\b"
)
_RAW = re.compile(r"\b(raw|fresh|uncooked)\b")


def said_of(line: FormulaLine) -> str:
    """All words of a line, plain."""
    return " ".join((line.what, line.state, *line.remarks)).casefold()


def hottest_c(component: Component) -> float | None:
    """The hottest the method speaks of [°C]; None where it says nothing of heat."""
    found: list[float] = []
    for step in component.method:
        said = " ".join((step.key, *step.remarks)).casefold()
        found.extend(one.high for one in degrees_in(said))
        if _BOIL.search(said):
            found.append(BOILS_C)
    return max(found, default=None)


def goes_in_late(line: FormulaLine) -> bool:
    """Whether the line says that it goes in last, cold or off the heat."""
    return bool(_LATE.search(said_of(line)))


def is_raw(component: Component, line: FormulaLine, enough_c: float) -> bool | None:
    """Whether a fruit stays raw: by its own line, else by the method; None: not said."""
    said = plain(said_of(line))
    if _COOKED.search(said):
        return False
    if _RAW.search(said):
        return True
    hottest = hottest_c(component)
    if hottest is None:
        return None
    return hottest < enough_c or goes_in_late(line)


def cooked_together(component: Component, find: Find) -> Inside:
    """What is in the pan from the start: every line that does not go in late."""
    return tuple(
        (find(line.ingredient), grams.value)
        for line, grams in weighed_lines(component.formula, find)
        if line.ingredient is not None
        and not line.strained_out
        and not goes_in_late(line)
    )
