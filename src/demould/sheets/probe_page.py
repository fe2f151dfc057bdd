"""What a probe's log told of a place, with the line to keep it by."""

from demould.mise.dessert import Dessert
from demould.mise.words import Words
from demould.mise.write_kitchen import write_cold_place
from demould.sheets.drawing.curves import Curves, Line, curves
from demould.sheets.drawing.picture import BOLD, Picture
from demould.sheets.page import Cell, Column, Head, Lines, Page, Table, Text
from demould.week.probed import Learned

ROWS = 10
"""So many of the readings are listed beside the run, evenly spread."""
LARGE = 0.25


def probe_page(dessert: Dessert, told: Learned) -> Page:
    """The film and how sure it is, readings beside the run, the line for kitchen.yaml."""
    fit = told.fit
    lines: list[Text] = [
        Words(
            "film of {place} over pieces like these: {film:.1f} W/m2K, give or take"
            " {off:.0f} %",
            place=told.place.key,
            film=fit.film,
            off=100 * fit.unsure,
        ),
        Words(
            "from {used} readings that tell something; the run stays within {off:.1f} °C"
            " of them",
            used=fit.used,
            off=fit.off_k,
        ),
    ]
    if not told.logged:
        lines.append(
            Words(
                "the air was not logged: taken as {air:g} °C; one degree warmer would make"
                " the film {by:+.0f} %. Log the air at the pieces too",
                air=told.place.air.value,
                by=100 * fit.by_air,
            )
        )
    if fit.unsure > LARGE:
        lines.append(Words("too unsure to keep: better an assumed film than this one"))
    if told.came_h is not None:
        lines.append(
            Words(
                "it came to its target after {hours:.1f} h; the estimate: {says}",
                hours=told.came_h,
                says=told.record.says,
            )
        )
    step = max(1, len(fit.rows) // ROWS)
    shown = (*fit.rows[:-1:step], fit.rows[-1])
    table = Table(
        columns=(
            Column(head=Words("minute"), align="right"),
            Column(head=Words("read"), align="right"),
            Column(head=Words("reckoned"), align="right"),
            Column(share=4),
        ),
        rows=tuple(
            (
                Cell(text=f"{at / 60:.0f}"),
                Cell(text=f"{read:.1f}\xa0°C", known="measured"),
                Cell(text=f"{model:.1f}\xa0°C"),
                Cell(text=""),
            )
            for at, read, model in shown
        ),
    )
    return Page(
        key=f"probe-{told.place.key}-{dessert.key}",
        title=dessert.name,
        blocks=(
            Head(text=Words("what the probe told")),
            Lines(lines=tuple(lines)),
            table,
            Head(text=Words("to keep it, write in kitchen.yaml, under cold")),
            Lines(lines=(write_cold_place(told.measured),)),
        ),
    )


def probe_picture(dessert: Dessert, told: Learned) -> Picture:
    """Readings as spots, the run as a line."""
    return curves(
        Curves(
            key=f"probe-{told.place.key}-{dessert.key}",
            title=Words(
                "{dessert} in {place}", dessert=dessert.name, place=told.place.key
            ),
            told=Words(
                "readings of a probe and the run that follows them, {film:.1f} W/m2K",
                film=told.fit.film,
            ),
            lines=(
                Line(
                    name=Words("reckoned, {film:.1f} W/m2K", film=told.fit.film),
                    points=tuple((at / 3600, at_c) for at, _, at_c in told.fit.rows),
                    width=BOLD,
                ),
            ),
            readings=tuple((at / 3600, read) for at, read, _ in told.fit.rows),
        )
    )
