"""What else a cook asks of a dessert in the cold: each one function of what is written."""

from dataclasses import dataclass, replace

from demould.cold.beside import Beside, warm_beside
from demould.cold.follow import Corner, follow
from demould.cold.from_dessert import as_demoulded, as_filled
from demould.cold.from_kitchen import FILMS, ROOM_C, to_freeze
from demould.cold.out import Out, out_of_the_cold
from demould.cold.piece import FrozenPiece, Humid, Place, place_of
from demould.cold.soft import Softness, minutes_to_serve, softness, without_pieces
from demould.cold.sweat import Sweat, kept_at, sweat
from demould.cold.tub import Layer, deepest, hours_to_cool
from demould.cold.van import Box, arrival_c, ice_hours, ice_needed_kg, minutes_dry
from demould.cold.whole import mass_kg
from demould.larder.read import film
from demould.matter.composition import composition
from demould.matter.grams import Find
from demould.mise.dessert import Dessert, Rest, component_of
from demould.mise.figure import Estimate
from demould.mise.kitchen import ColdPlace, Kitchen
from demould.mise.words import Words

HUMIDITY = 0.55
"""Of a room where nobody said. An estimate; kitchens run from 40 to 70 %."""
SERVED_C = 3.0
ROW_C = (-18.0, -14.0, -12.0, -10.0, -6.0)
KEEPS_C = -15.0
COLD_ENOUGH_C = -16.0
A_PIECE_MIN = 1.0
BOX_W_K = 0.8
THAWED_J_KG_K = 3500.0
ARRIVES_C = 5.0
TUB = (35.0, 5.0)
TUB_DEPTHS_MM = (20.0, 30.0, 50.0, 75.0, 100.0)
TUB_FILM = 15.0
"""Fan air over a tray [W/(m2 K)]: `film.fan_flat` of 0.3 m at 3 m/s and radiation, or a
weaker draught over a small tray."""


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


@dataclass(frozen=True, slots=True, kw_only=True)
class AtTheTable:
    """How soft each component is by temperature, and minutes out of the freezer.

    `smooth` leaves out sugar of what is folded in as pieces; `waits` are for places by
    name, None where it is soft enough already or never is.
    """

    smooth: tuple[Softness, ...]
    all_in: tuple[Softness, ...]
    waits: tuple[tuple[str, Estimate | None], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class OnTheRoad:
    """A box of thawed pieces: arrival without and with ice, and the ice it takes."""

    box: Box
    pieces: int
    minutes: float
    limit_c: float
    ice_kg: float
    arrives_dry_c: float
    arrives_c: float
    dry_min: float | None
    holds_h: float | None
    needs_kg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class InATub:
    """Hours to cool by depth [mm], and the deepest for so many hours."""

    layer: Layer
    rows: tuple[tuple[float, float], ...]
    within_h: float
    deepest_mm: float


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
    """How long it may stand out while it is finished; minutes of hands a piece."""
    piece = at_one_temperature(as_demoulded(dessert, kitchen, find), start_c)
    place = place_in_room(room, upside_down=dessert.upside_down)
    hands = [
        step.hands.per_piece.value
        for step in dessert.method
        if step.key in ("dip", "glaze", "spray")
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


def at_the_table(
    dessert: Dessert, kitchen: Kitchen, find: Find, room: Room
) -> AtTheTable:
    """How soft it is frozen, and when it must come out of the freezer."""
    whole = as_demoulded(dessert, kitchen, find)
    filler = next(one.component for one in dessert.layers if isinstance(one.fill, Rest))
    body = without_pieces(component_of(dessert, filler))
    made_of = composition(body, find, dessert.components)
    smooth = replace(whole, body=replace(whole.body, made_of=made_of))
    fridges = [one for one in kitchen.cold if one.air.value > 0]
    waits = [
        (
            one.key,
            minutes_to_serve(
                smooth, replace(place_of(FILMS[one.kind], one.air.value), lying="large")
            ),
        )
        for one in fridges
    ]
    on_plate = place_in_room(room, upside_down=dessert.upside_down)
    waits.append(("room", minutes_to_serve(smooth, on_plate)))
    return AtTheTable(
        smooth=tuple(softness(part, ROW_C) for part in smooth.parts),
        all_in=tuple(softness(part, ROW_C) for part in whole.parts),
        waits=tuple(waits),
    )


def on_the_road(
    dessert: Dessert,
    kitchen: Kitchen,
    find: Find,
    *,
    pieces: int,
    minutes: float,
    outside_c: float,
    ice_kg: float,
) -> OnTheRoad:
    """A box of so many thawed pieces in a van so warm."""
    piece = as_demoulded(dessert, kitchen, find)
    box = Box(
        kilograms=pieces * mass_kg(piece),
        heat=THAWED_J_KG_K,
        leak=BOX_W_K,
        inside_c=SERVED_C,
        outside_c=outside_c,
    )
    return OnTheRoad(
        box=box,
        pieces=pieces,
        minutes=minutes,
        limit_c=ARRIVES_C,
        ice_kg=ice_kg,
        arrives_dry_c=arrival_c(box, minutes),
        arrives_c=arrival_c(box, minutes, ice_kg),
        dry_min=minutes_dry(box, ARRIVES_C),
        holds_h=ice_hours(box, ice_kg),
        needs_kg=ice_needed_kg(box, minutes, ARRIVES_C),
    )


def in_a_tub(place: ColdPlace, within_h: float) -> InATub:
    """How deep what is made at 35 °C may be filled to be at 5 °C in time, both faces."""
    start, target = TUB
    layer = Layer(
        start_c=start,
        target_c=target,
        air_c=place.air.value,
        film=place.film.value if place.film else TUB_FILM,
    )
    return InATub(
        layer=layer,
        rows=tuple((mm, hours_to_cool(layer, mm / 1000)) for mm in TUB_DEPTHS_MM),
        within_h=within_h,
        deepest_mm=1000 * deepest(layer, within_h),
    )


def beside_of(
    dessert: Dessert, kitchen: Kitchen, find: Find, place: ColdPlace, goods_kg: float
) -> Beside:
    """How many go in warm before finished pieces of the same kind get too warm."""
    return warm_beside(
        as_filled(dessert, kitchen, find),
        to_freeze(dessert, kitchen, place),
        as_demoulded(dessert, kitchen, find),
        goods_kg,
    )


def at_one_temperature(piece: FrozenPiece, at_c: float) -> FrozenPiece:
    """Give the piece with all its parts as warm as that."""
    return replace(
        piece,
        body=replace(piece.body, start_c=at_c),
        inside=tuple(replace(part, start_c=at_c) for part in piece.inside),
    )
