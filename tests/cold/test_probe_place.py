import pytest

from demould.cold.body.profile import cylinder, raised, sphere
from demould.cold.piece import FrozenPiece, Part, wall_of
from demould.cold.probe_place import Reads, probe_place, probe_reads
from demould.cold.wait import Wait
from demould.larder.ingredient import Composition

WATER = Composition(water=100)


def part(profile: tuple[tuple[float, float], ...]) -> Part:
    return Part(name="one", profile=profile, made_of=WATER, start_c=5)


def test_it_goes_into_the_middle_of_the_centre_by_the_open_face() -> None:
    # A cylinder of 60 x 40 mm with a ball of 20 mm from 14 mm up: its middle is at 24.
    piece = FrozenPiece(
        body=part(cylinder(0.06, 0.04)),
        inside=(part(raised(sphere(0.02), 0.014)),),
        wall=wall_of("silicone", 0.0015),
        open_faces=("top",),
    )
    place = probe_place(piece)
    assert place.face == "top"
    assert place.depth == pytest.approx(0.016, rel=2e-3)
    # The nearest skin is the top, 16 mm away: (5/16)^2.
    assert place.share == pytest.approx((5 / 16) ** 2, rel=5e-3)


def test_without_a_centre_it_is_the_bodys_own_middle() -> None:
    place = probe_place(FrozenPiece(body=part(sphere(0.06))))
    assert place.depth == pytest.approx(0.03, rel=2e-3)
    # The outline at the middle is its radius, drawn by chords: within a per cent.
    assert place.share == pytest.approx((5 / 30) ** 2, rel=0.01)


def test_a_tip_near_the_skin_reads_the_skin() -> None:
    place = probe_place(FrozenPiece(body=part(cylinder(0.06, 0.008))))
    assert place.share == 1.0


def test_a_tip_beside_the_middle_is_read_along_the_way() -> None:
    # Straight lines: the core from 0 to -18 in 2 h, the skin 10 K colder; a quarter of
    # that way a tip reads -18 where the core is -15.5, 2.5 / 9 h sooner.
    wait = Wait(
        hours=None,
        curve=tuple((h, -9 * h, -9 * h - 10, 1.0) for h in (0.0, 0.5, 1.0, 1.5, 2.0)),
        heat_kj=1,
        residual=0,
        core_c=-18,
    )
    place = probe_place(FrozenPiece(body=part(cylinder(0.06, 0.02))))
    assert place.share == pytest.approx(0.25)
    found = probe_reads(wait, place)
    assert found.middle_c == -18
    assert found.off_c == pytest.approx(-20.5)
    assert found.early_h == pytest.approx(2.5 / 9)


def test_a_piece_as_cold_as_its_skin_says_it_at_once() -> None:
    still = Wait(
        hours=None, curve=((0.0, -20, -20, 1.0),), heat_kj=0, residual=0, core_c=-20
    )
    place = probe_place(FrozenPiece(body=part(sphere(0.06))))
    assert probe_reads(still, place) == Reads(middle_c=-20, off_c=-20, early_h=0.0)
