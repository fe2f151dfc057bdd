"""How far the freezing hours move with what is not said of the piece."""

from dataclasses import replace

import pytest

from demould.advice.gaps.freezing import MOST, place_to_freeze, with_freezing
from demould.advice.gaps.gap import Gap, Moved
from demould.advice.gaps.ranked import gaps_of
from demould.advice.gaps.told import moves_told
from demould.cold.freeze import freeze
from demould.cold.from_dessert import as_filled
from demould.cold.from_kitchen import to_freeze
from demould.mise.dessert import Dessert
from demould.mise.figure import Assumed, Figure
from demould.mise.find import find_in
from demould.mise.folder import Folder, dessert_of
from demould.mise.kitchen import Kitchen
from tests.advice.gaps.pebble_note import drafted, folder
from tests.demo_folder import demo_folder


def frozen(read: Folder, dessert: Dessert, kitchen: Kitchen) -> tuple[Gap, ...]:
    find = find_in(read.larder)
    gaps = gaps_of(dessert, kitchen, find, read.larder)
    return with_freezing(gaps, dessert, kitchen, find)


def hours(gap: Gap) -> Moved | None:
    return next((one for one in gap.moves if one.what == "freezing"), None)


def told(gap: Gap) -> list[str]:
    return [str(words) for words in moves_told(gap) if "freezes" in str(words)]


def test_a_heavier_foam_freezes_longer_and_the_likely_is_that_of_the_whole_wait() -> (
    None
):
    """More of it to freeze in the same room: 0.57, 0.62, 0.66 g/ml."""
    read = demo_folder()
    dessert, kitchen = dessert_of(read, "river-pebble"), read.kitchen
    (gap,) = (one for one in frozen(read, dessert, kitchen) if one.kind == "density")
    move = hours(gap)
    place = place_to_freeze(dessert, kitchen)

    assert move is not None
    assert place is not None
    assert place.key == "blast"
    assert move.low < move.likely < move.high
    piece = as_filled(dessert, kitchen, find_in(read.larder))
    whole = freeze(piece, to_freeze(dessert, kitchen, place)).hours
    assert whole is not None
    assert move.likely == pytest.approx(whole.likely, rel=1e-9)
    assert told(gap) == [
        f"freezes {move.low:.1f} to {move.high:.1f} h, not {move.likely:.1f}"
    ]


def test_a_film_outside_changes_no_piece_in_the_freezer() -> None:
    """What is sprayed on comes after, and it moves more than all else."""
    read = demo_folder()
    gaps = frozen(read, dessert_of(read, "river-pebble"), read.kitchen)
    films = [one for one in gaps if one.kind == "figure"]

    assert len(films) == 2
    assert all(hours(one) is None for one in films)


def test_twice_the_mould_takes_as_much_longer_as_planks_law_has_it() -> None:
    """Twice the volume is 2^(1/3) across: between that and its square, 1.26 to 1.59.

    By R. Plank, Z. ges. Kälte-Ind. 20 (1913) 109-114, from memory: P d / h + R d^2 / k,
    so all film gives d and all body d^2. Held to a strong machine, whose air stays.
    """
    read = demo_folder()
    dessert = dessert_of(read, "river-pebble")
    alone = replace(
        dessert,
        layers=tuple(one for one in dessert.layers if one.component == "ganache")[-1:],
    )
    doubled = Assumed(low=60.0, high=120.0, source="an invented range")
    water = Figure(name="water in a cavity", value=90.0, unit="ml", origin=doubled)
    strong = Figure(name="load of a cycle", value=500e3, unit="g")
    kitchen = replace(
        read.kitchen,
        moulds=tuple(
            replace(one, water=water) if one.key == "pebble" else one
            for one in read.kitchen.moulds
        ),
        cold=tuple(replace(one, load=strong) for one in read.kitchen.cold),
    )
    (gap,) = (one for one in frozen(read, alone, kitchen) if one.kind == "mould")
    move = hours(gap)

    assert move is not None
    assert 2 ** (1 / 3) < move.high / move.low < 2 ** (2 / 3)


def test_a_note_has_hours_for_no_more_than_three_gaps_in_its_own_freezer() -> None:
    read = folder(drafted())
    gaps = frozen(read, read.desserts[0], read.kitchen)
    moved = {one.key: move for one in gaps if (move := hours(one)) is not None}

    assert len(moved) == MOST
    assert gaps[0].key == "pebble: water in a cavity"
    first = moved["pebble: water in a cavity"]
    assert first.low < first.likely < first.high
    plain = gaps_of(read.desserts[0], read.kitchen, find_in(read.larder), read.larder)
    assert [one.key for one in gaps] == [one.key for one in plain]


def test_nothing_that_freezes_no_hours() -> None:
    read = folder(drafted())
    fridges = tuple(one for one in read.kitchen.cold if one.air.value > 0)
    gaps = frozen(read, read.desserts[0], replace(read.kitchen, cold=fridges))

    assert fridges
    assert all(hours(one) is None for one in gaps)


def test_a_method_that_names_the_freezer_freezes_there() -> None:
    read = demo_folder()
    dessert = dessert_of(read, "river-pebble")
    turned = replace(
        dessert,
        method=tuple(
            replace(one, roads=tuple(reversed(one.roads))) for one in dessert.method
        ),
    )
    place = place_to_freeze(turned, read.kitchen)

    assert place is not None
    assert place.key == "freezer"
