"""``demould film``: the own film of a dip, from pieces weighed before and after."""

from pathlib import Path

import click

from demould.counter.cli.answer import of_estimate
from demould.counter.cli.asking import common, of_dessert, open_dessert, print_json


@click.command()
@of_dessert
@click.argument("weighed", nargs=-1, required=True, metavar='"68.2 g to 77.3 g" ...')
@common
def film(
    dessert: str,
    kitchen: Path | None,
    weighed: tuple[str, ...],
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Tell how thick the dip of DESSERT sits, from pieces weighed before and after.

    Weigh three pieces or more, the same before and after: "68.2 g to 77.3 g" each.
    """
    from demould.mise.problem import UnreadableError
    from demould.mise.read_asked import read_weighing
    from demould.sheets.film_page import film_page, for_the_card
    from demould.sheets.plain import plain
    from demould.week.own_film import own_film

    folder, found = open_dessert(dessert, kitchen, now)
    read, faults = [], []
    for one in weighed:
        try:
            read.append(read_weighing(one))
        except UnreadableError as fault:
            faults.append(f"{fault.wrong}. {fault.remedy}.")
    if faults:
        raise click.UsageError("\n".join(faults))
    try:
        own = own_film(found, folder.kitchen, read)
    except ValueError as fault:
        raise click.UsageError(f"{fault}.") from None
    if as_json:
        print_json(
            {
                "film": of_estimate(own.spread),
                "each_g": own.each_g,
                "pieces": own.pieces,
                "card_mm": own.card.value,
                "line": str(for_the_card(own)),
            }
        )
        return
    click.echo(plain(film_page(own, found.name)), nl=False)
