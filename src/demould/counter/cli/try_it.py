"""``demould try``: one thing changed, and what moves."""

import sys
from pathlib import Path

import click

from demould.counter.cli.asking import (
    FAULTS,
    common,
    open_folder,
    print_json,
    say,
    tell,
)


@click.command(name="try")
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("change", metavar='"WHAT = NEW"')
@click.option(
    "--quick", is_flag=True, help="Amounts only: nothing is frozen and planned anew."
)
@common
def try_it(
    folder: Path, change: str, now: str | None, *, quick: bool, as_json: bool
) -> None:
    """Change one thing of the kitchen FOLDER and see what moves; nothing is written.

    WHAT is a few words of its name: "ganache whipped = 0.58 g/ml", "oval insert water =
    22 ml", "river pebble mould = dome", "saturday pieces = 40". The two weeks stand side
    by side, only where they differ. A number alone takes the unit it had.
    """
    from demould.mise.problem import UnreadableError
    from demould.sheets.plain import plain
    from demould.sheets.try_page import shown, try_page
    from demould.week.faults import faults_of
    from demould.week.tried import tried
    from demould.week.what_if import what_if

    before, moment = open_folder(folder, now)
    if not before.orders:
        raise click.UsageError("a week without an order has nothing to move")
    try:
        after = tried(before, change)
    except UnreadableError as fault:
        raise click.BadParameter(
            f"{fault.wrong}. {fault.remedy}.", param_hint="WHAT = NEW"
        ) from None
    faults = faults_of(after.folder, moment)
    if faults:
        say(f"With {after.name} at {after.new} it cannot be:")
        tell(faults)
        sys.exit(FAULTS)
    if not quick:
        say("Freezing and planning both weeks ...")
    moves = what_if(before, after.folder, moment, quick=quick)
    if as_json:
        print_json(
            {
                "changed": {"what": after.name, "was": after.was, "is": after.new},
                "moves": [
                    {
                        "order": move.thing.order,
                        "about": move.thing.about,
                        "name": move.thing.name,
                        "unit": move.thing.unit,
                        "before": shown(move.before),
                        "after": shown(move.after),
                    }
                    for move in moves
                ],
            }
        )
        return
    click.echo(plain(try_page(before.kitchen.name, after, moves)), nl=False)
