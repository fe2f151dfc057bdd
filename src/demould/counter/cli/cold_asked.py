"""The single questions of ``demould cold``: what was typed made into what rooms ask for."""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass, replace
from datetime import date
from typing import TYPE_CHECKING, NoReturn, TypeVar
from zoneinfo import ZoneInfo

import click

from demould.mise.figure import Line
from demould.mise.problem import UnreadableError

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from datetime import datetime

    from demould.matter.grams import Find
    from demould.mise.dessert import Dessert
    from demould.mise.kitchen import ColdPlace, Kitchen
    from demould.mise.unit import Kind
    from demould.sheets.page import Page
    from demould.week.in_the_room import Room

    Answered = tuple[Page, dict[str, object]]

Read = TypeVar("Read")


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What was asked beside the dessert; None where it was not."""

    sweat: str | None = None
    table: bool = False
    bench: str | None = None
    van: str | None = None
    tub: str | None = None
    beside: str | None = None
    dead: str | None = None
    readings: tuple[str, ...] = ()
    room: str | None = None
    outside: str = "30 °C"
    ice: str = "0 g"
    pieces: int | None = None


def answer_asked(
    asked: Asked,
    dessert: Dessert,
    kitchen: Kitchen,
    places: tuple[ColdPlace, ...],
    find: Find,
    now: datetime,
) -> list[Answered]:
    """Answer every question asked, in the order of the help."""
    from demould.sheets import kept_cold_page, room_page
    from demould.week import in_the_room, kept_cold
    from demould.week.at_the_table import at_the_table

    room = _room(asked.room, kitchen)
    told: list[Answered] = []
    if asked.sweat is not None:
        minutes = _amount(asked.sweat, "--sweat", "time on the plate", "time")
        plate = in_the_room.on_the_plate(dessert, kitchen, find, room, minutes)
        told.append(
            (room_page.plate_page(dessert, plate), plain_record("sweat", plate))
        )
    if asked.table:
        table = at_the_table(dessert, kitchen, find, room)
        told.append(
            (room_page.table_page(dessert, table), plain_record("table", table))
        )
    if asked.bench is not None:
        start = _degrees(asked.bench, "--bench")
        try:
            out, each = in_the_room.out_of(dessert, kitchen, find, room, start)
        except ValueError as fault:
            _refuse(fault, "--bench")
        answer = plain_record("out", out) | {
            "minutes_a_piece": each,
            "lot": out.lot(each),
        }
        told.append((room_page.out_page(dessert, out, room, each), answer))
    if asked.van is not None:
        road = kept_cold.on_the_road(
            dessert,
            kitchen,
            find,
            pieces=asked.pieces or 12,
            minutes=_amount(asked.van, "--van", "time on the way", "time"),
            outside_c=_degrees(asked.outside, "--outside"),
            ice_kg=_amount(asked.ice, "--ice", "ice", "mass") / 1000,
        )
        told.append(
            (kept_cold_page.road_page(dessert, road), plain_record("van", road))
        )
    if asked.tub is not None:
        within = _amount(asked.tub, "--tub", "time to cool", "time") / 60
        fridge = _one(places, "--tub", lambda one: 0 < one.air.value < kept_cold.TUB[1])
        try:
            tub = kept_cold.in_a_tub(fridge, within)
        except ValueError:
            raise click.BadParameter(
                f"no depth of tray goes with {asked.tub}. Ask for a time like 2 h.",
                param_hint="--tub",
            ) from None
        told.append(
            (kept_cold_page.tub_page(dessert, tub, fridge), plain_record("tub", tub))
        )
    if asked.beside is not None:
        kilograms = _amount(asked.beside, "--beside", "finished goods", "mass") / 1000
        freezer = _one(
            sorted(places, key=lambda one: one.kind == "blast chiller"),
            "--beside",
            lambda one: one.air.value <= kept_cold.COLD_ENOUGH_C,
        )
        try:
            beside = kept_cold.beside_of(dessert, kitchen, find, freezer, kilograms)
        except ValueError as fault:
            _refuse(fault, "--beside")
        told.append(
            (
                kept_cold_page.beside_page(dessert, beside, freezer),
                plain_record("beside", beside),
            )
        )
    if asked.dead is not None:
        told.append(_dead(asked, dessert, kitchen, now))
    return told


def _dead(asked: Asked, dessert: Dessert, kitchen: Kitchen, now: datetime) -> Answered:
    from demould.cold.dead_freezer import Outage, Reading, still_sound
    from demould.mise.read_asked import read_reading, read_span
    from demould.sheets.kept_cold_page import dead_page

    zone = ZoneInfo(kitchen.zone)
    since, back = _read(lambda: read_span(asked.dead or "", zone), "--dead")
    read = _read(
        lambda: [read_reading(text, zone) for text in asked.readings], "--reading"
    )
    readings = [Reading(at=at, at_c=at_c, in_piece=inside) for at, at_c, inside in read]
    try:
        outage = Outage(last_good=since, back=back, now=now)
    except ValueError as fault:
        _refuse(fault, "--dead")
    judged = still_sound(outage, readings)
    return dead_page(dessert, judged), {
        "asked": "dead",
        "verdict": judged.verdict,
        "says": str(judged.says),
    }


def _room(text: str | None, kitchen: Kitchen) -> Room:
    from demould.mise.read_kitchen import read_room
    from demould.week.in_the_room import room_of

    known = room_of(kitchen)
    if text is None:
        return known
    air, humidity, _ = _read(lambda: read_room(Line("--room", 1, text)), "--room")
    return replace(
        known,
        air_c=air.value if air else known.air_c,
        relative=humidity.value / 100 if humidity else known.relative,
        said=(air is not None or known.said) and (humidity is not None or known.said),
    )


def _amount(text: str, option: str, name: str, kind: Kind) -> float:
    """Give minutes or grams, not under 0."""
    from demould.mise.quantity import read_amount

    value = _read(lambda: read_amount(text, name=name, kinds=(kind,)), option).value
    if value < 0:
        raise click.BadParameter(
            f"the {name}, {text!r}, is under 0; write how much it is.",
            param_hint=option,
        )
    return value


def _degrees(text: str, option: str) -> float:
    from demould.mise.read_asked import read_degrees

    return _read(lambda: read_degrees(text, option.strip("-")), option)


def _one(
    places: Sequence[ColdPlace], option: str, fits: Callable[[ColdPlace], bool]
) -> ColdPlace:
    found = next((one for one in places if fits(one)), None)
    if found is None:
        raise click.BadParameter(
            "none of these cold places is cold enough or warm enough for that; name one"
            " with --in, or write one in kitchen.yaml.",
            param_hint=option,
        )
    return found


def _read(read: Callable[[], Read], option: str) -> Read:
    try:
        return read()
    except UnreadableError as fault:
        raise click.BadParameter(
            f"{fault.wrong}. {fault.remedy}.", param_hint=option
        ) from None


def _refuse(fault: ValueError, option: str) -> NoReturn:
    raise click.BadParameter(f"{fault}.", param_hint=option) from None


def plain_record(asked: str, record: object) -> dict[str, object]:
    """Give a frozen record as plain JSON, words as sentences."""
    found = _as_json(record)
    return {"asked": asked, **(found if isinstance(found, dict) else {})}


def _as_json(value: object) -> object:
    from demould.counter.cli.answer import of_estimate, of_figure
    from demould.mise.figure import Estimate, Figure
    from demould.mise.words import Words

    if isinstance(value, Words):
        return str(value)
    if isinstance(value, Figure):
        return of_figure(value)
    if isinstance(value, Estimate):
        return of_estimate(value)
    if isinstance(value, date):
        return value.isoformat()
    if is_dataclass(value) and not isinstance(value, type):
        return {one.name: _as_json(getattr(value, one.name)) for one in fields(value)}
    if isinstance(value, list | tuple):
        return [_as_json(each) for each in value]
    return value
