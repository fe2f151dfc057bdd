"""Labels stand apart from each other and from every leader."""

import re
from itertools import combinations, pairwise
from pathlib import Path

import pytest
from fontpkg_atkinson_hyperlegible import ROOT
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, box

from demould.sheets.drawing.labels import Box, Label, Note, labels
from demould.sheets.drawing.lettering import _ALIKE, width_mm, wrapped

BODY = Box(left=60, top=20, right=120, bottom=70)


def clear(drawn: tuple[Label, ...]) -> None:
    """No two boxes touch, no leader meets another's box, no two leaders cross."""
    boxes = [
        box(one.box.left, one.box.top, one.box.right, one.box.bottom) for one in drawn
    ]
    leaders = [LineString(one.leader) for one in drawn]
    for one, other in combinations(boxes, 2):
        assert not one.intersects(other)
    for n, leader in enumerate(leaders):
        assert not any(leader.intersects(one) for one in boxes), drawn[n]


notes = st.builds(
    Note,
    text=st.text("abc de 12 mm", min_size=1, max_size=70).filter(str.strip),
    spots=st.lists(
        st.tuples(st.floats(60, 120), st.floats(20, 70)), min_size=1, max_size=4
    ).map(tuple),
    left=st.booleans(),
)


@given(st.lists(notes, max_size=12))
def test_no_label_is_written_over_another_and_no_leader_crosses_one(
    some: list[Note],
) -> None:
    drawn = labels(some, BODY, 40, top=5)
    clear(drawn)
    assert all(one.box.top >= 5 for one in drawn)
    assert all(one.box.right <= 60 or one.box.left >= 120 for one in drawn)


@given(st.lists(notes, max_size=12))
def test_leaders_of_one_side_do_not_cross_where_their_spots_lie_apart(
    some: list[Note],
) -> None:
    drawn = labels(some, BODY, 40)
    for left in (True, False):
        side = sorted(
            (one for one in drawn if one.left is left),
            key=lambda one: one.leader[0][1],
        )
        for one, other in pairwise(side):
            assert one.leader[0][1] <= other.leader[0][1]
            assert one.leader[-1][1] < other.leader[-1][1]


def test_a_note_takes_a_spot_that_no_other_leader_passes() -> None:
    fixed = Note(text="centre", spots=((90, 40),))
    choice = Note(text="mousse", spots=((100, 40), (100, 50)))
    drawn = labels([fixed, choice], BODY, 40)
    assert [one.leader[0] for one in drawn] == [(90, 40), (100, 50)]


def test_a_single_label_stands_level_with_its_spot() -> None:
    (one,) = labels([Note(text="centre", spots=((90, 40),))], BODY, 40)
    assert one.leader[-1][1] == pytest.approx(40, abs=0.5)


@pytest.mark.parametrize("sign", sorted("".join(_ALIKE.values())))
def test_widths_are_those_of_the_font_that_is_printed(sign: str) -> None:
    # The font's own `hmtx` table, read by fontTools.
    font = TTFont(str(Path(ROOT) / "files" / "AtkinsonHyperlegible-Regular.ttf"))
    glyph = font.getBestCmap()[ord(sign)]
    per_em = font["hmtx"][glyph][0] / font["head"].unitsPerEm
    assert width_mm(sign, 10) == pytest.approx(10 * per_em, abs=0.005)


def test_bold_is_never_wider_than_reckoned() -> None:
    font = TTFont(str(Path(ROOT) / "files" / "AtkinsonHyperlegible-Bold.ttf"))
    names, wide = font.getBestCmap(), font["hmtx"]
    for text in ("River Pebble", "Stone dip in the 100 mm jug", "Orchard Ring"):
        true = sum(wide[names[ord(sign)]][0] for sign in text) / 1000
        assert true <= width_mm(text, 1, bold=True) <= 1.1 * true


@given(st.text("ab 12gxml", max_size=60), st.floats(5, 60))
def test_a_text_broken_into_lines_loses_no_word(text: str, room: float) -> None:
    lines = wrapped(" ".join(text.split()), 3.2, room)
    whole = re.sub(r"\s", "", "".join(lines))
    assert whole == re.sub(r"\s", "", text)
    assert all(width_mm(line, 3.2) <= room for line in lines)
