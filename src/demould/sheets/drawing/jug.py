"""The jug with the piece in it, at the first dip and at the last."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from demould.amounts.finish.dip import InJug, depth_mm, dip_of
from demould.amounts.shape.curve import Floats
from demould.amounts.shape.skin import skin_of
from demould.amounts.shape.volume import mould_of
from demould.mise.dessert import Dessert, component_of
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.sheets.drawing.labels import GUTTER_MM, Box, Label, Note, labels
from demould.sheets.drawing.picture import (
    BOLD,
    FINE,
    PLAIN,
    Mark,
    Path,
    Picture,
    Point,
    Said,
    moved,
)
from demould.sheets.drawing.plane import both_sides, face
from demould.sheets.drawing.ruler import HIGH_MM, ruler

PAPER_MM = 180.0
MARGIN_MM, TITLE_MM, HEAD_MM, SMALL_MM = 2.0, 4.4, 18.0, 3.2
NARROWEST_MM = 28.0
EACH_MM = PAPER_MM / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class _Dip:
    """One dip: how high the liquid stands with the piece in it, and what it is."""

    name: Words
    stands_mm: float
    grams: float


def jug_drawing(dessert: Dessert, kitchen: Kitchen, way: InJug, pieces: int) -> Picture:
    """Draw the jug, at half size or less, for the first piece and for the last.

    Raises
    ------
    ValueError
        If the dessert has no dip, or there is no piece to dip.
    """
    dip = dip_of(dessert)
    if dip is None or pieces < 1:
        raise ValueError(f"{dessert.name} with {pieces} pieces is not dipped")
    mould = mould_of(kitchen, dessert.mould)
    body = face(skin_of(mould.shape, lidded=True), "along")
    outline = _whole(body, on_end=way.on_end)
    depth = depth_mm(dip, mould, on_end=way.on_end).value
    first, last = _dips(way, pieces)
    top = float(outline[:, 1].max())
    high = max(way.jug.height.value, first.stands_mm - depth + top)
    shrunk = next(n for n in range(2, 99) if _column_mm(way, n) >= NARROWEST_MM)
    marks: list[Mark] = list(_head(dessert, way, pieces))
    told: list[Label] = []
    for number, one in enumerate((first, last)):
        drawn, set_ = _jug(one, way, outline, depth, high, shrunk)
        told.extend(set_)
        marks.extend(moved(mark, number * EACH_MM, HEAD_MM) for mark in drawn)
    foot = HEAD_MM + high / shrunk + 8
    return Picture(
        key=f"jug {dessert.key}",
        title=Words(
            "{name} in the jug", name=component_of(dessert, dip.component).name
        ),
        told="; ".join(" ".join(label.lines) for label in told),
        width=PAPER_MM,
        height=foot + 5 + HIGH_MM,
        marks=(*marks, *ruler((MARGIN_MM, foot + 5), shrunk)),
    )


def _column_mm(way: InJug, shrunk: int) -> float:
    """How wide a text beside the jug may be."""
    return EACH_MM - MARGIN_MM - way.jug.diameter.value / shrunk - GUTTER_MM


def _dips(way: InJug, pieces: int) -> tuple[_Dip, _Dip]:
    """What stands in the jug as the first piece is in it, and as the last one is."""
    displaced = way.height_with_piece.value - way.height.value
    left = way.melt.value - way.taken.value * (pieces - 1) / pieces
    return (
        _Dip(
            name=Words("first piece"),
            stands_mm=way.height_with_piece.value,
            grams=way.melt.value,
        ),
        _Dip(
            name=Words("piece {n}, the last", n=pieces),
            stands_mm=way.height.value * left / way.melt.value + displaced,
            grams=left,
        ),
    )


def _head(dessert: Dessert, way: InJug, pieces: int) -> Iterator[Mark]:
    dip = dip_of(dessert)
    assert dip is not None
    name = component_of(dessert, dip.component).name
    title = Words("{name} in the {jug:g} mm jug", name=name, jug=way.jug.diameter.value)
    said = Words(
        "melt {melt:.0f} g for {n} pieces: {least:.0f} g to cover the last, {taken:.0f}"
        " g on them, {heel:g} g heel",
        melt=way.melt.value,
        n=pieces,
        least=way.least.value,
        taken=way.taken.value,
        heel=way.heel.value,
    )
    yield Said(text=str(title), at=(MARGIN_MM, TITLE_MM + 1), size=TITLE_MM, bold=True)
    yield Said(text=str(said), at=(MARGIN_MM, TITLE_MM + 6), size=SMALL_MM)


def _jug(
    one: _Dip, way: InJug, outline: Floats, depth: float, high: float, shrunk: int
) -> tuple[tuple[Mark, ...], tuple[Label, ...]]:
    half = way.jug.diameter.value / 2
    tall = way.jug.height.value
    stands = min(one.stands_mm, tall)
    under = stands - depth
    left_edge = MARGIN_MM + half / shrunk

    def on_paper(x: float, up: float) -> Point:
        return left_edge + x / shrunk, (high - up) / shrunk

    liquid = tuple(
        on_paper(x, up)
        for x, up in ((-half, stands), (-half, 0), (half, 0), (half, stands))
    )
    walls = tuple(
        on_paper(x, up)
        for x, up in ((-half, tall), (-half, 0), (half, 0), (half, tall))
    )
    piece = tuple(on_paper(x, up + under) for x, up in outline)
    widest, top = outline.max(axis=0)
    notes = [
        Note(text=str(one.name), spots=(on_paper(0, under + top * 0.8),)),
        Note(
            text=str(
                Words(
                    "stands {mm:.0f} mm high, {g:.0f} g", mm=one.stands_mm, g=one.grams
                )
            ),
            spots=(on_paper((half + widest) / 2, stands - 1),),
        ),
        Note(
            text=str(Words("{mm:.0f} mm to the bottom", mm=under)),
            spots=(on_paper(half / 3, under / 2),),
        ),
    ]
    if way.overflows and one.stands_mm > tall:
        notes.append(
            Note(
                text=str(Words("runs over: top up as it goes down")),
                spots=(on_paper(half, tall),),
            )
        )
    body = Box(
        left=left_edge - half / shrunk,
        top=0.0,
        right=left_edge + half / shrunk,
        bottom=high / shrunk,
    )
    set_ = labels(notes, body, _column_mm(way, shrunk))
    return (
        Path(points=liquid, closed=True, fill="level", width=FINE),
        Path(points=piece, closed=True, fill="strokes", width=PLAIN),
        Path(points=walls, width=BOLD),
        *(mark for label in set_ for mark in label.marks),
    ), set_


def _whole(right: Floats, *, on_end: bool) -> Floats:
    """The body's outline in the jug, its lowest point at 0; `on_end` a quarter turned."""
    whole = np.array(both_sides(right))
    if not on_end:
        return whole
    middle = float(whole[:, 1].max()) / 2
    return np.stack([whole[:, 1] - middle, whole[:, 0] - whole[:, 0].min()], axis=1)
