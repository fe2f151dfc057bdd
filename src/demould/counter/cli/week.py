"""``demould week``: the main job on one page."""

from datetime import datetime
from pathlib import Path

import click

from demould.counter.cli.answer import of_week
from demould.counter.cli.asking import common, open_folder, print_json, say
from demould.mise.folder import Folder


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option(
    "--out", type=click.Path(path_type=Path), help="Write all papers into this folder."
)
@common
def week(folder: Path, out: Path | None, now: str | None, *, as_json: bool) -> None:
    """Work out the week of the kitchen FOLDER and print it on one page."""
    read, moment = open_folder(folder, now)
    show_week(read, moment, out, as_json=as_json)


def show_week(
    folder: Folder, now: datetime, out: Path | None, *, as_json: bool
) -> None:
    """Print a folder's week, and write its papers where asked."""
    from demould.counter.cli.papers import write_papers
    from demould.sheets.plain import plain
    from demould.sheets.week_page import week_page
    from demould.week.sections import week_of

    if not folder.orders:
        raise click.UsageError(
            "there is no order to plan. Write one in orders.yaml, or ask"
            " demould count for a dessert alone."
        )
    say("working the week out ...")
    found = week_of(folder, now)
    written = write_papers(folder, found, out, now) if out else ()
    if as_json:
        print_json(of_week(found))
        return
    papers = f"{len(written)} sheets in {out}" if out else None
    click.echo(plain(week_page(found, papers)), nl=False)
