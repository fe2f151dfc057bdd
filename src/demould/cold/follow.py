"""One solve of a piece in its place, with everything unsure at a stated corner."""

from collections.abc import Callable
from dataclasses import dataclass, fields, replace

import numpy as np

from demould.cold.around.air import Air, Film, air_at
from demould.cold.around.film import LYING, STANDS_ON
from demould.cold.around.load import Load, Warmed, air_under, log_of
from demould.cold.body.cut import Floats
from demould.cold.body.mesh import Mesh
from demould.cold.piece import FrozenPiece, Part, Place, mesh_for, thermal_of
from demould.cold.run.reading import Reading
from demould.cold.run.solve import Accuracy, Damp, Run, run
from demould.larder.ingredient import Composition

AGREED_K = 0.3
TRIES = 6
TRIES_ALIKE = 3
SPARE_S = 1800.0
ROUGH = Accuracy(tolerance=0.02)
ROUGH_CELLS = 1.6


@dataclass(frozen=True, slots=True, kw_only=True)
class Corner:
    """Where within what is unsure a solve stands.

    Attributes
    ----------
    film
        Over a lone piece. [W/(m2 K)]
    start_off_k, air_off_k
        All parts, and the air, so much warmer than said. [K]
    heavier
        Whipped parts weigh so many times what is said. [-]
    wetter
        Every part holds so many times its water, and less of all else. [-]
    capacity
        The machine can do so many times what is said. [-]
    relative, reach
        Humidity, and the film that lets in as much water. [0 to 1, W/(m2 K)]
    """

    film: float
    start_off_k: float = 0.0
    air_off_k: float = 0.0
    heavier: float = 1.0
    wetter: float = 1.0
    capacity: float = 1.0
    relative: float = 0.0
    reach: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Followed:
    """A run, and how the air went; `outside` (s, °C) is how the load saw the piece.

    `open_m2` is the skin that air and water reach.
    """

    run: Run
    air_c: Air
    open_m2: float
    warmed: Warmed | None = None
    outside: tuple[Floats, Floats] | None = None


def follow(
    piece: FrozenPiece,
    place: Place,
    corner: Corner,
    *,
    until: float,
    done: Callable[[Reading], bool],
    like: Followed | None = None,
    rough: bool = False,
) -> Followed:
    """Follow a piece [s]; under a load, piece and air in turn until they agree.

    The air is worked out past the outside that the last solve gave, and the piece in
    that air, until no air moves by 0.3 K (at most six times). `like` is a solve of
    another corner to begin from; three turns do then. `rough` is with wider cells and
    longer steps: enough to set corners beside one another.
    """
    mesh = mesh_for(piece, ROUGH_CELLS if rough else 1.0)
    film = film_of(piece, place, corner.film)
    thermals = [
        thermal_of(
            _wetter(part.made_of, corner.wetter),
            _air_share(part, corner),
            fat_sets=piece.fat_sets,
        )
        for part in piece.parts
    ]
    start = [part.start_c + corner.start_off_k for part in piece.parts]
    share = open_share(piece, place, mesh)
    open_m2 = share * float(mesh.rim.outer_area.sum())
    damp = None
    if place.humid is not None:
        damp = Damp(relative=corner.relative, h_convective=corner.reach * share)

    def solved(air: Air) -> Run:
        return run(
            mesh,
            thermals,
            start,
            air,
            film,
            until=until,
            done=done,
            accuracy=ROUGH if rough else Accuracy(),
            damp=damp,
        )

    if place.load is None:
        steady = _shifted(place.air_c, corner.air_off_k)
        return Followed(run=solved(steady), air_c=steady, open_m2=open_m2)
    load = _at(place.load, corner)
    passes = passes_of(mesh, film)
    air: Air = load.machine.set_c
    if like is None or like.outside is None:
        now = solved(air)
        outside = _outside(now, air, passes)
    else:
        now, outside = like.run, like.outside
    last: Warmed | None = None
    for _ in range(TRIES if like is None else TRIES_ALIKE):
        end = 1.5 * float(now.seconds[-1]) + SPARE_S
        warmed = air_under(load, passes, *outside, end)
        if last is not None and _apart(last, warmed) < AGREED_K:
            break
        air = log_of(warmed)
        now = solved(air)
        outside = _outside(now, air, passes)
        last = warmed
    return Followed(run=now, air_c=air, open_m2=open_m2, warmed=last, outside=outside)


def film_of(piece: FrozenPiece, place: Place, lone: float) -> Film:
    """Films of the faces as the pieces lie there, for a film over a lone piece."""
    film = LYING[place.lying](lone, air_at(place.air_c, 0.0))
    return replace(film, other=film.other * piece.surface_share)


def passes_of(mesh: Mesh, film: Film) -> float:
    """Film times area over all of the outside [W/K]."""
    h = np.array([film.bottom, film.top, film.other])[mesh.rim.face]
    return float((h * mesh.rim.outer_area).sum())


def open_share(piece: FrozenPiece, place: Place, mesh: Mesh) -> float:
    """Skin that air and water reach, over all of the turned body's outside [-].

    The flat end the piece stands on is left out; the rest counts as large as the real
    piece's.
    """
    stands = STANDS_ON.get(place.lying, "")
    shares = [float(face != stands) for face in ("bottom", "top")]
    weights = np.array([*shares, piece.surface_share])
    area = mesh.rim.outer_area
    return float((weights[mesh.rim.face] * area).sum() / area.sum())


def _wetter(made_of: Composition, times: float) -> Composition:
    """Give it with so many times its water, and less of all else, 100 g as before."""
    if times == 1:
        return made_of
    total = made_of.total
    water = min(times * made_of.water, total)
    rest = total - made_of.water
    shrunk = (total - water) / rest if rest > 0 else 1.0
    parts = {
        field.name: getattr(made_of, field.name) * shrunk for field in fields(made_of)
    }
    return Composition(**(parts | {"water": water}))


def _air_share(part: Part, corner: Corner) -> float:
    if not part.air:
        return 0.0
    return max(0.0, 1 - (1 - part.air) * corner.heavier)


def _shifted(air: Air, by: float) -> Air:
    if isinstance(air, int | float):
        return air + by
    return tuple((since, at_c + by) for since, at_c in air)


def _at(load: Load, corner: Corner) -> Load:
    machine = replace(
        load.machine,
        set_c=load.machine.set_c + corner.air_off_k,
        capacity=load.machine.capacity * corner.capacity,
    )
    return replace(load, machine=machine)


def _outside(run: Run, air: Air, passes: float) -> tuple[Floats, Floats]:
    """How warm the outside was for what it gave off in each step (s, °C)."""
    if run.seconds.size < 2:
        return run.seconds, run.surface
    middle = (run.seconds[1:] + run.seconds[:-1]) / 2
    gave = np.diff(run.heat) / np.diff(run.seconds)
    around = np.array([air_at(air, float(at)) for at in middle])
    return middle, around + gave / passes


def _apart(one: Warmed, other: Warmed) -> float:
    return float(
        np.abs(np.interp(one.seconds, other.seconds, other.air_c) - one.air_c).max()
    )
