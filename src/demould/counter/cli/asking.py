"""What every command takes, and how a folder is opened: faults shown, then exit 1."""

import json
import sys
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any, TypeVar
from zoneinfo import ZoneInfo

import click

from demould.counter.text.read_folder import desserts_in, read_folder, zone_of
from demould.mise.clock import read_coming, read_moment, show_day
from demould.mise.dessert import Dessert
from demould.mise.folder import Folder, dessert_of
from demould.mise.problem import Problem, UnreadableError
from demould.week.faults import faults_of

FAULTS = 1
F = TypeVar("F", bound=Callable[..., Any])

with_now = click.option(
    "--now",
    metavar="MOMENT",
    help='Read as at this moment, for example "2026-11-17 14:00". Default: this minute.',
)
with_json = click.option(
    "--json", "as_json", is_flag=True, help="Print one JSON answer for programs."
)


def common(command: F) -> F:
    """Give a command --now and --json."""
    return with_now(with_json(command))


def of_dessert(command: F) -> F:
    """Give a command the dessert it is about, and --kitchen."""
    kitchen = click.option(
        "--kitchen",
        type=click.Path(path_type=Path, file_okay=False),
        help="The kitchen folder. Default: the one the file is in, or this one.",
    )
    return click.argument("dessert")(kitchen(command))


def open_folder(
    path: Path, now: str | None, *, only: str | None = None
) -> tuple[Folder, datetime]:
    """Read a kitchen folder as at a moment; print every fault and exit where any is.

    `only` is the one dessert asked about: orders and other desserts stay unread.
    """
    folder, problems, moment = read_as_at(path, now, only=only)
    if problems or folder is None:
        tell(problems)
        sys.exit(FAULTS)
    return folder, moment


def read_as_at(
    path: Path, now: str | None, *, only: str | None = None
) -> tuple[Folder | None, tuple[Problem, ...], datetime]:
    """Read a kitchen folder as at a moment, with every fault found."""
    moment = moment_at(now, zone_of(path))
    folder, problems, _ = read_folder(
        path, moment, (lambda read: faults_of(read, moment),), only=only
    )
    return folder, problems, moment


def tell(problems: tuple[Problem, ...]) -> None:
    """Print faults to the error stream, a line each, and how many there are.

    Where JSON was asked for they are the one answer on standard output as well.
    """
    asked = click.get_current_context(silent=True)
    if asked is not None and asked.params.get("as_json"):
        from demould.counter.cli.answer import of_problem

        print_json({"faults": [of_problem(one) for one in problems]})
    for problem in problems:
        click.echo(str(problem), err=True)
    count = len(problems)
    click.echo(f"{count} {'fault' if count == 1 else 'faults'}.", err=True)


def moment_at(now: str | None, zone: ZoneInfo) -> datetime:
    """Read what was given as --now, or take the clock's."""
    if now is None:
        return datetime.now(zone).replace(microsecond=0)
    try:
        return read_moment(now, zone)
    except UnreadableError as fault:
        raise click.BadParameter(
            f"{fault.wrong}. {fault.remedy}.", param_hint="--now"
        ) from None


def open_dessert(
    name: str, kitchen: Path | None, now: str | None
) -> tuple[Folder, Dessert]:
    """Open the kitchen folder a dessert is in, by its file or by its name in FOLDER."""
    folder, dessert, _ = open_dessert_at(name, kitchen, now)
    return folder, dessert


def open_dessert_at(
    name: str, kitchen: Path | None, now: str | None
) -> tuple[Folder, Dessert, datetime]:
    """Open it, and give the moment it is read as at too."""
    folder_path = folder_of(name, kitchen)
    key = Path(name).stem if name.endswith(".yaml") else name
    known = desserts_in(folder_path)
    if key not in known:
        raise _no_dessert(key, known, folder_path.name or ".")
    folder, moment = open_folder(folder_path, now, only=key)
    return folder, dessert_of(folder, key), moment


def folder_of(name: str, kitchen: Path | None) -> Path:
    """Give the kitchen folder of a dessert told by its file or by its name."""
    file = Path(name)
    return kitchen or (
        file.resolve().parent.parent if file.suffix == ".yaml" else Path()
    )


def the_dessert(folder: Folder, name: str) -> Dessert:
    """Give a folder's dessert, told by its file or its name."""
    key = Path(name).stem if name.endswith(".yaml") else name
    known = tuple(one.key for one in folder.desserts)
    if key not in known:
        raise _no_dessert(key, known, folder.kitchen.name)
    return dessert_of(folder, key)


def _no_dessert(key: str, known: tuple[str, ...], where: str) -> click.BadParameter:
    has = ", ".join(known) or "none"
    return click.BadParameter(
        f"no dessert is called {key!r} in {where}; it has: {has}.",
        param_hint="DESSERT",
    )


def read_when(when: str, now: datetime) -> datetime:
    """Read a moment to come, by its date or only its weekday."""
    try:
        moment = read_coming(when, now)
    except UnreadableError as fault:
        raise click.BadParameter(
            f"{fault.wrong}. {fault.remedy}.", param_hint="--on"
        ) from None
    if moment <= now:
        raise click.BadParameter(
            f"{show_day(moment)} is over: now it is {show_day(now)}."
            " Write a moment to come.",
            param_hint="--on",
        )
    return moment


def say(text: str) -> None:
    """Talk while somebody waits: to the error stream, and only to a person."""
    if sys.stderr.isatty():
        click.echo(text, err=True)


def print_json(answer: object) -> None:
    """Print one JSON answer on one line."""
    click.echo(json.dumps(answer, ensure_ascii=False))
