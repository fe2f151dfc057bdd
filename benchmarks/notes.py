"""Score how notes are read against the right reading beside them.

Run: ``python benchmarks/notes.py tests/corpus/english.txt [MORE ...]``. The form of the
files is told in ``tests/corpus/README.md``.
"""

import os
import re
import statistics
import sys
import time
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from demould.larder.names import plain
from demould.larder.read import find_ingredient
from demould.mise.figure import Assumed, Figure
from demould.mise.note.noted import Note, NotedLine
from demould.mise.note.read_note import read_note

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
    right, found = tuple(right), tuple(found)
    if sum(one.kind == "part" for one in right) <= 1:
        right, found = _one_part(right), _one_part(found)
    left = list(found)
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


def _one_part(things: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """Where a note has only one part, it does not matter what that is called."""
    return tuple(replace(one, part="") for one in things)


def _agree(right: Thing, found: Thing) -> bool:
    return (
        right.kind == found.kind
        and _alike(right.part, found.part)
        and _named_alike(right, found)
        and right.unit == found.unit
        and _same(right.low, found.low)
        and _same(right.high, found.high)
        and (right.at_c is None or _same(right.at_c, found.at_c))
        and (right.minutes is None or _same(right.minutes, found.minutes))
    ) or (
        right.kind == found.kind == "makes"
        and (right.low, right.high) == (found.low, found.high)
    )


def _named_alike(right: Thing, found: Thing) -> bool:
    if right.kind in ("part", "calls"):
        return any(_alike(one, other) for one in right.names for other in found.names)
    return right.names == found.names or not set(right.names).isdisjoint(found.names)


def _alike(one: str, other: str) -> bool:
    """The same, or in a part's name the one inside the other."""
    return one == other or (bool(one and other) and (one in other or other in one))


def _same(one: float | None, other: float | None) -> bool:
    if one is None or other is None:
        return one is other
    return abs(one - other) <= 1e-6 * max(1.0, abs(one))


def check(files: Iterable[Path]) -> int:
    """How many lines the readings of these files have, all of a known form."""
    notes = [note for file in files for note in read_corpus(file.read_text("utf-8"))]
    return sum(len(note.things) for note in notes)


def found_in(text: str) -> tuple[tuple[Thing, ...], tuple[str, ...]]:
    """What our reader finds in a note, and the words it can show nowhere."""
    note = read_note(text)
    things = []
    if note.pieces is not None:
        low, high = _ends(note.pieces)
        things.append(Thing(kind="makes", low=low, high=high))
    for part in note.parts:
        name = plain(part.name)
        if name:
            things.append(Thing(kind="part", names=(name,)))
        things.extend(_found_line(name, line) for line in part.lines)
        if part.total is not None:
            grams = part.total.value
            things.append(
                Thing(kind="total", part=name, low=grams, high=grams, unit="g")
            )
        for step in part.steps:
            at_c = step.at_c.value if step.at_c else None
            minutes = step.minutes.value if step.minutes else None
            things.append(
                Thing(kind="do", names=(step.action,), at_c=at_c, minutes=minutes)
            )
    things.extend(Thing(kind="calls", names=(plain(call),)) for call in note.calls)
    return tuple(things), tuple(_dropped(note))


def _found_line(part: str, line: NotedLine) -> Thing:
    low, high = _ends(line.amount) if line.amount else (None, None)
    unknown = (f"unknown {plain(line.what)}", f"unknown {plain(line.written)}")
    names = (line.ingredient,) if line.ingredient else unknown
    unit = line.amount.unit if line.amount else ""
    return Thing(kind="line", part=part, names=names, low=low, high=high, unit=unit)


def _ends(figure: Figure) -> tuple[float, float]:
    if isinstance(figure.origin, Assumed):
        return figure.origin.low, figure.origin.high
    return figure.value, figure.value


def _dropped(note: Note) -> Iterator[str]:
    """Words of the note that no stretch covers."""
    covered: set[int] = set()
    for one in note.stretches:
        covered.update(range(one.start, one.end))
    for found in re.finditer(r"\S+", note.text):
        if not covered.issuperset(range(found.start(), found.end())):
            yield found[0]


def main(files: list[str]) -> None:
    right = lines = notes = dropped = 0
    for file in files:
        for noted in read_corpus(Path(file).read_text("utf-8")):
            things, lost = found_in(noted.text)
            score = compare(noted.things, things)
            notes, lines, right = notes + 1, lines + score.lines, right + score.right
            dropped += len(lost)
            if score.missed or score.beside or lost:
                print(f"{noted.name}: {score.right} of {score.lines}")
            for thing in score.missed:
                print("    missed    ", thing)
            for thing in score.beside:
                print("    too many  ", thing)
            if lost:
                print("    dropped   ", " ".join(lost))
    print(f"{notes} notes, {right} of {lines} lines right: {100 * right / lines:.1f} %")
    print(f"words dropped: {dropped}")
    _times()


def _times(rounds: int = 9) -> None:
    """A note of 40 lines, and everything the pebble note does not say; medians."""
    from demould.advice.gaps.ranked import gaps_of
    from demould.counter.text.from_note import folder_of, texts_of
    from demould.mise.find import find_in
    from demould.mise.note.draft import draft_of

    here = Path(__file__).parents[1] / "tests" / "corpus"
    notes = list(read_corpus((here / "english.txt").read_text("utf-8")))
    rows = [row for one in notes for row in one.text.splitlines() if row.strip()]
    forty = "\n".join(rows[:40])
    print("load", " ".join(f"{load:.2f}" for load in os.getloadavg()))
    print(f"{_median(lambda: read_note(forty), rounds):7.1f} ms  a note of 40 lines")
    note = read_note(notes[0].text)
    now = datetime(2026, 11, 17, 14, tzinfo=ZoneInfo("UTC"))
    folder, _ = folder_of(texts_of(note, draft_of(note), "UTC", None), now)
    assert folder is not None
    dessert, find = folder.desserts[0], find_in(folder.larder)
    found = _median(lambda: gaps_of(dessert, folder.kitchen, find), rounds)
    print(f"{found:7.1f} ms  all gaps of the pebble note with what each moves")


def _median(work: Callable[[], object], rounds: int) -> float:
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        times.append(1000 * (time.perf_counter() - start))
    return statistics.median(times)


if __name__ == "__main__":
    main(sys.argv[1:])
