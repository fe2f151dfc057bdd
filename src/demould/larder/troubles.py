"""What goes wrong: signs as cooks name them, their causes, the readings that decide."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from demould.larder.names import nearest, plain
from demould.larder.table import Row, named, rows, several


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """One cause of a sign.

    It is not the cause where `reading` lies from `fine_from` to `fine_to` (None: open);
    "" where only a look decides. `weight` is how often it is the one, 5 the most.
    """

    name: str
    reading: str
    unit: str
    fine_from: float | None
    fine_to: float | None
    weight: float
    test: str
    prevent: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sign:
    """What a cook sees. `of` are the kinds of component it is seen on; none means any."""

    name: str
    names: tuple[str, ...]
    of: tuple[str, ...]
    rescue: str
    caution: str
    causes: tuple[Cause, ...]
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingKind:
    """One thing that can be read off: its words and its unit."""

    name: str
    names: tuple[str, ...]
    unit: str


@cache
def signs() -> Mapping[str, Sign]:
    """Every sign, by name."""
    return {row["name"]: _sign(row) for row in rows("signs")}


@cache
def reading_kinds() -> Mapping[str, ReadingKind]:
    """What a cook can read off, by every word for it, plain."""
    kinds = [
        ReadingKind(name=row["name"], names=several(row["names"]), unit=row["unit"])
        for row in rows("readings")
    ]
    return {plain(word): kind for kind in kinds for word in (kind.name, *kind.names)}


def find_sign(text: str) -> Sign | None:
    """The sign a text means: its name, or the one that shares most words; or None.

    >>> find_sign("the glaze slid off").name
    'glaze slides'
    """
    spoken = named("signs")
    said = plain(text)
    if said in spoken:
        return signs()[spoken[said]]
    words = {_stem(word) for word in said.split()} - _SMALL
    shared = {
        name: len(words & {_stem(word) for word in name.split()})
        / max(len(words), len(name.split()))
        for name in spoken
    }
    best = max(shared, key=lambda name: shared[name], default="")
    return signs()[spoken[best]] if shared.get(best, 0) >= _ENOUGH else None


def near_signs(text: str, n: int = 4) -> tuple[str, ...]:
    """Names of the signs nearest to a text, best first."""
    spoken = named("signs")
    found = nearest(plain(text), spoken, n)
    words = {_stem(word) for word in plain(text).split()} - _SMALL
    sharing = [
        name for name in spoken if words & {_stem(word) for word in name.split()}
    ]
    return tuple(dict.fromkeys(spoken[name] for name in (*found, *sharing)))[:n]


_ENOUGH = 0.5
_SMALL = {"the", "it", "is", "my", "a", "of", "on", "in", "has", "to", "not", "too"}


def _stem(word: str) -> str:
    for ending in ("ing", "ed", "es", "s"):
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            return word.removesuffix(ending)
    return word


def _sign(row: Row) -> Sign:
    return Sign(
        name=row["name"],
        names=several(row["names"]),
        of=several(row["of"]),
        rescue=row["rescue"],
        caution=row["caution"],
        causes=tuple(
            _cause(one) for one in rows("causes") if one["sign"] == row["name"]
        ),
        source=row["source"],
    )


def _cause(row: Row) -> Cause:
    return Cause(
        name=row["cause"],
        reading=row["reading"],
        unit=row["unit"],
        fine_from=float(row["fine_from"]) if row["fine_from"] else None,
        fine_to=float(row["fine_to"]) if row["fine_to"] else None,
        weight=float(row["weight"]),
        test=row["test"],
        prevent=row["prevent"],
        source=row["source"],
    )
