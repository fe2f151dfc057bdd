"""What ``demould cold`` reads and writes beside the kitchen: a probe's log, drawings."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

import click

from demould.counter.cli.asking import FAULTS, tell

if TYPE_CHECKING:
    from collections.abc import Iterable
    from datetime import datetime
    from pathlib import Path

    from demould.matter.grams import Find
    from demould.mise.dessert import Dessert
    from demould.mise.kitchen import ColdPlace, Kitchen
    from demould.mise.read_probe import ProbeLog
    from demould.sheets.drawing.picture import Picture
    from demould.week.probed import Learned


def learned_of(
    file: Path,
    dessert: Dessert,
    kitchen: Kitchen,
    place: ColdPlace,
    find: Find,
    now: datetime,
) -> Learned:
    """Read a log and fit it; print every fault and exit where it cannot be."""
    from demould.week.probed import learned_from

    log = log_of(file)
    try:
        return learned_from(log, dessert, kitchen, place, find, now.date())
    except ValueError as fault:
        click.echo(f"{file.name}: {fault}.", err=True)
        sys.exit(FAULTS)


def log_of(file: Path) -> ProbeLog:
    """Read a log; print every fault and exit where there is one."""
    from demould.mise.problem import Problem
    from demould.mise.read_probe import read_probe
    from demould.mise.words import Words

    try:
        text = file.read_text("utf-8-sig")
    except (OSError, UnicodeDecodeError):
        wrong = Words("this is no text in UTF-8 that can be read")
        tell((Problem(file.name, 0, 0, wrong, Words("Save the log as CSV, UTF-8")),))
        sys.exit(FAULTS)
    log, problems = read_probe(text, file.name)
    if log is None:
        tell(tuple(problems))
        sys.exit(FAULTS)
    return log


def write_svg(pictures: Iterable[Picture], out: Path | None) -> list[str]:
    """Write each picture into a folder, made if missing; give where they are."""
    if out is None:
        return []
    from demould.counter.paper.papers import file_names
    from demould.sheets.drawing.svg import svg_of

    every = list(pictures)
    out.mkdir(parents=True, exist_ok=True)
    written = []
    for picture, name in zip(every, file_names([p.key for p in every]), strict=True):
        path = (out / name).with_suffix(".svg")
        path.write_text(svg_of(picture), encoding="utf-8")
        written.append(str(path))
    return written
