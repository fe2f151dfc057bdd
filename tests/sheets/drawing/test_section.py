"""The cut of every demo dessert: true to size, everything named, nothing overwritten."""

import math
import re
from dataclasses import replace
from datetime import UTC, datetime
from functools import cache
from io import BytesIO
from xml.etree import ElementTree

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pypdf import PdfReader
from shapely.geometry import LineString, Polygon

from demould.counter.paper.pdf import pdf_of
from demould.mise.dessert import Dessert, Rest, Stands
from demould.mise.kitchen import Kitchen
from demould.mise.read_shape import read_shape
from demould.sheets.drawing.cut import cut_of
from demould.sheets.drawing.labels import GUTTER_MM, Box, labels
from demould.sheets.drawing.lettering import ABOVE, BELOW, width_mm
from demould.sheets.drawing.naming import names, wall_notes
from demould.sheets.drawing.picture import Path, Picture, Said
from demould.sheets.drawing.plane import both_sides, gap
from demould.sheets.drawing.section import ACROSS_MM, UPRIGHT_MM, section
from demould.sheets.drawing.svg import svg_of
from demould.sheets.drawing_page import drawing_page
from tests.demo_folder import demo_folder
from tests.desserts.build import stated
from tests.sheets.drawing.printed import lines_mm
from tests.sheets.drawing.test_labels import clear

KEYS = [one.key for one in demo_folder().desserts]
PRINTED = datetime(2026, 11, 17, 14, 0, tzinfo=UTC)


@cache
def drawn(key: str) -> Picture:
    return section(dessert(key), demo_folder().kitchen)


def dessert(key: str) -> Dessert:
    return next(one for one in demo_folder().desserts if one.key == key)


def room(said: Said) -> tuple[float, float, float, float]:
    wide = width_mm(said.text, said.size, bold=said.bold)
    left = said.at[0] - {"start": 0, "middle": wide / 2, "end": wide}[said.anchor]
    top = said.at[1] - ABOVE * said.size
    return left, top, left + wide, top + (ABOVE + BELOW) * said.size


def inside_and_apart(picture: Picture) -> None:
    """Everything on the paper, no text over another."""
    rooms = [room(mark) for mark in picture.marks if isinstance(mark, Said)]
    for left, top, right, bottom in rooms:
        assert left >= 0
        assert top >= 0
        assert right <= picture.width
        assert bottom <= picture.height
    for mark in picture.marks:
        if isinstance(mark, Path):
            for x, y in mark.points:
                assert -1e-6 <= x - mark.width / 2 <= picture.width
                assert y - mark.width / 2 >= -1e-6
                assert y + mark.width / 2 <= picture.height
    for n, one in enumerate(rooms):
        for other in rooms[n + 1 :]:
            apart = (
                one[2] <= other[0]
                or other[2] <= one[0]
                or one[3] <= other[1] + 1e-6
                or other[3] <= one[1] + 1e-6
            )
            assert apart, (one, other)


@pytest.mark.parametrize("key", KEYS)
def test_everything_is_on_the_paper_and_nothing_is_overwritten(key: str) -> None:
    inside_and_apart(drawn(key))
    assert drawn(key).width in (UPRIGHT_MM, ACROSS_MM)


@pytest.mark.parametrize("key", KEYS)
def test_leaders_cross_no_label(key: str) -> None:
    cut = cut_of(dessert(key), demo_folder().kitchen)
    body = Box(left=-cut.half, top=0, right=cut.half, bottom=cut.high)
    set_ = labels([*names(cut), *wall_notes(cut)], body, 40)
    clear(set_)
    assert all(one.leader[0][0] <= cut.half + GUTTER_MM for one in set_)


@pytest.mark.parametrize("key", KEYS)
def test_every_layer_and_coat_is_named_with_its_grams(key: str) -> None:
    made = dessert(key)
    said = " ".join(m.text for m in drawn(key).marks if isinstance(m, Said))
    said = said.replace("\xa0", " ")
    used = {layer.component for layer in made.layers}
    used |= {finish.component for finish in made.finish}
    for component in made.components:
        if component.key in used:
            for word in component.name.split():
                assert word in said


@pytest.mark.parametrize("key", KEYS)
def test_the_drawing_is_small_sound_and_black_on_white(key: str) -> None:
    text = svg_of(drawn(key))
    root = ElementTree.fromstring(text)  # our own text
    assert len(text.encode()) < 10_000
    assert set(re.findall(r"#[0-9a-f]{3,6}", text)) <= {"#000", "#fff"}
    wide, high = map(float, root.attrib["viewBox"].split()[2:])
    assert root.attrib["width"] == f"{wide:g}mm"
    assert float(root.attrib["height"].removesuffix("mm")) == high


@pytest.mark.parametrize("key", KEYS)
def test_the_ruler_is_100_mm_on_paper(key: str) -> None:
    page = drawing_page(dessert(key), [drawn(key)])
    pdf = PdfReader(BytesIO(pdf_of(page, printed=PRINTED)))
    longest = [one for one in lines_mm(pdf) if abs(one - 100) < 2]
    assert longest
    assert all(one == pytest.approx(100, abs=0.2) for one in longest)


def test_a_dome_is_drawn_as_half_a_disc() -> None:
    # pi r^2 / 2, r 35 mm
    cut = cut_of(dessert("meadow-domes"), demo_folder().kitchen)
    area = Polygon(both_sides(cut.cavity)).area
    assert area == pytest.approx(math.pi * 35**2 / 2, rel=1e-3)


def test_a_log_is_cut_across() -> None:
    # 80 mm wide, 70 high: a half-disc of r 40 under a strip of 30 x 80 mm, 49.1 cm2
    cut = cut_of(dessert("ember-log"), demo_folder().kitchen)
    assert cut.way == "across"
    area = Polygon(both_sides(cut.cavity)).area
    assert area == pytest.approx(math.pi * 40**2 / 2 + 30 * 80, rel=1e-3)


@pytest.mark.parametrize("key", [one for one in KEYS if one != "amber-terrine"])
def test_walls_in_the_plane_are_those_that_shapely_finds(key: str) -> None:
    cut = cut_of(dessert(key), demo_folder().kitchen)
    for face, wall in zip(cut.faces, cut.walls, strict=True):
        if not wall.part.flush:
            outer = LineString(both_sides(cut.cavity)[: len(cut.cavity)])
            inner = LineString(both_sides(face)[: len(face)])
            assert gap(face, cut.cavity).mm == pytest.approx(
                inner.distance(outer), abs=0.1
            )
            # The least in space is never more than the least in one plane.
            assert wall.least.value <= gap(face, cut.cavity).mm + 0.1


def test_coats_are_as_thick_as_they_are() -> None:
    made = dessert("river-pebble")
    films = sum(finish.film.value for finish in made.finish)
    edge = next(m for m in drawn("river-pebble").marks if isinstance(m, Path))
    assert edge.width == pytest.approx(2 * films)


def test_a_glaze_is_not_drawn_over_the_open_side() -> None:
    edge = next(m for m in drawn("meadow-domes").marks if isinstance(m, Path))
    assert not edge.closed
    top = min(y for _, y in edge.points)
    assert edge.points[0][1] == pytest.approx(top)
    assert edge.points[-1][1] == pytest.approx(top)


@settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow], deadline=None)
@given(
    key=st.sampled_from(KEYS),
    names_=st.lists(
        st.text("ab cde fgh", min_size=1, max_size=48).filter(str.strip),
        min_size=8,
        max_size=8,
    ),
    lower=st.floats(0, 12),
)
def test_any_name_and_any_height_still_fits(
    key: str, names_: list[str], lower: float
) -> None:
    made = dessert(key)
    called = tuple(
        replace(one, name=name)
        for one, name in zip(made.components, names_, strict=False)
    )
    moved = tuple(
        replace(
            layer,
            stands=Stands(
                of="bottom",
                apart=stated(lower, "mm"),
            ),
        )
        if 0 < n < len(made.layers) - 2
        else layer
        for n, layer in enumerate(made.layers)
    )
    rest = made.components[len(called) :]
    odd = replace(made, components=(*called, *rest), layers=moved)
    inside_and_apart(section(odd, demo_folder().kitchen))


def hollow(shape: str) -> tuple[Dessert, Kitchen]:
    """The domes' mousse alone in a mould of another shape."""
    made, kitchen = dessert("meadow-domes"), demo_folder().kitchen
    filler = next(one for one in made.layers if isinstance(one.fill, Rest))
    moulds = tuple(
        replace(one, shape=read_shape(shape), water=None) if one.key == "dome" else one
        for one in kitchen.moulds
    )
    return replace(made, layers=(filler,)), replace(kitchen, moulds=moulds)


@pytest.mark.parametrize(
    ("shape", "mm2"),
    [
        # two upright strips; two half ellipses of 16.5 x 35 mm
        ("ring 180 x 45 mm, hole 60 mm", 2 * 60 * 45),
        ("savarin 90 x 35 mm, hole 24 mm", math.pi * 16.5 * 35),
    ],
)
def test_a_ring_is_drawn_with_its_hole(shape: str, mm2: float) -> None:
    made, kitchen = hollow(shape)
    cut = cut_of(made, kitchen)
    assert cut.hole is not None
    whole, hole = Polygon(both_sides(cut.cavity)), Polygon(both_sides(cut.hole))
    assert whole.difference(hole).area == pytest.approx(mm2, rel=2e-3)
    picture = section(made, kitchen)
    inside_and_apart(picture)
    fills = [mark.fill for mark in picture.marks if isinstance(mark, Path)]
    assert "white" in fills


@pytest.mark.parametrize(
    "shape",
    [
        "sphere 60 mm",
        "egg 80 x 60 mm",
        "cone 60 to 20 x 80 mm",
        "turned 0 0, 20 0, 30 25, 32 40 mm",
        "outline 0 0, 60 0, 60 40, 0 0 mm, 25 mm high",
        "free form 80 x 56 x 34 mm, water 90 ml",
    ],
)
def test_every_other_shape_is_drawn_too(shape: str) -> None:
    made, kitchen = hollow(shape)
    inside_and_apart(section(made, kitchen))
