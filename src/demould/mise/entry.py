"""What happened, written down once and never changed: a plan agreed, a step done.

An entry has an id of its own, made where it was typed. Who was wrong writes another entry
that takes the first one back.
"""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class AgreedStep:
    """One step of an agreed plan on the kitchen's clock; both moments are aware."""

    step: str
    start: datetime
    end: datetime
    who: tuple[str, ...] = ()
    took: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Agreed:
    """A plan the kitchen has agreed on, with the hash of what it was made from."""

    id: str
    at: datetime
    inputs: str
    steps: tuple[AgreedStep, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Happened:
    """A step begun, and over where `end` is not None; both moments are aware."""

    id: str
    at: datetime
    step: str
    start: datetime
    end: datetime | None = None

    def __post_init__(self) -> None:
        if self.end is not None and self.end < self.start:
            raise ValueError(
                f"{self.step} would be over at {self.end:%a %H:%M}, before it begins"
                f" at {self.start:%a %H:%M}"
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenBack:
    """Another entry was wrong: it counts no more."""

    id: str
    at: datetime
    entry: str


Entry = Agreed | Happened | TakenBack
Entries = tuple[Entry, ...]
