"""What the formula and the method of a batch say of the readings that decide."""

from collections.abc import Collection, Mapping
from contextlib import suppress
from dataclasses import dataclass

import numpy as np

from demould.advice.bands.judge import judged
from demould.advice.bands.judged import Judged
from demould.advice.bands.quantity import has_weight
from demould.advice.clashes.find import clashes
from demould.advice.sinking import sinkings
from demould.amounts.layers.wall import walls
from demould.larder.read import agent_of, agents, bloom_of, stiffness
from demould.matter.acidity import acidity
from demould.matter.composition import composition
from demould.matter.grams import Find, share
from demould.matter.inside import inside
from demould.matter.setting import doses, weeps
from demould.matter.water import freezing_point_c, ice_share, wet_of
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.kitchen import Kitchen

AT_TABLE_C = 3.0
SERVED_FROZEN_C = -10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Batch:
    """One component of a dessert in its kitchen, and what was read off it."""

    component: Component
    dessert: Dessert
    kitchen: Kitchen
    find: Find
    read: Mapping[str, float]


def own_numbers(
    batch: Batch, wanted: Collection[str] | None = None
) -> dict[str, float]:
    """What the card and the formula tell of the readings `wanted` (None: of all).

    What is not wanted is worked out only where it comes along with what is.
    """
    found: dict[str, float] = {}
    if has_weight(batch.component, batch.find, batch.dessert.components):
        for look in (_made_of, _bands, _setting):
            found |= look(batch)
        if wanted is None or set(wanted) & set(_WORDS):
            found |= _fights(batch)
    for look, gives in ((_air, _OF_AIR), (_piece, _OF_PIECE), (_room, _OF_ROOM)):
        if wanted is None or set(wanted) & gives:
            with suppress(ValueError):
                found |= look(batch)
    return found


_OF_AIR = {"density", "overrun"}
_OF_PIECE = {"coat", "wall", "stiffness short"}
_OF_ROOM = {"humidity", "dew over piece"}


def _made_of(batch: Batch) -> dict[str, float]:
    made_of = composition(batch.component, batch.find, batch.dessert.components)
    wet = made_of.alcohol + made_of.water
    told = {
        "fat": made_of.fat,
        "water": made_of.water,
        "dry matter": 100 - made_of.water,
        "sugars": made_of.sugars,
        "alcohol": made_of.alcohol,
    }
    if made_of.water > 0:
        told |= {
            "fat to water": made_of.fat / made_of.water,
            "lactose in water": 100 * made_of.lactose / made_of.water,
            "sugars in water": 100 * made_of.sugars / made_of.water,
            "alcohol in water": 100 * made_of.alcohol / wet,
        }
    frozen = wet_of(made_of)
    freezes = freezing_point_c(frozen)
    if freezes is not None:
        told["freezes at"] = freezes
        ice = float(ice_share(frozen, np.array([SERVED_FROZEN_C]))[0])
        told["ice at -10"] = 100 * ice / frozen.free_water
    return told


_BY_BAND = {
    "final mix temperature": "mix",
    "whipping temperature": "whip",
    "fold temperature": "fold",
    "rest": "rest",
    "bake loss": "bake loss",
}


def _bands(batch: Batch) -> dict[str, float]:
    told: dict[str, float] = {}
    for one in judged(batch.component, batch.dessert, batch.find):
        if one.figure is None:
            continue
        if one.what in _BY_BAND:
            told[_BY_BAND[one.what]] = one.figure.value
        if one.what.startswith(("gelatin", "pectin", "agar")):
            told |= _off(one, one.figure.value, "dose")
        if one.what == "soluble solids":
            told["solids short"] = one.low - one.figure.value
    return told


def _off(one: Judged, value: float, name: str) -> dict[str, float]:
    return {f"{name} short": one.low - value, f"{name} over": value - one.high}


def _setting(batch: Batch) -> dict[str, float]:
    parts = batch.dessert.components
    told: dict[str, float] = {}
    gelatins = [
        bloom_of(what).value
        for what, _ in inside(batch.component, batch.find, parts)
        if (agent := agent_of(what)) is not None and agent.name == "gelatin"
    ]
    if gelatins:
        told["bloom"] = min(gelatins)
        read = batch.read.get("bloom")
        if read is not None:
            told["bloom below"] = min(gelatins) - read
            told["bloom above"] = read - min(gelatins)
    wept = weeps(batch.component, batch.find, parts)
    if wept is not None:
        told["weeps"] = wept.rank
    sour = acidity(inside(batch.component, batch.find, parts))
    at = batch.read.get("ph", sour.high if sour else None)
    for dose in doses(batch.component, batch.find, parts):
        fact = agents()[dose.agent].facts.get("ph")
        if at is not None and fact is not None:
            told["ph short"] = max(told.get("ph short", -9.0), fact.low - at)
    return told


_WORDS = {
    "raw fruit": "melts gelatin",
    "boiled acid": "boiled in acid",
    "boiled gelatin": "gelatin is boiled",
    "sour dairy": "curdles",
}


def _fights(batch: Batch) -> dict[str, float]:
    said = [
        str(one.says)
        for one in clashes(batch.dessert, batch.find)
        if one.component == batch.component.key
    ]
    return {
        name: float(sum(words in one for one in said)) for name, words in _WORDS.items()
    }


def _air(batch: Batch) -> dict[str, float]:
    component = batch.component
    whipped = batch.read.get(
        "density", component.whipped.value if component.whipped else None
    )
    if whipped is None or whipped <= 0:
        return {}
    return {
        "density": whipped,
        "overrun": 100 * (component.density.value / whipped - 1),
    }


def _piece(batch: Batch) -> dict[str, float]:
    told: dict[str, float] = {}
    for finish in batch.dessert.finish:
        if finish.component == batch.component.key:
            told["coat"] = finish.film.value
    there = [
        wall.least.value
        for wall in walls(batch.dessert, batch.kitchen)
        if not wall.part.flush
    ]
    if there:
        told["wall"] = min(there)
    stays = [
        one.needs_pa / stiffness()[one.look].low
        for one in sinkings(batch.dessert, batch.kitchen)
    ]
    if stays:
        told["stiffness short"] = max(stays)
    return told


def _room(batch: Batch) -> dict[str, float]:
    room, damp = batch.kitchen.room, batch.kitchen.room_humidity
    warm = batch.read.get("room", room.value if room else None)
    humid = batch.read.get("humidity", 100 * share(damp) if damp else None)
    if warm is None or humid is None:
        return {}
    from demould.cold.around.moist import settling_point_c  # compiled, so only here

    dew = settling_point_c(warm, humid / 100)
    if dew is None:
        return {"humidity": humid}
    piece = batch.read.get("piece", AT_TABLE_C)
    return {"humidity": humid, "dew over piece": dew - piece}
