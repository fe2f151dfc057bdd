"""What may hurt somebody, where it matters: at an ingredient, a step or a tool."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from typing import Literal, cast

from demould.larder.names import plain
from demould.larder.table import rows, several

Where = Literal["ingredient", "step", "tool"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One caution. `short` is for a line of the week, `says` for the bench."""

    name: str
    where: Where
    words: tuple[str, ...]
    short: str
    says: str
    source: str


@cache
def cautions() -> tuple[Caution, ...]:
    """Every caution, in the order of the table."""
    return tuple(
        Caution(
            name=row["name"],
            where=cast(Where, row["where"]),
            words=tuple(map(plain, several(row["words"]))),
            short=row["short"],
            says=row["says"],
            source=row["source"],
        )
        for row in rows("cautions")
    )


def cautions_at(where: Where, texts: Iterable[str]) -> tuple[Caution, ...]:
    """The cautions whose words stand in what is written there, each once.

    >>> [one.name for one in cautions_at("step", ["spray, light, then spatter"])]
    ['spray']
    """
    told = [f" {plain(text)} " for text in texts]
    return tuple(
        one
        for one in cautions()
        if one.where == where
        and any(f" {word} " in text for word in one.words for text in told)
    )
