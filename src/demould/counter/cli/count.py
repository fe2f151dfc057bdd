"""``demould count``: what each component gives, and its own factor."""

from pathlib import Path

import click

from demould.counter.cli.answer import of_amounts
from demould.counter.cli.asking import common, of_dessert, open_dessert, print_json


@click.command()
@click.option("-n", "pieces", type=click.IntRange(1, 9999), help="Pieces to make.")
@click.option(
    "--why", is_flag=True, help="Unfold every number down to the lines as written."
)
@of_dessert
@common
def count(
    dessert: str,
    pieces: int | None,
    kitchen: Path | None,
    now: str | None,
    *,
    why: bool,
    as_json: bool,
) -> None:
    """Count what DESSERT gives as written, all components side by side.

    DESSERT is a file (desserts/river-pebble.yaml) or its name. With -n, each
    component's own factor and grams for that number, none of them spares.
    """
    from demould.mise.find import find_in
    from demould.sheets.count_page import count_page, why_lines
    from demould.sheets.plain import plain
    from demould.week.holding import finish_of, holding_of
    from demould.week.making import counted

    folder, found = open_dessert(dessert, kitchen, now)
    amounts = counted(found, folder.kitchen, find_in(folder.larder), pieces)
    if as_json:
        print_json(of_amounts(amounts))
        return
    find = find_in(folder.larder)
    page = count_page(
        amounts,
        asked=pieces is not None,
        holds=holding_of(amounts, folder.kitchen),
        finish=finish_of(amounts, folder.kitchen, find),
    )
    click.echo(plain(page), nl=False)
    if why:
        for line in why_lines(amounts, asked=pieces is not None):
            click.echo(line)
