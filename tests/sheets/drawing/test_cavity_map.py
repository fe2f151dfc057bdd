"""Every piece has one cavity, every cavity at most one piece."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.tools.rounds import rounds
from demould.mise.mould import Mould
from demould.mise.shape import HalfSphere
from demould.sheets.drawing.cavity_map import Kind, cavity_map, rows_of
from demould.sheets.drawing.picture import Disc, Said
from tests.desserts.build import stated
from tests.sheets.drawing.test_section import inside_and_apart


def mould(trays: int, each: int) -> Mould:
    return Mould(
        key="dome",
        trays=trays,
        cavities_each=each,
        shape=HalfSphere(diameter_mm=70),
        wall=stated(1.0, "mm"),
    )


@given(
    st.integers(1, 4),
    st.integers(1, 30),
    st.lists(st.integers(1, 20), min_size=1, max_size=4),
)
def test_each_piece_is_lettered_once(trays: int, each: int, kinds: list[int]) -> None:
    one = mould(trays, each)
    turns = rounds(sum(kinds), one)
    picture = cavity_map(
        one, turns.each, [Kind(name=f"kind {n}", pieces=n) for n in kinds], "map"
    )
    inside_and_apart(picture)
    letters = [m.text for m in picture.marks if isinstance(m, Said) and m.bold]
    for n, pieces in enumerate(kinds):
        # one in the key, the others in cavities
        assert letters.count("ABCD"[n]) == pieces + 1


@given(st.integers(1, 200))
def test_a_tray_has_room_for_its_cavities_and_no_empty_row(cavities: int) -> None:
    rows, columns = rows_of(cavities)
    assert rows * columns >= cavities
    assert (rows - 1) * columns < cavities


def test_the_rounds_stand_apart_and_empty_cavities_are_drawn() -> None:
    picture = cavity_map(
        mould(3, 8), (24, 3), [Kind(name="all", pieces=27)], "cavities sat"
    )
    circles = [m for m in picture.marks if isinstance(m, Disc) and m.radius > 5]
    assert len(circles) == 24 + 8
    assert any(
        isinstance(m, Said) and m.text == "round 2: 3 pieces" for m in picture.marks
    )


def test_kinds_that_do_not_add_up_are_refused() -> None:
    with pytest.raises(ValueError, match="26 pieces of all kinds in rounds of 27"):
        cavity_map(mould(3, 8), (24, 3), [Kind(name="all", pieces=26)], "x")
