"""Reading one JSON object so that every fault is kept, with its place."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeVar, cast

if TYPE_CHECKING:
    from collections.abc import Callable

Read = TypeVar("Read")

MOST = 1_000_000_000
"""No number in a problem is larger, so that no sum of them runs over."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One JSON object being read, its place in the file, and all faults so far."""

    keys: Mapping[str, object]
    place: str
    faults: list[str]

    def say(self, key: str, wrong: str) -> None:
        """Keep a fault of the value under ``key``."""
        self.faults.append(f"{self.place}{key}: {wrong}")


def whole(row: Row, key: str, absent: int | None = None) -> int:
    """Read a whole number; without a default it must be there."""
    found = row.keys.get(key, absent)
    if isinstance(found, bool) or not isinstance(found, int):
        row.say(key, f"must be a whole number, not {found!r}")
    elif abs(found) > MOST:
        row.say(
            key, f"{found} is past all counting; at most {MOST} can be planned with"
        )
    else:
        return found
    return 0


def whole_or_none(row: Row, key: str) -> int | None:
    """Read a whole number, None where there is none."""
    return None if row.keys.get(key) is None else whole(row, key)


def flag(row: Row, key: str) -> bool:
    """Read true or false; what is not there is false."""
    found = row.keys.get(key, False)
    if not isinstance(found, bool):
        row.say(key, f"must be true or false, not {found!r}")
    return found is True


def text(row: Row, key: str) -> str:
    """Read a text that must be there."""
    found = row.keys.get(key)
    if isinstance(found, str):
        return found
    row.say(key, f"must be a text, not {found!r}")
    return ""


def text_or_none(row: Row, key: str) -> str | None:
    """Read a text, None where there is none."""
    return None if row.keys.get(key) is None else text(row, key)


def texts(row: Row, key: str) -> tuple[str, ...]:
    """Read a list of texts; a single text is a list of one."""
    match row.keys.get(key):
        case None:
            return ()
        case str(one):
            return (one,)
        case [*many] if all(isinstance(text, str) for text in many):
            return tuple(cast("list[str]", many))
        case found:
            row.say(key, f"must be a text or a list of texts, not {found!r}")
            return ()


def one_of(row: Row, key: str, known: tuple[Read, ...], absent: Read) -> Read:
    """Read one of the known words."""
    found = row.keys.get(key, absent)
    for choice in known:
        if found == choice:
            return choice
    row.say(key, f"must be one of {', '.join(map(str, known))}, not {found!r}")
    return absent


def amounts(row: Row, key: str) -> dict[str, int]:
    """Read names with whole numbers."""
    amounts = inner(row, key)
    return {name: whole(amounts, name) for name in amounts.keys}


def inner(row: Row, key: str) -> Row:
    """Enter an object inside the object; what is not there is empty."""
    found = row.keys.get(key)
    if found is not None and not isinstance(found, Mapping):
        row.say(key, f"must be an object of names and values, not {found!r}")
        found = None
    return Row(keys=found or {}, place=f"{row.place}{key}.", faults=row.faults)


def items(row: Row, key: str) -> Sequence[object]:
    """Read a list; what is not there is empty."""
    found = row.keys.get(key)
    if isinstance(found, list | tuple):
        return found
    if found is not None:
        row.say(key, f"must be a list, not {found!r}")
    return ()


def pairs(row: Row, key: str) -> tuple[tuple[int, int], ...]:
    """Read a list of stretches, two whole numbers each."""
    found = []
    for raw in items(row, key):
        match raw:
            case [int(start), int(end)]:
                found.append((start, end))
            case _:
                row.say(key, f"{raw!r} must be [start, end], in whole minutes")
    return tuple(found)


def each(row: Row, key: str, read: Callable[[Row], Read]) -> tuple[Read, ...]:
    """Read a list of objects."""
    many = []
    for number, raw in enumerate(items(row, key)):
        place = f"{row.place}{key}[{number}]"
        if isinstance(raw, Mapping):
            many.append(read(Row(keys=raw, place=f"{place}.", faults=row.faults)))
        else:
            row.faults.append(f"{place}: must be an object, not {raw!r}")
    return tuple(many)


def named(row: Row, key: str, read: Callable[[Row, str], Read]) -> tuple[Read, ...]:
    """Read an object whose values are objects, by name."""
    rows = inner(row, key)
    return tuple(read(inner(rows, name), name) for name in rows.keys)


def said(written: Mapping[str, object]) -> dict[str, object]:
    """Leave out what is not said, so that a problem reads as short as it is."""
    return {
        key: value
        for key, value in written.items()
        if value is not None and value not in ("", [], {})
    }
