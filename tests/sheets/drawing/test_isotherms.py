import math
from itertools import pairwise

import numpy as np
import pytest

from demould.cold.warmth import Warmth
from demould.sheets.drawing.isotherms import isotherms, levels
from demould.sheets.drawing.lettering import ABOVE, BELOW, width_mm
from demould.sheets.drawing.level_lines import level_lines
from demould.sheets.drawing.picture import Path, Picture, Said

RING = [
    (r, a) for r in np.linspace(0.05, 1, 12) for a in np.linspace(0, 2 * math.pi, 40)
]
DISC = [(r * math.cos(a), r * math.sin(a)) for r, a in RING]


def test_the_line_of_a_round_hill_is_a_circle() -> None:
    (line,) = level_lines(
        DISC, [x * x + y * y for x, y in DISC], 0.25, lambda x, y: x * x + y * y < 1
    )
    radii = [math.hypot(x, y) for x, y in line]
    # Straight within a triangle, where the square bows: half of its height of bow.
    assert radii == pytest.approx([0.5] * len(radii), abs=0.01)
    assert line[0] == line[-1]


def test_outside_of_the_outline_nothing_is_drawn() -> None:
    lines = level_lines(DISC, [x for x, _ in DISC], 0.0, lambda _, y: y > 0)
    assert lines
    assert all(y > -0.1 for line in lines for _, y in line)
    assert level_lines(DISC, [1.0] * len(DISC), 0.0, lambda *_: True) == ()


def test_a_value_right_on_the_level_breaks_no_line() -> None:
    square = [(float(x), float(y)) for x in range(5) for y in range(5)]
    lines = level_lines(square, [x for x, _ in square], 2.0, lambda *_: True)
    assert len(lines) == 1
    assert {round(x, 6) for x, _ in lines[0]} == {2.0}


@pytest.mark.parametrize(
    ("low", "high"), [(-20, 5), (-18.3, -17.9), (0.1, 3), (-40, 20), (-18, -18)]
)
def test_levels_are_round_few_and_within(low: float, high: float) -> None:
    found = levels(low, high)
    assert len(found) <= 8
    assert all(low < one < high for one in found)
    assert bool(found) == (high > low)


def cylinder_warming_upwards() -> Warmth:
    """60 mm wide and 40 mm high: -20 °C below, 0.5 °C a millimetre."""
    points = tuple(
        ((n + 0.5) * 0.003, (m + 0.5) * 0.004) for n in range(10) for m in range(10)
    )
    outline = ((0.0, 0.0), (0.03, 0.0), (0.03, 0.04), (0.0, 0.04))
    heart = ((0.0, 0.01), (0.01, 0.01), (0.01, 0.03), (0.0, 0.03))
    return Warmth(
        seconds=60,
        outlines=(outline, heart),
        points=points,
        at_c=tuple(-20 + 500 * z for _, z in points),
        heart=(0.0, 0.02),
    )


def drawn() -> Picture:
    return isotherms("k", "Ring in the blast", "told", cylinder_warming_upwards())


def said(picture: Picture) -> list[Said]:
    return [mark for mark in picture.marks if isinstance(mark, Said)]


def test_lines_lie_level_where_it_only_warms_upwards() -> None:
    picture = drawn()
    fine = [
        mark for mark in picture.marks
        if isinstance(mark, Path) and mark.width == 0.18 and len(mark.points) > 8
    ]  # fmt: skip
    # From -20 to 0 °C by fives: -15, -10, -5, each 10 mm over the one before.
    heights = sorted({round(y, 1) for mark in fine for _, y in mark.points})
    assert [b - a for a, b in pairwise(heights)] == pytest.approx([10, 10], abs=0.2)
    # From edge to edge, to the skin itself: 60 mm.
    for mark in fine:
        across = [x for x, _ in mark.points]
        assert max(across) - min(across) == pytest.approx(60, abs=0.5)


def test_levels_and_the_core_are_named_and_nothing_overlaps() -> None:
    picture = drawn()
    texts = [mark.text for mark in said(picture)]
    for name in ("-15 °C", "-10 °C", "-5 °C", "core -10.0 °C", "Ring in the blast"):
        assert name in texts
    boxes: list[tuple[float, float, float, float]] = []
    for mark in said(picture):
        wide = width_mm(mark.text, mark.size, bold=mark.bold)
        left = mark.at[0] - {"start": 0, "middle": wide / 2, "end": wide}[mark.anchor]
        box = (
            left,
            mark.at[1] - ABOVE * mark.size,
            left + wide,
            mark.at[1] + BELOW * mark.size,
        )
        assert 0 <= box[0] < box[2] <= picture.width, mark.text
        assert 0 <= box[1] < box[3] <= picture.height, mark.text
        for other in boxes:
            assert (
                box[2] <= other[0]
                or other[2] <= box[0]
                or box[3] <= other[1]
                or other[3] <= box[1]
            ), mark.text
        boxes.append(box)


def test_a_large_cake_is_drawn_smaller() -> None:
    small = cylinder_warming_upwards()
    large = Warmth(
        seconds=60,
        outlines=tuple(tuple((5 * r, z) for r, z in one) for one in small.outlines),
        points=tuple((5 * r, z) for r, z in small.points),
        at_c=small.at_c,
        heart=small.heart,
    )
    picture = isotherms("k", "t", "told", large)
    assert picture.width < 267
    assert any("drawn 1 : 2" in mark.text for mark in said(picture))


def test_coarse_cells_in_one_line_make_no_jags_at_the_skin() -> None:
    # 220 mm wide and 60 high, colder by 0.1 °C a millimetre outwards, cells of 9 x 7 mm:
    # a line of one temperature stands upright all the way to the skin.
    points = tuple(
        ((n + 0.5) * 0.0092, (m + 0.5) * 0.0067) for n in range(12) for m in range(9)
    )
    outline = ((0.0, 0.0), (0.11, 0.0), (0.11, 0.06), (0.0, 0.06))
    wide = Warmth(
        seconds=60,
        outlines=(outline,),
        points=points,
        at_c=tuple(-8 - 100 * r for r, _ in points),
        heart=(0.0, 0.03),
    )
    picture = isotherms("k", "t", "told", wide)
    fine = [
        mark for mark in picture.marks
        if isinstance(mark, Path) and mark.width == 0.18 and len(mark.points) > 5
        and abs(mark.points[0][1] - mark.points[-1][1]) > 20
    ]  # fmt: skip
    assert len(fine) >= 6
    for mark in fine:
        across = [x for x, _ in mark.points]
        assert max(across) - min(across) < 0.3
