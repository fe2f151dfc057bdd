"""A week under way: opened with its entries, steps told by a few words."""

import sys
from collections.abc import Iterable
from datetime import datetime
from pathlib import Path

import click

from demould.counter.cli.asking import FAULTS, moment_at, tell
from demould.counter.text.entries import read_entries
from demould.counter.text.read_folder import read_folder, read_texts, zone_of
from demould.log.now import agreed_plan
from demould.mise.folder import Folder
from demould.mise.problem import UnreadableError
from demould.mise.version import texts_version
from demould.plan.kitchen.from_kitchen import Laid
from demould.week.agreed import Running
from demould.week.faults import faults_of
from demould.week.step_called import step_called


def inputs_of(path: Path) -> str:
    """Give the hash of all a kitchen folder says."""
    texts, _ = read_texts(path)
    return texts_version(texts)


def open_running(path: Path, now: str | None) -> tuple[Folder, Running, datetime]:
    """Open the week under way, as it was agreed on; where it does not stand, say so.

    Orders that were to come when the plan was agreed may be over by now.
    """
    from demould.sheets.plain import plain
    from demould.sheets.plan_page import plan_page
    from demould.week.agreed import running

    entries, problems = read_entries(path)
    for problem in problems:
        click.echo(str(problem), err=True)
    moment = moment_at(now, zone_of(path))
    agreed = agreed_plan(entries)
    since = min(agreed.at, moment).astimezone(moment.tzinfo) if agreed else moment
    folder, wrong, _ = read_folder(path, since, (lambda read: faults_of(read, since),))
    if wrong or folder is None:
        tell(wrong)
        sys.exit(FAULTS)
    if not folder.orders:
        raise click.UsageError("there is no order to plan. Write one in orders.yaml.")
    week = running(folder, entries, moment, inputs_of(path))
    if isinstance(week, Running):
        return folder, week, moment
    from demould.week.orders import makings_of

    page = plan_page(folder.kitchen, makings_of(folder, moment), week, moment)
    click.echo(plain(page), nl=False)
    sys.exit(FAULTS)


def step_or_say(laid: Laid, said: str, among: Iterable[str]) -> str:
    """Find the step that is meant, or say in one sentence what is wrong."""
    try:
        return step_called(laid, said, among)
    except UnreadableError as fault:
        raise click.BadParameter(
            f"{fault.wrong}. {fault.remedy}.", param_hint="STEP"
        ) from None
