"""``demould papers``: the sheets for the wall and the bench."""

from datetime import datetime
from pathlib import Path

import click

from demould.counter.cli.asking import common, open_folder, print_json, say
from demould.mise.folder import Folder
from demould.week.sections import Week


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    default=Path("papers"),
    show_default=True,
    help="Where the sheets go.",
)
@common
def papers(folder: Path, out: Path, now: str | None, *, as_json: bool) -> None:
    """Write the week for the wall and a weighing sheet for each component as PDF."""
    from demould.week.sections import week_of

    read, moment = open_folder(folder, now)
    if not read.orders:
        raise click.UsageError("there is no order to write papers for.")
    say("working the week out ...")
    written = write_papers(read, week_of(read, moment), out, moment)
    if as_json:
        print_json({"papers": [str(path) for path in written]})
        return
    for path in written:
        click.echo(str(path))


def write_papers(
    folder: Folder, week: Week, out: Path, now: datetime
) -> tuple[Path, ...]:
    """Write all sheets of a week into a folder, made if it is not there."""
    from demould.counter.paper.papers import papers as print_papers
    from demould.mise.find import find_in
    from demould.sheets.call_page import call_page
    from demould.sheets.care_blocks import floor_page
    from demould.sheets.cost_page import cost_page
    from demould.sheets.drawing_page import drawing_pages
    from demould.sheets.label_page import label_page
    from demould.sheets.week_page import wall_page
    from demould.sheets.weighing import weighing_sheets
    from demould.week.labelling import labels_of

    find = find_in(folder.larder)
    pages = [
        wall_page(week),
        call_page(folder.kitchen, week.buying, week.bank, week.use_up, now),
        cost_page(folder.kitchen, week.costings, now),
        floor_page(folder.kitchen.name, week.caring),
        *map(label_page, labels_of(folder, week.makings, now.date())),
        *drawing_pages(week.makings, folder.kitchen),
    ]
    for making in week.makings:
        pages.extend(weighing_sheets(making, folder.kitchen.scales, find))
    say("printing ...")
    return tuple(print_papers(pages, out, printed=now))
