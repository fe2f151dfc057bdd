from dataclasses import replace

import numpy as np
import pytest

from demould.cold.around.air import air_at
from demould.cold.around.load import Load, Lump, Machine
from demould.cold.body.profile import half_sphere, sphere
from demould.cold.follow import Corner, film_of, follow, passes_of
from demould.cold.piece import FrozenPiece, Part, Place, mesh_for, place_of, wall_of
from demould.cold.run.reading import Reading
from demould.cold.run.readout import passing
from demould.cold.run.solve import Run
from demould.larder.ingredient import Composition

MOUSSE = Composition(
    water=50, fat=27, sucrose=15, lactose=4, protein=3, ash=0.7, sodium_mg=50
)
BALL = FrozenPiece(
    body=Part(
        name="mousse", profile=sphere(0.056), made_of=MOUSSE, air=0.35, start_c=6.0
    )
)
MACHINE = Machine(set_c=-30, capacity=200, holds=10e3)


def frozen(reading: Reading) -> bool:
    return reading.warmest <= -18


def in_load(pieces: int, **changed: float) -> Place:
    machine = replace(MACHINE, **changed)
    return replace(
        place_of("blast_chiller", machine.set_c),
        load=Load(machine=machine, pieces=pieces),
    )


def hours(place: Place, corner: Corner | None = None) -> float:
    done = follow(BALL, place, corner or Corner(film=30), until=1e6, done=frozen)
    return frozen_at(done.run) / 3600


def frozen_at(run: Run) -> float:
    at = passing(run.seconds, run.warmest, -18)
    assert at is not None
    return at


def test_no_load_is_steady_air() -> None:
    assert hours(in_load(0)) == pytest.approx(
        hours(place_of("blast_chiller", -30)), rel=0.01
    )


def test_more_pieces_and_a_weaker_machine_take_longer() -> None:
    few, many = hours(in_load(6)), hours(in_load(60))
    assert few < many < hours(in_load(60, capacity=100.0))
    assert hours(in_load(60), Corner(film=30, capacity=0.5)) == pytest.approx(
        hours(in_load(60, capacity=100.0))
    )


def test_piece_and_air_agree_on_the_heat() -> None:
    # What the machine took beyond rest is what the pieces gave, less what still warms
    # the air and less leaks: the two solves know each other only by the air's log.
    place = in_load(60)
    done = follow(BALL, place, Corner(film=30), until=1e6, done=frozen)
    assert done.warmed is not None
    end = float(done.run.seconds[-1])
    gave = 60 * float(done.run.heat[-1])
    air, at = done.warmed.air_c, done.warmed.seconds
    # All of the run that the log had when it was made, cut at the run's end.
    dt = np.diff(at)
    film = film_of(BALL, place, 30)
    mesh = mesh_for(BALL)
    passes = passes_of(mesh, film)
    assert done.outside is not None
    out = np.interp(at[1:] - dt / 2, *done.outside)
    heard = float((dt * 60 * passes * (out - air[1:]))[at[1:] <= end].sum())
    # First-order air, 0.3 K of log, a stop where rows end: some per cent.
    assert heard == pytest.approx(gave, rel=0.04)


def test_the_log_is_the_air_of_the_run() -> None:
    done = follow(BALL, in_load(60), Corner(film=30), until=1e6, done=frozen)
    assert done.warmed is not None
    for since in (60.0, 600.0, 1800.0):
        true = float(np.interp(since, done.warmed.seconds, done.warmed.air_c))
        assert air_at(done.air_c, since) == pytest.approx(true, abs=0.35)
    assert done.warmed.air_c.max() > -28


def test_a_like_solve_leads_to_the_same_place() -> None:
    first = follow(BALL, in_load(60), Corner(film=30), until=1e6, done=frozen)
    straight = follow(BALL, in_load(60), Corner(film=25), until=1e6, done=frozen)
    led = follow(BALL, in_load(60), Corner(film=25), until=1e6, done=frozen, like=first)
    assert frozen_at(led.run) == pytest.approx(frozen_at(straight.run), rel=0.01)


def test_warm_trays_cost_time() -> None:
    tray = Lump(name="trays", holds=5e3, passes=5, start_c=21)
    place = in_load(24)
    assert place.load is not None
    with_trays = replace(place, load=replace(place.load, lumps=(tray,)))
    assert hours(with_trays) > 1.02 * hours(place)


def test_corners_move_the_way_they_say() -> None:
    place = place_of("blast_chiller", -30)
    plain = hours(place)
    assert hours(place, Corner(film=30, start_off_k=5)) > plain
    assert hours(place, Corner(film=30, air_off_k=2)) > plain
    # Where the film is nearly all of the resistance, a tenth more heat takes a tenth
    # longer; where it is not, less air also conducts better.
    slow, heavy = (hours(place, Corner(film=2, heavier=n)) for n in (1.0, 1.1))
    assert heavy / slow == pytest.approx(1.1, abs=0.01)
    assert 1 < hours(place, Corner(film=30, heavier=1.1)) / plain < 1.1
    logged = place_of("blast_chiller", ((0.0, -30.0), (600.0, -30.0)))
    # The steps fall otherwise about the entry: each has its own share of 0.2 %.
    assert hours(logged, Corner(film=30, air_off_k=2)) == pytest.approx(
        hours(place_of("blast_chiller", -28)), rel=3e-3
    )


def test_no_air_is_pressed_out_of_what_has_none() -> None:
    dense = replace(BALL, body=replace(BALL.body, air=0.0))
    place = place_of("blast_chiller", -30)

    def ends(corner: Corner) -> float:
        return float(
            follow(dense, place, corner, until=1e6, done=frozen).run.seconds[-1]
        )

    assert ends(Corner(film=30, heavier=1.1)) == ends(Corner(film=30))


def test_a_piece_frozen_already_still_has_an_air() -> None:
    cold = replace(BALL, body=replace(BALL.body, start_c=-25))
    done = follow(cold, in_load(10), Corner(film=30), until=1e6, done=frozen)
    assert done.run.seconds.size == 1
    assert done.warmed is not None


def test_films_follow_the_way_pieces_lie_and_their_skin() -> None:
    cup = FrozenPiece(
        body=Part(
            name="cup",
            profile=tuple((r, 0.035 - z) for r, z in reversed(half_sphere(0.07))),
            made_of=MOUSSE,
            start_c=6,
        ),
        wall=wall_of("silicone", 0.0015),
        open_faces=("top",),
        surface_share=1.05,
    )
    place = replace(place_of("blast_chiller", -35), lying="in moulds")
    alone = film_of(cup, place_of("blast_chiller", -35), 30)
    left = film_of(cup, place, 30)
    assert (alone.bottom, alone.top) == (30, 30)
    assert alone.other == pytest.approx(31.5)
    assert left.other < 0.4 * alone.other
    assert left.top < alone.top


def test_unknown_ways_of_lying_are_refused() -> None:
    with pytest.raises(
        ValueError,
        match=r"^pieces do not lie 'askew'; known: alone, in moulds, on a tray,"
        r" on its top, large, large on its top$",
    ):
        replace(place_of("blast_chiller", -35), lying="askew")
