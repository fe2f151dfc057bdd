"""A kitchen's cold place with a full round of one dessert in it, as it is used.

Frozen is what all the moulds of a kitchen hold at once, each mould on its own steel
tray, all warm from the bench; thawed is a tray of pieces. Nobody says how strong a
freezer is or what its linings hold: `MACHINES` assumes it, kind by kind, and the
estimate's corners halve the strength and add half of it.
"""

from dataclasses import dataclass, replace
from typing import Literal

from demould.amounts.shape.volume import mould_of
from demould.cold.around.air import air_at
from demould.cold.around.film import Near, radiation, wrapped
from demould.cold.around.load import Load, Lump, Machine, capacity_of
from demould.cold.piece import Humid, Place, place_of
from demould.larder.fact import Fact
from demould.larder.read import film, material
from demould.matter.grams import GRAMS
from demould.mise.dessert import Dessert
from demould.mise.figure import Assumed, Figure, Measured
from demould.mise.kitchen import ColdPlace, Kitchen
from demould.mise.mould import Mould
from demould.mise.words import Words

FILMS = {
    "blast chiller": "blast_chiller",
    "upright freezer": "upright_freezer",
    "still freezer": "still_freezer",
    "fan fridge": "fan_fridge_open",
    "still fridge": "still_fridge",
    "under a lid": "covered_tray",
    "in closed boxes": "fridge_closed_box",
}
"""What a cold place is called in a kitchen, and its row in the larder's films."""

Cover = Literal["open", "under a lid", "wrapped in film", "in closed boxes"]
COVERS: tuple[Cover, ...] = (
    "open",
    "under a lid",
    "wrapped in film",
    "in closed boxes",
)
BEHIND_FILM = (0.5e-3, 1.5e-3, 4e-3)
"""Air between a piece and the film around it, low, likely, high [m]. An estimate."""

MEASURED_SHARE = 0.1
"""A film told by a probe or by somebody is taken as right to a tenth."""
FREEZER_UNSURE_K = 1.0
FRIDGE_UNSURE_K = 0.5
MEASURED_UNSURE_K = 0.3
"""How far the air at the pieces may be from the display's, and from what a thermometer
among them read. Estimates."""
LEAST_CONVECTIVE = 1.0
"""Still air moves at least so much of a film, whatever is left of it [W/(m2 K)]."""
ROOM_C = 21.0
TRAY_KG = 1.0
TRAY_M2 = 0.06
"""A steel tray under each mould, 1 mm of it, and as much area as 300 x 200 mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Kind:
    """What is assumed of a kind of freezer: W, J/K, W/K, W of door."""

    capacity: float
    holds: float
    leak: float
    door: float


MACHINES = {
    "blast chiller": _Kind(capacity=360.0, holds=10e3, leak=1.0, door=0.0),
    "upright freezer": _Kind(capacity=100.0, holds=20e3, leak=1.2, door=10.0),
    "still freezer": _Kind(capacity=80.0, holds=20e3, leak=0.8, door=3.0),
}


def to_freeze(dessert: Dessert, kitchen: Kitchen, place: ColdPlace) -> Place:
    """Give a freezer with all moulds of this dessert put in at once."""
    mould = mould_of(kitchen, dessert.mould)
    return replace(
        _in_air(place, place.kind),
        lying="in moulds" if mould.cavities_each > 1 else "large",
        air_unsure_k=air_unsure_k(place),
        load=_full(mould, kitchen, place),
    )


def to_thaw(
    dessert: Dessert, kitchen: Kitchen, place: ColdPlace, cover: Cover
) -> Place:
    """Give a fridge with pieces on a tray: open, under a lid, in film, in closed boxes.

    No water gets through film; it settles outside, on the film.
    """
    damp = _humidity(place)
    if cover in ("under a lid", "in closed boxes"):
        bare = _in_air(replace(place, film=None), cover)
        let_in = film(FILMS[cover]).vapour
        reach = (0.0, 0.0, 0.0) if let_in is None else _three(let_in)
        return replace(
            bare,
            air_unsure_k=air_unsure_k(place),
            humid=Humid(relative=damp, reach=reach),
        )
    small = mould_of(kitchen, dessert.mould).cavities_each > 1
    turned = "on its top" if dessert.upside_down else "on a tray"
    large = "large on its top" if dessert.upside_down else "large"
    found = replace(
        _in_air(place, place.kind),
        lying=turned if small else large,
        air_unsure_k=air_unsure_k(place),
    )
    if cover == "wrapped in film":
        return replace(_in_film(found), humid=Humid(relative=damp, reach=(0.0,) * 3))
    return replace(found, humid=Humid(relative=damp, reach=_convective(place, found)))


def _in_film(place: Place) -> Place:
    near, likely, far = BEHIND_FILM
    at_c = air_at(place.air_c, 0.0)
    return replace(
        place,
        film_low=round(wrapped(place.film_low, far, at_c), 1),
        film_likely=round(wrapped(place.film_likely, likely, at_c), 1),
        film_high=round(wrapped(place.film_high, near, at_c), 1),
    )


def _humidity(place: ColdPlace) -> tuple[float, float, float]:
    """Low, likely, high of its air [0 to 1]: its own figure, else its kind's."""
    if place.humidity is not None:
        low, high = _bounds(place.humidity)
        return low / 100, place.humidity.value / 100, min(1.0, high / 100)
    known = film(FILMS[place.kind]).humidity
    if known is None:
        raise ValueError(f"nobody knows how damp the air of a {place.kind} is")
    low, likely, high = _three(known)
    return low / 100, likely / 100, high / 100


def _convective(place: ColdPlace, found: Place) -> tuple[float, float, float]:
    """What moves water: the kind's film without radiation, or a measured one's."""
    if place.film is None:
        return _three(film(FILMS[place.kind]).convective)
    glow = radiation(Near(size=1.0, surface_c=0.0, air_c=place.air.value))
    low, likely, high = (
        max(LEAST_CONVECTIVE, total - glow)
        for total in (found.film_low, found.film_likely, found.film_high)
    )
    return low, likely, high


def _three(fact: Fact) -> tuple[float, float, float]:
    return fact.low, fact.value, fact.high


def air_unsure_k(place: ColdPlace) -> float:
    """How far the air at the pieces may be from what is said of it [K]."""
    match place.air.origin:
        case Measured():
            return MEASURED_UNSURE_K
        case Assumed(low=low, high=high):
            return max(high - place.air.value, place.air.value - low)
        case _:
            return FREEZER_UNSURE_K if place.air.value < 0 else FRIDGE_UNSURE_K


def load_in_words(dessert: Dessert, kitchen: Kitchen) -> Words:
    """Say what goes in together."""
    mould = mould_of(kitchen, dessert.mould)
    return Words(
        "{pieces} in {moulds} {mould}, each mould on a steel tray, put in warm together",
        pieces=mould.at_once,
        moulds=mould.trays,
        mould="mould" if mould.trays == 1 else "moulds",
    )


def machine_of(place: ColdPlace, room_c: float = ROOM_C) -> Machine:
    """Give a freezer as a machine; "5 kg a cycle" tells its strength where it is said."""
    kind = MACHINES.get(place.kind, MACHINES["upright freezer"])
    capacity = kind.capacity
    if place.load is not None:
        kilograms = place.load.value * GRAMS[place.load.unit] / 1000
        _, capacity, _ = capacity_of(kilograms)
    return Machine(
        set_c=place.air.value,
        capacity=capacity,
        holds=kind.holds,
        leak=kind.leak,
        room_c=room_c,
        door=kind.door,
    )


def trays(count: int, lone_film: float, room_c: float = ROOM_C) -> Lump:
    """Give so many steel trays with a sheet of silicone on each, warm from the bench."""
    steel, rubber = material("steel"), material("silicone")
    sheet = TRAY_M2 / 2 * 1.5e-3 * rubber.density.value * rubber.heat_capacity.value
    each = TRAY_KG * steel.heat_capacity.value + sheet
    return Lump(
        name="trays and moulds",
        holds=count * each,
        passes=count * TRAY_M2 * lone_film,
        start_c=room_c,
    )


def _full(mould: Mould, kitchen: Kitchen, place: ColdPlace) -> Load:
    room_c = kitchen.room.value if kitchen.room else ROOM_C
    lone = film(FILMS[place.kind]).total.value
    return Load(
        machine=machine_of(place, room_c),
        pieces=mould.at_once,
        lumps=(trays(mould.trays, lone, room_c),),
    )


def _in_air(place: ColdPlace, kind: str) -> Place:
    known = place_of(FILMS[kind], place.air.value)
    if place.film is None:
        return known
    low, high = _bounds(place.film)
    return replace(known, film_low=low, film_likely=place.film.value, film_high=high)


def _bounds(figure: Figure) -> tuple[float, float]:
    match figure.origin:
        case Assumed(low=low, high=high):
            return low, high
        case _:
            off = MEASURED_SHARE * figure.value
            return figure.value - off, figure.value + off
