"""``demould note``: a draft dessert from a scribbled note, no word dropped."""

from __future__ import annotations

import sys
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn
from zoneinfo import ZoneInfo

import click

from demould.counter.cli.asking import FAULTS, common, moment_at, print_json, say, tell
from demould.mise.problem import Problem, UnreadableError
from demould.mise.words import Words

if TYPE_CHECKING:
    from demould.matter.whole import Whole
    from demould.mise.folder import Folder

LONGEST_BYTES = 20_000_000
"""A file longer than this is not opened: no note is."""


@click.command()
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option(
    "-n",
    "--pieces",
    type=click.IntRange(1, 9999),
    help="Pieces wanted, for a draft week.",
)
@click.option("--on", "day", metavar="DAY", help='When, for example "sat 19:30".')
@click.option(
    "--answer",
    "answers",
    multiple=True,
    metavar="N=ANSWER",
    help='Answer question N, for example 1="90 ml". May be given again.',
)
@click.option(
    "--zone", default="UTC", metavar="ZONE", help="Where the clock is: Europe/London."
)
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    help="Write the draft into this folder, as a kitchen of its own.",
)
@common
def note(
    file: Path,
    pieces: int | None,
    day: str | None,
    answers: tuple[str, ...],
    zone: str,
    out: Path | None,
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Read the note in FILE and draft its dessert; no word of it is dropped.

    What the note does not say is taken from what is usual and marked as assumed, with
    how far the result moves if that is wrong and the question that settles it. With a
    number and a day, a draft week at once, from a kitchen nobody has described yet.
    """
    from demould.counter.cli.note_answer import of_note
    from demould.counter.cli.note_drafted import drafted
    from demould.counter.text.from_note import Wanted
    from demould.sheets.note_page import note_page
    from demould.sheets.plain import plain

    moment = moment_at(now, _zone(zone))
    wanted = None
    if day is not None:
        wanted = Wanted(pieces=pieces or 1, due=_due(day, moment))
        if pieces is None:
            raise click.UsageError("a day needs a number of pieces too: -n 24")
    text = _text(file)
    found = drafted(text, file.name, zone, moment, wanted, _numbered(answers))
    for words in found.said:
        click.echo(f"{words}.", err=True)
    if found.folder is None:
        _stop(found.problems)
    week = None
    if wanted is not None:
        from demould.week.faults import unweighed
        from demould.week.sections import week_of

        if unweighed(found.folder):
            _stop((_without_amounts(file),))
        say("working the week out ...")
        week = week_of(found.folder, moment)
    if out is not None:
        _write(out, found.texts)
    if as_json:
        print_json(of_note(found, week))
        return
    if wanted is None:
        click.echo(found.draft_text)
    page = note_page(
        found.note,
        found.counts,
        found.gaps,
        found.questions,
        _whole(found.folder),
        short=week is not None,
    )
    click.echo(plain(page), nl=False)
    if week is not None:
        from demould.sheets.week_page import week_page

        click.echo(plain(week_page(week, None)), nl=False)


def _stop(problems: tuple[Problem, ...]) -> NoReturn:
    tell(problems)
    sys.exit(FAULTS)


def _without_amounts(file: Path) -> Problem:
    wrong = Words("a part of it has no amount at all, and a week needs one in each")
    remedy = Words(
        "Write at least one, like 280 g cream; without --on, the draft says what is open"
    )
    return Problem(file.name, 0, 0, wrong, remedy)


def _whole(folder: Folder) -> list[Whole]:
    """Whole fruit and eggs that the formulas take, where they are not counted already."""
    from demould.matter.whole import wholes
    from demould.mise.find import find_in

    find = find_in(folder.larder)
    components = folder.desserts[0].components
    return [one for component in components for one in wholes(component, find)]


def _text(file: Path) -> str:
    """The text of a file; what is no UTF-8 is read as an older kind of text."""
    if file.stat().st_size > LONGEST_BYTES:
        raise click.UsageError(
            f"{file.name} has {file.stat().st_size / 1e6:.0f} MB; no note is that long."
            " Save the page with the formula alone."
        )
    data = file.read_bytes()
    if b"\0" in data:
        raise click.UsageError(
            f"{file.name} is not text. Save it as plain text, in UTF-8."
        )
    try:
        return data.decode("utf-8").removeprefix("\ufeff")
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace")


def _zone(name: str) -> ZoneInfo:
    try:
        return ZoneInfo(name)
    except (KeyError, ValueError, OSError):
        raise click.BadParameter(
            f"no place on the clock is called {name!r}. Write it like Europe/London.",
            param_hint="--zone",
        ) from None


def _due(day: str, moment: datetime) -> datetime:
    from demould.mise.clock import read_coming

    try:
        due = read_coming(day, moment)
    except UnreadableError as fault:
        raise click.BadParameter(
            f"{fault.wrong}. {fault.remedy}.", param_hint="--on"
        ) from None
    if due <= moment:
        raise click.BadParameter(
            f"{day!r} is over. Write a day to come.", param_hint="--on"
        )
    return due


def _numbered(answers: tuple[str, ...]) -> dict[int, str]:
    found: dict[int, str] = {}
    for one in answers:
        number, mark, answer = one.partition("=")
        if not mark or not number.strip().isdigit():
            raise click.BadParameter(
                f'{one!r} is no answer. Write the number of the question: 1="90 ml".',
                param_hint="--answer",
            )
        found[int(number)] = answer.strip().strip('"')
    return found


def _write(out: Path, texts: dict[str, str]) -> None:
    """Write the draft; a file that is there already is never overwritten."""
    there = [name for name in texts if (out / name).exists()]
    if there:
        raise click.UsageError(
            f"{out} already has {', '.join(there)}. Name a new folder."
        )
    for name, text in texts.items():
        (out / name).parent.mkdir(parents=True, exist_ok=True)
        (out / name).write_text(text, "utf-8")
    click.echo(f"{len(texts)} files in {out}", err=True)
