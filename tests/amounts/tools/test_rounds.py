"""Rounds in the moulds there are."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.shape.volume import mould_of
from demould.amounts.tools.rounds import rounds, rounds_as_chosen
from tests.desserts.kitchen import KITCHEN

PEBBLE = mould_of(KITCHEN, "pebble")


def test_27_in_24_cavities_are_24_and_3_or_one_more_mould() -> None:
    found = rounds(27, PEBBLE)
    assert found.each == (24, 3)
    assert found.borrow == 1
    assert found.count == 2
    assert rounds(27, PEBBLE, borrowed=1).each == (27,)
    assert rounds(27, PEBBLE, borrowed=1).borrow == 0
    assert rounds(27, PEBBLE, evenly=True).each == (14, 13)


@pytest.mark.parametrize(
    ("pieces", "count", "moulds"), [(12, 1, 2), (27, 2, 4), (56, 3, 7), (535, 23, 67)]
)
def test_other_sizes(pieces: int, count: int, moulds: int) -> None:
    # Pieces by 24, and by 8 of a mould, up: moulds for one round, of which 3 are there.
    found = rounds(pieces, PEBBLE)
    assert found.count == count
    assert found.borrow == max(0, moulds - 3)


@given(st.integers(0, 2000), st.booleans(), st.integers(0, 5))
def test_rounds_add_up_and_fit(pieces: int, evenly: bool, borrowed: int) -> None:
    found = rounds(pieces, PEBBLE, evenly=evenly, borrowed=borrowed)
    assert sum(found.each) == pieces
    assert all(0 < one <= found.cavities for one in found.each)
    assert found.count == -(-pieces // found.cavities)
    if evenly and found.each:
        assert max(found.each) - min(found.each) <= 1
    else:
        assert all(one == found.cavities for one in found.each[:-1])


@given(st.integers(0, 500))
def test_with_what_is_borrowed_it_is_one_round(pieces: int) -> None:
    borrow = rounds(pieces, PEBBLE).borrow
    assert rounds(pieces, PEBBLE, borrowed=borrow).count <= 1
    if borrow:
        assert rounds(pieces, PEBBLE, borrowed=borrow - 1).count > 1


@pytest.mark.parametrize(
    ("choices", "each"),
    [
        ((), (24, 3)),
        (("by hand",), (24, 3)),
        (("even rounds",), (14, 13)),
        (("fill evenly",), (14, 13)),
        (("no event",), (24, 3)),
        (("borrow a mould",), (27,)),
        (("borrow one mould",), (27,)),
        (("Borrowed 2 moulds",), (27,)),
    ],
)
def test_rounds_go_by_what_the_order_says(
    choices: tuple[str, ...], each: tuple[int, ...]
) -> None:
    assert rounds_as_chosen(27, PEBBLE, choices).each == each


def test_a_mould_without_cavities_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^the pebble mould has no cavity to fill$"):
        rounds(1, replace(PEBBLE, trays=0))
