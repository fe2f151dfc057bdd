"""``demould plan``: one plan for all orders."""

from pathlib import Path
from uuid import uuid4

import click

from demould.counter.cli.answer import of_timing
from demould.counter.cli.asking import common, open_folder, print_json, say
from demould.counter.text.entries import ENTRIES


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--seed", type=int, default=0, help="Another seed, another equal plan.")
@click.option("--agree", is_flag=True, help="Keep it: later plans move against it.")
@click.option("--shelves", is_flag=True, help="Only what is free in the cold, when.")
@common
def plan(
    folder: Path,
    seed: int,
    now: str | None,
    *,
    agree: bool,
    shelves: bool,
    as_json: bool,
) -> None:
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
    if agree and timing.stands:
        from demould.counter.cli.running import inputs_of
        from demould.counter.text.entries import add_entry
        from demould.week.agreed import agreement

        entry = agreement(timing, id_=uuid4().hex, at=moment, inputs=inputs_of(folder))
        add_entry(folder, entry)
        click.echo(f"Agreed: kept in {folder / ENTRIES}.", err=True)
    if as_json:
        print_json(of_timing(read.kitchen, timing))
        return
    if shelves and timing.stands:
        from demould.sheets.shelves_page import shelves_page

        click.echo(plain(shelves_page(read.kitchen, timing, moment)), nl=False)
        return
    click.echo(plain(plan_page(read.kitchen, makings, timing, moment)), nl=False)
