"""A promise that a plan does not keep."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Rule = Literal[
    "problem",
    "steps",
    "road",
    "facts",
    "now",
    "duration",
    "segments",
    "horizon",
    "earliest",
    "latest",
    "due",
    "hours",
    "lag",
    "capacity",
    "changeover",
    "hold",
    "who",
    "person",
    "objective",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Violation:
    """A promise that is not kept, worded for the cook."""

    rule: Rule
    text: str
