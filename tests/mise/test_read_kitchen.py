from collections.abc import Callable
from datetime import date, time
from typing import Any

import pytest

from demould.mise.bare import bare
from demould.mise.figure import Assumed, Figure, Measured
from demould.mise.kitchen import (
    Away,
    ColdPlace,
    Jug,
    Opening,
    Person,
    Scale,
    Shelves,
    Tool,
)
from demould.mise.mould import Mould
from demould.mise.read_kitchen import names_in, read_kitchen
from demould.mise.shape import HalfSphere, WaterOnly

Read = Callable[..., tuple[Any, list[str]]]
HEAD = "kitchen: K\nzone: Europe/London\n"
WALL = Figure(
    value=1.5, unit="mm", name="", origin=Assumed(low=1, high=3, source="usual")
)


def stated(value: float, unit: str) -> Figure:
    return Figure(value=value, unit=unit, name="")


def faults_of(read: Read, key: str, line: str) -> list[str]:
    return read(read_kitchen, f"{HEAD}{key}: |\n  {line}\n")[1]


def test_every_line_of_a_kitchen(read: Read) -> None:
    text = f"""{HEAD}money: units
room: 21 °C, 55 % humid, 120 m above the sea
breakage: 5 % (assumed)
sure: 95 %
deliveries: by 09:00
hours: |
  Tue to Fri 08:00 to 17:00
people: |
  Mirel; 22 an hour; leads
moulds: |
  dome; 3 x 6; half-sphere 70 mm; 89 ml by water (measured 3 times); silicone 2 mm; on a tray
  stone; 1 x 4; 90 ml by water
tools: |
  mixer; bowl 4.8 l; full to 70 %; at least 400 g; loud
jugs: |
  80 mm wide, 160 mm high
cold: |
  blast; -35 °C; blast chiller; 5 kg a cycle; 3 levels
scales: |
  5 kg in steps of 1 g
"""
    kitchen, faults = read(read_kitchen, text)
    assert faults == []
    kitchen = bare(kitchen)
    assert (kitchen.name, kitchen.zone, kitchen.money) == (
        "K",
        "Europe/London",
        "units",
    )
    assert (kitchen.room, kitchen.room_humidity, kitchen.height) == (
        stated(21, "°C"),
        stated(55, "%"),
        stated(120, "m"),
    )
    assert kitchen.breakage == Figure(
        value=5, unit="%", name="", origin=Assumed(low=2, high=8)
    )
    assert kitchen.sure == stated(95, "%")
    assert kitchen.deliveries == time(9)
    assert kitchen.openings == (
        Opening(weekdays=(1, 2, 3, 4), opens=time(8), closes=time(17)),
    )
    assert kitchen.people == (
        Person(name="Mirel", wage=stated(22, "an hour"), remarks=("leads",)),
    )
    assert kitchen.moulds == (
        Mould(
            key="dome",
            trays=3,
            cavities_each=6,
            shape=HalfSphere(diameter_mm=70),
            water=Figure(value=89, unit="ml", name="", origin=Measured(readings=3)),
            wall=stated(2, "mm"),
            remarks=("on a tray",),
        ),
        Mould(
            key="stone",
            trays=1,
            cavities_each=4,
            shape=WaterOnly(water_ml=90),
            water=stated(90, "ml"),
            wall=WALL,
        ),
    )
    assert kitchen.tools == (
        Tool(
            key="mixer",
            bowl=stated(4800, "ml"),
            fill=stated(70, "%"),
            least=stated(400, "g"),
            remarks=("loud",),
        ),
    )
    assert kitchen.jugs == (Jug(diameter=stated(80, "mm"), height=stated(160, "mm")),)
    assert kitchen.cold == (
        ColdPlace(
            key="blast",
            air=stated(-35, "°C"),
            kind="blast chiller",
            load=stated(5000, "g"),
            remarks=("3 levels",),
        ),
    )
    assert kitchen.scales == (Scale(most=stated(5000, "g"), step=stated(1, "g")),)


def test_a_kitchen_that_says_little_is_taken_as_usual(read: Read) -> None:
    kitchen, faults = read(read_kitchen, HEAD)
    assert faults == []
    assert kitchen.breakage.origin == Assumed(low=2, high=8, source="usual")
    assert kitchen.sure.value == 95
    assert (kitchen.room, kitchen.deliveries, kitchen.moulds) == (None, None, ())


def test_the_unit_of_the_height_is_metres(read: Read) -> None:
    _, faults = read(read_kitchen, f"{HEAD}room: 21 °C, 120 above the sea\n")
    assert faults == [
        "x.yaml:3:14: the height above the sea, '120', has no unit. Write the unit too:"
        " 120 m."
    ]


@pytest.mark.parametrize(
    ("key", "line", "message"),
    [
        (
            "moulds",
            ";",
            "4:3: ';' says nothing. Write a name first, or take the line away.",
        ),
        (
            "moulds",
            "dome; half-sphere 70 mm",
            "4:3: how many 'dome' there are is missing. Write trays x cavities after the"
            " name, for example 3 x 8.",
        ),
        (
            "moulds",
            "dome; 3 x 6; on a tray",
            "4:3: the shape of 'dome' is missing. Write its shape and sizes, or what it"
            " holds: 90 ml by water.",
        ),
        (
            "moulds",
            "dome; 3 x 6; half-spere 70 mm",
            "4:16: 'half-spere 70 mm' is not a shape known here. Perhaps you meant"
            " 'half-sphere'.",
        ),
        (
            "moulds",
            "dome; 0 x 6; half-sphere 70 mm",
            "4:9: the number of trays, '0', is less than 1. Write 1 or more.",
        ),
        (
            "moulds",
            "dome; 3 x 6.5; half-sphere 70 mm",
            "4:9: '6.5' cavities is not a whole number. Write whole cavities.",
        ),
        (
            "moulds",
            "dome; 10000 x 6; half-sphere 70 mm",
            "4:9: the number of trays, '10000', is more than 9999, the most that can be"
            " read. Look at the number again; if it is meant, part it in several.",
        ),
        (
            "moulds",
            "dome; 3 x 6; silicone thin",
            "4:16: the wall, 'thin', is not an amount. Write a number and its unit, in mm"
            " or cm.",
        ),
        (
            "jugs",
            "80 x 160 mm",
            "4:3: '80 x 160 mm' is not a jug with its sizes. Write both, inside: 100 mm"
            " wide, 160 mm high.",
        ),
        (
            "scales",
            "5 kg by 1 g",
            "4:3: '5 kg by 1 g' is not a scale. Write it like 5 kg in steps of 1 g.",
        ),
        (
            "cold",
            "fridge; fan fridge",
            "4:3: the air of 'fridge' is missing. Write it like fridge; 3 °C; fan fridge.",
        ),
        (
            "cold",
            "fridge; 3 °C",
            "4:3: the kind of 'fridge' is missing. Write it like fridge; 3 °C; fan fridge.",
        ),
        (
            "cold",
            "fridge; 37 °F; fan fridge",
            "4:11: the air of the fridge, '37 °F', is in Fahrenheit. Write it in °C.",
        ),
        (
            "hours",
            "always",
            "4:3: 'always' is not a day with its hours. Write it like Tue to Fri 08:00 to"
            " 17:00.",
        ),
        (
            "hours",
            "Tue 17:00 to 08:00",
            "4:3: 17:00 to 08:00 ends before it begins. Write hours past midnight as two"
            " lines, one for each day.",
        ),
        (
            "people",
            "Mirel; much an hour",
            "4:10: the wage, 'much times', is not an amount. Write a number and its unit,"
            " in times.",
        ),
    ],
)
def test_a_bad_line_of_a_kitchen(read: Read, key: str, line: str, message: str) -> None:
    assert faults_of(read, key, line) == [f"x.yaml:{message}"]


def test_two_of_one_name_are_said_once(read: Read) -> None:
    two = f"{HEAD}tools: |\n  oven\n  mixer\n  oven; small\n"
    assert read(read_kitchen, two)[1] == [
        "x.yaml:6:3: a tool called 'oven' is on line 4 too. Give one of them another name."
    ]


def test_zone_and_name_must_be_said(read: Read) -> None:
    assert read(read_kitchen, "zone: Europe/Nowhere\nhours:\n  a: 1\nmoney:\n")[1] == [
        "x.yaml: 'kitchen' is missing. Write kitchen: and its name.",
        "x.yaml:1:7: no time zone is called 'Europe/Nowhere'. Write it like Europe/London"
        " or America/New_York.",
        "x.yaml:2:1: the lines below 'hours' have keys. Write hours: | and one thing a"
        " line below it.",
        "x.yaml:4:1: nothing stands after 'money'. Write it, or take the line away.",
    ]


def test_a_scalar_has_one_line_and_a_block_some(read: Read) -> None:
    text = f"{HEAD}money: |\n  a\n  b\ntools: oven\ncold: |\n\njugs:\n"
    kitchen, faults = read(read_kitchen, text)
    assert [tool.key for tool in kitchen.tools] == ["oven"]
    assert faults == [
        "x.yaml:3:1: 'money' has more than one line. Write it on one line, after the"
        " colon.",
        "x.yaml:7:1: nothing stands after 'cold'. Write it, or take the line away.",
        "x.yaml:9:1: nothing stands after 'jugs'. Write it, or take the line away.",
    ]


def test_names_count_even_where_their_line_cannot_be_read(read: Read) -> None:
    text = f"{HEAD}moulds: |\n  dome; what\n  ;\n  ring; 1 x 1; ring 18 x 4 cm\n"

    def names(branch: Any, _: object) -> tuple[str, ...]:
        return names_in(branch, "moulds")

    assert read(names, text)[0] == ("dome", "ring")


def test_shelves_are_counted_and_measured(read: Read) -> None:
    text = f"{HEAD}cold: |\n  blast; -35 °C; blast chiller; 3 levels of 53 x 32.5 cm\n"
    (place,) = read(read_kitchen, text)[0].cold
    assert place.shelves == Shelves(count=3, length_mm=530, width_mm=325)


def test_people_who_know_how_and_who_are_away(read: Read) -> None:
    line = "Jonne; can glaze; away Thu 2026-11-19; away 2026-11-20 12:00 to 17:00; new"
    (person,) = read(read_kitchen, f"{HEAD}people: |\n  {line}\n")[0].people
    assert (person.can, person.remarks) == (("glaze",), ("new",))
    assert person.away == (
        Away(day=date(2026, 11, 19)),
        Away(day=date(2026, 11, 20), from_=time(12), to=time(17)),
    )


def test_hours_may_be_overtime_and_nothing_else(read: Read) -> None:
    text = f"{HEAD}hours: |\n  Sat 08:00 to 10:00; overtime\n"
    assert read(read_kitchen, text)[0].openings[0].overtime
    assert faults_of(read, "hours", "Sat 08:00 to 10:00; late") == [
        "x.yaml:4:3: 'late' says nothing about hours. Write overtime there, or nothing."
    ]


def test_away_ends_after_it_begins(read: Read) -> None:
    assert faults_of(read, "people", "J; away Thu 2026-11-19 12:00 to 9:00") == [
        "x.yaml:4:6: 12:00 to 09:00 ends before it begins. Write the time of leaving"
        " first, then that of coming back."
    ]
