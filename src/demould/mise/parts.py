"""A line of text in its parts, each with its place in the line."""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from demould.mise.problem import UnreadableError
from demould.mise.words import Words


@dataclass(frozen=True, slots=True)
class Part:
    """A piece of a line without the blanks around it; `column` counts from 0."""

    text: str
    column: int


def parts_of(text: str, mark: str = ";") -> tuple[Part, ...]:
    """What stands between marks, brackets kept whole, empty parts left out.

    A comma parts only where a blank follows: 0,8 mm is one thing.

    >>> [part.text for part in parts_of("dip; film 0,8 mm (assumed 0.6; 1)")]
    ['dip', 'film 0,8 mm (assumed 0.6; 1)']
    >>> [part.column for part in parts_of("10 min, stands 2,5 h", ",")]
    [0, 8]
    """
    found: list[Part] = []
    depth, start = 0, 0
    for place, letter in enumerate(text):
        depth = max(0, depth + (letter == "(") - (letter == ")"))
        comma = mark != "," or text[place + 1 : place + 2].strip() == ""
        if letter == mark and not depth and comma:
            found.extend(_trimmed(text[start:place], start))
            start = place + 1
    found.extend(_trimmed(text[start:], start))
    return tuple(found)


def name_and_rest(text: str) -> tuple[Part, tuple[Part, ...]]:
    """The first part of a line, which names it, and the others.

    Raises
    ------
    UnreadableError
        If nothing stands between the marks.
    """
    parts = parts_of(text)
    if not parts:
        raise UnreadableError(
            Words("{found!r} says nothing", found=text),
            Words("Write a name first, or take the line away"),
        )
    return parts[0], parts[1:]


def _trimmed(text: str, start: int) -> Iterator[Part]:
    if text.strip():
        yield Part(text.strip(), start + len(text) - len(text.lstrip()))


@contextmanager
def at_column(column: int) -> Iterator[None]:
    """Move the place of what cannot be read: it was read from a part of a line."""
    try:
        yield
    except UnreadableError as fault:
        raise UnreadableError(
            fault.wrong, fault.remedy, fault.column + column
        ) from fault


def after(text: str, *openings: str) -> str | None:
    """What follows one of the openings, case aside, or None.

    >>> after("Needs ganache, base", "needs")
    'ganache, base'
    """
    for opening in openings:
        found = re.fullmatch(rf"{re.escape(opening)}\s+(\S.*)", text, re.IGNORECASE)
        if found:
            return found[1]
    return None
