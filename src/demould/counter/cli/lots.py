"""``demould lots``: what went into what, both ways in one look."""

import sys
from pathlib import Path

import click

from demould.counter.cli.asking import (
    FAULTS,
    common,
    moment_at,
    print_json,
    read_as_at,
    tell,
)

FILE = "lots.txt"


@click.command()
@click.argument(
    "folder", type=click.Path(path_type=Path, file_okay=False), default=Path()
)
@click.argument("lot", required=False)
@click.option(
    "--pdf",
    type=click.Path(path_type=Path, dir_okay=False),
    help="The sheet to call a lot back by, as PDF too.",
)
@common
def lots(
    folder: Path, lot: str | None, pdf: Path | None, now: str | None, *, as_json: bool
) -> None:
    """Follow a LOT of the kitchen FOLDER both ways; without one, list them all.

    Lots are lines of lots.txt: came C-1188; cream 35 %; Wed 2026-11-18; from Weir Dairy.
    """
    from demould.counter.text.read_folder import zone_of
    from demould.log.lots import allergens_in_lots, trace, used_late
    from demould.mise.own_lots import Came, Made
    from demould.mise.problem import UnreadableError
    from demould.mise.read_lots import read_lots
    from demould.mise.spelling import one_of
    from demould.sheets.lots_page import lot_page, lots_page
    from demould.sheets.plain import plain

    path = folder / FILE
    if not path.is_file():
        raise click.UsageError(
            f"there is no {FILE} in {folder}. Write what came, was made and went, a"
            " line each."
        )
    moment = moment_at(now, zone_of(folder))
    entries, problems = read_lots(path.read_text("utf-8"), FILE)
    if problems:
        tell(problems)
        sys.exit(FAULTS)
    late = used_late(entries)
    if lot is None:
        known = [one for one in entries if isinstance(one, Came | Made)]
        if as_json:
            told = {"lots": [one.lot for one in known], "late": [str(w) for w in late]}
            print_json(told)
            return
        click.echo(plain(lots_page(entries, late)), nl=False)
        return
    try:
        names = {one.lot: None for one in entries if isinstance(one, Came | Made)}
        traced = trace(entries, one_of(lot, names, "lot"))
    except UnreadableError as fault:
        raise click.BadParameter(
            f"{fault.wrong}. {fault.remedy}.", param_hint="LOT"
        ) from None
    kitchen, _, _ = read_as_at(folder, now)
    larder = kitchen.larder if kitchen else None
    page = lot_page(traced, larder)
    if pdf is not None:
        from demould.counter.paper.papers import print_page

        print_page(page, pdf, printed=moment)
    if as_json:
        print_json(
            {
                "lot": traced.lot.lot,
                "what": traced.lot.what,
                "made_of": [one.lot for one in traced.made_of],
                "went_into": [one.lot for one in traced.went_into],
                "orders": [
                    {"lot": one.lot, "to": one.to, "how_much": one.how_much}
                    for one in traced.orders
                ],
                "asks": [str(one) for one in traced.asks],
                "allergens": allergens_in_lots(traced, larder)[0]
                if larder is not None
                else None,
            }
        )
        return
    click.echo(plain(page), nl=False)
