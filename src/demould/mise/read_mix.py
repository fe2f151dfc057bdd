"""One part of a mix as a cook says it: ``280 g cream 35 % at 78 °C``."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from demould.mise.degrees import degrees_in
from demould.mise.figure import Line
from demould.mise.formula import FormulaLine
from demould.mise.problem import UnreadableError
from demould.mise.read_formula import Names, read_formula_line
from demould.mise.words import Words

_PART = re.compile(r"(?P<what>.+?)\s+at\s+(?P<at>[^,;]+)(?:[,;]\s*(?P<how>.*))?")
_HOW = {"unmelted": True, "not melted": True, "in pieces": True, "melted": False}


@dataclass(frozen=True, slots=True, kw_only=True)
class MixPart:
    """What goes in, how warm [°C]; `unmelted` couverture is solid still."""

    line: FormulaLine
    at_c: float
    unmelted: bool


def read_mix_part(text: str, own: Iterable[str] = ()) -> MixPart:
    """An amount with its ingredient, ``at`` a temperature, and ``unmelted`` where it is.

    Raises
    ------
    UnreadableError
        If the amount, the ingredient or the temperature cannot be read.
    """
    found = _PART.fullmatch(text.strip())
    degrees = degrees_in(found["at"]) if found else ()
    if not found or len(degrees) != 1 or degrees[0].low != degrees[0].high:
        raise UnreadableError(
            Words("{text!r} does not say how warm it is", text=text),
            Words("Write it like 280 g cream 35 % at 78 °C"),
        )
    how = (found["how"] or "melted").strip().casefold()
    if how not in _HOW:
        raise UnreadableError(
            Words("{how!r} after the temperature is not known", how=how),
            Words("Write melted or unmelted, or leave it out"),
        )
    line = read_formula_line(
        Line("the mix", 0, found["what"]), 1, Names(own=tuple(own))
    )
    if line.amount is None:
        raise UnreadableError(
            Words("{text!r} does not say how much", text=text),
            Words("Write it like 280 g cream 35 % at 78 °C"),
        )
    return MixPart(line=line, at_c=degrees[0].low, unmelted=_HOW[how])
