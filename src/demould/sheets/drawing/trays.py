"""A tray with its cuts: where the cutter goes, and what stays over."""

from collections.abc import Iterator

from demould.amounts.shape.section import box_mm
from demould.amounts.tools.layout import Layout, Place, laid_out, most
from demould.mise.component import Component
from demould.mise.shape import Box, Shape, Trough
from demould.mise.words import Words
from demould.sheets.drawing.lettering import wrapped
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
from demould.sheets.drawing.plane import ellipse
from demould.sheets.drawing.ruler import HIGH_MM, ruler

PAPER_MM = 180.0
MARGIN_MM, TITLE_MM, SMALL_MM, LINE_MM = 2.0, 4.4, 3.2, 4.4
NUMBER_MM = 2.6
LEAST_NUMBERED_MM = 8.0


def tray_drawing(component: Component, cut: Shape) -> Picture:
    """Draw a full tray of a component, cut as its card asks, to scale.

    Raises
    ------
    ValueError
        If the component has no tray.
    """
    if component.sheet is None:
        raise ValueError(f"{component.name} is not cut from a tray")
    layout = laid_out(component.sheet, cut)
    tray = layout.tray
    shrunk = -(-int(tray.length_mm) // int(PAPER_MM - 2 * MARGIN_MM))
    said = wrapped(_said(component, cut, layout), SMALL_MM, PAPER_MM - 2 * MARGIN_MM)
    top = TITLE_MM + 4 + len(said) * LINE_MM

    def on_paper(x: float, y: float) -> Point:
        return MARGIN_MM + x / shrunk, top + y / shrunk

    corners = (
        (0.0, 0.0),
        (tray.length_mm, 0.0),
        (tray.length_mm, tray.width_mm),
        (0.0, tray.width_mm),
    )
    foot = top + tray.width_mm / shrunk + 10
    marks: list[Mark] = [
        Said(
            text=str(Words("{name}, one tray", name=component.name)),
            at=(MARGIN_MM, TITLE_MM + 1),
            size=TITLE_MM,
            bold=True,
        ),
        *(
            Said(text=line, at=(MARGIN_MM, TITLE_MM + 6 + n * LINE_MM), size=SMALL_MM)
            for n, line in enumerate(said)
        ),
        Path(points=tuple(on_paper(x, y) for x, y in corners), closed=True, width=BOLD),
    ]
    for number, place in enumerate(layout.places, start=1):
        at = on_paper(*place.at)
        marks.extend(_cut(place, at, shrunk, number))
    return Picture(
        key=f"tray {component.key}",
        title=Words("{name}, one tray", name=component.name),
        told=" ".join(said),
        width=PAPER_MM,
        height=foot + HIGH_MM,
        marks=(*marks, *ruler((MARGIN_MM, foot), shrunk)),
    )


def _cut(place: Place, at: Point, shrunk: int, number: int) -> Iterator[Mark]:
    long, wide = (side / shrunk for side in box_mm(place.cut)[:2])
    if place.turned:
        long, wide = wide, long
    if isinstance(place.cut, Box | Trough):
        x, y = at
        ends = ((-1, -1), (1, -1), (1, 1), (-1, 1))
        corners = tuple((x + a * long / 2, y + b * wide / 2) for a, b in ends)
        yield Path(points=corners, closed=True, fill="white", width=FINE)
    elif abs(long - wide) < 1e-9:
        yield Disc(at=at, radius=long / 2, fill="white", width=PLAIN)
    else:
        yield Path(
            points=ellipse(at, long / 2, wide / 2),
            closed=True,
            fill="white",
            width=PLAIN,
        )
    if min(long, wide) >= LEAST_NUMBERED_MM:
        yield Said(
            text=str(number),
            at=(at[0], at[1] + 0.35 * NUMBER_MM),
            size=NUMBER_MM,
            anchor="middle",
        )


def _said(component: Component, cut: Shape, layout: Layout) -> str:
    long, wide, _ = box_mm(cut)
    tray = layout.tray
    assert component.sheet is not None
    said = Words(
        "{n} cuts of {long:.3g} x {wide:.3g} mm from {length:g} x {width:g} mm in {rows}"
        " rows, {gap:g} mm apart; {off:.0f} % stays over",
        n=len(layout.places),
        long=long,
        wide=wide,
        length=tray.length_mm,
        width=tray.width_mm,
        rows="shifted" if layout.shifted else "straight",
        gap=component.sheet.gap.value,
        off=layout.off_cut,
    )
    better = most(component.sheet, cut)
    if len(better.places) > len(layout.places):
        more = Words(
            "rows that stand between each other would give {n}", n=len(better.places)
        )
        return f"{said}; {more}"
    return str(said)
