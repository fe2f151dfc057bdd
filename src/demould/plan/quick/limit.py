"""A limit that no plan gets past, in a cook's words."""

from dataclasses import dataclass
from typing import Literal

Over = Literal["mould", "cold", "tool", "hands", "hours", "delivery", "hold", "wait"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """What does not fit, whose orders it is about, and what would help.

    `id` is the resource, or the step or wait, that it is about.
    """

    over: Over
    id: str
    orders: tuple[str, ...]
    text: str
    help: str
