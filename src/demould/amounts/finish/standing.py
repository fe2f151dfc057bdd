"""How fast a frozen piece warms while it stands out in the room."""

from functools import lru_cache

import numpy as np

from demould.amounts.layers.piece import Piece
from demould.amounts.shape.area import area_cm2
from demould.larder.ingredient import Composition
from demould.matter.composition import composition
from demould.matter.density import air
from demould.matter.grams import Find, share
from demould.matter.heat import thermal
from demould.matter.water import wet_of
from demould.mise.dessert import Dessert, component_of
from demould.mise.figure import Assumed, Figure, worked
from demould.mise.kitchen import Kitchen
from demould.mise.mould import Mould

STILL_AIR = Figure(
    name="heat from still air",
    value=10.0,
    unit="W/m2K",
    origin=Assumed(low=8, high=12, source="common practice"),
)
OUT_OF_STORE_C, SOFT_C = -20.0, -15.0
ROOM = Figure(
    name="air of the room",
    value=21.0,
    unit="°C",
    origin=Assumed(low=18, high=26, source="common practice"),
)


def warms_a_minute(
    dessert: Dessert, kitchen: Kitchen, mould: Mould, one: Piece, find: Find
) -> Figure:
    """Degrees a piece gains each minute on its flat side, from -20 to -15 °C [°C/min].

    All of it warms alike, its coat with it: the heat that still air brings to its face, by what its
    components take up between the two temperatures, melting of ice with it.
    """
    takes = sum(
        part.grams.value * _heat_j_g(dessert, part.component, find)
        for part in one.parts
    )
    room = kitchen.room or ROOM
    apart = room.value - (OUT_OF_STORE_C + SOFT_C) / 2
    face_m2 = area_cm2(mould.shape, "face and ends") / 1e4
    watts = STILL_AIR.value * face_m2 * apart
    value = 60 * watts * (SOFT_C - OUT_OF_STORE_C) / takes
    rule = "heat the room brings to its face, by what the piece takes up"
    return worked(
        "warms while it stands out", value, "°C a minute", rule, room, STILL_AIR
    )


def _heat_j_g(dessert: Dessert, key: str, find: Find) -> float:
    """What a gram takes up from -20 to -15 °C [J/g]."""
    made = component_of(dessert, key)
    whipped = share(air(made.density, made.whipped)) if made.whipped else 0.0
    return _rise_j_g(composition(made, find, dessert.components), whipped)


@lru_cache(maxsize=64)
def _rise_j_g(made_of: Composition, air_share: float) -> float:
    table = thermal(wet_of(made_of, air_share))
    low, high = np.interp([OUT_OF_STORE_C, SOFT_C], table.at_c, table.enthalpy)
    return float(high - low) / 1000
