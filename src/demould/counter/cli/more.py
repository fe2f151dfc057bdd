"""``demould more``: what one more mould, jug, level or pair of hands would buy."""

from dataclasses import asdict
from pathlib import Path

import click

from demould.counter.cli.asking import common, open_folder, print_json, say


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@common
def more(folder: Path, now: str | None, *, as_json: bool) -> None:
    """Plan the week of the kitchen FOLDER anew with one more of each thing it uses.

    What it saves: rounds, whips, grams that stick to bowls, minutes of work, hours on
    the clock, visits.
    """
    from demould.sheets.more_page import more_page
    from demould.sheets.plain import plain
    from demould.week.one_more import one_more

    read, moment = open_folder(folder, now)
    if not read.orders:
        raise click.UsageError("there is no order to plan. Write one in orders.yaml.")
    say("planning with one more of each ...")
    bought = one_more(read, moment)
    if as_json:
        each = [{"thing": str(one.thing), **asdict(one.cost)} for one in bought.each]
        print_json({"now": asdict(bought.now), "one_more": each})
        return
    click.echo(plain(more_page(bought, moment)), nl=False)
