"""An amount as people write it: a number, a unit, and how it is known."""

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from demould.mise.figure import Figure, Line
from demould.mise.number import NUMBER, has_thousands_look, read_number, written
from demould.mise.origin import origin_of, split_origin
from demould.mise.problem import UnreadableError
from demould.mise.unit import KIND_WORDS, Kind, read_unit
from demould.mise.words import Words

_AMOUNT = re.compile(rf"({NUMBER})\s*(.*)", re.DOTALL)
_CLOCK = re.compile(rf"({NUMBER}\s*[a-zA-Z]+)\s+(\d+)\s*([a-zA-Z]*)")
_WHOLE = {"g", "ml", "mm", "pieces"}
_HEAVIEST = Decimal(3)
_LIGHTEST = Decimal("0.02")


@dataclass(frozen=True, slots=True)
class Amount:
    """A number in a canonical unit, and what one unit as written is of it."""

    value: float
    unit: str
    kind: Kind
    factor: Decimal


def read_figure(
    text: str,
    *,
    name: str,
    kinds: tuple[Kind, ...],
    line: Line | None,
    zero: bool = False,
    usual: tuple[float, float] | None = None,
) -> Figure:
    """A figure from an amount and, in brackets, how it is known.

    Parameters
    ----------
    text
        ``0.62 g/ml (assumed 0.57 to 0.66)``. No brackets mean stated.
    name
        What it is, in the trade's words; it names the figure and goes into messages.
    kinds
        Which kinds of unit will do.
    line
        Where it stands.
    zero
        Whether nothing is an answer.
    usual
        The range a bare ``(assumed)`` stands for, in the canonical unit.

    Returns
    -------
    Figure
        In g, ml, mm, m (heights), cm2, min, °C, %, g/ml, or a counted unit.

    Raises
    ------
    UnreadableError
        If it cannot be read, or can be read in two ways, or cannot be true.
    """
    body, words = split_origin(text)
    amount = read_amount(body, name=name, kinds=kinds)
    _refuse_impossible(amount, body, name, zero=zero)
    origin = origin_of(words, amount.value, amount.factor, name, usual, line)
    return Figure(value=amount.value, unit=amount.unit, name=name, origin=origin)


def read_amount(text: str, *, name: str, kinds: tuple[Kind, ...]) -> Amount:
    """A number with its unit: ``1 h 30``, ``2,5 kg``, ``-18 °C``, ``620 g/l``.

    Raises
    ------
    UnreadableError
        If it cannot be read, or can be read in two ways.
    """
    text = text.strip()
    if both := _CLOCK.fullmatch(text):
        return _time(both, name, kinds, text)
    found = _AMOUNT.fullmatch(text)
    if not found:
        wrong = Words("the {name}, {found!r}, is not an amount", name=name, found=text)
        raise UnreadableError(wrong, _example(kinds))
    number = read_number(found[1])
    if not found[2]:
        wrong = Words("the {name}, {found!r}, has no unit", name=name, found=text)
        raise UnreadableError(wrong, _with_unit(found[1], kinds))
    unit = read_unit(found[2], kinds, name=name, found=text)
    if unit.name in _WHOLE and unit.factor == 1 and has_thousands_look(found[1]):
        _ask_thousands(found[1], found[2], text)
    if unit.kind == "density":
        _check_density(number, number * unit.factor, text)
    return Amount(float(number * unit.factor), unit.name, unit.kind, unit.factor)


def _time(
    found: re.Match[str], name: str, kinds: tuple[Kind, ...], text: str
) -> Amount:
    """``1 h 30``, ``1 h 30 min``, ``2 d 4 h``: the second is the next smaller unit."""
    first = read_amount(found[1], name=name, kinds=kinds)
    smaller = found[3] or {60: "min", 1440: "h"}.get(int(first.factor), "")
    if first.kind != "time" or not smaller:
        wrong = Words("the {name}, {found!r}, has two numbers", name=name, found=text)
        raise UnreadableError(wrong, _example(kinds))
    second = read_amount(f"{found[2]} {smaller}", name=name, kinds=("time",))
    return Amount(first.value + second.value, "min", "time", second.factor)


def _example(kinds: tuple[Kind, ...]) -> Words:
    return Words(
        "Write a number and its unit, in {wanted}",
        wanted=", or ".join(KIND_WORDS[kind][1] for kind in kinds),
    )


def _with_unit(number: str, kinds: tuple[Kind, ...]) -> Words:
    units = [
        unit for kind in kinds for unit in re.split(", | or ", KIND_WORDS[kind][1])
    ]
    shown = " or ".join(f"{number} {unit}" for unit in units[:2])
    return Words("Write the unit too: {shown}", shown=shown)


def _ask_thousands(number: str, unit: str, text: str) -> None:
    small = read_number(number)
    great = written(small * 1000)
    spaced = f"{great[:-3]} {great[-3:]} {unit}"
    fine = f"{written(small)} {unit}"
    raise UnreadableError(
        Words(
            "{found!r} can be read as {fine} or as {spaced}",
            found=text,
            fine=fine,
            spaced=spaced,
        ),
        Words("Write {fine} or {spaced}", fine=fine, spaced=spaced),
    )


def _check_density(number: Decimal, density: Decimal, text: str) -> None:
    """620 g/ml is heavier than any metal, 0.62 g/l is near air: units were swapped."""
    if density <= 0 or _LIGHTEST <= density <= _HEAVIEST:
        return
    if _LIGHTEST <= density / 1000 <= _HEAVIEST:
        right = f"{written(density / 1000)} g/ml"
        remedy = Words(
            "Write {right}, or {meant} if that is how it was given",
            right=right,
            meant=f"{written(number)} g/l",
        )
    elif _LIGHTEST <= density * 1000 <= _HEAVIEST:
        remedy = Words("Write {right}", right=f"{written(density * 1000)} g/ml")
    else:
        remedy = Words("Weigh a known cup of it, and write grams by millilitres")
    wrong = "a density of {found!r} is far from any food, which has 0.2 to 1.5 g/ml"
    raise UnreadableError(Words(wrong, found=text), remedy)


def _refuse_impossible(amount: Amount, text: str, name: str, *, zero: bool) -> None:
    if amount.kind in ("temperature", "height"):
        return
    if amount.value < 0:
        wrong = Words("the {name} is {found!r}, less than 0", name=name, found=text)
        raise UnreadableError(wrong, Words("Write it without the minus sign"))
    if amount.value == 0 and not zero:
        wrong = Words("the {name} is {found!r}, nothing at all", name=name, found=text)
        raise UnreadableError(wrong, Words("Write more than 0"))
    if amount.kind == "share" and amount.value > 100:
        wrong = Words("the {name} is {found!r}, more than all", name=name, found=text)
        raise UnreadableError(wrong, Words("Write a share from 0 to 100 %"))


def read_range(
    text: str, *, name: str, kinds: tuple[Kind, ...], line: Line | None
) -> tuple[Figure, Figure | None]:
    """``12 h to 48 h``, ``75 to 80 °C``, or one figure alone with None.

    The first may leave its unit to the second.

    Raises
    ------
    UnreadableError
        If either cannot be read, or the first is the larger.
    """
    ends = re.split(
        r"\s+to\s+(?![^()]*\))|(?<=[\d\w°%])\s*\u2013\s*(?=\d)",
        text.strip(),
        maxsplit=1,
    )
    if len(ends) == 1:
        return read_figure(text, name=name, kinds=kinds, line=line), None
    first = ends[0]
    if re.fullmatch(NUMBER, first.strip()):
        unit = re.sub(rf"^{NUMBER}\s*", "", split_origin(ends[1])[0])
        first = f"{first} {unit}"
    low = read_figure(first, name=name, kinds=kinds, line=line)
    high = read_figure(ends[1], name=f"longest {name}", kinds=kinds, line=line)
    if low.value > high.value:
        raise UnreadableError(
            Words("the {name}, {found!r}, runs backwards", name=name, found=text),
            Words("Write the smaller one first"),
        )
    return low, high


def read_count(text: str, *, name: str, most: int, what: str = "pieces") -> int:
    """A whole number from 1 to `most`, with or without its word.

    Raises
    ------
    UnreadableError
        If it is none, or out of bounds.
    """
    bare = re.sub(rf"\s*{what}?$", "", text.strip(), flags=re.IGNORECASE)
    if has_thousands_look(bare):
        _ask_thousands(bare, what, text)
    number = Fraction(read_number(bare))
    if number.denominator != 1:
        raise UnreadableError(
            Words("{found!r} {what} is not a whole number", found=text, what=what),
            Words("Write whole {what}", what=what),
        )
    if number < 1:
        raise UnreadableError(
            Words("the {name}, {found!r}, is less than 1", name=name, found=text),
            Words("Write 1 or more"),
        )
    if number > most:
        raise UnreadableError(
            Words(
                "the {name}, {found!r}, is more than {most}, the most that can be read",
                name=name,
                found=text,
                most=most,
            ),
            Words("Look at the number again; if it is meant, part it in several"),
        )
    return int(number)
