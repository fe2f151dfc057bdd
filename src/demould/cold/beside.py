"""How many warm pieces may go in beside finished goods on the same shelf."""

from dataclasses import dataclass, replace

from demould.cold.around.load import Load, Lump
from demould.cold.corners import CAPACITY, likely_corner
from demould.cold.follow import film_of, follow, passes_of
from demould.cold.piece import FrozenPiece, Place, mesh_for
from demould.cold.whole import heat_j, mass_kg
from demould.mise.figure import Estimate
from demould.mise.words import Words

LIMIT_C = -15.0
"""Warmest the finished goods may get. A house's own plan may be stricter."""
ROUNDS = 4
"""So many full rounds at once are the most that is tried."""
LONGEST_S = 24 * 3600.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """How many pieces may go in warm at once; None where even `tried` may.

    `warmest_c` is what the goods get to, likely, with a full round of `round` pieces.
    """

    most: Estimate | None
    tried: int
    round: int
    warmest_c: float
    limit_c: float
    goods_kg: float


def warm_beside(
    piece: FrozenPiece,
    place: Place,
    finished: FrozenPiece,
    goods_kg: float,
    limit_c: float = LIMIT_C,
) -> Beside:
    """Find how many pieces, each with its share of tray and mould, leave the goods cold.

    `finished` is what the goods are, uncovered on a tray, as cold as the machine's own
    air at first; in boxes they are better off.

    Raises
    ------
    ValueError
        If the place has no load, its air is not colder than the limit, or there are
        no goods.
    """
    load = _sound(place, limit_c, goods_kg)
    goods = finished_goods(finished, place, goods_kg, limit_c)
    tried = ROUNDS * load.pieces
    low, likely, high = (
        most_warm_pieces(piece, place, goods, limit_c, tried, share)
        for share in (CAPACITY[0], 1.0, CAPACITY[1])
    )
    return Beside(
        most=None
        if low is None
        else Estimate(
            low=low,
            likely=tried if likely is None else likely,
            high=tried if high is None else high,
            unit="pieces",
            reason=Words("how much cold the machine makes (half as much either way)"),
        ),
        tried=tried,
        round=load.pieces,
        warmest_c=warmest_goods(piece, place, goods, load.pieces),
        limit_c=limit_c,
        goods_kg=goods_kg,
    )


def finished_goods(
    finished: FrozenPiece, place: Place, kilograms: float, limit_c: float = LIMIT_C
) -> Lump:
    """Give so many kilograms of finished pieces uncovered on a tray, as cold as the place.

    What they hold is that on the mean up to the limit.

    Raises
    ------
    ValueError
        If the place has no load, or is not colder than the limit, or there are none.
    """
    set_c = _sound(place, limit_c, kilograms).machine.set_c
    a_degree = (heat_j(finished, limit_c) - heat_j(finished, set_c)) / (limit_c - set_c)
    count = kilograms / mass_kg(finished)
    on_tray = replace(place, lying="on a tray")
    mesh = mesh_for(finished)
    film = film_of(finished, on_tray, place.film_likely)
    return Lump(
        name="finished goods",
        holds=count * a_degree,
        passes=count * passes_of(mesh, film),
        start_c=set_c,
    )


def most_warm_pieces(
    piece: FrozenPiece,
    place: Place,
    goods: Lump,
    limit_c: float,
    tried: int,
    capacity: float = 1.0,
) -> int | None:
    """How many go in before the goods get warmer than the limit, by halving.

    `capacity` is times what the machine is said to do. None where even `tried` may.
    """
    if warmest_goods(piece, place, goods, tried, capacity) <= limit_c:
        return None
    low, high = 0, tried
    while high - low > 1:
        middle = (low + high) // 2
        fine = warmest_goods(piece, place, goods, middle, capacity) <= limit_c
        low, high = (middle, high) if fine else (low, middle)
    return low


def warmest_goods(
    piece: FrozenPiece, place: Place, goods: Lump, pieces: int, capacity: float = 1.0
) -> float:
    """How warm the goods get beside so many pieces that go in warm [°C].

    Pieces and air are solved in turn until they agree; the pieces bring their shares of
    what a full round brings.

    Raises
    ------
    ValueError
        If nobody said what goes into the place together.
    """
    full = place.load
    if full is None:
        raise ValueError("nobody said what is put into this place together")
    share = pieces / full.pieces
    lumps = tuple(
        replace(lump, holds=lump.holds * share, passes=lump.passes * share)
        for lump in full.lumps
    )
    load = replace(full, pieces=pieces, lumps=(goods, *lumps))
    done = follow(
        piece,
        replace(place, load=load),
        replace(likely_corner(place), capacity=capacity),
        until=LONGEST_S,
        done=lambda reading: reading.warmest <= goods.start_c + 3,
    )
    if done.warmed is None:
        raise ValueError("nobody said what is put into this place together")
    return float(done.warmed.lumps[:, 0].max())


def _sound(place: Place, limit_c: float, goods_kg: float) -> Load:
    if place.load is None:
        raise ValueError("nobody said what is put into this place together")
    if goods_kg <= 0:
        raise ValueError(f"{goods_kg:g} kg of finished goods; it must be more than 0")
    if place.load.machine.set_c >= limit_c:
        raise ValueError(
            f"the air of this place, {place.load.machine.set_c:g} °C, is not colder"
            f" than the {limit_c:g} °C that finished goods must keep"
        )
    return place.load
