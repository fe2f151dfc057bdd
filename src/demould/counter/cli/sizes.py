"""``demould sizes``: 10, 50, 500, and where it stops being possible."""

from datetime import datetime
from pathlib import Path

import click

from demould.counter.cli.asking import (
    common,
    folder_of,
    open_folder,
    print_json,
    read_when,
    say,
    the_dessert,
)
from demould.mise.folder import Folder
from demould.mise.order import Order

USUAL = (10, 50, 500)
MOST = 100_000


@click.command()
@click.argument("dessert")
@click.option(
    "-n",
    "pieces",
    type=click.IntRange(1, MOST),
    multiple=True,
    help="A size; may be given more than once. Default: 10, 50 and 500.",
)
@click.option("--on", "when", help="When. Default: when the dessert is ordered for.")
@click.option(
    "--kitchen",
    type=click.Path(path_type=Path, file_okay=False),
    help="The kitchen folder. Default: the one the file is in, or this one.",
)
@common
def sizes(
    dessert: str,
    pieces: tuple[int, ...],
    when: str | None,
    kitchen: Path | None,
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Plan a dessert at several sizes: each with the first limit, and the next.

    An order of that dessert is taken at each size; the other orders stay.
    """
    from demould.counter.cli.answer import of_size
    from demould.sheets.plain import plain
    from demould.sheets.sizes_page import sizes_page
    from demould.week.sizes import sizes_of

    folder, moment = open_folder(folder_of(dessert, kitchen), now)
    order = _order(folder, dessert, when, moment)
    say("planning each size ...")
    found = sizes_of(folder, order, pieces or USUAL, moment)
    if as_json:
        print_json({"sizes": [of_size(one) for one in found]})
        return
    click.echo(plain(sizes_page(found, moment)), nl=False)


def _order(folder: Folder, dessert: str, when: str | None, now: datetime) -> Order:
    key = the_dessert(folder, dessert).key
    due = read_when(when, now) if when else None
    for order in sorted(folder.orders, key=lambda one: one.due):
        if order.dessert == key and due in (None, order.due):
            return order
    if due is None:
        raise click.UsageError(
            f"nobody has ordered {key}, so nobody knows for when."
            ' Write --on "sat 19:30".'
        )
    return Order(key="this order", dessert=key, pieces=1, due=due)
