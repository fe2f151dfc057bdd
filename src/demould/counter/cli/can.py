"""``demould can``: an order on the phone."""

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

ASKED = "this order"


@click.command()
@click.argument("dessert")
@click.option("-n", "pieces", type=click.IntRange(1, 9999), required=True)
@click.option(
    "--on", "when", required=True, help='When: "sat 19:30", or with its date.'
)
@click.option("--collected", is_flag=True, help="Fetched in a box, not plated.")
@click.option("--variant", help="One of the dessert's variants.")
@click.option(
    "--kitchen",
    type=click.Path(path_type=Path, file_okay=False),
    help="The kitchen folder. Default: the one the file is in, or this one.",
)
@common
def can(
    dessert: str,
    pieces: int,
    when: str,
    variant: str | None,
    kitchen: Path | None,
    now: str | None,
    *,
    collected: bool,
    as_json: bool,
) -> None:
    """Can we? Say yes or no to an order, by when to say so, or what stops it.

    It is planned beside all orders there are; nothing is written down.
    """
    from demould.counter.cli.answer import of_can
    from demould.sheets.can_page import can_page
    from demould.sheets.plain import plain
    from demould.week.can import can_we

    folder, moment = open_folder(folder_of(dessert, kitchen), now)
    say("looking ...")
    asked = _order(folder, moment, dessert, pieces, when, variant, collected=collected)
    found = can_we(folder, asked, moment)
    if as_json:
        print_json(of_can(found))
        return
    click.echo(plain(can_page(found, moment)), nl=False)


def _order(
    folder: Folder,
    now: datetime,
    dessert: str,
    pieces: int,
    when: str,
    variant: str | None,
    *,
    collected: bool,
) -> Order:
    known = the_dessert(folder, dessert)
    names = [one.name for one in known.variants]
    if variant is not None and variant not in names:
        raise click.BadParameter(
            f"{known.name} has no variant called {variant!r}; it has:"
            f" {', '.join(names) or 'none'}.",
            param_hint="--variant",
        )
    return Order(
        key=ASKED,
        dessert=known.key,
        variant=variant,
        pieces=pieces,
        due=read_when(when, now),
        ends="collected" if collected else "plates",
    )
