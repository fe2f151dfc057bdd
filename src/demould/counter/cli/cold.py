"""``demould cold``: how long to freeze and to thaw."""

from pathlib import Path

import click

from demould.counter.cli.answer import of_chilling
from demould.counter.cli.asking import common, of_dessert, open_dessert, print_json, say


@click.command()
@click.option(
    "--in", "place", help="Only this cold place, by its name in kitchen.yaml."
)
@of_dessert
@common
def cold(
    dessert: str,
    place: str | None,
    kitchen: Path | None,
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Estimate how long DESSERT freezes and thaws in the kitchen's cold places."""
    from dataclasses import replace

    from demould.mise.find import find_in
    from demould.sheets.cold_page import cold_page
    from demould.sheets.plain import plain
    from demould.week.chilling import chilling_of

    folder, found = open_dessert(dessert, kitchen, now)
    places = folder.kitchen.cold
    if place is not None:
        places = tuple(one for one in places if one.key == place)
        if not places:
            known = ", ".join(one.key for one in folder.kitchen.cold) or "none"
            raise click.BadParameter(
                f"no cold place is called {place!r}; the kitchen has: {known}.",
                param_hint="--in",
            )
    say("freezing and thawing ...")
    narrowed = replace(folder.kitchen, cold=places)
    chilling = chilling_of(found, narrowed, find_in(folder.larder))
    if as_json:
        print_json({"dessert": found.key, **of_chilling(chilling)})
        return
    click.echo(plain(cold_page(found, chilling)), nl=False)
