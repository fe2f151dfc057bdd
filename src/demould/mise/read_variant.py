"""A variant: ``base; hazelnut paste becomes 90 g sunflower paste + 6 g cocoa butter``."""

import re
from collections.abc import Mapping

from demould.mise.dessert import Swap
from demould.mise.figure import Figure, Line
from demould.mise.formula import Formula
from demould.mise.known import component_called
from demould.mise.parts import at_column, name_and_rest
from demould.mise.problem import UnreadableError
from demould.mise.read_formula import Names, read_formula_line
from demould.mise.spelling import one_of
from demould.mise.words import Words

_BECOMES = re.compile(r"(?P<out>.*\S)\s+becomes\s+(?P<into>\S.*)")


def read_swap(line: Line, formulas: Mapping[str, Formula | None], names: Names) -> Swap:
    """One line of a variant.

    `formulas` are the components' by key, None where a fault of its own left lines out.

    Raises
    ------
    UnreadableError
        If nobody makes the component, it has no such ingredient, or one of those that
        replace it has no amount or is not known.
    """
    name, rest = name_and_rest(line.text)
    key = component_called(name.text, formulas)
    found = _BECOMES.fullmatch(rest[0].text) if rest else None
    if found is None or len(rest) > 1:
        raise UnreadableError(
            Words("{found!r} does not say what becomes what", found=line.text),
            Words("Write it like base; hazelnut paste becomes 90 g sunflower paste"),
        )
    column = rest[0].column
    out, formula = found["out"], formulas[key]
    if formula is not None:
        with at_column(column):
            out = one_of(out, [one.what for one in formula], f"ingredient of {key}")
    into = []
    for part in re.finditer(r"(?:^|\+)\s*([^+]+)", found["into"]):
        with at_column(column + found.start("into") + part.start(1)):
            into.append(_into(part[1].strip(), line, names))
    return Swap(component=key, out=out, into=tuple(into), line=line)


def _into(text: str, line: Line, names: Names) -> tuple[Figure, str]:
    here = Line(line.file, line.number, text, line.column)
    read = read_formula_line(here, 1, names)
    if read.amount is None:
        raise UnreadableError(
            Words("how much {found!r} goes in is missing", found=text),
            Words("Write the amount and its unit first, for example 90 g"),
        )
    return read.amount, ", ".join(filter(None, (read.what, read.state)))
