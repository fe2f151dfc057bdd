"""A note as words, numbers and marks, each with its place."""

import re
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from demould.larder.names import plain
from demould.mise.number import GAP

Kind = Literal["word", "number", "mark", "line"]

_FRACTIONS = {"½": "0.5", "¼": "0.25", "¾": "0.75", "⅓": "0.333", "⅔": "0.667"}
_PATTERN = re.compile(
    rf"(?P<line>\r\n|[\n\r\u2028\x0b\x0c])"
    rf"|(?P<number>[{''.join(_FRACTIONS)}]|(?<!\d)[1-9]/[2-9](?!\d)"
    rf"|\d{{1,3}}(?:[{GAP}]\d{{3}})+(?![\d.,]?\d)|\d+(?:[.,]\d+)*"
    rf"(?:[{''.join(_FRACTIONS)}])?)"
    r"|(?P<word>[^\W\d_]+)"
    r"|(?P<mark>\S)"
)
LONGEST_NUMBER = 12


@dataclass(frozen=True, slots=True)
class Token:
    """One word, number, mark or line end. `plain` is the word as it is compared.

    `shortened` where a point stands right behind a word.
    """

    text: str
    start: int
    end: int
    kind: Kind
    plain: str
    shortened: bool = False


def tokens_of(text: str) -> list[Token]:
    """Every token of a text, in order; what lies between them is blank."""
    found = []
    for match in _PATTERN.finditer(text):
        kind = match.lastgroup
        assert kind in ("word", "number", "mark", "line")
        bare = plain(match[0]) if kind == "word" else match[0]
        point = kind == "word" and text.startswith(".", match.end())
        found.append(Token(match[0], match.start(), match.end(), kind, bare, point))  # type: ignore[arg-type]  # the groups are the kinds
    return found


def number_of(text: str) -> Decimal | None:
    """The number of a token; None where it could be read in two ways.

    >>> number_of("1 200"), number_of("0,5"), number_of("½"), number_of("3/4")
    (Decimal('1200'), Decimal('0.5'), Decimal('0.5'), Decimal('0.75'))
    >>> number_of("1.2.3") is None
    True
    """
    if text in _FRACTIONS:
        return Decimal(_FRACTIONS[text])
    if text[-1] in _FRACTIONS:
        whole = number_of(text[:-1])
        return None if whole is None else whole + Decimal(_FRACTIONS[text[-1]])
    if "/" in text:
        above, _, below = text.partition("/")
        return Decimal(above) / Decimal(below)
    bare = re.sub(rf"[{GAP}]", "", text).replace(",", ".")
    if bare.count(".") > 1 or len(bare) > LONGEST_NUMBER:
        return None
    return Decimal(bare)
