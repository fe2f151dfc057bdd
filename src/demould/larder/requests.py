"""What guests ask for: what must not be in it, by the words they have for it."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from demould.larder.names import plain
from demould.larder.table import rows, several


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """One request, by its name.

    `avoid` are allergens, or ``gelatin``, ``pork``, ``alcohol``, ``honey``, ``raw egg``;
    `diet` is the diet every ingredient must be fit for, "" where none is meant.
    """

    name: str
    names: tuple[str, ...]
    avoid: tuple[str, ...]
    diet: str
    note: str


@cache
def requests() -> Mapping[str, Request]:
    """Every request, by name."""
    return {
        row["name"]: Request(
            name=row["name"],
            names=several(row["names"]),
            avoid=several(row["avoid"]),
            diet=row["diet"],
            note=row["note"],
        )
        for row in rows("requests")
    }


def find_request(text: str) -> Request | None:
    """The request somebody means, or None.

    >>> find_request("Nut allergy").name
    'no nuts'
    """
    wanted = plain(text)
    for one in requests().values():
        if wanted in map(plain, (one.name, *one.names)):
            return one
    return None
