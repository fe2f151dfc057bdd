"""Temperatures over time, drawn: lines that differ by pen and dash, named at their ends."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import ceil, floor, log10

from demould.mise.figure import Estimate
from demould.mise.words import Words
from demould.sheets.drawing.labels import Box, Note, labels
from demould.sheets.drawing.picture import (
    BOLD,
    FINE,
    PLAIN,
    Disc,
    Mark,
    Path,
    Picture,
    Point,
    Said,
)

WIDE, HIGH = 180.0, 112.0
LEFT, TOP, RIGHT, BOTTOM = 20.0, 14.0, 128.0, 92.0
COLUMN_MM = 42.0
TITLE_MM, TEXT_MM, SMALL_MM = 4.4, 3.2, 2.8
TICKS = 6
SPOT_MM = 0.7


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One curve: its name and (hours, °C), or of the ice (hours, 0 to 1)."""

    name: str | Words
    points: tuple[Point, ...]
    width: float = PLAIN
    dashed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Curves:
    """What to draw.

    `ice` goes by the right edge, from none below to all above. `readings` are spots of
    a probe (hours, °C), `level` a temperature that is waited for, `ends` when it is.
    """

    key: str
    title: str | Words
    told: str | Words
    lines: tuple[Line, ...]
    ice: Line | None = None
    readings: tuple[Point, ...] = ()
    level: float | None = None
    ends: Estimate | None = None


def curves(what: Curves) -> Picture:
    """Draw them, 180 mm wide.

    Raises
    ------
    ValueError
        If there is no time to draw over.
    """
    every = [*(p for line in what.lines for p in line.points), *what.readings]
    last = max(hours for hours, _ in every)
    if last <= 0:
        raise ValueError("curves without any time to draw over")
    across = _ticks(0.0, max(last, what.ends.high if what.ends else 0.0))
    up = _ticks(min(v for _, v in every), max(v for _, v in every))
    frame = _Frame(hours=(across[0], across[-1]), values=(up[0], up[-1]))
    marks: list[Mark] = [
        Said(text=str(what.title), at=(LEFT, 7.0), size=TITLE_MM, bold=True),
        *_grid(frame, across, up),
        *(_drawn(frame, line) for line in what.lines),
        *(
            Disc(at=frame.at(one), radius=SPOT_MM, width=FINE, fill="white")
            for one in what.readings
        ),
    ]
    if what.level is not None:
        left, right = (
            frame.at((across[0], what.level)),
            frame.at((across[-1], what.level)),
        )
        marks.append(Path(points=(left, right), width=FINE, dashed=True))
        waited = Words("{level:g} °C is waited for", level=what.level)
        x, y = right
        marks.append(
            Said(
                text=str(waited),
                at=(x - 1.5, y - 1.2),
                size=SMALL_MM,
                anchor="end",
            )
        )
    notes = [_note(frame, line) for line in what.lines]
    if what.readings:
        spot = frame.at(what.readings[2 * len(what.readings) // 3])
        notes.append(Note(text=str(Words("readings")), spots=(spot,)))
    if what.ice is not None:
        icy = _Frame(hours=frame.hours, values=(0.0, 1.0))
        marks.append(_drawn(icy, what.ice))
        notes.append(_note(icy, what.ice))
    if what.ends is not None:
        marks += _ends(frame, what.ends)
    body = Box(left=LEFT, top=TOP, right=RIGHT + 4, bottom=BOTTOM)
    for label in labels(notes, body, COLUMN_MM, top=TOP):
        marks += label.marks
    return Picture(
        key=what.key,
        title=what.title,
        told=what.told,
        width=WIDE,
        height=HIGH,
        marks=tuple(marks),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    """Where hours and values lie on the paper."""

    hours: tuple[float, float]
    values: tuple[float, float]

    def at(self, point: Point) -> Point:
        """Give a point's place on the paper."""
        hour, value = point
        along = (hour - self.hours[0]) / (self.hours[1] - self.hours[0])
        up = (value - self.values[0]) / (self.values[1] - self.values[0])
        return LEFT + along * (RIGHT - LEFT), BOTTOM - up * (BOTTOM - TOP)


def _ticks(low: float, high: float) -> tuple[float, ...]:
    """Round numbers from under the least to over the most, about six of them.

    >>> _ticks(-18.3, 2.1)
    (-20.0, -15.0, -10.0, -5.0, 0.0, 5.0)
    >>> _ticks(0.0, 0.0)
    (0.0, 1.0)
    """
    wide = max(high - low, 1e-9)
    rough = 10 ** floor(log10(wide / TICKS))
    step = next(
        (n * rough for n in (1, 2, 5, 10) if wide / (n * rough) <= TICKS), 10 * rough
    )
    if high <= low:
        step = 1.0
    first, last = floor(low / step + 1e-9), ceil(high / step - 1e-9)
    return tuple(float(n * step) for n in range(first, max(last, first + 1) + 1))


def _grid(
    frame: _Frame, across: Sequence[float], up: Sequence[float]
) -> Iterable[Mark]:
    corners = ((LEFT, TOP), (RIGHT, TOP), (RIGHT, BOTTOM), (LEFT, BOTTOM))
    yield Path(points=corners, closed=True, width=PLAIN)
    for hour in across:
        x, y = frame.at((hour, up[0]))
        yield Path(points=((x, y), (x, y + 1.5)), width=FINE)
        yield Said(text=f"{hour:g}", at=(x, y + 5.2), size=TEXT_MM, anchor="middle")
    yield Said(text="h", at=(RIGHT + 4, BOTTOM + 5.2), size=TEXT_MM)
    for value in up:
        x, y = frame.at((across[0], value))
        yield Path(points=((x - 1.5, y), (x, y)), width=FINE)
        yield Said(text=f"{value:g}", at=(x - 2.5, y + 1.1), size=TEXT_MM, anchor="end")
    yield Said(text="°C", at=(LEFT - 2.5, TOP - 3.5), size=TEXT_MM, anchor="end")


def _drawn(frame: _Frame, line: Line) -> Path:
    return Path(
        points=tuple(frame.at(one) for one in line.points),
        width=line.width,
        dashed=line.dashed,
    )


def _note(frame: _Frame, line: Line) -> Note:
    return Note(text=str(line.name), spots=(frame.at(line.points[-1]),))


def _ends(frame: _Frame, ends: Estimate) -> Iterable[Mark]:
    """A span from low to high under the hours, a spot at likely."""
    y = BOTTOM + 10.0
    (low, _), (likely, _), (high, _) = (
        frame.at((hours, frame.values[0]))
        for hours in (ends.low, ends.likely, ends.high)
    )
    yield Path(points=((low, y), (high, y)), width=BOLD)
    yield from (
        Path(points=((x, y - 1.2), (x, y + 1.2)), width=BOLD) for x in (low, high)
    )
    yield Disc(at=(likely, y), radius=1.1, width=0, solid=True)
    said = Words(
        "between {low:.1f} and {high:.1f} h, likely {likely:.1f} h",
        low=ends.low,
        high=ends.high,
        likely=ends.likely,
    )
    yield Said(
        text=str(said),
        at=((LEFT + RIGHT) / 2, y + 5.6),
        size=TEXT_MM,
        anchor="middle",
    )
