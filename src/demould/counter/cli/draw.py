"""``demould draw``: the cut of a piece to scale, its jug, its moulds."""

from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import click

from demould.counter.cli.asking import (
    common,
    moment_at,
    of_dessert,
    open_dessert,
    print_json,
    say,
)
from demould.sheets.drawing.picture import Picture
from demould.sheets.page import Page


@click.command()
@click.option("-n", "pieces", type=click.IntRange(1, 9999), help="Pieces to make.")
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    default=Path("drawings"),
    show_default=True,
    help="Where the drawings go.",
)
@of_dessert
@common
def draw(
    dessert: str,
    pieces: int | None,
    out: Path,
    kitchen: Path | None,
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Draw DESSERT cut through, at full size with every layer and wall measured.

    With it, where they are: the jug at the first and the last dip, and the moulds
    cavity by cavity. Each as SVG for a screen, all on one sheet as PDF for the bench.
    """
    from demould.mise.find import find_in
    from demould.sheets.drawing_page import drawing_page, drawings
    from demould.week.making import counted

    folder, found = open_dessert(dessert, kitchen, now)
    amounts = counted(found, folder.kitchen, find_in(folder.larder), pieces)
    pictures = tuple(drawings(amounts, folder.kitchen))
    printed = moment_at(now, ZoneInfo(folder.kitchen.zone))
    written = write(pictures, drawing_page(found, pictures), out, printed)
    if as_json:
        print_json({"drawings": [str(path) for path in written]})
        return
    for path in written:
        click.echo(str(path))


def write(
    pictures: tuple[Picture, ...], page: Page, out: Path, now: datetime
) -> tuple[Path, ...]:
    """Write each picture as SVG and all as one PDF into a folder, made if missing."""
    from demould.counter.paper.papers import file_names, print_page
    from demould.sheets.drawing.svg import svg_of

    out.mkdir(parents=True, exist_ok=True)
    say("drawing ...")
    names = file_names([picture.key for picture in pictures])
    paths = []
    for picture, name in zip(pictures, names, strict=True):
        path = (out / name).with_suffix(".svg")
        path.write_text(svg_of(picture), encoding="utf-8")
        paths.append(path)
    paths.append(print_page(page, out / file_names([page.key])[0], printed=now))
    return tuple(paths)
