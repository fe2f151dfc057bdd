"""A piece cut through, to scale: every layer and every wall named and measured."""

from collections.abc import Callable, Iterable
from dataclasses import replace

from demould.amounts.shape.curve import Floats
from demould.mise.dessert import Dessert
from demould.mise.kitchen import Kitchen
from demould.mise.shape import WaterOnly
from demould.mise.words import Words
from demould.sheets.drawing.cut import Cut, cut_of
from demould.sheets.drawing.labels import GUTTER_MM, Box, Label, Note, labels
from demould.sheets.drawing.lettering import wrapped
from demould.sheets.drawing.naming import fill_order, names, size, wall_notes
from demould.sheets.drawing.picture import (
    BOLD,
    FINE,
    PLAIN,
    Mark,
    Path,
    Pattern,
    Picture,
    Point,
    Said,
)
from demould.sheets.drawing.plane import both_sides
from demould.sheets.drawing.ruler import HIGH_MM, ruler

OnPaper = Callable[[Point], Point]

UPRIGHT_MM, ACROSS_MM = 180.0, 267.0
NARROWEST_COLUMN_MM, WIDEST_COLUMN_MM = 38.0, 75.0
MARGIN_MM = 2.0
TITLE_MM, HEAD_MM = 4.4, 14.0
SIZE_MM, SMALL_MM = 6.0, 3.2
LINE_MM = 4.4
PATTERNS: tuple[Pattern, ...] = (
    "strokes",
    "cross",
    "level",
    "back strokes",
    "upright",
)
FILLER: Pattern = "dots"


def section(dessert: Dessert, kitchen: Kitchen) -> Picture:
    """Draw a dessert cut through its middle, as it lies in its mould when filled.

    At full size where that goes on A4, else at half, a third ... of it; the ruler says
    which. Coats are the black line round it, as thick as they are.

    Raises
    ------
    ValueError
        Where there is no such piece; `does_it_fit` says so in a cook's words.
    """
    cut = cut_of(dessert, kitchen)
    return _on_paper(cut, *_paper(cut))


def fits_upright(picture: Picture) -> bool:
    """Whether a drawing goes on A4 as it stands, or wants it turned."""
    return picture.width <= UPRIGHT_MM


def _paper(cut: Cut) -> tuple[float, int]:
    """How wide the paper is, and how many times smaller the piece is drawn."""
    for shrunk in range(1, 10):
        least = 2 * (cut.half + cut.coat_mm) / shrunk + 2 * (
            GUTTER_MM + NARROWEST_COLUMN_MM + MARGIN_MM
        )
        for wide in (UPRIGHT_MM, ACROSS_MM):
            if least <= wide:
                return wide, shrunk
    raise ValueError(f"a mould {2 * cut.half / 1000:g} m wide")


def _on_paper(cut: Cut, wide: float, shrunk: int) -> Picture:
    coat = cut.coat_mm / shrunk
    half = cut.half / shrunk + coat
    top = HEAD_MM + coat
    middle = wide / 2

    def on_paper(point: Point) -> Point:
        x, up = point
        return middle + x / shrunk, top + (cut.high - up) / shrunk

    bottom = top + cut.high / shrunk + coat
    body = Box(left=middle - half, top=top, right=middle + half, bottom=bottom)
    room = min(WIDEST_COLUMN_MM, wide / 2 - half - GUTTER_MM - MARGIN_MM)
    notes = [_placed_note(note, on_paper) for note in (*names(cut), *wall_notes(cut))]
    set_ = labels(notes, body, room, top=HEAD_MM)
    below = max([bottom + SIZE_MM + 4, *(label.box.bottom for label in set_)])
    order = _order(cut.dessert, wide - 2 * MARGIN_MM)
    foot = below + 6 + len(order) * LINE_MM
    marks = (
        *_title(cut, shrunk),
        *_body(cut, on_paper, shrunk),
        *_arrows(cut, on_paper),
        *_across(cut, on_paper, bottom),
        *(mark for label in set_ for mark in label.marks),
        *_lines(order, below + 6),
        *ruler((MARGIN_MM, foot + 5), shrunk),
    )
    return Picture(
        key=f"cut {cut.dessert.key}",
        title=Words("{name}, cut through", name=cut.dessert.name),
        told=_told(cut, set_),
        width=wide,
        height=foot + 5 + HIGH_MM,
        marks=marks,
    )


def _placed_note(note: Note, on_paper: OnPaper) -> Note:
    return replace(note, spots=tuple(on_paper(spot) for spot in note.spots))


def _title(cut: Cut, shrunk: int) -> tuple[Mark, ...]:
    said = Words(
        "{size}; cut {way}; drawn 1 : {n}, as it is filled, the open side up",
        size=size(cut.mould.shape),
        way=_WAYS[cut.way],
        n=shrunk,
    )
    guess = Words(
        "only its water is known: drawn as the half-sphere that holds as much"
    )
    told = f"{said}; {guess}" if isinstance(cut.mould.shape, WaterOnly) else str(said)
    at = (MARGIN_MM, TITLE_MM + 1)
    return (
        Said(text=cut.dessert.name, at=at, size=TITLE_MM, bold=True),
        Said(text=told, at=(MARGIN_MM, TITLE_MM + 6), size=SMALL_MM),
    )


_WAYS = {"along": Words("along"), "across": Words("across")}


def _body(cut: Cut, on_paper: OnPaper, shrunk: int) -> tuple[Mark, ...]:
    """The coats as a black edge as thick as they are, then filler, then parts."""
    whole = tuple(on_paper(point) for point in both_sides(cut.cavity))
    half = len(whole) // 2
    patterns = (PATTERNS[n % len(PATTERNS)] for n in range(len(cut.faces)))
    filled: Pattern = FILLER if cut.has_filler else "white"
    marks: list[Mark] = []
    if cut.coat_mm:
        thick = 2 * cut.coat_mm / shrunk
        shaped = whole if cut.all_round else (*whole[half:], *whole[:half])
        marks.append(Path(points=shaped, closed=cut.all_round, width=thick))
    marks.append(Path(points=whole, closed=True, fill=filled, width=PLAIN))
    for part, hole, pattern in zip(cut.faces, cut.holes, patterns, strict=True):
        marks.append(_filled(part, pattern, on_paper))
        if hole is not None:
            marks.append(_filled(hole, filled, on_paper))
    if cut.hole is not None:
        marks.append(_filled(cut.hole, "white", on_paper))
    return tuple(marks)


def _filled(right: Floats, pattern: Pattern, on_paper: OnPaper) -> Path:
    points = tuple(on_paper(point) for point in both_sides(right))
    return Path(points=points, closed=True, fill=pattern, width=PLAIN)


def _arrows(cut: Cut, on_paper: OnPaper) -> tuple[Mark, ...]:
    """The least wall of each part that has one in this plane, on the left."""
    found = (one for one in cut.gaps if one is not None)
    return tuple(
        Path(
            points=tuple(on_paper((-x, up)) for x, up in (one.inner, one.outer)),
            width=BOLD,
        )
        for one in found
    )


def _across(cut: Cut, on_paper: OnPaper, bottom: float) -> tuple[Mark, ...]:
    """The widest measure, under the piece."""
    left, right = on_paper((-cut.half, 0))[0], on_paper((cut.half, 0))[0]
    at = bottom + SIZE_MM
    wide = f"{2 * cut.half:.3g} mm"
    return (
        *(
            Path(points=((x, bottom + 1), (x, at + 1)), width=FINE)
            for x in (left, right)
        ),
        Path(points=((left, at), (right, at)), width=FINE, arrows=True),
        Said(
            text=wide, at=((left + right) / 2, at + 4), size=SMALL_MM, anchor="middle"
        ),
    )


def _order(dessert: Dessert, room_mm: float) -> tuple[str, ...]:
    return tuple(
        line
        for text in fill_order(dessert)
        for line in wrapped(text, SMALL_MM, room_mm)
    )


def _lines(lines: Iterable[str], top: float) -> tuple[Mark, ...]:
    return tuple(
        Said(text=line, at=(MARGIN_MM, top + n * LINE_MM), size=SMALL_MM)
        for n, line in enumerate(lines)
    )


def _told(cut: Cut, set_: Iterable[Label]) -> Words:
    said = "; ".join(" ".join(label.lines) for label in set_)
    return Words("{name} cut through: {said}", name=cut.dessert.name, said=said)
