"""``demould plan``: one plan for all orders."""

from pathlib import Path

import click

from demould.counter.cli.answer import of_timing
from demould.counter.cli.asking import common, open_folder, print_json, say


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--seed", type=int, default=0, help="Another seed, another equal plan.")
@common
def plan(folder: Path, seed: int, now: str | None, *, as_json: bool) -> None:
    """Plan all orders of the kitchen FOLDER, backwards from the plate."""
    from demould.sheets.plain import plain
    from demould.sheets.plan_page import plan_page
    from demould.week.orders import makings_of
    from demould.week.sections import planned

    read, moment = open_folder(folder, now)
    if not read.orders:
        raise click.UsageError("there is no order to plan. Write one in orders.yaml.")
    say("planning ...")
    makings = makings_of(read, moment)
    timing = planned(read, makings, moment, seed=seed)
    if as_json:
        print_json(of_timing(timing))
        return
    click.echo(plain(plan_page(read.kitchen, makings, timing, moment)), nl=False)
