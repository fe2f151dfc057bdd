"""``demould cold``: how long to freeze and to thaw, and what else a cook asks of the cold."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from demould.counter.cli.answer import of_chilling
from demould.counter.cli.asking import (
    common,
    of_dessert,
    open_dessert_at,
    print_json,
    say,
)
from demould.counter.cli.cold_asked import Asked, answer_asked, plain_record
from demould.counter.cli.cold_files import learned_of, log_of, write_svg

if TYPE_CHECKING:
    from demould.mise.kitchen import ColdPlace, Kitchen
    from demould.sheets.drawing.picture import Picture

GROUPS = {
    "Questions": (
        "--sweat",
        "--table",
        "--bench",
        "--van",
        "--tub",
        "--beside",
        "--dead",
        "--probe",
    ),
    "Said with a question": (
        "--room",
        "--pieces",
        "--outside",
        "--ice",
        "--reading",
    ),
}


class Grouped(click.Command):
    """A command whose help sets its options out in groups."""

    def format_options(
        self, ctx: click.Context, formatter: click.HelpFormatter
    ) -> None:
        """Write the groups, then all other options."""
        left = {
            param.opts[0]: record
            for param in self.get_params(ctx)
            if isinstance(param, click.Option)
            and (record := param.get_help_record(ctx)) is not None
        }
        for title, names in GROUPS.items():
            with formatter.section(title):
                formatter.write_dl([left.pop(name) for name in names])
        with formatter.section("Options"):
            formatter.write_dl(list(left.values()))


@click.command(cls=Grouped)
@click.option(
    "--in", "place", help="Only this cold place, by its name in kitchen.yaml."
)
@click.option(
    "--sweat",
    metavar="TIME",
    help='How wet it gets on the plate: "10 min". From the fridge, in --room.',
)
@click.option("--table", is_flag=True, help="How soft it is, served frozen.")
@click.option(
    "--bench",
    metavar="DEGREES",
    help='How long it may stand on the bench while it is finished, out of "-20 °C".',
)
@click.option(
    "--van",
    metavar="TIME",
    help='How warm a box of --pieces arrives, and its ice: "3 h", with --outside, --ice.',
)
@click.option(
    "--tub", metavar="TIME", help='How deep a tray may be to cool in "2 h", 35 to 5 °C.'
)
@click.option(
    "--beside",
    metavar="WEIGHT",
    help='How many go in warm beside "2 kg" of finished pieces.',
)
@click.option(
    "--dead",
    metavar="MOMENTS",
    help='The freezer stopped: "2026-11-20 22:00 to 2026-11-21 06:00", with --reading.',
)
@click.option(
    "--probe",
    type=click.Path(path_type=Path, dir_okay=False, exists=True),
    metavar="FILE",
    help="What a probe's log (minutes; core; air) tells of the place named with --in.",
)
@click.option(
    "--air",
    type=click.Path(path_type=Path, dir_okay=False, exists=True),
    metavar="FILE",
    help="Reckon with the air as it was logged (minutes; air) in the place of --in.",
)
@click.option(
    "--svg",
    type=click.Path(path_type=Path, file_okay=False),
    metavar="DIR",
    help="Write curves and sections there too, as SVG.",
)
@click.option(
    "--room", metavar="AIR", help='"24 °C, 65 % humid". Default: as in kitchen.yaml.'
)
@click.option(
    "--pieces", type=click.IntRange(min=1), help="In the box of --van. Default: 12."
)
@click.option(
    "--outside", metavar="DEGREES", default="30 °C", help="Air of the van. Default: 30."
)
@click.option(
    "--ice",
    metavar="WEIGHT",
    default="0 g",
    help="Ice in the box of --van. Default: 0.",
)
@click.option(
    "--reading",
    "readings",
    multiple=True,
    metavar="READING",
    help='Of --dead: "2026-11-21 06:00; -12 °C; in the piece". As many as there are.',
)
@of_dessert
@common
def cold(
    dessert: str,
    place: str | None,
    kitchen: Path | None,
    now: str | None,
    probe: Path | None,
    air: Path | None,
    svg: Path | None,
    *,
    as_json: bool,
    **options: Any,  # click hands over what is declared above
) -> None:
    """Estimate how long DESSERT freezes and thaws in the kitchen's cold places.

    With a question only that is answered; several may be asked at once.
    """
    from demould.cold.from_kitchen import COVERS
    from demould.mise.find import find_in
    from demould.sheets.cold_page import cold_page
    from demould.sheets.cold_pictures import cold_pictures, section_pictures
    from demould.sheets.plain import plain
    from demould.sheets.probe_page import probe_page, probe_picture
    from demould.week.chilling import chilling_of, half_way, in_logged_air

    folder, found, moment = open_dessert_at(dessert, kitchen, now)
    places = _places(folder.kitchen, place)
    find = find_in(folder.larder)
    say("freezing and thawing ...")
    asked = Asked(**options)
    answers = answer_asked(
        asked,
        found,
        folder.kitchen,
        places,
        find,
        moment,
    )
    pictures: list[Picture] = []
    if place is None and (probe is not None or air is not None):
        raise click.UsageError("name the place of the log with --in.")
    if probe is not None:
        learned = learned_of(probe, found, folder.kitchen, places[0], find, moment)
        answers.append((probe_page(found, learned), plain_record("probe", learned)))
        pictures.append(probe_picture(found, learned))
    if answers:
        written = write_svg(pictures, svg)
        if as_json:
            told = [one for _, one in answers]
            print_json({"dessert": found.key, "answers": told, "drawings": written})
            return
        for page, _ in answers:
            click.echo(plain(page), nl=False)
        return
    narrowed = replace(folder.kitchen, cold=places)
    chilling = (
        chilling_of(found, narrowed, find, COVERS)
        if air is None
        else in_logged_air(found, folder.kitchen, find, places[0], log_of(air))
    )
    if svg is not None:
        pictures += cold_pictures(found, chilling)
        if air is None:
            halves = half_way(found, folder.kitchen, find, chilling)
            pictures += section_pictures(found, halves)
    written = write_svg(pictures, svg)
    if as_json:
        print_json({"dessert": found.key, **of_chilling(chilling), "drawings": written})
        return
    page = cold_page(found, chilling, drawn=len(places) == 1)
    click.echo(plain(page), nl=False)
    for path in written:
        click.echo(path)


def _places(kitchen: Kitchen, key: str | None) -> tuple[ColdPlace, ...]:
    """Give the place asked for, or all of them."""
    if key is None:
        return kitchen.cold
    places = tuple(one for one in kitchen.cold if one.key == key)
    if not places:
        known = ", ".join(one.key for one in kitchen.cold) or "none"
        raise click.BadParameter(
            f"no cold place is called {key!r}; the kitchen has: {known}.",
            param_hint="--in",
        )
    return places
