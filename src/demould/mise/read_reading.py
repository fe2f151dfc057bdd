"""A reading at the bench: what it is of, and the number."""

import re
from typing import NamedTuple

from demould.mise.number import NUMBER, read_number
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_amount
from demould.mise.unit import Kind
from demould.mise.words import Words

_SAID = re.compile(rf"(?P<name>[^\d\-\u2212]*?)\s*(?P<number>{NUMBER})\s*(?P<unit>.*)")
_KINDS: dict[str, tuple[Kind, float]] = {
    "°C": ("temperature", 1),
    "h": ("time", 60),
    "min": ("time", 1),
    "s": ("time", 1 / 60),
    "d": ("time", 1440),
    "mm": ("length", 1),
    "%": ("share", 1),
    "g/ml": ("density", 1),
}


class Said(NamedTuple):
    """``piece -9 °C`` in its parts; `number` is None where none was said."""

    name: str
    number: str | None
    unit: str


def split_reading(text: str) -> Said:
    """The name of a reading, its number and its unit, as written.

    >>> split_reading("piece -9 °C")
    Said(name='piece', number='-9', unit='°C')
    """
    found = _SAID.fullmatch(text.strip())
    if not found:
        return Said(text.strip(), None, "")
    return Said(found["name"].strip(), found["number"], found["unit"].strip())


def reading_value(said: Said, unit: str) -> float:
    """The number in the unit the reading is kept in; a bare number is in that unit.

    Raises
    ------
    UnreadableError
        If there is no number where one is needed, or its unit is of another kind.
    """
    if said.number is None:
        if unit == "times":
            return 1.0
        raise UnreadableError(
            Words("{name!r} has no number", name=said.name),
            Words("Write it like '{name} 12 {unit}'", name=said.name, unit=unit),
        )
    if not said.unit or unit not in _KINDS:
        return float(read_number(said.number))
    kind, times = _KINDS[unit]
    amount = read_amount(f"{said.number} {said.unit}", name=said.name, kinds=(kind,))
    return amount.value / times
