"""``demould done``: somebody says that a step is over, or that it has begun."""

from datetime import datetime
from pathlib import Path
from uuid import uuid4

import click

from demould.counter.cli.asking import common, print_json
from demould.counter.cli.running import open_running, step_or_say
from demould.counter.text.entries import add_entry
from demould.mise.clock import read_time
from demould.mise.entry import Happened, TakenBack
from demould.mise.problem import UnreadableError


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("step")
@click.option("--from", "begun", help="When it began, 08:10. Default: as agreed.")
@click.option("--to", "over", help="When it was over. Default: now.")
@click.option("--begun", "only_begun", is_flag=True, help="It has begun, no more.")
@click.option(
    "--take-back", is_flag=True, help="It was not so: take the last word back."
)
@common
def done(
    folder: Path,
    step: str,
    begun: str | None,
    over: str | None,
    now: str | None,
    *,
    only_begun: bool,
    take_back: bool,
    as_json: bool,
) -> None:
    """Write down that STEP is over, or has begun. Nothing is ever changed, only added.

    What is written down is fixed for every plan made after it.
    """
    _, week, moment = open_running(folder, now)
    name = step_or_say(week.laid, step, week.laid.parts)
    id_ = uuid4().hex
    if take_back:
        if name not in week.done:
            raise click.UsageError("nobody has said that it began or was over.")
        entry: Happened | TakenBack = TakenBack(
            id=id_, at=moment, entry=week.done[name].id
        )
    else:
        start = _start(week.agreed[name].start if name in week.agreed else None, week)
        start = _at(begun, moment) if begun else min(start or moment, moment)
        end = None if only_begun else _at(over, moment) if over else moment
        try:
            entry = Happened(id=id_, at=moment, step=name, start=start, end=end)
        except ValueError as fault:
            raise click.UsageError(f"{fault}.") from None
    add_entry(folder, entry)
    if as_json:
        print_json({"id": id_, "step": name})
        return
    click.echo(f"written down: {_said(entry, name)}")


def _start(minute: int | None, week: object) -> datetime | None:
    from demould.plan.kitchen.clock import moment_at
    from demould.week.agreed import Running

    assert isinstance(week, Running)
    return None if minute is None else moment_at(week.laid.origin, minute)


def _at(text: str, now: datetime) -> datetime:
    try:
        moment = datetime.combine(now.date(), read_time(text), now.tzinfo)
    except UnreadableError as fault:
        raise click.UsageError(f"{fault.wrong}. {fault.remedy}.") from None
    if moment > now:
        raise click.UsageError(f"{moment:%a %H:%M} is still to come.")
    return moment


def _said(entry: Happened | TakenBack, name: str) -> str:
    if isinstance(entry, TakenBack):
        return f"{name} is taken back"
    if entry.end is None:
        return f"{name} begun {entry.start:%a %H:%M}"
    return f"{name} {entry.start:%a %H:%M} to {entry.end:%H:%M}"
