"""Entries go in as lines and come out as they went in, whatever stands around them."""

from datetime import UTC, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from demould.counter.text.entries import ENTRIES, add_entry, read_entries
from demould.mise.entry import Agreed, AgreedStep, Entry, Happened, TakenBack

NOW = datetime(2026, 10, 25, 1, 30, tzinfo=UTC)
STEP = AgreedStep(
    step="dinner.river-pebble.as-written.piece.1.fill",
    start=NOW,
    end=NOW,
    who=("Mirel", "Jonne"),
    took="blast",
)
ALL: tuple[Entry, ...] = (
    Agreed(id="a", at=NOW, inputs="0f3c", steps=(STEP,)),
    Happened(id="b", at=NOW, step=STEP.step, start=NOW, end=None),
    Happened(id="c", at=NOW, step='é; "x"\n', start=NOW, end=NOW),
    TakenBack(id="d", at=NOW, entry="c"),
)


def test_what_is_added_is_read_back_in_order(tmp_path: Path) -> None:
    assert read_entries(tmp_path) == ((), ())
    for entry in ALL:
        add_entry(tmp_path, entry)
    assert read_entries(tmp_path) == (ALL, ())


def test_a_line_cut_short_is_said_and_hides_nothing(tmp_path: Path) -> None:
    """The power went while the second line was written; the third begins anew."""
    add_entry(tmp_path, ALL[0])
    file = tmp_path / ENTRIES
    file.write_bytes(file.read_bytes() + b'{"kind": "happ')
    add_entry(tmp_path, ALL[3])
    found, problems = read_entries(tmp_path)
    assert found == (ALL[0], ALL[3])
    assert [str(one) for one in problems] == [
        ".demould/entries.jsonl:2:1: this line is no entry: it was cut short, or changed"
        " by hand. Take the line away; the others count without it."
    ]


def test_the_hour_that_comes_twice_is_read_back_as_the_one_it_was(
    tmp_path: Path,
) -> None:
    """01:30 in the night the clocks go back: the second is an hour after the first."""
    for fold in (0, 1):
        moment = datetime(
            2026, 10, 25, 1, 30, tzinfo=ZoneInfo("Europe/London"), fold=fold
        )
        add_entry(tmp_path, TakenBack(id=str(fold), at=moment, entry="a"))
    (first, second), _ = read_entries(tmp_path)
    assert second.at - first.at == timedelta(hours=1)


@pytest.mark.parametrize(
    "line",
    [
        "null",
        "[]",
        "3",
        '{"kind": "else"}',
        '{"kind": "happened", "id": "x", "at": "2026-11-19T10:00:00", "step": "s",'
        ' "start": "2026-11-19T10:00:00+00:00", "end": null}',
        '{"kind": "happened", "id": 3, "at": "2026-11-19T10:00:00+00:00", "step": "s",'
        ' "start": "2026-11-19T10:00:00+00:00", "end": null}',
        '{"kind": "agreed", "id": "x", "at": "2026-11-19T10:00:00+00:00",'
        ' "inputs": "a", "steps": 3}',
    ],
)
def test_what_is_no_entry_is_said(tmp_path: Path, line: str) -> None:
    add_entry(tmp_path, ALL[3])
    file = tmp_path / ENTRIES
    file.write_text(f"{line}\n{file.read_text()}")
    found, problems = read_entries(tmp_path)
    assert found == (ALL[3],)
    assert [one.line for one in problems] == [1]
