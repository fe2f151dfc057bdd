"""The curves of every wait of a dessert, as pictures."""

from collections.abc import Iterable, Iterator

from demould.cold.warmth import Warmth
from demould.mise.dessert import Dessert
from demould.mise.words import Words
from demould.sheets.drawing.curves import Curves, Line, curves
from demould.sheets.drawing.isotherms import isotherms
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
    return curves(
        Curves(
            key=_key(dessert, one),
            title=Words(
                "{dessert}, {place}",
                dessert=dessert.name,
                place=_place(one),
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


def section_pictures(
    dessert: Dessert, sections: Iterable[tuple[InPlace, Warmth]]
) -> Iterator[Picture]:
    """The piece cut through with lines of one temperature, at its moment of each wait."""
    for one, warmth in sections:
        hours = warmth.seconds / 3600
        values = {"place": _place(one), "hours": hours}
        yield isotherms(
            f"{_key(dessert, one)}-section",
            Words(
                "{dessert}, {place}, after {hours:.1f} h",
                dessert=dessert.name,
                **values,
            ),
            Words(
                "cut through after {hours:.1f} h in {place}: from {low:.0f} to {high:.0f} °C",
                low=min(warmth.at_c),
                high=max(warmth.at_c),
                **values,
            ),
            warmth,
        )


def _key(dessert: Dessert, one: InPlace) -> str:
    return f"cold-{dessert.key}-{one.place.key}-{one.how}".strip("-")


def _place(one: InPlace) -> str:
    how = f", {one.how}" if one.how else ""
    return f"{one.place.key} {one.place.air.value:g} °C{how}"
