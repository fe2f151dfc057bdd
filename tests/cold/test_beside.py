from dataclasses import replace

import pytest

from demould.cold.around.load import Load, Lump, Machine
from demould.cold.beside import most_warm_pieces, warm_beside, warmest_goods
from demould.cold.piece import Place, place_of
from tests.cold.pieces import ball

WEAK = Machine(set_c=-20, capacity=40, holds=10e3)
TRAYS = Lump(name="trays", holds=1500, passes=2.0, start_c=21)


def freezer(machine: Machine = WEAK) -> Place:
    load = Load(machine=machine, pieces=24, lumps=(TRAYS,))
    return replace(place_of("upright_freezer", machine.set_c), load=load)


def goods(kilograms: float = 0.5) -> Lump:
    return Lump(
        name="goods", holds=6000 * kilograms, passes=1.5 * kilograms, start_c=-20
    )


def test_more_warm_pieces_warm_the_goods_more() -> None:
    few, many = (
        warmest_goods(ball(5), freezer(), goods(), pieces) for pieces in (6, 60)
    )
    assert -20 < few < many < 5
    stronger = warmest_goods(ball(5), freezer(), goods(), 60, capacity=3.0)
    assert stronger < many


def test_each_piece_brings_its_share_of_trays() -> None:
    twice = replace(TRAYS, holds=2 * TRAYS.holds, passes=2 * TRAYS.passes)
    place = freezer()
    assert place.load is not None
    full = replace(place, load=replace(place.load, pieces=48, lumps=(twice,)))
    assert warmest_goods(ball(5), place, goods(), 48) == pytest.approx(
        warmest_goods(ball(5), full, goods(), 48)
    )


def test_the_most_that_may_go_in_is_the_last_that_keeps_them_cold() -> None:
    limit = -17.0
    most = most_warm_pieces(ball(5), freezer(), goods(), limit, 96)
    assert most is not None
    assert 0 < most < 96
    assert warmest_goods(ball(5), freezer(), goods(), most) <= limit
    assert warmest_goods(ball(5), freezer(), goods(), most + 1) > limit


def test_a_strong_machine_takes_all_that_is_tried() -> None:
    strong = Machine(set_c=-35, capacity=2000, holds=50e3)
    told = warm_beside(ball(5), freezer(strong), ball(-18), 1.0)
    assert told.most is None
    assert told.tried == 96
    assert told.round == 24
    assert -35 < told.warmest_c < -15


def test_a_weak_one_is_told_low_likely_and_high() -> None:
    told = warm_beside(ball(5), freezer(), ball(-18), 0.5, -18.0)
    assert told.most is not None
    assert told.most.low < told.most.likely <= told.most.high <= 96
    assert str(told.most.reason) == (
        "how much cold the machine makes (half as much either way)"
    )


@pytest.mark.parametrize(
    ("place", "kilograms", "limit", "fault"),
    [
        (place_of("upright_freezer", -20), 1, -15, "nobody said what is put into this place together"),
        (freezer(), 0, -15, "0 kg of finished goods; it must be more than 0"),
        (freezer(), 1, -22, "the air of this place, -20 °C, is not colder than the -22 °C that finished goods must keep"),
    ],
)  # fmt: skip
def test_what_cannot_be_asked_is_refused(
    place: Place, kilograms: float, limit: float, fault: str
) -> None:
    with pytest.raises(ValueError, match=f"^{fault}$"):
        warm_beside(ball(5), place, ball(-18), kilograms, limit)
