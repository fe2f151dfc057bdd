"""What somebody wants to put in instead: an ingredient, or one with sugar in it."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from demould.mise.number import NUMBER, read_number
from demould.mise.problem import UnreadableError
from demould.mise.resolve import resolve_line
from demould.mise.words import Words

_SUGARED = re.compile(rf"(?P<what>.+?)\s*\+\s*(?P<share>{NUMBER})\s*%\s*(?P<sugar>.+)")
_FROZEN = re.compile(r"frozen\s+(?P<what>.+)", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Other:
    """The ingredient's id; with `share` of it `sugar` where that is mixed in [%].

    `frozen` where it is the same thing from the freezer.
    """

    ingredient: str
    share: float = 0.0
    sugar: str = ""
    frozen: bool = False


def read_other(text: str, own: Iterable[str]) -> Other:
    """``cream 30 %``, ``blackcurrant purée + 10 % sugar``, ``frozen rhubarb``.

    Raises
    ------
    UnreadableError
        If nothing is called that.
    """
    keys = tuple(own)
    found = _SUGARED.fullmatch(text.strip())
    if found:
        share = float(read_number(found["share"]))
        if not 0 < share < 100:
            raise UnreadableError(
                Words("{share:g} % of it cannot be sugar", share=share),
                Words("Write it like raspberry purée + 10 % sugar"),
            )
        return Other(
            ingredient=resolve_line(found["what"], keys)[0],
            share=share,
            sugar=resolve_line(found["sugar"], keys)[0],
        )
    frozen = _FROZEN.fullmatch(text.strip())
    try:
        return Other(ingredient=resolve_line(text, keys)[0], frozen=frozen is not None)
    except UnreadableError:
        if frozen is None:
            raise
        return Other(ingredient=resolve_line(frozen["what"], keys)[0], frozen=True)
