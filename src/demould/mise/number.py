"""A number as people write it: comma and point are decimal, a space parts thousands."""

import re
from decimal import Decimal

from demould.mise.problem import UnreadableError
from demould.mise.words import Words

GAP = " \u00a0\u202f\u2009"
MINUS = "-\u2212\u2013"

NUMBER = rf"[{MINUS}+]?(?:\d{{1,3}}(?:[{GAP}]\d{{3}})+(?!\d)|\d+)(?:[.,]\d+)*"
"""What looks like a number, to build patterns with. It may still be an odd one."""

_ODD = re.compile(rf"(?:\d[.,]\d+[.,]\d)|(?:[{GAP}]\d{{3}}[.,]\d+[.,])")
_LONGEST = 40
_SLOT = {ord(mark): "-" for mark in MINUS} | {ord(mark): None for mark in GAP}


def read_number(text: str) -> Decimal:
    """The number a text is.

    Raises
    ------
    UnreadableError
        If it is none, or has two decimal marks.

    >>> read_number("1 200"), read_number("0,62"), read_number("\u221218")
    (Decimal('1200'), Decimal('0.62'), Decimal('-18'))
    """
    text = text.strip()
    if not re.fullmatch(NUMBER, text):
        raise UnreadableError(
            Words("{found!r} is not a number", found=text),
            Words("Write it in figures, for example 12 or 0.5"),
        )
    if len(text) > _LONGEST:
        raise UnreadableError(
            Words("{found} is longer than any number in a kitchen", found=text),
            Words("Look at it again; leave out needless digits"),
        )
    if _ODD.search(text):
        raise UnreadableError(
            Words("{found!r} has more than one decimal mark", found=text),
            Words("Write thousands with a space and one comma or point: 1 200.5"),
        )
    return Decimal(text.translate(_SLOT).replace(",", "."))


def has_thousands_look(text: str) -> bool:
    """Whether a comma or point could part thousands as well as decimals.

    >>> has_thousands_look("1.200"), has_thousands_look("0.200")
    (True, False)
    """
    return bool(re.fullmatch(rf"[{MINUS}+]?[1-9]\d{{0,2}}[.,]\d{{3}}", text.strip()))


def written(value: float | Decimal) -> str:
    """A number the way `read_number` reads it back, without needless digits.

    >>> written(2.0), written(0.62), written(1e-7)
    ('2', '0.62', '0.0000001')
    """
    plain = format(Decimal(str(value)), "f")
    return plain.rstrip("0").rstrip(".") if "." in plain else plain
