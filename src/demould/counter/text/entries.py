"""The entries of a kitchen folder: one JSON object a line, only ever added to."""

import json
import os
from collections.abc import Callable, Mapping
from datetime import datetime
from pathlib import Path

from demould.mise.entry import (
    Agreed,
    AgreedStep,
    Entries,
    Entry,
    Happened,
    TakenBack,
)
from demould.mise.problem import Problem
from demould.mise.words import Words

ENTRIES = Path(".demould") / "entries.jsonl"


def read_entries(folder: Path) -> tuple[Entries, tuple[Problem, ...]]:
    """Read every entry of a kitchen folder, and say which lines are none."""
    try:
        written = (folder / ENTRIES).read_bytes()
    except FileNotFoundError:
        return (), ()
    found: list[Entry] = []
    amiss: list[Problem] = []
    for number, line in enumerate(written.split(b"\n"), start=1):
        if not line.strip():
            continue
        try:
            found.append(_entry(json.loads(line)))
        except (ValueError, KeyError, TypeError, AttributeError):
            amiss.append(
                Problem(
                    ENTRIES.as_posix(),
                    number,
                    1,
                    Words(
                        "this line is no entry: it was cut short, or changed by hand"
                    ),
                    Words("Take the line away; the others count without it"),
                )
            )
    return tuple(found), tuple(amiss)


def add_entry(folder: Path, entry: Entry) -> None:
    """Add one entry; it is on the disk when this is over."""
    file = folder / ENTRIES
    file.parent.mkdir(exist_ok=True)
    before = file.read_bytes() if file.exists() else b""
    torn = bool(before) and not before.endswith(b"\n")
    line = json.dumps(_written(entry), ensure_ascii=False)
    with file.open("ab") as opened:
        opened.write((b"\n" if torn else b"") + line.encode() + b"\n")
        opened.flush()
        os.fsync(opened.fileno())


def _written(entry: Entry) -> Mapping[str, object]:
    head = {"id": entry.id, "at": _iso(entry.at)}
    match entry:
        case Agreed():
            steps = [
                {
                    "step": one.step,
                    "start": _iso(one.start),
                    "end": _iso(one.end),
                    "who": list(one.who),
                    "took": one.took,
                }
                for one in entry.steps
            ]
            return {"kind": "agreed", **head, "inputs": entry.inputs, "steps": steps}
        case Happened():
            end = _iso(entry.end) if entry.end else None
            return {
                "kind": "happened",
                **head,
                "step": entry.step,
                "start": _iso(entry.start),
                "end": end,
            }
        case TakenBack():
            return {"kind": "taken back", **head, "entry": entry.entry}


def _entry(raw: Mapping[str, object]) -> Entry:
    return _READ[str(raw["kind"])](raw)


def _agreed(raw: Mapping[str, object]) -> Agreed:
    steps = raw["steps"]
    if not isinstance(steps, list):
        raise TypeError("steps must be a list")
    return Agreed(
        id=_text(raw, "id"),
        at=_moment(raw, "at"),
        inputs=_text(raw, "inputs"),
        steps=tuple(
            AgreedStep(
                step=_text(one, "step"),
                start=_moment(one, "start"),
                end=_moment(one, "end"),
                who=tuple(str(name) for name in one["who"]),
                took=None if one["took"] is None else _text(one, "took"),
            )
            for one in steps
        ),
    )


def _happened(raw: Mapping[str, object]) -> Happened:
    return Happened(
        id=_text(raw, "id"),
        at=_moment(raw, "at"),
        step=_text(raw, "step"),
        start=_moment(raw, "start"),
        end=None if raw["end"] is None else _moment(raw, "end"),
    )


def _taken_back(raw: Mapping[str, object]) -> TakenBack:
    return TakenBack(
        id=_text(raw, "id"), at=_moment(raw, "at"), entry=_text(raw, "entry")
    )


_READ: Mapping[str, Callable[[Mapping[str, object]], Entry]] = {
    "agreed": _agreed,
    "happened": _happened,
    "taken back": _taken_back,
}


def _iso(moment: datetime) -> str:
    return moment.isoformat()


def _text(raw: Mapping[str, object], key: str) -> str:
    found = raw[key]
    if not isinstance(found, str):
        raise TypeError(f"{key} must be a text")
    return found


def _moment(raw: Mapping[str, object], key: str) -> datetime:
    moment = datetime.fromisoformat(_text(raw, key))
    if moment.tzinfo is None:
        raise ValueError(f"{key} must say its zone")
    return moment
