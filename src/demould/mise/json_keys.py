"""What a machine wrote under each key, and everything that is wrong with it."""

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches

NOTHING = object()


@dataclass(frozen=True, slots=True, kw_only=True)
class Keys:
    """An object of the case, its place in it (``shape.``), and the faults found so far.

    The list of faults is shared by all objects of one case; readers add to it and give
    something harmless back, so that one fault never hides the next.
    """

    said: Mapping[str, object]
    place: str
    faults: list[str]

    def wrong(self, name: str, fault: str) -> None:
        """Add a sentence about one key."""
        self.faults.append(f"{self.place}{name}: {fault}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Bounds:
    """What a number must be: more than, at least, at most; and its unit."""

    above: float = -math.inf
    least: float = -math.inf
    most: float = math.inf
    unit: str = ""

    def __str__(self) -> str:
        unit = f" {self.unit}" if self.unit else ""
        parts = [
            f"more than {self.above:g}{unit}" if self.above > -math.inf else "",
            f"at least {self.least:g}{unit}" if self.least > -math.inf else "",
            f"at most {self.most:g}{unit}" if self.most < math.inf else "",
        ]
        return " and ".join(part for part in parts if part)

    def holds(self, value: float) -> bool:
        """Whether a number is within."""
        return self.above < value and self.least <= value <= self.most


ANY = Bounds()


def only(keys: Keys, known: Collection[str]) -> None:
    """Refuse every key that is not known, by its name."""
    for name in keys.said:
        if name not in known:
            near = get_close_matches(str(name), list(known), n=1)
            hint = f"perhaps {near[0]!r} is meant" if near else "leave it out"
            keys.wrong(
                str(name), f"this key is not known ({', '.join(known)} are); {hint}"
            )


def number(
    keys: Keys, name: str, bounds: Bounds = ANY, default: float | None = None
) -> float:
    """Read a number within bounds; without a default it must be there."""
    value = keys.said.get(name, NOTHING)
    if value is NOTHING and default is not None:
        return default
    if value is NOTHING:
        must = f", {bounds}" if str(bounds) else ""
        keys.wrong(name, f"this key is missing; write a number{must}")
        return math.nan
    return as_number(keys, name, value, bounds)


def as_number(keys: Keys, name: str, value: object, bounds: Bounds = ANY) -> float:
    """Give what was written as a number within bounds; not a number if it is none."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        must = f", {bounds}" if str(bounds) else ""
        keys.wrong(name, f"{shown(value)} is not a number; write one{must}")
        return math.nan
    if not math.isfinite(value):
        keys.wrong(name, f"{value} is not a number to reckon with; write a finite one")
        return math.nan
    if not bounds.holds(value):
        keys.wrong(name, f"{value:g} is out of bounds; it must be {bounds}")
        return math.nan
    return float(value)


def text(keys: Keys, name: str, known: Collection[str] = ()) -> str:
    """Read a text, one of those known if any are given."""
    value = keys.said.get(name, NOTHING)
    if value is NOTHING:
        keys.wrong(name, f"this key is missing; write {_choice(known)}")
        return ""
    if not isinstance(value, str) or (known and value not in known):
        keys.wrong(name, f"{shown(value)} is not known; write {_choice(known)}")
        return ""
    return value


def inner(keys: Keys, name: str) -> Keys | None:
    """Give the object under a key; None, and a fault, if there is none."""
    value = keys.said.get(name, NOTHING)
    if value is NOTHING:
        keys.wrong(name, "this key is missing; write an object in braces")
        return None
    return as_keys(keys, name, value)


def as_keys(keys: Keys, name: str, value: object) -> Keys | None:
    """Give what was written as an object; None, and a fault, if it is none."""
    if not isinstance(value, Mapping):
        keys.wrong(name, f"{shown(value)} is no object; write one in braces")
        return None
    return Keys(said=value, place=f"{keys.place}{name}.", faults=keys.faults)


def numbers(keys: Keys, name: str, bounds: Bounds = ANY) -> list[float]:
    """Read a list of numbers; an empty one where the key is not there."""
    value = keys.said.get(name, ())
    if not _is_list(value):
        keys.wrong(name, f"{shown(value)} is no list; write numbers in brackets")
        return []
    return [as_number(keys, f"{name}[{n}]", each, bounds) for n, each in _each(value)]


def pairs(keys: Keys, name: str, of: str) -> list[tuple[float, float]]:
    """Read a list of pairs of numbers; `of` says what they are."""
    value = keys.said.get(name, NOTHING)
    if not _is_list(value):
        found = "this key is missing" if value is NOTHING else f"{shown(value)} is none"
        keys.wrong(name, f"{found}; write a list of {of}")
        return []
    read: list[tuple[float, float]] = []
    for n, both in _each(value):
        if not isinstance(both, Sequence) or isinstance(both, str) or len(both) != 2:
            keys.wrong(
                f"{name}[{n}]", f"{shown(both)} is no pair; write a list of {of}"
            )
            continue
        first = as_number(keys, f"{name}[{n}][0]", both[0])
        read.append((first, as_number(keys, f"{name}[{n}][1]", both[1])))
    return read


def shown(value: object) -> str:
    """A value as it stands in a sentence, short."""
    written = (
        {True: "true", False: "false"}.get(value) if isinstance(value, bool) else None
    )
    said = written or ("null" if value is None else repr(value))
    return said if len(said) <= 40 else said[:37] + "..."


def _is_list(value: object) -> bool:
    return isinstance(value, Sequence) and not isinstance(value, str)


def _each(value: object) -> list[tuple[int, object]]:
    return list(enumerate(value)) if isinstance(value, Sequence) else []


def _choice(known: Collection[str]) -> str:
    return " or ".join(repr(name) for name in known) if known else "a text"
