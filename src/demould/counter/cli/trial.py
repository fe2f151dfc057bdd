"""``demould trial``: the smallest honest trial of a dessert."""

from pathlib import Path

import click

from demould.counter.cli.answer import of_figure
from demould.counter.cli.asking import common, of_dessert, open_dessert, print_json


@click.command()
@of_dessert
@common
def trial(
    dessert: str, kitchen: Path | None, now: str | None, *, as_json: bool
) -> None:
    """Give the fewest pieces of DESSERT that prove something, and what does not shrink."""
    from demould.mise.find import find_in
    from demould.sheets.plain import plain
    from demould.sheets.sums_page import trial_page
    from demould.week.trial import trial_of

    folder, found = open_dessert(dessert, kitchen, now)
    told = trial_of(found, folder.kitchen, find_in(folder.larder))
    if as_json:
        print_json(
            {
                "pieces": told.pieces,
                "reason": str(told.reason),
                "parts": [
                    {
                        "name": part.name,
                        "needs": of_figure(part.needs),
                        "make_g": part.make_g,
                        "why": str(part.why) if part.why else None,
                    }
                    for part in told.parts
                ],
            }
        )
        return
    click.echo(plain(trial_page(found.name, told)), nl=False)
