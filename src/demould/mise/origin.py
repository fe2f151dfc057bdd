"""How a number is known, from the words in brackets after it."""

import re
from contextlib import suppress
from datetime import date
from decimal import Decimal

from demould.mise.figure import Assumed, Line, Measured, Origin, Stated
from demould.mise.number import NUMBER, read_number, written
from demould.mise.problem import UnreadableError
from demould.mise.words import Words

_TAIL = re.compile(r"(.*?)\s*\(([^()]*)\)", re.DOTALL)
_RANGE = re.compile(rf"({NUMBER})\s*(?:to|\u2013)\s*({NUMBER})\s*[^\s,]*")
_TIMES = re.compile(r"(\d+)\s*(?:times|readings?)")


def split_origin(text: str) -> tuple[str, str]:
    """An amount and the words in the brackets after it, without the brackets.

    >>> split_origin("90 ml (measured 3 times)")
    ('90 ml', 'measured 3 times')
    """
    found = _TAIL.fullmatch(text.strip())
    return (found[1], found[2].strip()) if found else (text.strip(), "")


def origin_of(
    words: str,
    value: float,
    factor: Decimal,
    name: str,
    usual: tuple[float, float] | None,
    line: Line | None,
) -> Origin:
    """What the words say; none at all mean stated.

    Parameters
    ----------
    words
        ``measured 3 times, 2026-11-16``, ``stated by the maker``,
        ``assumed 0.57 to 0.66, as last year``.
    value
        The number they are about, in its canonical unit.
    factor
        What one unit as written is in the canonical unit; a range is in the former.
    name, usual, line
        As for a figure.

    Raises
    ------
    UnreadableError
        If they say none of the three, or a range is missing, turned or elsewhere.
    """
    how = re.split(r"[\s,]", words, maxsplit=1)[0]
    rest = words[len(how) :].lstrip(" ,")
    match how.casefold():
        case "":
            return Stated(line=line)
        case "stated":
            return Stated(by=re.sub(r"^by\s+", "", rest.strip()), line=line)
        case "measured":
            return _measured(rest, line)
        case "assumed":
            return _assumed(rest.strip(), value, factor, name, usual, line)
    raise UnreadableError(
        Words(
            "'({words})' does not say how the {name} is known", words=words, name=name
        ),
        Words("Write (measured), (stated) or (assumed LOW to HIGH)"),
    )


def _measured(rest: str, line: Line | None) -> Measured:
    readings, on = 1, None
    for part in filter(None, (part.strip() for part in rest.split(","))):
        day = None
        with suppress(ValueError):
            day = date.fromisoformat(part)
        if day:
            on = day
        elif (times := _TIMES.fullmatch(part)) and int(times[1]) > 0:
            readings = int(times[1])
        else:
            raise UnreadableError(
                Words("{part!r} after 'measured' is no date and no count", part=part),
                Words("Write it like (measured 3 times, 2026-11-16)"),
            )
    return Measured(on=on, readings=readings, line=line)


def _assumed(
    rest: str,
    value: float,
    factor: Decimal,
    name: str,
    usual: tuple[float, float] | None,
    line: Line | None,
) -> Assumed:
    span, _, source = rest.partition(", ")
    found = _RANGE.fullmatch(span)
    if found:
        low, high = (float(read_number(end) * factor) for end in found.groups())
    elif usual and not span:
        low, high = usual
    else:
        raise UnreadableError(
            Words("nobody says between which bounds the {name} is assumed", name=name),
            Words("Write (assumed LOW to HIGH) with the two numbers"),
        )
    if not low <= value <= high:
        raise UnreadableError(
            Words(
                "the {name} is assumed between {low} and {high}, and {value} is outside",
                name=name,
                low=written(Decimal(str(low)) / factor),
                high=written(Decimal(str(high)) / factor),
                value=written(Decimal(str(value)) / factor),
            ),
            Words("Write the smaller bound first, and the number between the two"),
        )
    return Assumed(low=low, high=high, source=source.strip(), line=line)
