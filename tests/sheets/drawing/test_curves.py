import re
from dataclasses import replace

import pytest

from demould.mise.figure import Estimate
from demould.mise.words import Words
from demould.sheets.drawing.curves import BOTTOM, LEFT, RIGHT, TOP, Curves, Line, curves
from demould.sheets.drawing.lettering import ABOVE, BELOW, width_mm
from demould.sheets.drawing.picture import Disc, Path, Picture, Said
from demould.sheets.drawing.svg import svg_of

CORE = Line(name="core", points=((0.0, 5.0), (4.0, -18.0)), width=0.5)
SKIN = Line(name="surface", points=((0.0, 5.0), (4.0, -18.2)), dashed=True)
ICE = Line(name="ice, from none below to all above", points=((0.0, 0.0), (4.0, 1.0)))
ENDS = Estimate(low=3, likely=4, high=7.5, unit="h", reason=Words("air"))
ALL = Curves(
    key="k", title="Pebble in the freezer", told="told", lines=(CORE, SKIN), ice=ICE,
    readings=((1.0, 0.0), (2.0, -6.0), (3.0, -12.0)), level=-18.0, ends=ENDS,
)  # fmt: skip


def said(picture: Picture) -> list[Said]:
    return [mark for mark in picture.marks if isinstance(mark, Said)]


def box(mark: Said) -> tuple[float, float, float, float]:
    wide = width_mm(mark.text, mark.size, bold=mark.bold)
    left = mark.at[0] - {"start": 0, "middle": wide / 2, "end": wide}[mark.anchor]
    return (
        left,
        mark.at[1] - ABOVE * mark.size,
        left + wide,
        mark.at[1] + BELOW * mark.size,
    )


def test_lines_begin_and_end_where_their_numbers_say() -> None:
    picture = curves(replace(ALL, ends=None, level=None))
    paths = [mark for mark in picture.marks if isinstance(mark, Path)]
    core = next(one for one in paths if one.width == 0.5 and not one.closed)
    # Hours run from 0 to 4, degrees from -20 to 5 by fives.
    assert core.points[0] == pytest.approx((LEFT, TOP))
    assert core.points[1] == pytest.approx((RIGHT, BOTTOM - (BOTTOM - TOP) * 2 / 25))


def test_core_and_surface_differ_by_pen_and_dash() -> None:
    svg = svg_of(curves(ALL))
    assert "stroke-dasharray" in svg
    assert set(re.findall(r'stroke="(#\w+)"', svg)) == {"#000"}


def test_no_text_lies_on_another_nor_off_the_paper() -> None:
    picture = curves(ALL)
    boxes = [(mark.text, box(mark)) for mark in said(picture)]
    for n, (text, (left, top, right, bottom)) in enumerate(boxes):
        assert 0 <= left < right <= picture.width, text
        assert 0 <= top < bottom <= picture.height, text
        for other, (l2, t2, r2, b2) in boxes[:n]:
            apart = right <= l2 or r2 <= left or bottom <= t2 or b2 <= top
            assert apart, (text, other)


def test_names_readings_and_the_span_are_there() -> None:
    picture = curves(ALL)
    texts = " ".join(mark.text for mark in said(picture))
    for name in ("core", "surface", "ice", "readings", "-18 °C is waited for"):
        assert name in texts
    assert "between 3.0 and 7.5 h, likely 4.0 h" in texts
    white = [m for m in picture.marks if isinstance(m, Disc) and m.fill == "white"]
    assert len(white) == 3


def test_curves_without_time_are_refused() -> None:
    still = Line(name="core", points=((0.0, 5.0),))
    with pytest.raises(ValueError, match=r"^curves without any time to draw over$"):
        curves(Curves(key="k", title="t", told="t", lines=(still,)))
