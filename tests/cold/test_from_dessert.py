"""The demo's pebble and dome as they lie in the cold, against sums worked by hand."""

import pytest

from demould.amounts.layers.place import placed
from demould.amounts.shape.section import across_mm
from demould.amounts.shape.volume import mould_of, volume_up_to_ml
from demould.cold.body.profile import volume
from demould.cold.from_dessert import as_demoulded, as_filled
from demould.cold.stand_in import turned_body
from demould.mise.find import find_in
from demould.mise.shape import HollowRing
from tests.demo_folder import demo_folder

FOLDER = demo_folder()
FIND = find_in(FOLDER.larder)
BY_KEY = {dessert.key: dessert for dessert in FOLDER.desserts}


# 90 ml by water; 70 mm half-sphere: pi/12 x 70^3 mm3.
@pytest.mark.parametrize(
    ("key", "ml"), [("river-pebble", 90.0), ("meadow-domes", 89.797)]
)
def test_a_piece_holds_what_its_cavity_does(key: str, ml: float) -> None:
    piece = as_filled(BY_KEY[key], FOLDER.kitchen, FIND)
    assert piece.volume_ml == pytest.approx(ml, abs=0.01)


def test_the_centre_stands_where_the_card_says_and_the_base_is_flush() -> None:
    """34 mm high: base from 29 to 34, centre 18 mm high with its top at 29 - 2.4."""
    piece = as_filled(BY_KEY["river-pebble"], FOLDER.kitchen, FIND)
    centre, base = piece.inside
    tops = [max(z for _, z in part.profile) * 1000 for part in (centre, base)]
    lows = [min(z for _, z in part.profile) * 1000 for part in (centre, base)]
    assert tops == pytest.approx([26.6, 34.0])
    assert lows == pytest.approx([8.6, 29.0])


def test_the_ganache_goes_in_whipped_and_cold_its_centre_frozen() -> None:
    """Air 1 - 0.62 / 1.03 = 39.8 %; whipped at 4 to 8 °C (common practice)."""
    piece = as_filled(BY_KEY["river-pebble"], FOLDER.kitchen, FIND)
    assert piece.body.air == pytest.approx(0.398, abs=5e-4)
    assert piece.body.start_c == 6.0
    assert {part.start_c for part in piece.inside} == {-18.0}


def test_demoulded_it_is_bare_and_frozen_through() -> None:
    piece = as_demoulded(BY_KEY["meadow-domes"], FOLDER.kitchen, FIND)
    assert piece.wall is None
    assert {part.start_c for part in piece.parts} == {-18.0}


def test_a_smaller_turned_body_stands_for_a_pebble_a_dome_for_itself() -> None:
    """2 a^2 b^2 / (a^2 + b^2) over a b, half axes in the mould's proportion."""
    pebble = as_filled(BY_KEY["river-pebble"], FOLDER.kitchen, FIND)
    dome = as_filled(BY_KEY["meadow-domes"], FOLDER.kitchen, FIND)
    shape = mould_of(FOLDER.kitchen, BY_KEY["river-pebble"].mould).shape
    long, wide = across_mm(shape, 20.0)
    evenness = 2 * long * wide / (long**2 + wide**2)
    assert pebble.times == pytest.approx(1 / evenness, rel=2e-3)
    assert 0.95 < pebble.surface_share < 1.02
    # Circles are read as outlines of many corners.
    assert dome.times == pytest.approx(1.0, abs=5e-4)
    assert dome.surface_share == pytest.approx(1.0, abs=3e-3)


def test_a_centre_keeps_its_share_of_a_piece_that_another_stands_for() -> None:
    dessert = BY_KEY["river-pebble"]
    piece = as_filled(dessert, FOLDER.kitchen, FIND)
    centre, base = placed(dessert, FOLDER.kitchen)
    for part, lies in zip(
        sorted((centre, base), key=lambda one: one.flush), piece.inside, strict=True
    ):
        held = piece.times * volume(lies.profile) * 1e6
        assert held == pytest.approx(volume_up_to_ml(part.shape), rel=1e-9)


@pytest.mark.parametrize("key", sorted(BY_KEY))
def test_every_dessert_of_the_demo_can_lie_in_the_cold(key: str) -> None:
    piece = as_filled(BY_KEY[key], FOLDER.kitchen, FIND)
    assert piece.volume_ml > 0


def test_a_ring_keeps_its_hole_in_the_cold() -> None:
    """Pi x (18^2 - 6^2) / 4 x 4.5 cm: 1017.9 ml, an outline that runs once round."""
    ring = HollowRing(diameter_mm=180, hole_mm=60, height_mm=45)
    outline = turned_body(ring, 1017.876)
    assert outline[0] == outline[-1]
    assert min(r for r, _ in outline) == pytest.approx(0.030, abs=1e-6)
    assert volume(outline) * 1e6 == pytest.approx(1017.876, rel=1e-6)
