"""``kitchen.yaml``: hours, people, and the lines of what a kitchen has."""

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import time
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from demould.mise.clock import read_day, read_time, read_weekdays
from demould.mise.faults import Faults
from demould.mise.figure import Assumed, Figure, Line
from demould.mise.keys import Keys, keys_of
from demould.mise.kitchen import Away, Kitchen, Opening, Person
from demould.mise.parts import after, at_column, name_and_rest, parts_of
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_figure
from demould.mise.read_cold import read_cold_place, read_jug, read_scale, read_tool
from demould.mise.read_mould import read_mould
from demould.mise.read_packing import read_draws, read_energy, read_packing
from demould.mise.read_supplier import read_supplier
from demould.mise.tree import Branch
from demould.mise.words import Words

KEYS = (
    "kitchen",
    "zone",
    "money",
    "room",
    "breakage",
    "sure",
    "deliveries",
    "suppliers",
    "cost share",
    "tax",
    "margin",
    "packing",
    "energy",
    "draws",
    "hours",
    "people",
    "moulds",
    "tools",
    "jugs",
    "cold",
    "scales",
)
_REQUIRED = {
    "kitchen": Words("Write kitchen: and its name"),
    "zone": Words("Write where its clock is, for example zone: Europe/London"),
}
_NAMED = {
    "moulds": "mould",
    "tools": "tool",
    "cold": "cold place",
    "people": "person",
    "suppliers": "supplier",
    "packing": "box",
}

_WAGE = re.compile(r"([^()]*[^()\s])\s*(\(.*\))?\s*(?:an|per|/)\s*(?:hour|h)")

USUAL_BREAKAGE = (2.0, 8.0)


def read_kitchen(branch: Branch, faults: Faults) -> Kitchen:
    """The kitchen a file describes; what cannot be read is noted and left out."""
    keys = keys_of(branch, faults, known=KEYS, required=_REQUIRED)
    room, humidity, height = keys.read("room", read_room) or (None, None, None)
    for key, what in _NAMED.items():
        _no_name_twice(keys, key, what)
    return Kitchen(
        name=keys.text("kitchen"),
        zone=keys.read("zone", _zone) or "UTC",
        openings=keys.each("hours", _opening),
        people=keys.each("people", _person),
        moulds=keys.each("moulds", read_mould),
        tools=keys.each("tools", read_tool),
        jugs=keys.each("jugs", read_jug),
        cold=keys.each("cold", read_cold_place),
        scales=keys.each("scales", read_scale),
        room=room,
        room_humidity=humidity,
        height=height,
        breakage=keys.read("breakage", _breakage) or _usual("breakage", 5, 2, 8),
        sure=keys.read("sure", _sure) or _usual("how sure to be", 95, 90, 99),
        money=keys.text("money"),
        deliveries=keys.read("deliveries", _deliveries),
        suppliers=keys.each("suppliers", read_supplier),
        cost_share=keys.read("cost share", _share_of("cost share")),
        tax=keys.read("tax", _share_of("tax", zero=True)),
        margin=keys.read("margin", _share_of("margin", zero=True)),
        packing=keys.each("packing", read_packing),
        energy=keys.read("energy", read_energy),
        draws=keys.each("draws", read_draws),
        line=branch.line,
    )


def names_in(branch: Branch, key: str) -> tuple[str, ...]:
    """The first words of each line below a key, read or not.

    What is there but faulty is no reason to call it missing elsewhere.
    """
    quiet = keys_of(branch, Faults(), known=KEYS, required={})
    return tuple(
        part.text for leaf in quiet.lines(key) for part in parts_of(leaf.line.text)[:1]
    )


def _no_name_twice(keys: Keys, key: str, what: str) -> None:
    seen: dict[str, int] = {}
    for leaf in keys.quietly().lines(key):
        name = "".join(part.text for part in parts_of(leaf.line.text)[:1])
        if name in seen:
            keys.faults.tell(
                leaf.line,
                Words(
                    "a {what} called {name!r} is on line {first} too",
                    what=what,
                    name=name,
                    first=seen[name],
                ),
                Words("Give one of them another name"),
            )
        seen.setdefault(name, leaf.line.number)


def _usual(name: str, value: float, low: float, high: float) -> Figure:
    return Figure(
        name=name,
        value=value,
        unit="%",
        origin=Assumed(low=low, high=high, source="usual"),
    )


def _breakage(line: Line) -> Figure:
    return read_figure(
        line.text,
        name="breakage",
        kinds=("share",),
        line=line,
        zero=True,
        usual=USUAL_BREAKAGE,
    )


def _sure(line: Line) -> Figure:
    return read_figure(line.text, name="how sure to be", kinds=("share",), line=line)


def _share_of(name: str, *, zero: bool = False) -> Callable[[Line], Figure]:
    def read(line: Line) -> Figure:
        return read_figure(line.text, name=name, kinds=("share",), line=line, zero=zero)

    return read


def _zone(line: Line) -> str:
    try:
        return ZoneInfo(line.text).key
    except (ZoneInfoNotFoundError, ValueError, OSError):
        raise UnreadableError(
            Words("no time zone is called {found!r}", found=line.text),
            Words("Write it like Europe/London or America/New_York"),
        ) from None


def _deliveries(line: Line) -> time:
    return read_time(after(line.text, "by", "before") or line.text)


def read_room(line: Line) -> tuple[Figure | None, Figure | None, Figure | None]:
    """``21 °C, 55 % humid, 120 m above the sea``, in any order.

    Raises
    ------
    UnreadableError
        If a part is none of the three.
    """
    air = humidity = height = None
    for part in parts_of(line.text, ","):
        with at_column(part.column):
            if found := re.fullmatch(r"(.*\S)\s+above (?:the )?sea", part.text):
                height = read_figure(
                    found[1], name="height above the sea", kinds=("height",), line=line
                )
            elif found := re.fullmatch(r"(.*\S)\s+(?:humid|humidity|RH)", part.text):
                humidity = read_figure(
                    found[1], name="humidity of the room", kinds=("share",), line=line
                )
            else:
                air = read_figure(
                    part.text,
                    name="air of the room",
                    kinds=("temperature",),
                    line=line,
                )
    return air, humidity, height


def _opening(line: Line) -> Opening:
    """``Tue to Fri 08:00 to 17:00``, with ``; overtime`` where it is."""
    hours, _, mark = line.text.partition(";")
    if mark and mark.strip() != "overtime":
        raise UnreadableError(
            Words("{found!r} says nothing about hours", found=mark.strip()),
            Words("Write overtime there, or nothing"),
        )
    found = re.fullmatch(r"(\D+?)\s+(\d\S*)\s*(?:to|\u2013)\s*(\d\S*)", hours.strip())
    if not found:
        raise UnreadableError(
            Words("{found!r} is not a day with its hours", found=line.text),
            Words("Write it like Tue to Fri 08:00 to 17:00"),
        )
    opens, closes = read_time(found[2]), read_time(found[3])
    if opens >= closes:
        raise UnreadableError(
            Words(
                "{opens:%H:%M} to {closes:%H:%M} ends before it begins",
                opens=opens,
                closes=closes,
            ),
            Words("Write hours past midnight as two lines, one for each day"),
        )
    return Opening(
        weekdays=read_weekdays(found[1]),
        opens=opens,
        closes=closes,
        overtime=bool(mark),
        line=line,
    )


def _person(line: Line) -> Person:
    """``Mirel; 22 an hour; leads; can glaze; away Thu 2026-11-19 12:00 to 17:00``."""
    name, rest = name_and_rest(line.text)
    wage, remarks = None, []
    can: list[str] = []
    away: list[Away] = []
    for part in rest:
        if found := _WAGE.fullmatch(part.text):
            amount = f"{found[1]} times {found[2] or ''}"
            with at_column(part.column):
                wage = read_figure(amount, name="wage", kinds=("times",), line=line)
            wage = replace(wage, unit="an hour")
        elif skill := after(part.text, "can"):
            can.append(skill)
        elif said := after(part.text, "away"):
            with at_column(part.column):
                away.append(_away(said))
        else:
            remarks.append(part.text)
    return Person(
        name=name.text,
        wage=wage,
        can=tuple(can),
        away=tuple(away),
        remarks=tuple(remarks),
        line=line,
    )


def _away(text: str) -> Away:
    """``Thu 2026-11-19``, or so much of it as two times say."""
    found = re.fullmatch(
        r"(.*\S)\s+(\d+[:.h]\d+)\s*(?:to|\u2013)\s*(\d+[:.h]\d+)", text
    )
    if not found:
        return Away(day=read_day(text))
    leaves, back = read_time(found[2]), read_time(found[3])
    if leaves >= back:
        raise UnreadableError(
            Words(
                "{leaves:%H:%M} to {back:%H:%M} ends before it begins",
                leaves=leaves,
                back=back,
            ),
            Words("Write the time of leaving first, then that of coming back"),
        )
    return Away(day=read_day(found[1]), from_=leaves, to=back)
