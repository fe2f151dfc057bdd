"""A piece whose fat sets in the cold, beside the same whose fat is left out."""

from dataclasses import replace

import pytest

from demould.cold.freeze import freeze
from demould.cold.piece import FrozenPiece, place_of
from demould.cold.whole import heat_j, masses_kg
from tests.cold.pieces import MOUSSE, ball


def creamy(*, fat_sets: bool) -> FrozenPiece:
    """The ball with all the fat of its mousse from milk."""
    piece = ball(8.0)
    of_milk = replace(MOUSSE, milk_fat=MOUSSE.fat)
    return replace(piece, body=replace(piece.body, made_of=of_milk), fat_sets=fat_sets)


def test_setting_fat_holds_its_heat_back_and_slows_the_freezing() -> None:
    plain, sets = (creamy(fat_sets=flag) for flag in (False, True))
    of_plain, of_sets = (heat_j(one, 8.0) - heat_j(one, -18.0) for one in (plain, sets))
    fat_kg = masses_kg(sets)[0] * MOUSSE.fat / MOUSSE.total
    # The larder's shares: 44 % solid at 8 °C, 50 % from 5 °C down, 85 J/g.
    assert of_sets - of_plain == pytest.approx(fat_kg * 0.06 * 85e3, rel=1e-3)
    place = place_of("blast_chiller", -30.0)
    slow, quick = (freeze(one, place, in_full=False).hours for one in (sets, plain))
    assert slow is not None
    assert quick is not None
    assert 1.0 < slow.likely / quick.likely < of_sets / of_plain + 0.01


def test_without_such_fat_it_makes_no_difference() -> None:
    place = place_of("blast_chiller", -30.0)
    plain = freeze(ball(8.0), place, in_full=False)
    assert freeze(replace(ball(8.0), fat_sets=True), place, in_full=False) == plain
