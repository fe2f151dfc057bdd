"""A kitchen's room, and pieces that stand in it: wet on the plate, warm on the bench."""

from dataclasses import dataclass, replace

from demould.cold.follow import Corner, follow
from demould.cold.from_dessert import as_demoulded
from demould.cold.from_kitchen import ROOM_C
from demould.cold.out import Out, out_of_the_cold
from demould.cold.piece import FrozenPiece, Humid, Place, place_of
from demould.cold.sweat import Sweat, kept_at, sweat
from demould.larder.read import film
from demould.matter.grams import Find
from demould.mise.dessert import Dessert
from demould.mise.figure import Estimate
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words

HUMIDITY = 0.55
"""Of a room where nobody said. An estimate; kitchens run from 40 to 70 %."""
SERVED_C = 3.0
KEEPS_C = -15.0
A_PIECE_MIN = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """The room's air, its humidity, and whether somebody said so."""

    air_c: float
    relative: float
    said: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class OnThePlate:
    """A thawed piece set out in a room: what settles in so many minutes.

    `grams` on one piece and `film_um` run from a skin that warms in still air to one that
    stays cold in moving air; `soonest_min` is when that one shows. `skin` (minutes, °C).
    """

    room: Room
    minutes: float
    likely: Sweat
    soonest_min: float | None
    grams: Estimate
    film_um: Estimate
    skin: tuple[tuple[float, float], ...]


def room_of(kitchen: Kitchen) -> Room:
    """Give the kitchen's own air, else 21 °C and 55 %."""
    said = kitchen.room is not None and kitchen.room_humidity is not None
    return Room(
        air_c=kitchen.room.value if kitchen.room else ROOM_C,
        relative=kitchen.room_humidity.value / 100
        if kitchen.room_humidity
        else HUMIDITY,
        said=said,
    )


def place_in_room(room: Room, *, upside_down: bool) -> Place:
    """Give the room as a place: a piece standing on a plate or a tray in it."""
    known = film("room")
    low, likely, high = (
        known.convective.low,
        known.convective.value,
        known.convective.high,
    )
    return replace(
        place_of("room", room.air_c),
        lying="on its top" if upside_down else "on a tray",
        humid=Humid(relative=(room.relative,) * 3, reach=(low, likely, high)),
    )


def out_of(
    dessert: Dessert, kitchen: Kitchen, find: Find, room: Room, start_c: float
) -> tuple[Out, float]:
    """How long it may stand out while it is finished; minutes of hands a piece.

    The minutes are a dip's where the method has one. A glaze's or spray's whole step is
    not what one piece stands out: then a minute is taken.
    """
    piece = at_one_temperature(as_demoulded(dessert, kitchen, find), start_c)
    place = place_in_room(room, upside_down=dessert.upside_down)
    hands = [
        step.hands.per_piece.value
        for step in dessert.method
        if step.key == "dip"
        and step.hands is not None
        and step.hands.per_piece is not None
    ]
    return out_of_the_cold(piece, place, KEEPS_C), max(hands, default=A_PIECE_MIN)


def on_the_plate(
    dessert: Dessert, kitchen: Kitchen, find: Find, room: Room, minutes: float
) -> OnThePlate:
    """What settles on a piece from the fridge in so many minutes."""
    piece = at_one_temperature(as_demoulded(dessert, kitchen, find), SERVED_C)
    place = place_in_room(room, upside_down=dessert.upside_down)
    films = (place.film_low, place.film_likely, place.film_high)
    reach = place.humid.reach if place.humid else (0.0, 0.0, 0.0)
    found: list[tuple[Sweat, float, tuple[tuple[float, float], ...]]] = []
    for lone, moves in zip(films, reach, strict=True):
        done = follow(
            piece,
            place,
            Corner(film=lone, relative=room.relative, reach=moves),
            until=minutes * 60,
            done=lambda _: False,
        )
        skin = tuple(
            zip((done.run.seconds / 60).tolist(), done.run.skin.tolist(), strict=True)
        )
        found.append(
            (sweat(room.air_c, room.relative, skin, moves), done.open_m2, skin)
        )
    stays = kept_at(SERVED_C, minutes)
    kept = sweat(room.air_c, room.relative, stays, reach[2])
    slow, likely, quick = found
    every = [one.grams_m2 * area for one, area, _ in found]
    reason = Words(
        "whether the skin stays as cold as the piece (a coat helps it to) or warms, and"
        " how much air moves over it"
    )
    return OnThePlate(
        room=room,
        minutes=minutes,
        likely=likely[0],
        soonest_min=kept.visible_min,
        grams=Estimate(
            low=min(every),
            likely=every[1],
            high=max(*every, kept.grams_m2 * quick[1]),
            unit="g",
            reason=reason,
        ),
        film_um=Estimate(
            low=min(one.film_um for one, _, _ in found),
            likely=likely[0].film_um,
            high=max(kept.film_um, slow[0].film_um, quick[0].film_um),
            unit="µm",
            reason=reason,
        ),
        skin=likely[2],
    )


def at_one_temperature(piece: FrozenPiece, at_c: float) -> FrozenPiece:
    """Give the piece with all its parts as warm as that."""
    return replace(
        piece,
        body=replace(piece.body, start_c=at_c),
        inside=tuple(replace(part, start_c=at_c) for part in piece.inside),
    )
