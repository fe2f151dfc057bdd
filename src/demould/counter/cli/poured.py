"""``demould poured``: too much of one line is in the bowl."""

from pathlib import Path

import click

from demould.counter.cli.asking import (
    common,
    of_dessert,
    open_dessert,
    print_json,
)
from demould.counter.cli.meant import line_called, part_called


@click.command()
@of_dessert
@click.argument("component")
@click.argument("line", metavar='"GRAMS INGREDIENT"')
@click.option("-n", "pieces", type=click.IntRange(1, 9999), help="Pieces it was for.")
@common
def poured(
    dessert: str,
    component: str,
    line: str,
    pieces: int | None,
    kitchen: Path | None,
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Say how to go on with "400 g blackcurrant purée" in the bowl of COMPONENT.

    The others in proportion, or as it is; refused only where what sets it leaves its
    band. Without -n the batch as written is meant.
    """
    from demould.advice.poured import poured as poured_in
    from demould.amounts.shape.volume import mould_of
    from demould.amounts.tools.rounds import rounds
    from demould.mise.find import find_in
    from demould.sheets.plain import plain
    from demould.sheets.sums_page import poured_page

    folder, found = open_dessert(dessert, kitchen, now)
    part = part_called(found, component)
    meant, grams = line_called(part, line, folder)
    turns = rounds(pieces, mould_of(folder.kitchen, found.mould)) if pieces else None
    try:
        told = poured_in(
            found,
            part.key,
            meant.ordinal,
            grams,
            folder.kitchen,
            find_in(folder.larder),
            turns,
        )
    except ValueError as fault:
        raise click.BadParameter(f"{fault}.", param_hint="LINE") from None
    if as_json:
        print_json(
            {
                "component": part.key,
                "wanted_g": told.wanted_g,
                "poured_g": told.poured_g,
                "pieces": told.pieces,
                "others": {
                    "times": told.others.times,
                    "pieces": told.others.pieces,
                    "lines": [
                        {"what": one.line.what, "g": one.grams.value}
                        for one in told.others.lines
                    ],
                },
                "as_it_is": {
                    "pieces": told.as_it_is.pieces,
                    "out": [str(one.says) for one in told.as_it_is.out],
                    "refused": str(told.as_it_is.refused)
                    if told.as_it_is.refused
                    else None,
                },
            }
        )
        return
    click.echo(plain(poured_page(told)), nl=False)
