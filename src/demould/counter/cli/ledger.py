"""``demould ledger``: where every gram goes."""

from pathlib import Path

import click

from demould.counter.cli.asking import common, open_folder, print_json


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@common
def ledger(folder: Path, now: str | None, *, as_json: bool) -> None:
    """Say where every gram goes that the orders of the kitchen FOLDER take.

    Taken, and what was left over before, = sold + spares + lost + left over + strained
    out, component by component, closed to 1 g. Taken counts what the week uses up, not whole packs.
    """
    from dataclasses import asdict

    from demould.mise.find import find_in
    from demould.sheets.ledger_page import ledger_page
    from demould.sheets.plain import plain
    from demould.week.ledger import ledger_of
    from demould.week.orders import makings_of

    read, moment = open_folder(folder, now)
    if not read.orders:
        raise click.UsageError("there is no order whose grams could be followed.")
    entries = ledger_of(makings_of(read, moment), find_in(read.larder))
    if as_json:
        print_json({"entries": [asdict(one) | {"off": one.off} for one in entries]})
        return
    click.echo(plain(ledger_page(read.kitchen.name, entries)), nl=False)
