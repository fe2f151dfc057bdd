"""A probe's log: time and temperature, and the air's beside it where it was logged."""

import csv
import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise
from statistics import median

from demould.mise.number import NUMBER, read_number
from demould.mise.problem import Problem, UnreadableError
from demould.mise.words import Words

LEAST_READINGS = 8
LONGEST_GAP_S = 1800.0
WIDE_GAP = 10.0
WARMEST_C = 45.0
"""No piece goes into a freezer warmer; a log in Fahrenheit begins there or above."""
COLDEST_C = -60.0
_CLOCK = re.compile(r"(?:(\d{4}-\d\d-\d\d)[T ]+)?(\d{1,2}):(\d\d)(?::(\d\d))?")
_SPANS = {"s": 1.0, "sec": 1.0, "min": 60.0, "h": 3600.0}
_FAHRENHEIT = re.compile(r"°\s*f\b|\bfahrenheit\b|\(f\)|\bf$", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class ProbeLog:
    """Readings from the first on: seconds, °C in the piece, °C of the air or None."""

    seconds: tuple[float, ...]
    at_c: tuple[float, ...]
    air_c: tuple[float, ...] | None


@dataclass(frozen=True, slots=True)
class _Row:
    line: int
    seconds: float
    at_c: float
    air_c: float | None


def read_probe(text: str, file: str) -> tuple[ProbeLog | None, list[Problem]]:
    """Read ``minutes;core;air`` or ``09:05, 4.2``, a line a reading; gather every fault.

    A first line of words may say what the columns are: time (s, min, h, or a clock),
    core, air. Without it time is in minutes or by the clock, then core, then air.
    Columns stand apart by ``;``, a tab, or a comma with points for decimals.
    """
    faults: list[Problem] = []
    lines = [
        (number, cells)
        for number, cells in enumerate(_cells(text), start=1)
        if any(cell.strip() for cell in cells)
    ]
    head = lines[0][1] if lines and not _is_reading(lines[0][1]) else None
    body = lines[1:] if head else lines
    if head and any(_FAHRENHEIT.search(cell.strip()) for cell in head):
        return None, [_fahrenheit(file, lines[0][0])]
    span, order = _columns(head)
    rows = [
        row
        for number, cells in body
        if (row := _row(number, cells, span, order, file, faults)) is not None
    ]
    if faults:
        return None, faults
    faults += _unsound(rows, file)
    if faults:
        return None, faults
    first = rows[0].seconds
    airs = [row.air_c for row in rows if row.air_c is not None]
    return ProbeLog(
        seconds=tuple(row.seconds - first for row in rows),
        at_c=tuple(row.at_c for row in rows),
        air_c=tuple(airs) if len(airs) == len(rows) else None,
    ), []


def _cells(text: str) -> list[list[str]]:
    lines = text.splitlines()
    sample = "\n".join(lines[:5])
    mark = next((one for one in (";", "\t") if one in sample), ",")
    return list(csv.reader(lines, delimiter=mark))


def _is_reading(cells: Sequence[str]) -> bool:
    first = cells[0].strip()
    return bool(re.fullmatch(NUMBER, first) or _CLOCK.fullmatch(first))


def _columns(head: Sequence[str] | None) -> tuple[float, tuple[int, int, int | None]]:
    """Seconds of a unit of time, and where time, core and air stand."""
    if head is None:
        return 60.0, (0, 1, 2)
    names = [cell.strip().casefold() for cell in head]
    span = next(
        (
            seconds
            for word, seconds in _SPANS.items()
            if re.search(rf"(^|[\s(\[,_]){word}(ute|ond|our)?s?($|[\s)\],])", names[0])
        ),
        60.0,
    )
    air = next((n for n, name in enumerate(names) if "air" in name), None)
    core = next((n for n in range(1, len(names)) if n != air), 1)
    return span, (0, core, air)


def _row(
    number: int,
    cells: Sequence[str],
    span: float,
    order: tuple[int, int, int | None],
    file: str,
    faults: list[Problem],
) -> _Row | None:
    time_at, core_at, air_at = order
    try:
        if len(cells) <= core_at:
            raise UnreadableError(
                Words("{found!r} is no reading", found=",".join(cells)),
                Words("Write time and temperature, like 35; -4.2"),
            )
        if any(_FAHRENHEIT.search(cell.strip()) for cell in cells):
            faults.append(_fahrenheit(file, number))
            return None
        air = None
        if air_at is not None and len(cells) > air_at and cells[air_at].strip():
            air = _degrees(cells[air_at])
        return _Row(
            number, _seconds(cells[time_at], span), _degrees(cells[core_at]), air
        )
    except UnreadableError as fault:
        faults.append(Problem(file, number, 1, fault.wrong, fault.remedy))
        return None


def _seconds(text: str, span: float) -> float:
    clock = _CLOCK.fullmatch(text.strip())
    if clock:
        day, hours, minutes, seconds = clock.groups(default="0")
        since = timedelta(0)
        if day != "0":
            since = datetime.fromisoformat(day) - datetime(2000, 1, 1)  # noqa: DTZ001  # spans only: every row is of one clock
        clocked = timedelta(
            hours=int(hours), minutes=int(minutes), seconds=int(seconds)
        )
        return (since + clocked).total_seconds()
    return span * _number(text, "time", "35, or 09:35")


def _degrees(text: str) -> float:
    return _number(re.sub(r"\s*°?\s*[cC]?\s*$", "", text), "temperature", "-4.2")


def _number(text: str, what: str, like: str) -> float:
    if not re.fullmatch(NUMBER, text.strip()):
        raise UnreadableError(
            Words("the {what}, {found!r}, is no number", what=what, found=text.strip()),
            Words("Write it like {like}", like=like),
        )
    return float(read_number(text.strip()))


def _unsound(rows: Sequence[_Row], file: str) -> list[Problem]:
    """Too few, back in time, gaps, and what looks like another scale."""
    if len(rows) < LEAST_READINGS:
        return [
            Problem(
                file,
                0,
                0,
                Words("{n} readings tell too little", n=len(rows)),
                Words(
                    "Log {least} or more, from the door to the end",
                    least=LEAST_READINGS,
                ),
            )
        ]
    found = [
        Problem(
            file,
            later.line,
            1,
            Words("time goes back here, or stands still"),
            Words("Put the readings in order; over midnight write the day too"),
        )
        for sooner, later in pairwise(rows)
        if later.seconds <= sooner.seconds
    ]
    steps = [later.seconds - sooner.seconds for sooner, later in pairwise(rows)]
    usual = max(LONGEST_GAP_S, WIDE_GAP * median(steps))
    found += [
        Problem(
            file,
            later.line,
            1,
            Words(
                "no reading for {minutes:.0f} min before this one",
                minutes=(later.seconds - sooner.seconds) / 60,
            ),
            Words("Give the log up to the gap, or the one from after it as its own"),
        )
        for sooner, later in pairwise(rows)
        if later.seconds - sooner.seconds > usual
    ]
    warmest = max(rows, key=lambda row: row.at_c)
    coldest = min(rows, key=lambda row: row.at_c)
    if warmest.at_c > WARMEST_C:
        found.append(_fahrenheit(file, warmest.line, warmest.at_c))
    if coldest.at_c < COLDEST_C:
        found.append(
            Problem(
                file,
                coldest.line,
                1,
                Words("{at:g} °C is colder than any freezer here", at=coldest.at_c),
                Words("Look whether the probe was broken or the column is another"),
            )
        )
    return found


def _fahrenheit(file: str, line: int, at: float | None = None) -> Problem:
    wrong = (
        Words("the temperatures are in Fahrenheit")
        if at is None
        else Words("{at:g} looks like Fahrenheit: no piece goes in so warm", at=at)
    )
    return Problem(file, line, 1, wrong, Words("Give the log in °C: (F - 32) / 1.8"))
