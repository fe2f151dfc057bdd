"""Units as people write them, and the few that everything is read into."""

import re
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from demould.mise.problem import UnreadableError
from demould.mise.spelling import perhaps
from demould.mise.words import Words

Kind = Literal[
    "mass",
    "volume",
    "length",
    "height",
    "area",
    "time",
    "temperature",
    "share",
    "density",
    "count",
    "times",
    "film",
]


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit as read: what kind of thing, read into which unit, times what."""

    kind: Kind
    name: str
    factor: Decimal = Decimal(1)


KIND_WORDS: dict[Kind, tuple[str, str]] = {
    "mass": ("a weight", "g or kg"),
    "volume": ("a volume", "ml or l"),
    "length": ("a length", "mm or cm"),
    "height": ("a height", "m"),
    "area": ("an area", "cm2"),
    "time": ("a time", "min, h or d"),
    "temperature": ("a temperature", "°C"),
    "share": ("a share", "%"),
    "density": ("a density", "g/ml"),
    "count": ("a number of things", "pieces, leaves or spoons"),
    "times": ("a factor", "times"),
    "film": ("a film of air", "W/m2K"),
}

_TABLE: tuple[tuple[Kind, str, str, str], ...] = (
    ("mass", "g", "1", "g gr gram grams gramme grammes"),
    ("mass", "g", "1000", "kg kilo kilos kilogram kilograms"),
    ("mass", "g", "0.001", "mg milligram milligrams"),
    ("volume", "ml", "1", "ml millilitre millilitres milliliter milliliters cc"),
    ("volume", "ml", "10", "cl"),
    ("volume", "ml", "100", "dl"),
    ("volume", "ml", "1000", "l litre litres liter liters"),
    ("length", "mm", "1", "mm millimetre millimetres"),
    ("length", "mm", "10", "cm centimetre centimetres"),
    ("length", "mm", "1000", "m metre metres"),
    ("area", "cm2", "1", "cm2 cm²"),
    ("time", "min", "1", "min mins minute minutes"),
    ("time", "min", "60", "h hr hrs hour hours"),
    ("time", "min", "1440", "d day days"),
    ("time", "min", "10080", "week weeks"),
    ("temperature", "°C", "1", "°c c degc degreesc °celsius celsius ° deg degrees"),
    ("share", "%", "1", "% percent"),
    ("density", "g/ml", "1", "g/ml g/cm3 g/cm³ kg/l"),
    ("density", "g/ml", "0.001", "g/l kg/m3 kg/m³"),
    ("count", "pieces", "1", "pieces piece pcs pc"),
    ("count", "leaf", "1", "leaf leaves"),
    ("count", "spoon", "1", "spoon spoons tablespoon tablespoons tbsp"),
    ("count", "teaspoon", "1", "teaspoon teaspoons tsp"),
    ("count", "pinch", "1", "pinch pinches"),
    ("count", "cup", "1", "cup cups"),
    ("times", "times", "1", "times x \u00d7"),
    ("film", "W/m2K", "1", "w/m2k w/m²k"),
)

UNITS: dict[str, Unit] = {
    spelling: Unit(kind, name, Decimal(factor))
    for kind, name, factor, spellings in _TABLE
    for spelling in spellings.split()
} | {
    "s": Unit("time", "min", Decimal(1) / 60),
    "sec": Unit("time", "min", Decimal(1) / 60),
    "seconds": Unit("time", "min", Decimal(1) / 60),
}

_FAHRENHEIT = {"f", "°f", "degf", "degreesf", "fahrenheit", "°fahrenheit"}


def read_unit(text: str, kinds: tuple[Kind, ...], *, name: str, found: str) -> Unit:
    """The unit a text is, of one of the wanted kinds.

    `name` and `found` say in a message what was being read, and the whole of it. A
    metre is a height where a height is asked for.

    Raises
    ------
    UnreadableError
        If nobody knows the unit, or it is of another kind.
    """
    spelt = re.sub(r"[\s.]", "", text.casefold())
    wanted = ", or ".join(KIND_WORDS[kind][1] for kind in kinds)
    remedy = Words("Write it in {wanted}", wanted=wanted)
    if spelt in _FAHRENHEIT:
        wrong = Words("the {name}, {found!r}, is in Fahrenheit", name=name, found=found)
        raise UnreadableError(wrong, remedy)
    unit = UNITS.get(spelt)
    if unit is None:
        fitting = [spelling for spelling, one in UNITS.items() if one.kind in kinds]
        wrong = Words(
            "the {name}, {found!r}, is in {unit!r}, a unit nobody here knows",
            name=name,
            found=found,
            unit=text,
        )
        raise UnreadableError(wrong, perhaps(text, fitting, remedy))
    if kinds == ("height",) and unit.kind == "length":
        return Unit("height", "m", unit.factor / 1000)
    if unit.kind not in kinds:
        wrong = Words(
            "the {name}, {found!r}, is {of}, and {what} is wanted",
            name=name,
            found=found,
            of=KIND_WORDS[unit.kind][0],
            what=" or ".join(KIND_WORDS[kind][0] for kind in kinds),
        )
        raise UnreadableError(wrong, remedy)
    return unit
