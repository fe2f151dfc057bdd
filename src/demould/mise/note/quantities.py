"""Numbers and what stands behind them, taken together: 50 to 60 g, 180 °C, 2 leaves."""

from collections.abc import Iterable
from dataclasses import replace
from decimal import Decimal

from demould.mise.note.tags import Tag

GRAMS = {"g": "1", "kg": "1000", "mg": "0.001", "oz": "28.349523125", "lb": "453.59237"}
MILLILITRES = {"ml": "1", "cl": "10", "dl": "100", "l": "1000"}
MINUTES = {"min": "1", "h": "60", "d": "1440", "s": "0.0166666667"}
MASSES = (
    "g",
    "ml",
    "leaf",
    "spoon",
    "teaspoon",
    "cup",
    "pinch",
    "drop",
    "pieces",
    "tin",
)
_DOZEN = Decimal(12)


def quantities(tags: Iterable[Tag]) -> list[Tag]:
    """Join each number with its range, its unit and its sign.

    The kinds that come out are ``amount`` (unit g, ml, leaf ...), ``percent``, ``temp``
    in °C, ``minutes``, ``size`` and ``bare`` for a number alone.
    """
    given = list(tags)
    found: list[Tag] = []
    place = 0
    while place < len(given):
        if given[place].kind != "number":
            if _minus(given, place):
                tag, taken = _number(given, place + 1)
                found.append(_negative(tag, given[place]))
                place += 1 + taken
                continue
            found.append(given[place])
            place += 1
            continue
        tag, taken = _number(given, place)
        found.append(tag)
        place += taken
    return found


def _minus(given: list[Tag], place: int) -> bool:
    """A dash that touches a temperature: ``-18 °C``."""
    tag = given[place]
    following = given[place + 1 : place + 3]
    return (
        tag.kind == "dash"
        and len(following) == 2
        and following[0].kind == "number"
        and following[0].start == tag.end
        and (
            following[1].kind == "degree sign"
            or following[1].may_be("degree") is not None
        )
    )


def _negative(tag: Tag, dash: Tag) -> Tag:
    assert tag.low is not None
    assert tag.high is not None
    return replace(tag, start=dash.start, low=-tag.high, high=-tag.low)


def _number(given: list[Tag], place: int) -> tuple[Tag, int]:
    first = given[place]
    assert first.low is not None
    low = high = first.low
    taken = 1
    last = first
    if _dozen(given, place):
        low = high = low * _DOZEN
        last, taken = given[place + 1], 2
    elif _no_amount(given, place):
        return replace(first, kind="size"), 1
    elif each := _each(given, place):
        last = given[place + 2 * len(each) - 2]
        return replace(first, kind="each", each=each, end=last.end), 2 * len(each) - 1
    elif sizes := _size(given, place):
        last = given[place + sizes - 1]
        return replace(first, kind="size", end=last.end), sizes
    elif _range(given, place):
        last, taken = given[place + 2], 3
        assert last.low is not None
        high = last.low
    elif _and_a_half(given, place + 1):
        last, taken = given[place + 2], 3
        assert last.low is not None
        low = high = low + last.low
    tag = replace(first, kind="bare", low=low, high=high, end=last.end)
    made, taken = _with_unit(tag, given, place + taken, taken)
    if made.kind == "amount" and _and_a_half(given, place + taken):
        half = given[place + taken + 1]
        assert half.low is not None
        assert made.low is not None
        more = made.low / low * half.low
        return (
            replace(made, low=made.low + more, high=made.low + more, end=half.end),
            taken + 2,
        )
    return made, taken


def _and_a_half(given: list[Tag], place: int) -> bool:
    """``a litre and a half``, ``one and a half litres``."""
    behind = given[place : place + 2]
    return (
        len(behind) == 2
        and behind[0].plain in ("and", "et", "e", "y", "und")
        and behind[1].kind == "number"
        and behind[1].low is not None
        and 0 < behind[1].low < 1
    )


def _with_unit(tag: Tag, given: list[Tag], place: int, taken: int) -> tuple[Tag, int]:
    unit = given[place] if place < len(given) else None
    if unit is None or unit.kind == "line":
        return tag, taken
    if unit.kind == "percent sign":
        return replace(tag, kind="percent", unit="%", end=unit.end), taken + 1
    if unit.kind == "degree sign":
        after = given[place + 1] if place + 1 < len(given) else None
        if after is not None and after.plain in ("bx", "brix"):
            return replace(tag, end=unit.end), taken + 1
        close = after is not None and after.start - unit.end <= 1
        if close and after is not None and after.plain in ("c", "f"):
            made = _temp(tag, fahrenheit=after.plain == "f")
            return replace(made, end=after.end), taken + 2
        return replace(_temp(tag), end=unit.end), taken + 1
    for kind in ("fahrenheit", "degree"):
        if unit.may_be(kind) and unit.may_be("unit") is None:
            made = _temp(tag, fahrenheit=kind == "fahrenheit")
            return replace(made, end=unit.end), taken + 1
    if (name := unit.may_be("unit")) is not None:
        if name == "pieces" and unit.may_be("piece") is not None:
            return tag, taken
        return replace(_amount(tag, name), end=unit.end), taken + 1
    if (name := unit.may_be("time")) is not None:
        factor = Decimal(MINUTES[name])
        return replace(
            _times(tag, factor), kind="minutes", unit="min", end=unit.end
        ), taken + 1
    if unit.may_be("length") is not None:
        return replace(tag, kind="size", end=unit.end), taken + 1
    return tag, taken


def _amount(tag: Tag, unit: str) -> Tag:
    for name, table in (("g", GRAMS), ("ml", MILLILITRES)):
        if unit in table:
            return replace(_times(tag, Decimal(table[unit])), kind="amount", unit=name)
    return replace(tag, kind="amount", unit=unit)


def _temp(tag: Tag, *, fahrenheit: bool = False) -> Tag:
    assert tag.low is not None
    assert tag.high is not None
    low, high = tag.low, tag.high
    if fahrenheit:
        low, high = ((one - 32) * 5 / 9 for one in (low, high))
    return replace(tag, kind="temp", unit="°C", low=low, high=high)


def _times(tag: Tag, factor: Decimal) -> Tag:
    assert tag.low is not None
    assert tag.high is not None
    return replace(tag, low=tag.low * factor, high=tag.high * factor)


def _dozen(given: list[Tag], place: int) -> bool:
    if place + 1 >= len(given):
        return False
    first, second = given[place], given[place + 1]
    return (
        second.kind == "number"
        and second.low == _DOZEN
        and second.plain.isalpha()
        and (first.low is not None and first.low < _DOZEN)
    )


def _no_amount(given: list[Tag], place: int) -> bool:
    """The 55 of ``flour T55``, the 1 of ``1x batch``."""
    before = given[place - 1] if place else None
    letter = before is not None and len(before.plain) == 1 and before.plain.isalpha()
    if before is not None and letter and before.end == given[place].start:
        return before.kind == "unknown"
    behind = given[place + 1 : place + 3]
    times = (
        bool(behind) and behind[0].plain == "x" and behind[0].start == given[place].end
    )
    return times and not (len(behind) == 2 and behind[1].kind == "number")


def _each(given: list[Tag], place: int) -> tuple[Decimal, ...]:
    """``50/50``: numbers that touch their slashes, one for each of what follows."""
    found = []
    while place < len(given):
        tag = given[place]
        if tag.kind != "number" or tag.low is None:
            break
        found.append(tag.low)
        behind = given[place + 1 : place + 3]
        touches = (
            len(behind) == 2
            and behind[0].plain == "/"
            and behind[0].start == tag.end
            and behind[1].start == behind[0].end
        )
        if not touches:
            break
        place += 2
    return tuple(found) if len(found) > 1 else ()


def _size(given: list[Tag], place: int) -> int:
    """``400 x 300``: how many tags it takes, with its unit."""
    taken = 1
    while (
        place + taken + 1 < len(given)
        and _is_times(given, place + taken)
        and given[place + taken + 1].kind == "number"
    ):
        taken += 2
    if taken == 1:
        return 0
    unit = given[place + taken] if place + taken < len(given) else None
    return taken + 1 if unit is not None and unit.may_be("length") else taken


def _is_times(given: list[Tag], place: int) -> bool:
    """``x`` between two sizes, or the colon of ``1:1``."""
    tag = given[place]
    touches = given[place - 1].end == tag.start and given[place + 1].start == tag.end
    return tag.kind == "times" or tag.plain == "x" or (tag.kind == "colon" and touches)


def _range(given: list[Tag], place: int) -> bool:
    """``540-550 g``, ``50 to 60 g``, ``1 bis 2``: two numbers, the first the smaller."""
    if place + 2 >= len(given):
        return False
    first, between, last = given[place : place + 3]
    behind = given[place + 3 : place + 4]
    warm = bool(behind) and (
        behind[0].kind == "degree sign" or behind[0].may_be("degree") is not None
    )
    if warm and place and given[place - 1].kind == "ingredient":
        return False
    if last.kind != "number" or first.low is None or last.low is None:
        return False
    joins = between.kind == "dash" or (
        between.plain in ("to", "a", "bis", "or", "ou", "o", "oder")
        and place + 3 < len(given)
        and (
            given[place + 3].kind in ("percent sign", "degree sign")
            or bool(given[place + 3].words)
        )
    )
    return joins and first.low < last.low
