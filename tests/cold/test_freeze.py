import math
from dataclasses import replace

import numpy as np
import pytest

from demould.cold.around.air import even_film
from demould.cold.around.load import Load, Machine
from demould.cold.body.mesh import mesh_of
from demould.cold.body.profile import cylinder, raised, sphere, turned
from demould.cold.corners import corners, in_words, likely_corner, one_by_one
from demould.cold.freeze import freeze, plank_seconds
from demould.cold.piece import FrozenPiece, Part, Place, place_of, wall_of
from demould.cold.run.readout import passing
from demould.cold.run.solve import Accuracy, run
from demould.larder.ingredient import Composition
from demould.larder.read import film
from demould.matter.heat import Thermal

GANACHE = Composition(
    water=47.1,
    fat=34.1,
    sucrose=10.2,
    lactose=4.0,
    protein=2.7,
    starch=1.3,
    ash=0.6,
    sodium_mg=60,
)
CENTRE = Composition(
    water=70.5,
    sucrose=14,
    fructose=4,
    glucose=3.7,
    fibre=3,
    acid=1.5,
    protein=0.7,
    ash=0.5,
    fat=0.2,
    other_carb=1.9,
)


def pebble() -> FrozenPiece:
    """A cut ellipsoid of 90 ml in silicone, an 18 ml oval frozen into it."""
    a, b, c, above = 0.0402, 0.0280, 0.02164, 0.01236
    angles = np.linspace(math.pi, math.acos(above / c), 33)
    levels = [
        (
            c + c * math.cos(t),
            max(0.0, math.pi * a * b * (1 - math.cos(t) ** 2)) if t < math.pi else 0.0,
        )
        for t in angles
    ]
    oval = math.pi / 4 * 0.0437 * 0.0291
    centre = turned([(0, oval), (0.018, oval)], holding=18e-6)
    return FrozenPiece(
        body=Part(
            name="ganache",
            profile=turned(levels, holding=90e-6),
            made_of=GANACHE,
            air=1 - 0.62 / 1.03,
            start_c=8,
        ),
        inside=(
            Part(
                name="centre",
                profile=raised(centre, 0.008),
                made_of=CENTRE,
                start_c=-18,
            ),
        ),
        wall=wall_of("silicone", 0.0015),
        open_faces=("top",),
    )


# Sphere of a course sheet in the manner of Singh and Heldman: 2603 s at h = 50 and
# 3607 s at h = 30, to the second.
@pytest.mark.parametrize(("h", "seconds"), [(50, 2603), (30, 3607)])
def test_planks_sphere_is_the_course_sheets(h: float, seconds: float) -> None:
    found = plank_seconds(
        "sphere",
        thickness=0.07,
        density=1000,
        latent=250e3,
        conductivity=1.2,
        freezing_c=-1.25,
        air_c=-40,
        film=h,
    )
    assert found == pytest.approx(seconds, abs=0.51)


# By hand: 900 kg/m3, 200 kJ/kg, 30 K, h 20, k 1.5: sphere of 60 mm 1.00 h exactly
# (6e6 * (0.0005 + 0.0001) = 3600 s), slab of 30 mm 1.375 h (6e6 * 0.000825).
@pytest.mark.parametrize(
    ("shape", "thickness", "hours"),
    [("sphere", 0.06, 1.0), ("slab", 0.03, 1.375), ("cylinder", 0.03, 0.725 * 0.8448)],
)
def test_planks_times_by_hand(shape: str, thickness: float, hours: float) -> None:
    p, r = {"sphere": (1 / 6, 1 / 24), "slab": (1 / 2, 1 / 8)}.get(
        shape, (1 / 4, 1 / 16)
    )
    by_hand = 6e6 * (p * thickness / 20 + r * thickness**2 / 1.5) / 3600
    kind = {"sphere": "sphere", "slab": "slab", "cylinder": "cylinder"}[shape]
    found = plank_seconds(
        kind,  # type: ignore[arg-type]  # one of the three, spelled out above
        thickness=thickness,
        density=900,
        latent=200e3,
        conductivity=1.5,
        freezing_c=0,
        air_c=-30,
        film=20,
    )
    assert found / 3600 == pytest.approx(by_hand)
    if shape != "cylinder":
        assert found / 3600 == pytest.approx(hours)


def test_plank_needs_colder_air() -> None:
    with pytest.raises(
        ValueError, match=r"^air of 0 °C freezes nothing that freezes at -1 °C$"
    ):
        plank_seconds(
            "slab",
            thickness=0.03,
            density=900,
            latent=2e5,
            conductivity=1.5,
            freezing_c=-1,
            air_c=0,
            film=20,
        )


def test_without_sensible_heat_the_solver_is_plank() -> None:
    # Plank is exact where latent heat is all there is. 20 J/(kg K) against 250 kJ/kg
    # and 40 K leave 0.3 %; 1.2 mm cells half a cell's front of the radius, 1.7 %.
    at_c = np.array([-60.0, -1.251, -1.25, 60.0])
    ice = Thermal(
        at_c=at_c,
        enthalpy=np.array([-250e3 - 20 * 58.749, -250e3, 0.0, 20 * 61.25]),
        conductivity=np.full(4, 1.2),
        ice=np.array([0.75, 0.75, 0.0, 0.0]),
        density=1000.0,
        freezing_c=-1.25,
    )
    done = run(
        mesh_of([sphere(0.07)], cell=0.0012),
        [ice],
        [-1.2],
        -40,
        even_film(50),
        until=4000,
        accuracy=Accuracy(tolerance=0.002),
    )
    frozen = passing(done.seconds, done.ice, 0.999 * float(done.ice[-1]))
    assert frozen == pytest.approx(2603, rel=0.02)


def test_a_pebble_freezes_in_the_order_its_corners_say() -> None:
    wait = freeze(pebble(), place_of("blast_chiller", -35))
    assert wait.hours is not None
    assert wait.hours.unit == "h"
    assert wait.hours.low < wait.hours.likely < wait.hours.high
    assert wait.never is None
    assert wait.remark is None
    assert wait.residual <= 1e-10
    air = film("blast_chiller").total
    assert str(wait.hours.reason) == (
        "how much air moves over the pieces"
        f" (between {air.low:g} and {air.high:g} W/m2K in this place)"
    )
    hours, core, surface, ice = zip(*wait.curve, strict=True)
    assert list(hours) == sorted(hours)
    assert hours[0] == 0
    assert hours[-1] == pytest.approx(wait.hours.likely)
    assert np.diff(hours) == pytest.approx(hours[1])
    # The frozen centre warms before it cools; the skin starts soft and ends frozen.
    assert core[0] == pytest.approx(-18)
    assert max(core) > -12
    assert core[-1] < -17.9
    assert surface[-1] < core[-1]
    assert 0 < ice[0] < ice[-1] <= 1


def test_the_heat_taken_is_that_of_the_parts() -> None:
    # Nearly at rest in its air the piece has given off what its tables say.
    piece = pebble()
    cold = freeze(piece, place_of("blast_chiller", -18.5), -18.0)
    deep = freeze(piece, place_of("blast_chiller", -40), -18.0)
    assert cold.hours is not None
    assert deep.hours is not None
    assert deep.hours.likely < 0.5 * cold.hours.likely
    assert 0 < cold.heat_kj < deep.heat_kj


def test_a_thick_slow_place_takes_longer_than_plank_and_less_than_twice() -> None:
    # An unfrozen ball without insert: Plank has only the freezing; cooling before and
    # after adds, by the heat's shares, between a tenth and all of it again.
    ball = FrozenPiece(
        body=Part(name="centre", profile=sphere(0.06), made_of=CENTRE, start_c=6)
    )
    wait = freeze(ball, place_of("blast_chiller", -35))
    assert wait.hours is not None
    frozen_only = plank_seconds(
        "sphere",
        thickness=0.06,
        density=1110,
        latent=0.55 * 334e3,
        conductivity=1.2,
        freezing_c=-3,
        air_c=-35,
        film=30,
    )
    assert 1.1 < wait.hours.likely * 3600 / frozen_only < 2.0


def test_air_near_the_target_is_remarked() -> None:
    wait = freeze(pebble(), place_of("upright_freezer", -20))
    assert wait.hours is not None
    assert wait.hours.low < wait.hours.likely < wait.hours.high
    assert str(wait.remark) == (
        "the air is only 2.0 °C colder than the target: one degree more or less in"
        " this place moves the time a lot; measure its air"
    )


def test_air_at_the_target_never_gets_a_piece_there() -> None:
    wait = freeze(pebble(), place_of("upright_freezer", -18))
    assert wait.hours is None
    assert wait.remark is None
    assert str(wait.never) == (
        "air of -18 °C does not bring a piece to -18 °C in any time worth waiting"
    )
    assert wait.curve[-1][0] == pytest.approx(24)


def test_what_takes_more_than_a_week_is_said_too() -> None:
    place = Place(
        name="a felt box", air_c=-30, film_low=0.01, film_likely=0.02, film_high=0.03
    )
    wait = freeze(pebble(), place)
    assert wait.hours is None
    assert wait.never is not None


def test_a_piece_frozen_already_waits_no_time() -> None:
    piece = pebble()
    cold = replace(
        piece, body=replace(piece.body, start_c=-25), wall=None, open_faces=()
    )
    cold = replace(cold, inside=(replace(cold.inside[0], start_c=-25),))
    wait = freeze(cold, place_of("blast_chiller", -35))
    assert wait.hours is not None
    assert (wait.hours.low, wait.hours.high) == (0, 0)
    assert len(wait.curve) == 1
    assert wait.curve[0] == pytest.approx((0.0, -25.0, -25.0, 1.0))


def test_a_start_nobody_knows_is_named_as_the_reason() -> None:
    place = Place(
        name="known air", air_c=-35, film_low=29.9, film_likely=30, film_high=30.1
    )
    wait = freeze(replace(pebble(), start_unsure_k=5), place)
    assert wait.hours is not None
    assert str(wait.hours.reason) == "how warm the pieces go in (5 °C either way)"


def test_more_skin_freezes_sooner() -> None:
    place = place_of("blast_chiller", -35)
    plain = freeze(pebble(), place).hours
    oval = freeze(replace(pebble(), surface_share=1.05), place).hours
    assert plain is not None
    assert oval is not None
    # The mould's side is most of the surface, and the film most of the resistance.
    assert 0.95 < oval.likely / plain.likely < 0.99


def test_a_piece_knows_its_volume() -> None:
    assert pebble().volume_ml == pytest.approx(90)
    assert [part.name for part in pebble().parts] == ["ganache", "centre"]


def test_films_of_a_place_must_be_in_order() -> None:
    with pytest.raises(
        ValueError, match=r"^films of 9, 8, 10 W/\(m2 K\) are out of order$"
    ):
        Place(name="odd", air_c=-20, film_low=9, film_likely=8, film_high=10)


def test_unknown_places_and_walls_are_not_guessed() -> None:
    with pytest.raises(KeyError):
        place_of("volcano", 900)
    with pytest.raises(KeyError):
        wall_of("marzipan", 0.002)


def test_a_flat_cake_is_faster_than_a_ball_of_its_volume() -> None:
    disc = cylinder(0.12, 0.0079577)
    ball = sphere((6 * 90e-6 / math.pi) ** (1 / 3))
    place = place_of("blast_chiller", -35)
    times = []
    for profile in (disc, ball):
        piece = FrozenPiece(
            body=Part(name="x", profile=profile, made_of=GANACHE, start_c=8)
        )
        wait = freeze(piece, place)
        assert wait.hours is not None
        times.append(wait.hours.likely)
    assert times[0] < 0.6 * times[1]


def test_a_freezer_that_may_be_too_warm_says_likely_and_unless() -> None:
    place = replace(place_of("upright_freezer", -18.8), air_unsure_k=1.0)
    wait = freeze(pebble(), place)
    assert wait.hours is None
    assert wait.never is None
    assert wait.at_best is not None
    assert wait.at_best.likely is not None
    assert 2 < wait.at_best.low < wait.at_best.likely
    assert str(wait.at_best.unless) == "the air at the pieces is 1 °C warmer than said"
    assert wait.curve[-1][0] == pytest.approx(wait.at_best.likely)
    # The air by itself keeps it from ever getting there; all else only slows it.
    (first, hours), *others = wait.alone
    assert str(first) == "how warm the air is at the pieces (1 °C either way)"
    assert hours is None
    assert all(
        one is not None and one >= 0.97 * wait.at_best.likely for _, one in others
    )


def test_which_way_water_pulls_is_found_out() -> None:
    # A centre that goes in frozen holds more cold the wetter it is, a warm piece more
    # heat: only water is unsure here, so each end is a plain solve of a changed piece.
    def only_water(piece: FrozenPiece) -> tuple[float, float, float]:
        piece = replace(piece, start_unsure_k=0, body=replace(piece.body, air=0.0))
        found = freeze(piece, place).hours
        assert found is not None
        return found.low, found.likely, found.high

    place = Place(name="known", air_c=-35, film_low=30, film_likely=30, film_high=30)
    warm = replace(
        pebble(), inside=tuple(replace(one, start_c=8) for one in pebble().inside)
    )
    for piece in (pebble(), warm):
        low, likely, high = only_water(piece)
        assert low <= likely <= high
        assert 1.0001 < high / low < 1.1


def test_every_cause_of_a_spread_has_its_own_words() -> None:
    load = Load(machine=Machine(set_c=-35, capacity=300, holds=1e4), pieces=12)
    place = replace(place_of("blast_chiller", -35), air_unsure_k=1.0, load=load)
    _, slow = corners(pebble(), place, cooling=True)
    alone = one_by_one(likely_corner(place), slow)
    assert list(alone) == ["film", "start", "air", "heavier", "wetter", "capacity"]
    said = {cause: str(in_words(cause, pebble(), place)) for cause in alone}
    assert said["wetter"] == "how much water is in it (3 in 100 of it more or less)"
    assert len(set(said.values())) == len(said)


@pytest.mark.parametrize(
    "made_of",
    [
        Composition(fat=40, sucrose=55, protein=5),
        # 40 g of ethanol in 90 g of it and water freezes near -34 (table, from memory).
        Composition(water=50, alcohol=40, sucrose=10),
    ],
)
def test_what_never_gets_hard_is_told_so(made_of: Composition) -> None:
    ball = FrozenPiece(
        body=Part(name="ball", profile=sphere(0.03), made_of=made_of, start_c=6)
    )
    wait = freeze(ball, place_of("blast_chiller", -35))
    assert wait.hours is not None
    assert str(wait.remark) == "nothing in it freezes: cold, never hard"
    assert all(ice == 0 for _, _, _, ice in wait.curve)


@pytest.mark.parametrize(("air", "target"), [(5, -18), (-35, -40)])
def test_air_warmer_than_the_target_is_an_answer(air: float, target: float) -> None:
    wait = freeze(pebble(), place_of("blast_chiller", air), target)
    assert wait.hours is None
    assert wait.at_best is None
    assert str(wait.never) == (
        f"air of {air} °C does not bring a piece to {target} °C in any time worth"
        " waiting"
    )


def test_air_that_warms_again_after_it_was_cold_enough_still_freezes() -> None:
    steady = freeze(pebble(), place_of("blast_chiller", -35)).hours
    later = freeze(
        pebble(), place_of("blast_chiller", ((0.0, -35.0), (4 * 3600.0, -10.0)))
    ).hours
    assert steady is not None
    assert later is not None
    assert later.likely == pytest.approx(steady.likely, rel=1e-3)
