"""Score how notes are read against the right reading beside them.

Run: ``python benchmarks/notes.py tests/corpus/english.txt [MORE ...]``. The form of the
files is told in ``tests/corpus/README.md``.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from demould.larder.names import plain
from demould.larder.read import find_ingredient

UNITS = {
    "g": ("g", 1.0),
    "kg": ("g", 1000.0),
    "ml": ("ml", 1.0),
    "cl": ("ml", 10.0),
    "dl": ("ml", 100.0),
    "l": ("ml", 1000.0),
    **{
        unit: (unit, 1.0)
        for unit in ["leaf", "pieces", "spoon", "teaspoon", "cup", "pinch", "drop", "%"]
    },
}
_NUMBER = r"\d+(?:\.\d+)?"
_LINE = re.compile(
    rf"(?:\?|(?P<low>{_NUMBER})(?: to (?P<high>{_NUMBER}))? (?P<unit>\S+)) (?P<what>.+)"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """One thing that a note says: a line of a reading.

    `kind` is ``makes``, ``part``, ``line``, ``total``, ``do`` or ``calls``. `names` are
    all that would be right: ids of ingredients, or one plain name.
    """

    kind: str
    part: str = ""
    names: tuple[str, ...] = ()
    low: float | None = None
    high: float | None = None
    unit: str = ""
    at_c: float | None = None
    minutes: float | None = None

    def __str__(self) -> str:
        numbers = " to ".join(
            f"{one:g}"
            for one in dict.fromkeys((self.low, self.high))
            if one is not None
        )
        said = [self.kind, self.part and f"[{self.part}]", numbers, self.unit]
        said += ["|".join(self.names)]
        said += [f"{self.at_c:g} °C" if self.at_c is not None else ""]
        said += [f"{self.minutes:g} min" if self.minutes is not None else ""]
        return " ".join(filter(None, said))


@dataclass(frozen=True, slots=True, kw_only=True)
class Noted:
    """A note of a corpus and its right reading."""

    name: str
    text: str
    things: tuple[Thing, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Score:
    """How one note was read: how many lines, how many right, and what was not."""

    lines: int
    right: int
    missed: tuple[Thing, ...]
    beside: tuple[Thing, ...]
    dropped: tuple[str, ...] = ()


def read_corpus(text: str) -> Iterator[Noted]:
    """Every note of a file with its reading.

    Raises
    ------
    ValueError
        If a reading has a line of no known form.
    """
    for block in re.split(r"^=== *", text, flags=re.MULTILINE)[1:]:
        head, _, rest = block.partition("\n")
        note, mark, reading = rest.partition("--- read as")
        if not mark:
            raise ValueError(f"{head}: no line '--- read as'")
        yield Noted(name=head.strip(), text=note, things=tuple(_things(head, reading)))


def _things(head: str, reading: str) -> Iterator[Thing]:
    part = ""
    for raw in reading.splitlines():
        line = raw.partition(";")[0].strip()
        if not line:
            continue
        if line.startswith("part "):
            part = plain(line.removeprefix("part "))
            yield Thing(kind="part", names=(part,))
        elif line.startswith("calls for "):
            yield Thing(kind="calls", names=(plain(line.removeprefix("calls for ")),))
        elif line.startswith("do "):
            yield _do(line.removeprefix("do "))
        elif found := re.fullmatch(
            rf"makes ({_NUMBER})(?: to ({_NUMBER}))? pieces", line
        ):
            low = float(found[1])
            high = float(found[2]) if found[2] else low
            yield Thing(kind="makes", low=low, high=high)
        elif found := re.fullmatch(rf"in all ({_NUMBER}) g", line):
            grams = float(found[1])
            yield Thing(kind="total", part=part, low=grams, high=grams, unit="g")
        else:
            yield _line(head, part, line)


def _do(text: str) -> Thing:
    action, *rest = (piece.strip() for piece in text.split(","))
    at_c = next((float(one[:-2]) for one in rest if one.endswith("°C")), None)
    return Thing(
        kind="do",
        names=(action,),
        at_c=at_c,
        minutes=next(map(_minutes, rest[-1:]), None),
    )


def _minutes(text: str) -> float | None:
    found = re.fullmatch(rf"({_NUMBER}) (min|h|d)", text)
    return float(found[1]) * {"min": 1, "h": 60, "d": 1440}[found[2]] if found else None


def _line(head: str, part: str, line: str) -> Thing:
    found = _LINE.fullmatch(line)
    if not found or (found["unit"] and found["unit"] not in UNITS):
        raise ValueError(f"{head}: {line!r} is no line of a reading")
    unit, factor = UNITS[found["unit"]] if found["unit"] else ("", 1.0)
    low = float(found["low"]) * factor if found["low"] else None
    high = float(found["high"]) * factor if found["high"] else low
    names = tuple(_ingredient(head, one) for one in found["what"].split(" or "))
    return Thing(kind="line", part=part, names=names, low=low, high=high, unit=unit)


def _ingredient(head: str, name: str) -> str:
    if name.startswith("unknown "):
        return plain(name)
    known = find_ingredient(name.strip()) or UNLISTED.get(plain(name))
    if known is None:
        raise ValueError(f"{head}: no ingredient is called {name!r}")
    return known if isinstance(known, str) else known.id


UNLISTED = {"vanilla pod": "unknown vanilla pod", "tonka": "unknown tonka"}
"""What a note may name and the table has no composition of."""


def compare(right: Iterable[Thing], found: Iterable[Thing]) -> Score:
    """Match what was read with what is right, each at most once."""
    left = list(found)
    right = tuple(right)
    missed = []
    for thing in right:
        same = next((one for one in left if _agree(thing, one)), None)
        if same is None:
            missed.append(thing)
        else:
            left.remove(same)
    beside = tuple(one for one in left if one.kind in ("line", "makes", "total"))
    return Score(
        lines=len(right) + len(beside),
        right=len(right) - len(missed),
        missed=tuple(missed),
        beside=beside,
    )


def _agree(right: Thing, found: Thing) -> bool:
    return (
        right.kind == found.kind
        and right.part == found.part
        and not set(right.names).isdisjoint(found.names or right.names)
        and right.unit == found.unit
        and _same(right.low, found.low)
        and _same(right.high, found.high)
        and (right.at_c is None or _same(right.at_c, found.at_c))
        and (right.minutes is None or _same(right.minutes, found.minutes))
    ) or (
        right.kind == found.kind == "makes"
        and (right.low, right.high) == (found.low, found.high)
    )


def _same(one: float | None, other: float | None) -> bool:
    if one is None or other is None:
        return one is other
    return abs(one - other) <= 1e-6 * max(1.0, abs(one))


def check(files: Iterable[Path]) -> int:
    """How many lines the readings of these files have, all of a known form."""
    notes = [note for file in files for note in read_corpus(file.read_text("utf-8"))]
    return sum(len(note.things) for note in notes)
