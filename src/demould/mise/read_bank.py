"""Lines of what is in the freezer, and of what a counter should have."""

import re
from collections.abc import Collection, Mapping
from dataclasses import replace

from demould.mise.clock import WEEKDAYS, read_day
from demould.mise.faults import Faults
from demould.mise.figure import Line
from demould.mise.keys import keys_of
from demould.mise.own_bank import Bank, Lot, Par
from demould.mise.parts import Part, after, at_column, name_and_rest
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_count, read_figure
from demould.mise.spelling import one_of
from demould.mise.tree import Branch
from demould.mise.words import Words
from demould.mise.write_quantity import write_figure

FREEZER = "in the freezer"
PARS = "par"
MOST_PIECES = 9999
_PIECES = re.compile(r"(\S+)\s+pieces?")
_TIMES = re.compile(r"(\S+)\s+times?")
_THERE = re.compile(r"(\S+)\s+there")
Made = Mapping[str, Collection[str] | None]
"""The components of each dessert by key; None where its file cannot be read."""


def read_bank(branch: Branch, desserts: Made, faults: Faults) -> Bank:
    """Every lot and par of a larder; what cannot be read is noted and left out."""
    top = Branch(
        tuple(item for item in branch.items if item[0].line.text in (FREEZER, PARS)),
        branch.line,
    )
    keys = keys_of(top, faults, known=(FREEZER, PARS), required={})
    return Bank(
        lots=keys.each(FREEZER, lambda line: read_lot(line, desserts)),
        pars=keys.each(PARS, lambda line: read_par(line, desserts)),
    )


def read_lot(line: Line, desserts: Made) -> Lot:
    """``centre of river-pebble; 30 pieces; made Tue 2026-11-10; keeps 14 d``.

    Raises
    ------
    UnreadableError
        If nothing says how much of what, or when it was made.
    """
    name, rest = name_and_rest(line.text)
    component, _, dessert = name.text.rpartition(" of ")
    dessert = one_of(dessert, desserts, "dessert")
    parts = desserts[dessert]
    if component and parts is not None:
        component = one_of(component, parts, "component")
    found: dict[str, object] = {}
    for part in rest:
        with at_column(part.column):
            found |= _of_lot(part, line)
    if "made" not in found:
        raise UnreadableError(
            Words("nobody says when {what!r} was made", what=name.text),
            Words("Write made and the day, for example made Sat 2026-11-14"),
        )
    if "pieces" not in found and "grams" not in found:
        raise UnreadableError(
            Words("nobody says how much there is of {what!r}", what=name.text),
            Words("Write how many pieces, or grams: 12 pieces"),
        )
    lot = Lot(dessert=dessert, component=component or None, made=read_day("2000-01-01"))
    return replace(lot, line=line, **found)  # type: ignore[arg-type]  # each by its name


def _of_lot(part: Part, line: Line) -> dict[str, object]:
    if found := _PIECES.fullmatch(part.text):
        return {"pieces": read_count(found[1], name="number", most=MOST_PIECES)}
    if told := after(part.text, "made"):
        return {"made": read_day(told)}
    if told := after(part.text, "keeps"):
        return {"keeps": read_figure(told, name="keeps", kinds=("time",), line=line)}
    if told := after(part.text, "variant"):
        return {"variant": told}
    if (told := after(part.text, "melted")) and (found := _TIMES.fullmatch(told)):
        return {"melted": read_count(found[1], name="number", most=MOST_PIECES)}
    return {"grams": read_figure(part.text, name="grams", kinds=("mass",), line=line)}


def read_par(line: Line, desserts: Made) -> Par:
    """``river-pebble; 12 pieces; 5 there``.

    Raises
    ------
    UnreadableError
        If nothing says how many.
    """
    name, rest = name_and_rest(line.text)
    dessert = one_of(name.text, desserts, "dessert")
    pieces = there = None
    for part in rest:
        with at_column(part.column):
            if found := _PIECES.fullmatch(part.text):
                pieces = read_count(found[1], name="par", most=MOST_PIECES)
            elif found := _THERE.fullmatch(part.text):
                there = (
                    0
                    if found[1] == "0"
                    else read_count(found[1], name="number", most=MOST_PIECES)
                )
    if pieces is None:
        raise UnreadableError(
            Words("{found!r} does not say how many", found=line.text),
            Words("Write it like river-pebble; 12 pieces; 5 there"),
        )
    return Par(dessert=dessert, pieces=pieces, there=there or 0, line=line)


def write_lot(lot: Lot) -> str:
    """Give the line `read_lot` reads back."""
    return "; ".join(
        part
        for part in (
            f"{lot.component} of {lot.dessert}" if lot.component else lot.dessert,
            f"{lot.pieces} pieces" if lot.pieces is not None else "",
            write_figure(lot.grams) if lot.grams else "",
            f"made {WEEKDAYS[lot.made.weekday()]} {lot.made}",
            f"keeps {write_figure(lot.keeps)}" if lot.keeps else "",
            f"variant {lot.variant}" if lot.variant else "",
            f"melted {lot.melted} times" if lot.melted else "",
        )
        if part
    )


def write_par(par: Par) -> str:
    """Give the line `read_par` reads back."""
    there = f"; {par.there} there" if par.there else ""
    return f"{par.dessert}; {par.pieces} pieces{there}"
