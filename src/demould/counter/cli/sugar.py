"""``demould sugar``: what the thermometer must show where water boils lower."""

from pathlib import Path

import click

from demould.counter.cli.answer import of_estimate
from demould.counter.cli.asking import common, print_json
from demould.counter.cli.meant import height_here


@click.command()
@click.argument("degrees", type=float, metavar="DEGREES")
@click.option("--boils", type=float, help="°C your thermometer shows in boiling water.")
@click.option("--height", type=float, help="Metres above the sea.")
@click.option(
    "--kitchen",
    type=click.Path(path_type=Path, file_okay=False),
    help="The kitchen folder that says its height. Default: this one.",
)
@common
def sugar(
    degrees: float,
    boils: float | None,
    height: float | None,
    kitchen: Path | None,
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Tell what to cook sugar to, where the card says DEGREES (°C, at the sea).

    --boils, from your own boiling water, is better than --height.
    """
    from demould.matter.boiling import cook_sugar_to, solids_at, water_boils_c
    from demould.mise.words import Words
    from demould.sheets.plain import plain
    from demould.sheets.sums_page import sugar_page

    metres = height if height is not None else height_here(kitchen, now)
    try:
        water = boils if boils is not None else water_boils_c(metres)
        found = cook_sugar_to(degrees, water)
    except ValueError as fault:
        raise click.UsageError(f"{fault}.") from None
    solids = solids_at(degrees - 100)
    if as_json:
        print_json({"cook_to": of_estimate(found), "water": water, "solids": solids})
        return
    whence = (
        Words("by your thermometer")
        if boils is not None
        else Words("by {m:g} m above the sea; better: boil water and look", m=metres)
    )
    click.echo(plain(sugar_page(degrees, water, found, solids, whence)), nl=False)
