"""Pieces in the room, each question a page: wet on the plate, on the bench, at the table."""

from collections.abc import Sequence

from demould.cold.out import Out
from demould.cold.soft import Softness, feel
from demould.mise.dessert import Dessert
from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table, Text
from demould.week.at_the_table import AtTheTable
from demould.week.in_the_room import OnThePlate, Room

PLANNING = Words("estimates are for planning: a probe in the piece decides")


def plate_page(dessert: Dessert, told: OnThePlate) -> Page:
    """How wet a thawed piece gets on the plate, how soon, and what would avoid it."""
    likely, room = told.likely, told.room
    lines: list[Text] = [_room(room)]
    if likely.point_c is None or told.grams.high <= 0:
        lines.append(Words("nothing settles on it in this air"))
    else:
        lines += [
            Words(
                "{point} point of this air: {at:.1f} °C; a skin colder than that gets wet",
                point=likely.point,
                at=likely.point_c,
            ),
            _visible(told.soonest_min, likely.visible_min),
            Words(
                "in {minutes:g} min {low:.2f} to {high:.2f} g of water on a piece, a film"
                " of {thin:.0f} to {thick:.0f} µm (unsure by {why})",
                minutes=told.minutes,
                low=told.grams.low,
                high=told.grams.high,
                thin=told.film_um.low,
                thick=told.film_um.high,
                why=told.grams.reason,
            ),
        ]
    lines.append(
        Words(
            "what would help: air under {driest:.0f} % humid, {cool}smaller waves of trays",
            driest=100 * likely.driest,
            cool=Words("or a room under {at:.0f} °C, ", at=likely.coolest_c)
            if likely.coolest_c is not None and likely.coolest_c < room.air_c
            else "",
        )
    )
    return asked_page(
        dessert, "sweat", Words("on the plate"), Lines(lines=tuple(lines))
    )


def out_page(dessert: Dessert, told: Out, room: Room, a_piece_min: float) -> Page:
    """How long it may stand out while it is finished, and how many make a lot."""
    lines = (
        _room(room),
        Words(
            "the whole piece warms by {low:.1f} to {high:.1f} °C a minute at first",
            low=told.per_minute.low,
            high=told.per_minute.high,
        ),
        Words(
            "after {low:.0f} to {high:.0f} min it has evened out at {limit:g} °C: back in"
            " the freezer before that",
            low=told.until.low,
            high=told.until.high,
            limit=told.limit_c,
        ),
        Words(
            "at {minutes:.1f} min a piece that is lots of {lot}",
            minutes=a_piece_min,
            lot=told.lot(a_piece_min),
        ),
        Words(
            "minute, skin/even °C: {said}",
            said="  ".join(
                f"{at:.0f} {skin:.0f}/{even:.0f}" for at, skin, even in told.way[::2]
            ),
        ),
        PLANNING,
    )
    return asked_page(dessert, "out", Words("out of the cold"), Lines(lines=lines))


def table_page(dessert: Dessert, told: AtTheTable) -> Page:
    """How soft it is frozen, by temperature, and minutes out of the freezer."""
    temperatures = [at for at, _ in told.smooth[0].shares]
    rows = [
        row
        for smooth, all_in in zip(told.smooth, told.all_in, strict=True)
        for row in _soft_rows(smooth, all_in)
    ]
    table = Table(
        columns=(
            Column(share=2),
            Column(head=Words("first ice"), align="right"),
            *(Column(head=f"{at:g}\xa0°C", align="right") for at in temperatures),
            Column(head=Words("scoop or slice"), share=1.5),
        ),
        rows=tuple(rows),
    )
    body = told.smooth[0]
    lines: list[Text] = [
        Words(
            "ice as a share of the water that can freeze; 55 to 65 % is to scoop or slice,"
            " over 75 % too hard (common practice)"
        ),
        Words(
            "{name} feels: {said}",
            name=body.component,
            said=", ".join(f"{at:g} °C {feel(share)}" for at, share in body.shares),
        ),
    ]
    for place, wait in told.waits:
        if wait is None:
            lines.append(Words("{place}: it has no such window there", place=place))
        elif wait.high < 1:
            lines.append(
                Words("{place}: soft enough from the freezer at once", place=place)
            )
        else:
            lines.append(
                Words(
                    "{place}: {low:.0f} to {high:.0f} min out of -18 °C until the middle"
                    " can be cut",
                    place=place,
                    low=wait.low,
                    high=wait.high,
                )
            )
    lines.append(PLANNING)
    return asked_page(
        dessert,
        "table",
        Words("how soft at the table"),
        table,
        Lines(lines=tuple(lines)),
    )


def asked_page(dessert: Dessert, key: str, head: Words, *blocks: Block) -> Page:
    """Give the page of one question about a dessert in the cold."""
    return Page(
        key=f"cold-{key}-{dessert.key}",
        title=dessert.name,
        blocks=(Head(text=head), *blocks),
    )


def _room(room: Room) -> Words:
    return Words(
        "room air {air:g} °C, {damp:.0f} % humid ({known})",
        air=room.air_c,
        damp=100 * room.relative,
        known=Words("as said") if room.said else Words("assumed"),
    )


def _visible(soonest: float | None, likely: float | None) -> Words:
    if soonest is None:
        return Words("in this time no film that could be seen")
    if likely is None:
        return Words(
            "a film can be seen after {soonest:.0f} min if the skin stays cold; where it"
            " warms as reckoned, not in this time",
            soonest=soonest,
        )
    return Words(
        "a film can be seen after {soonest:.0f} to {likely:.0f} min",
        soonest=soonest,
        likely=likely,
    )


def _soft_rows(smooth: Softness, all_in: Softness) -> Sequence[tuple[Cell, ...]]:
    rows = [_soft(smooth, smooth.component)]
    if smooth.shares != all_in.shares:
        rows.append(_soft(all_in, Words("if the sugar of its pieces dissolved too")))
    return rows


def _soft(one: Softness, name: Text) -> tuple[Cell, ...]:
    first = Words("none") if one.starts_c is None else f"{one.starts_c:.1f}\xa0°C"
    served = one.serve_c
    return (
        Cell(text=name),
        Cell(text=first),
        *(Cell(text=f"{100 * share:.0f}\xa0%") for _, share in one.shares),
        Cell(
            text=Words("never")
            if served is None
            else f"{served[0]:.0f} to {served[1]:.0f}\xa0°C"
        ),
    )
