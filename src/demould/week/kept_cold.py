"""Whether a load stays or gets cold enough: a box on the road, a tub, a warm round."""

from dataclasses import dataclass

from demould.cold.beside import Beside, warm_beside
from demould.cold.from_dessert import as_demoulded, as_filled
from demould.cold.from_kitchen import to_freeze
from demould.cold.tub import Layer, deepest, hours_to_cool
from demould.cold.van import Box, arrival_c, ice_hours, ice_needed_kg, minutes_dry
from demould.cold.whole import mass_kg
from demould.matter.grams import Find
from demould.mise.dessert import Dessert
from demould.mise.kitchen import ColdPlace, Kitchen
from demould.week.in_the_room import SERVED_C

COLD_ENOUGH_C = -16.0
BOX_W_K = 0.8
THAWED_J_KG_K = 3500.0
ARRIVES_C = 5.0
TUB = (35.0, 5.0)
TUB_DEPTHS_MM = (20.0, 30.0, 50.0, 75.0, 100.0)
TUB_FILM = 15.0
"""Fan air over a tray [W/(m2 K)]: `film.fan_flat` of 0.3 m at 3 m/s and radiation, or a
weaker draught over a small tray."""


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
