"""The curves of every wait of a dessert, as pictures."""

from collections.abc import Iterator

from demould.mise.dessert import Dessert
from demould.mise.words import Words
from demould.sheets.drawing.curves import Curves, Line, curves
from demould.sheets.drawing.picture import BOLD, FINE, PLAIN, Picture
from demould.week.chilling import Chilling, InPlace

FROZEN_C, THAWED_C = -18.0, 1.0


def cold_pictures(dessert: Dessert, chilling: Chilling) -> Iterator[Picture]:
    """Core, surface and ice over the hours, a picture for each place and way."""
    for waits, level in (
        (chilling.freezing, FROZEN_C),
        (chilling.thawing, THAWED_C),
    ):
        for one in waits:
            if one.wait.curve[-1][0] > 0:
                yield _picture(dessert, one, level)


def _picture(dessert: Dessert, one: InPlace, level: float) -> Picture:
    hours, core, skin, ice = zip(*one.wait.curve, strict=True)
    how = f", {one.how}" if one.how else ""
    return curves(
        Curves(
            key=f"cold-{dessert.key}-{one.place.key}-{one.how}".strip("-"),
            title=Words(
                "{dessert}: {place} {air:g} °C{how}",
                dessert=dessert.name,
                place=one.place.key,
                air=one.place.air.value,
                how=how,
            ),
            told=Words(
                "core {core:.0f} °C and surface {skin:.0f} °C after {hours:.1f} h; core,"
                " surface and share of ice over the hours",
                core=core[-1],
                skin=skin[-1],
                hours=hours[-1],
            ),
            lines=(
                Line(
                    name=Words("core"),
                    points=tuple(zip(hours, core, strict=True)),
                    width=BOLD,
                ),
                Line(
                    name=Words("surface"),
                    points=tuple(zip(hours, skin, strict=True)),
                    width=PLAIN,
                    dashed=True,
                ),
            ),
            ice=Line(
                name=Words("ice, from none below to all above"),
                points=tuple(zip(hours, ice, strict=True)),
                width=FINE,
            ),
            level=level,
            ends=one.wait.hours,
        )
    )
