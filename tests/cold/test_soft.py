from dataclasses import replace

import numpy as np
import pytest

from demould.cold.body.profile import cylinder
from demould.cold.piece import FrozenPiece, Part, place_of
from demould.cold.soft import feel, frozen_share, minutes_to_serve, softness
from demould.larder.ingredient import Composition
from demould.matter.water import wet_of

ICE_CREAM = Composition(water=62, fat=12, sucrose=15, lactose=6, protein=4, ash=1)


def part(made_of: Composition) -> Part:
    return Part(
        name="mix", profile=cylinder(0.08, 0.05), made_of=made_of, air=0.4, start_c=-18
    )


def test_milk_freezes_where_dairies_measure_it() -> None:
    # Standard of dairies, -0.52 to -0.53 °C; from memory.
    milk = Composition(
        water=87.5, fat=3.7, lactose=4.8, protein=3.3, ash=0.7, sodium_mg=45
    )
    told = softness(part(milk), (-10,))
    assert told.starts_c == pytest.approx(-0.525, abs=0.03)


def test_thirty_grams_of_sugar_on_a_hundred_of_water() -> None:
    # Common practice, no source: about -1.8 °C. Measured (CRC, from memory) between 20 %
    # at -1.46 and 30 % at -2.64: 23.1 % w/w lies at -1.78.
    syrup = Composition(water=100 / 1.3, sucrose=30 / 1.3)
    assert softness(part(syrup), ()).starts_c == pytest.approx(-1.78, abs=0.05)


def test_ice_grows_as_it_gets_colder_up_to_all_that_can_freeze() -> None:
    told = softness(part(ICE_CREAM), (-30, -18, -10, -5, 0))
    shares = [share for _, share in told.shares]
    assert shares == sorted(shares, reverse=True)
    assert shares[-1] == 0
    assert shares[0] <= 1


def test_it_is_served_where_its_ice_is_in_the_window() -> None:
    told = softness(part(ICE_CREAM), ())
    assert told.serve_c is not None
    cold, warm = told.serve_c
    assert cold < warm
    ends = frozen_share(wet_of(ICE_CREAM), np.array([cold, warm]))
    # The window is found on a grid of 0.025 K, over which ice moves by a few thousandths.
    assert ends == pytest.approx([0.65, 0.55], abs=0.006)
    assert feel(float(ends.mean())) == "to scoop or slice"


def test_fat_alone_never_freezes() -> None:
    told = softness(part(Composition(fat=100)), (-18,))
    assert told.starts_c is None
    assert told.serve_c is None
    assert told.shares == ((-18, 0.0),)


@pytest.mark.parametrize(
    ("share", "how"),
    [(0.2, "runs"), (0.5, "soft"), (0.6, "to scoop or slice"), (0.7, "firm"), (0.9, "too hard")],
)  # fmt: skip
def test_how_a_share_of_ice_feels(share: float, how: str) -> None:
    assert feel(share) == how


def test_it_comes_to_its_window_sooner_in_the_room_than_in_the_fridge() -> None:
    piece = FrozenPiece(body=part(ICE_CREAM))
    room = minutes_to_serve(piece, place_of("room", 21))
    fridge = minutes_to_serve(piece, place_of("fan_fridge_open", 3))
    assert room is not None
    assert fridge is not None
    assert 0 < room.low < room.likely < room.high < fridge.high
    warm = replace(piece, body=replace(piece.body, start_c=-8))
    there = minutes_to_serve(warm, place_of("room", 21))
    assert there is not None
    assert there.high == 0
    assert minutes_to_serve(piece, place_of("upright_freezer", -20)) is None


def test_what_has_no_window_has_no_minutes() -> None:
    syrup = FrozenPiece(body=part(Composition(water=25, sucrose=75)))
    assert minutes_to_serve(syrup, place_of("room", 21)) is None


def test_pure_ice_has_no_window() -> None:
    assert softness(part(Composition(water=100)), (-5,)).serve_c is None


def test_water_that_protein_holds_is_not_counted() -> None:
    # 0.3 g of water a gram of protein: 12 of 50 g. Nearly all of the rest is ice.
    lean = part(Composition(water=50, protein=40, sucrose=1))
    ((_, share),) = softness(lean, (-30,)).shares
    assert 0.95 < share <= 1
