"""Rules of cooling and cold holding, each to be confirmed with one's own plan."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal, cast

from demould.larder.fact import Fact
from demould.larder.table import by_name, facts, rows, several

Kind = Literal["cooling", "hold", "frozen"]


@dataclass(frozen=True, slots=True, kw_only=True)
class HygieneRule:
    """One rule. `stages` are °C to reach and minutes from the start to reach it.

    A hold is at `limit_c` or colder; up to `brief_c`, or once for `allowed_min`, it may
    be warmer. Readings further apart than `gap_min` leave a gap.
    """

    name: str
    kind: Kind
    start_c: float | None
    stages: tuple[tuple[float, float], ...]
    limit_c: float | None
    brief_c: float | None
    allowed_min: float
    gap_min: float
    says: str
    source: str
    page: str
    note: str


@cache
def hygiene_rules() -> Mapping[str, HygieneRule]:
    """Every rule, by name."""
    return {
        row["name"]: HygieneRule(
            name=row["name"],
            kind=cast(Kind, row["kind"]),
            start_c=_number(row["start_c"]),
            stages=tuple(map(_stage, several(row["stages"]))),
            limit_c=_number(row["limit_c"]),
            brief_c=_number(row["brief_c"]),
            allowed_min=_number(row["allowed_min"]) or 0.0,
            gap_min=float(row["gap_min"]),
            says=row["says"],
            source=row["source"],
            page=row["page"],
            note=row["note"],
        )
        for row in rows("hygiene_rules")
    }


def growth_facts() -> Mapping[str, Fact]:
    """What a growth estimate of Listeria monocytogenes rests on, by quantity."""
    return facts(by_name("growth")["listeria monocytogenes"])


def _stage(text: str) -> tuple[float, float]:
    to_c, within = text.split(":")
    return float(to_c), float(within)


def _number(cell: str) -> float | None:
    return float(cell) if cell else None
