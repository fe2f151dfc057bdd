"""What a temperature log shows of a rule, with what a person must write down."""

from collections.abc import Iterator

from demould.care.hygiene import Judged
from demould.larder.table import sources
from demould.mise.words import Words
from demould.sheets.page import Blanks, Block, Head, Lines, Page


def hygiene_page(
    judged: Judged,
    fresh_h: float,
    grown: float,
    *,
    can_grow: bool,
    fits: bool | None,
) -> Page:
    """Lay out the verdict, the gaps, and the estimate with its limits."""
    rule = judged.rule
    return Page(
        key="temperatures",
        title=Words(
            "{rule}: {verdict}", rule=rule.name, verdict=judged.verdict.upper()
        ),
        blocks=tuple(_blocks(judged, fresh_h, grown, can_grow=can_grow, fits=fits)),
        foot=(
            Words(
                "{source} {page}. Confirm it with your own plan: local food law and your"
                " own food-safety plan come first.",
                source=sources()[rule.source].reference,
                page=rule.page,
            ),
        ),
    )


def _blocks(
    judged: Judged,
    fresh_h: float,
    grown: float,
    *,
    can_grow: bool,
    fits: bool | None,
) -> Iterator[Block]:
    yield Lines(lines=(Words("{says}", says=judged.rule.says),))
    if judged.says:
        yield Lines(lines=judged.says, loud=judged.verdict != "within")
    if fits is False:
        yield Lines(
            lines=(
                Words(
                    "the thermometer is over 1 °C out in ice water: no reading counts"
                ),
            ),
            loud=True,
        )
    if judged.gaps:
        yield Head(text=Words("gaps"), note=Words("nobody looked"))
        yield Lines(
            lines=tuple(
                Words(
                    "{a} to {b}",
                    a=f"{a:%a %Y-%m-%d %H:%M}",
                    b=f"{b:%a %Y-%m-%d %H:%M}",
                )
                for a, b in judged.gaps
            )
        )
    yield Head(text=Words("for planning only"))
    yield Lines(
        lines=(
            Words("{h:.1f} h not frozen: they count, before freezing too", h=fresh_h),
            Words(
                "Listeria may have grown {n:.1f} powers of ten, without lag, at its best pH and water"
                " unless you gave them",
                n=grown,
            ),
            Words("counts as a food it can grow in")
            if can_grow
            else Words("by its pH or water activity not counted as a food it grows in"),
            Words("an estimate releases nothing: shelf life needs a laboratory"),
        )
    )
    if judged.asks:
        yield Head(text=Words("to write down"))
        yield Lines(lines=judged.asks)
        yield Blanks(labels=(Words("done"), Words("by"), Words("at")))
