"""What to start from where nobody has said: by kind of component, and by vague name."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from demould.larder.names import plain
from demould.larder.table import by_name, named, rows, several

WHOLE_PIECE = "whole piece"
ANY_KIND = "component"


@dataclass(frozen=True, slots=True, kw_only=True)
class UsualStep:
    """A step as it is usual, in the words of a dessert's file.

    `actions` are what of a note it stands for; `most` is how long the wait may be.
    """

    step: str
    working: str
    waiting: str
    most: str
    rest: str
    actions: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Vague:
    """A name that does not say which: what is taken, its ends, and what to ask.

    `takes`, `low` and `high` are ids of the ingredient table.
    """

    name: str
    takes: str
    low: str
    high: str
    asks: str
    source: str


@cache
def start(kind: str) -> Mapping[str, str]:
    """What a component of this kind starts from, as its file would say it.

    >>> start("sponge")["density"]
    '0.45 g/ml (assumed 0.35 to 0.5)'
    """
    return {
        row["key"]: row["says"]
        for row in rows("starts")
        if row["kind"] == (kind or ANY_KIND)
    } or start(ANY_KIND)


@cache
def usual_steps(kind: str) -> tuple[UsualStep, ...]:
    """The steps that are usual for this kind, or for a whole piece."""
    found = tuple(
        UsualStep(
            step=row["step"],
            working=row["working"],
            waiting=row["waiting"],
            most=row["most"],
            rest=row["rest"],
            actions=several(row["actions"]),
        )
        for row in rows("usual_steps")
        if row["kind"] == (kind or ANY_KIND)
    )
    return found or usual_steps(ANY_KIND)


@cache
def vague(name: str) -> Vague | None:
    """What is not said by this name, or None where it says all.

    >>> vague("white couv.").asks
    'how much fat has the white couverture? (on its packet)'
    """
    found = named("vague_names").get(plain(name))
    if found is None:
        return None
    row = by_name("vague_names")[found][0]
    return Vague(
        name=row["name"],
        takes=row["takes"],
        low=row["low"],
        high=row["high"],
        asks=row["asks"],
        source=row["source"],
    )
