"""``demould now``: I start now, when can I plate."""

from pathlib import Path

import click

from demould.counter.cli.asking import (
    common,
    folder_of,
    open_folder,
    print_json,
    say,
    the_dessert,
)
from demould.mise.order import Order


@click.command()
@click.argument("dessert")
@click.option("-n", "pieces", type=click.IntRange(1, 9999), required=True)
@click.option("--no-spares", is_flag=True, help="Make as many as are wanted, no more.")
@click.option(
    "--kitchen",
    type=click.Path(path_type=Path, file_okay=False),
    help="The kitchen folder. Default: the one the file is in, or this one.",
)
@common
def now(
    dessert: str,
    pieces: int,
    kitchen: Path | None,
    now: str | None,
    *,
    no_spares: bool,
    as_json: bool,
) -> None:
    """Start this minute: the earliest plate, the visits, what each leaves behind.

    The dessert is planned alone, from what is in the house or can be called now.
    """
    from demould.counter.cli.answer import of_from_now
    from demould.sheets.now_page import now_page
    from demould.sheets.plain import plain
    from demould.week.from_now import from_now
    from demould.week.making import NO_SPARES

    folder, moment = open_folder(folder_of(dessert, kitchen), now)
    key = the_dessert(folder, dessert).key
    choices = (NO_SPARES,) if no_spares else ()
    order = Order(key="now", dessert=key, pieces=pieces, due=moment, choices=choices)
    say("planning from now ...")
    found = from_now(folder, order, moment)
    if as_json:
        print_json(of_from_now(found))
        return
    click.echo(plain(now_page(found, moment)), nl=False)
