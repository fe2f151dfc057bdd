"""Sizes beside each other, against the table a head of pastry worked out by hand."""

from dataclasses import replace

from demould.demo import NOW
from demould.week.sizes import sizes_of
from tests.demo_folder import demo_folder, order_of

# Sold, made, rounds in 24, moulds for one round, ganache needed, whips, dip taken and to
# melt, frozen kg (worked out by hand to whole grams: allow 1 g).
BY_HAND = [
    (10, 12, 1, 2, 523, 1, 110, 432, 0.8),
    (24, 27, 2, 4, 1166, 2, 247, 569, 1.8),
    (50, 56, 3, 7, 2371, 3, 512, 834, 3.8),
    (500, 535, 23, 67, 22417, 23, 4890, 5213, 36.2),
]


def test_ten_to_five_hundred_are_the_rows_worked_out_by_hand() -> None:
    folder = demo_folder()
    larder = tuple(replace(one, stock=None) for one in folder.larder)
    found = sizes_of(
        replace(folder, larder=larder),
        order_of("river-pebble"),
        [row[0] for row in BY_HAND],
        NOW,
    )
    for size, row in zip(found, BY_HAND, strict=True):
        amounts = size.making.amounts
        assert amounts.jug is not None
        assert (
            size.making.order.pieces,
            amounts.pieces,
            amounts.rounds.count,
            size.moulds,
            size.whips,
        ) == (*row[:4], row[5])
        assert abs(amounts.makes[0].weigh.value - row[4]) <= 1
        assert abs(amounts.jug.taken.value - row[6]) <= 0.5
        assert abs(amounts.jug.melt.value - row[7]) <= 0.5
        assert abs(size.frozen_kg - row[8]) <= 0.05
    assert [size.stands for size in found] == [True, True, True, False]
    assert all(size.stops == () for size in found[:3])


# 23 rounds at about three a day do not fit a week: moulds first, then the cold.
def test_five_hundred_names_the_first_limit_and_the_next() -> None:
    folder = demo_folder()
    larder = tuple(replace(one, stock=None) for one in folder.larder)
    (size,) = sizes_of(
        replace(folder, larder=larder), order_of("river-pebble"), [500], NOW
    )
    assert size.stops[0].startswith("3 pebble moulds: 23 rounds are needed")
    assert len(size.stops) >= 2
    assert "shelves at once" in size.stops[1]


def test_a_hundred_thousand_pieces_are_refused_in_words() -> None:
    (size,) = sizes_of(demo_folder(), order_of("river-pebble"), [100_000], NOW)
    assert size.stands is False
    assert any("in one go, and the longest day has" in text for text in size.stops)
