"""What a drawing consists of, in millimetres of paper, y downwards."""

from dataclasses import dataclass, replace
from typing import Literal

from demould.mise.words import Words

Point = tuple[float, float]
Pattern = Literal[
    "none", "white", "dots", "strokes", "back strokes", "cross", "level", "upright"
]
Anchor = Literal["start", "middle", "end"]

FINE, PLAIN, BOLD = 0.18, 0.3, 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Path:
    """A run of straight lines, filled with a pattern where it is closed.

    `width` is that of the pen, 0 for no line. [mm] `arrows` puts a head at both ends.
    """

    points: tuple[Point, ...]
    closed: bool = False
    fill: Pattern = "none"
    width: float = PLAIN
    dashed: bool = False
    arrows: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Disc:
    """A filled spot or an open circle; what stands in it is a `Said` of its own."""

    at: Point
    radius: float
    fill: Pattern = "none"
    width: float = PLAIN
    solid: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """One line of text. `at` is where its base line starts, ends or has its middle."""

    text: str
    at: Point
    size: float
    anchor: Anchor = "start"
    bold: bool = False


Mark = Path | Disc | Said


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A drawing on its own piece of paper.

    Attributes
    ----------
    key
        Names its file.
    title, told
        What it shows, and the same in a sentence or two for who cannot see it.
    width, height
        Of the paper. [mm]
    marks
        In the order drawn: later ones cover earlier ones.
    """

    key: str
    title: str | Words
    told: str | Words
    width: float
    height: float
    marks: tuple[Mark, ...]


def moved(mark: Mark, right: float, down: float) -> Mark:
    """Give a mark moved by so many millimetres."""
    if isinstance(mark, Path):
        points = tuple((x + right, y + down) for x, y in mark.points)
        return replace(mark, points=points)
    x, y = mark.at
    return replace(mark, at=(x + right, y + down))
