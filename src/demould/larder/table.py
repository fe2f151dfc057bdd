"""The packaged tables as rows of text, and rows as facts."""

import csv
from collections.abc import Iterable
from functools import cache
from importlib.resources import files

from demould.larder.fact import Fact, Source
from demould.larder.names import plain

Row = dict[str, str]


@cache
def rows(table: str) -> tuple[Row, ...]:
    """Every row of ``tables/<table>.csv``, in the order of the file.

    Raises
    ------
    FileNotFoundError
        If there is no such table.
    """
    text = (files("demould.larder") / "tables" / f"{table}.csv").read_text("utf-8")
    return tuple(csv.DictReader(text.splitlines(), strict=True))


@cache
def sources() -> dict[str, Source]:
    """Where the facts come from, by key."""
    import tomllib  # few commands name a source; all commands count

    text = (files("demould.larder") / "sources.toml").read_text("utf-8")
    return {
        key: Source(
            key=key,
            reference=entry["reference"],
            year=entry.get("year"),
            licence=entry["licence"],
            known=entry["known"],
            reason=entry.get("reason", ""),
        )
        for key, entry in tomllib.loads(text).items()
    }


def several(cell: str) -> tuple[str, ...]:
    """What stands in one cell between ``|``.

    >>> several("milk|soya"), several("")
    (('milk', 'soya'), ())
    """
    return tuple(cell.split("|")) if cell else ()


def fact(row: Row) -> Fact:
    """One row of a ``name, quantity, value, unit, low, high, source, page`` table."""
    return Fact(
        value=float(row["value"]),
        unit=row["unit"],
        low=float(row["low"]),
        high=float(row["high"]),
        source=row["source"],
        page=row.get("page", ""),
        note=row.get("note", ""),
    )


@cache
def by_name(table: str) -> dict[str, tuple[Row, ...]]:
    """The rows of a table that belong to one name, in the order of the file."""
    found: dict[str, list[Row]] = {}
    for row in rows(table):
        found.setdefault(row["name"], []).append(row)
    return {name: tuple(group) for name, group in found.items()}


def facts(group: Iterable[Row]) -> dict[str, Fact]:
    """The facts of one name, by quantity."""
    return {row["quantity"]: fact(row) for row in group}


def notes(group: Iterable[Row]) -> str:
    """What the rows of one name say of themselves, each remark once."""
    return "; ".join(dict.fromkeys(row["note"] for row in group if row["note"]))


@cache
def named(table: str) -> dict[str, str]:
    """The name a table uses for each plain name that people use."""
    return {
        plain(spoken): row["name"]
        for row in rows(table)
        for spoken in (row["name"], *several(row["names"]))
    }
