"""How soft a dessert is that is served frozen."""

from dataclasses import dataclass, replace

from demould.cold.from_dessert import as_demoulded
from demould.cold.from_kitchen import FILMS
from demould.cold.piece import place_of
from demould.cold.soft import Softness, minutes_to_serve, softness, without_pieces
from demould.matter.composition import composition
from demould.matter.grams import Find
from demould.mise.dessert import Dessert, Rest, component_of
from demould.mise.figure import Estimate
from demould.mise.kitchen import Kitchen
from demould.week.in_the_room import Room, place_in_room

ROW_C = (-18.0, -14.0, -12.0, -10.0, -6.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class AtTheTable:
    """How soft each component is by temperature, and minutes out of the freezer.

    `smooth` leaves out sugar of what is folded in as pieces; `waits` are for places by
    name, None where it is soft enough already or never is.
    """

    smooth: tuple[Softness, ...]
    all_in: tuple[Softness, ...]
    waits: tuple[tuple[str, Estimate | None], ...]


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
