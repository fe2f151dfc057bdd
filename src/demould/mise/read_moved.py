"""What came and went since the count, and the months a thing is good in."""

import re

from demould.mise.clock import MONTHS, read_day
from demould.mise.figure import Line
from demould.mise.own_larder import Moved, Season
from demould.mise.parts import after, at_column, name_and_rest
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_figure
from demould.mise.words import Words

_MOVED = re.compile(r"(.*\S)\s+(came|used)\s+(\S.*)")


def read_moved(line: Line) -> Moved:
    """``Wed 2026-11-18 came 2 kg``, ``Wed 2026-11-18 used 940 g``.

    Raises
    ------
    UnreadableError
        If the day or the weight cannot be read.
    """
    found = _MOVED.fullmatch(line.text.strip())
    if not found:
        raise UnreadableError(
            Words("{found!r} does not say what came or was used", found=line.text),
            Words("Write it like Wed 2026-11-18 came 2 kg, or used 940 g"),
        )
    return Moved(
        on=read_day(found[1]),
        came=found[2] == "came",
        grams=read_figure(found[3], name=found[2], kinds=("mass",), line=line),
        line=line,
    )


def read_season(line: Line) -> Season:
    """``Apr to Jun; else rhubarb, frozen``.

    Raises
    ------
    UnreadableError
        If a month cannot be read.
    """
    name, rest = name_and_rest(line.text)
    instead = ""
    for part in rest:
        told = after(part.text, "else")
        if told is None:
            with at_column(part.column):
                raise UnreadableError(
                    Words("{found!r} says nothing about a season", found=part.text),
                    Words("Write it like Apr to Jun; else rhubarb, frozen"),
                )
        instead = told
    return Season(months=_months(name.text), instead=instead, line=line)


def _months(text: str) -> tuple[int, ...]:
    months: list[int] = []
    for part in re.split(r",\s*|\s+and\s+", text):
        ends = [_month(end) for end in re.split(r"\s+to\s+", part)]
        first, last = ends[0], ends[-1]
        months.extend(
            (first - 1 + step) % 12 + 1 for step in range((last - first) % 12 + 1)
        )
    return tuple(dict.fromkeys(months))


def _month(text: str) -> int:
    spelt = text.strip(" .").casefold()
    for number, name in enumerate(MONTHS, start=1):
        if len(spelt) >= 3 and spelt.startswith(name.casefold()):
            return number
    raise UnreadableError(
        Words("{found!r} is not a month", found=text.strip()),
        Words("Write Jan, Feb, Mar and so on: Apr to Jun"),
    )
