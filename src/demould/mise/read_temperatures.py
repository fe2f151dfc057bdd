"""A temperature log: a moment and degrees Celsius a line, ``2026-11-20 14:00, 57``."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from zoneinfo import ZoneInfo

from demould.mise.clock import read_moment
from demould.mise.number import read_number
from demould.mise.problem import Problem, UnreadableError
from demould.mise.words import Words

WARMEST_C = 200.0
COLDEST_C = -90.0
FREEZER_F_LEAST = 25.0
_FAHRENHEIT = re.compile(r"°\s*f\b|\bfahrenheit\b|\d\s*f\b", re.IGNORECASE)
_UNIT = re.compile(r"\s*°?\s*c?\s*$", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One reading: an aware moment, and °C."""

    at: datetime
    c: float


def read_temperatures(
    text: str, file: str, zone: ZoneInfo
) -> tuple[tuple[Reading, ...], tuple[Problem, ...]]:
    """Read every line, and say which are none; the first may be heads of columns."""
    found: list[Reading] = []
    amiss: list[Problem] = []
    for number, line in _lines(text):
        try:
            reading = _reading(line, zone)
            if found and reading.at <= found[-1].at:
                raise UnreadableError(
                    Words("{line!r} is not after the line above it", line=line),
                    Words("Put the lines in the order of time, each moment once"),
                )
            found.append(reading)
        except UnreadableError as fault:
            amiss.append(Problem(file, number, 1, fault.wrong, fault.remedy))
    return tuple(found), tuple(amiss)


def _lines(text: str) -> Iterator[tuple[int, str]]:
    for number, line in enumerate(text.splitlines(), start=1):
        head = number == 1 and not re.match(r"\s*\d", line)
        if line.strip() and not line.lstrip().startswith("#"):
            if head and not _FAHRENHEIT.search(line):
                continue
            yield number, line.strip()


def _reading(line: str, zone: ZoneInfo) -> Reading:
    when, _, degrees = re.sub(r"[;\t]", ",", line, count=1).partition(",")
    if _FAHRENHEIT.search(degrees or line):
        raise UnreadableError(
            Words("{line!r} is in Fahrenheit", line=line),
            Words("Write °C: take 32 away, then times 5/9"),
        )
    if not degrees.strip():
        raise UnreadableError(
            Words("{line!r} has no temperature", line=line),
            Words("Write it like 2026-11-20 14:00, 57"),
        )
    try:
        c = float(read_number(_UNIT.sub("", degrees.strip())))
    except UnreadableError:
        raise UnreadableError(
            Words("{found!r} is no temperature", found=degrees.strip()),
            Words("Write it like 2026-11-20 14:00, 57"),
        ) from None
    if not COLDEST_C <= c <= WARMEST_C:
        raise UnreadableError(
            Words("{c:g} °C is no temperature of a kitchen", c=c),
            Words("Look at its unit: °C is meant"),
        )
    return Reading(at=read_moment(when.strip(), zone), c=c)
