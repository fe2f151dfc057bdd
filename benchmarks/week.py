"""Time the main job as a cold process, and say where the time goes.

Run: ``.venv/bin/python benchmarks/week.py [ROUNDS]``. Medians; machine load beside.
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from demould.demo import NAME, NOW

T = TypeVar("T")
AT = ["--now", f"{NOW:%Y-%m-%d %H:%M}"]


def main(rounds: int = 5) -> None:
    print("load", " ".join(f"{load:.2f}" for load in os.getloadavg()))
    with tempfile.TemporaryDirectory() as place:
        here = Path(place)
        _run(["demo", "--here", place])
        kitchen = str(here / NAME)
        pebble = str(here / NAME / "desserts" / "river-pebble.yaml")
        for words in (
            ["--help"],
            ["count", pebble],
            ["check", kitchen, *AT],
            ["plan", kitchen, *AT],
            ["week", kitchen, *AT],
        ):
            times = [_run(words) for _ in range(rounds)]
            print(f"{statistics.median(times):7.3f} s  demould {words[0]}")
        _parts(Path(kitchen))


def _run(words: list[str]) -> float:
    began = time.perf_counter()
    subprocess.run(
        [sys.executable, "-m", "demould", *words], check=True, capture_output=True
    )
    return time.perf_counter() - began


def _timed(what: str, work: Callable[[], T]) -> T:
    began = time.perf_counter()
    done = work()
    print(f"{time.perf_counter() - began:7.3f} s  {what}")
    return done


def _parts(kitchen: Path) -> None:
    """Walk through one week in this process, section by section."""
    from demould.counter.text.read_folder import read_folder

    folder, _, _ = _timed("read the folder", lambda: read_folder(kitchen, NOW))
    assert folder is not None
    week = _timed("import the rooms", lambda: __import__("demould.week.sections"))
    assert week is not None
    from demould.mise.find import find_in
    from demould.sheets.plain import plain
    from demould.sheets.week_page import week_page
    from demould.week.chilling import chilling_of
    from demould.week.orders import makings_of
    from demould.week.sections import planned, week_of
    from demould.week.sure import sure_of

    find = find_in(folder.larder)
    makings = _timed("amounts of both orders", lambda: makings_of(folder, NOW))
    _timed("plan, latest starts, judge", lambda: planned(folder, makings, NOW))
    _timed(
        "freezing and thawing",
        lambda: [
            chilling_of(making.amounts.dessert, folder.kitchen, find, in_full=False)
            for making in makings
        ],
    )
    _timed("how sure", lambda: sure_of(makings, folder.kitchen, find))
    page = week_page(week_of(folder, NOW))
    _timed("print it", lambda: plain(page))


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
