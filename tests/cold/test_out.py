from dataclasses import replace

import numpy as np
import pytest

from demould.cold.body.profile import half_sphere
from demould.cold.out import LONGEST_MIN, out_of_the_cold
from demould.cold.piece import FrozenPiece, Part, Place, place_of
from demould.cold.whole import heat_j, mass_kg
from tests.cold.pieces import MOUSSE, ball

ROOM = place_of("room", 21)


def test_the_first_rate_is_the_heat_through_the_film() -> None:
    # By hand, dry air: h A (21 - skin) over what the piece holds a degree. The skin of
    # this ball runs from -20 to about -10 in five minutes: between both ends.
    piece = ball(-20)
    told = out_of_the_cold(piece, ROOM, -12)
    area = 3.14159 * 0.056**2
    a_degree = heat_j(piece, -16) - heat_j(piece, -17)
    fastest = 10 * area * (21 + 20) * 60 / a_degree
    slowest = 10 * area * (21 + 5) * 60 / a_degree
    assert slowest < told.per_minute.likely < 1.15 * fastest
    assert told.per_minute.low < told.per_minute.likely < told.per_minute.high
    assert told.until.low < told.until.likely < told.until.high


def test_a_dry_pebble_sized_dome_warms_as_benches_find() -> None:
    # Common practice, no source: 0.7 to 0.8 °C a minute at h 10 in 21 °C, standing on
    # its flat side, for some 78 g at -18. A half-sphere of 66 mm is 75 ml.
    dense = Part(
        name="ganache", profile=half_sphere(0.066), made_of=MOUSSE, air=0.1, start_c=-18
    )
    piece = FrozenPiece(body=dense)
    assert mass_kg(piece) == pytest.approx(0.068, abs=0.006)
    told = out_of_the_cold(piece, replace(ROOM, lying="on a tray"), -15)
    assert 0.6 < told.per_minute.likely < 0.9


def test_a_lot_is_what_fits_before_the_limit() -> None:
    told = out_of_the_cold(ball(-20), ROOM, -15)
    assert told.lot(1) == int(told.until.low)
    assert told.lot(2) == max(1, int(told.until.low / 2))
    assert told.lot(60) == 1
    # The limit is that of the piece evened out: its skin is past it within a minute.
    rows = np.array(told.way)
    assert told.until.likely == pytest.approx(
        np.interp(-15, rows[:, 2], rows[:, 0]), abs=1e-6
    )
    assert told.way[0] == pytest.approx((0, -20, -20), abs=0.01)
    skins = [skin for _, skin, _ in told.way]
    evened = [even for _, _, even in told.way]
    assert skins == sorted(skins)
    assert evened == sorted(evened)
    assert all(skin >= even - 0.01 for _, skin, even in told.way)


def test_a_cool_room_leaves_all_the_time_there_is() -> None:
    still = Place(name="cool", air_c=-14, film_low=1, film_likely=1, film_high=1)
    assert out_of_the_cold(ball(-20), still, -15).until.likely == LONGEST_MIN


def test_a_piece_past_the_limit_is_refused() -> None:
    with pytest.raises(
        ValueError,
        match=r"^the piece starts at -10.0 °C; a limit of -15 °C is passed already$",
    ):
        out_of_the_cold(ball(-10), ROOM, -15)
