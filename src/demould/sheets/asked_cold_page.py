"""Answers to single questions about a dessert in the cold, each a page of its own."""

from collections.abc import Sequence

from demould.cold.beside import Beside
from demould.cold.dead_freezer import Judged
from demould.cold.out import Out
from demould.cold.soft import Softness, feel
from demould.mise.dessert import Dessert
from demould.mise.figure import Estimate
from demould.mise.kitchen import ColdPlace
from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table, Text
from demould.sheets.times import span
from demould.week.asked_cold import AtTheTable, InATub, OnThePlate, OnTheRoad, Room

PLANNING = Words("estimates are for planning: a probe in the piece decides")
LOCAL = Words("local food law and your own food-safety plan come first")


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
    return _page(dessert, "sweat", Words("on the plate"), Lines(lines=tuple(lines)))


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
    return _page(
        dessert,
        "table",
        Words("how soft at the table"),
        table,
        Lines(lines=tuple(lines)),
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
            "at {minutes:g} min a piece that is lots of {lot}",
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
    return _page(dessert, "out", Words("out of the cold"), Lines(lines=lines))


def road_page(dessert: Dessert, told: OnTheRoad) -> Page:
    """How warm a box of them arrives, and the ice it takes."""
    box = told.box
    lines: list[Text] = [
        Words(
            "{pieces} pieces, {kg:.1f} kg at {inside:g} °C, in a box that lets in"
            " {leak:g} W/K (assumed), {outside:g} °C outside, {minutes} on the way",
            pieces=told.pieces,
            kg=box.kilograms,
            inside=box.inside_c,
            leak=box.leak,
            outside=box.outside_c,
            minutes=span(told.minutes),
        ),
        Words("without ice it arrives at {at:.1f} °C", at=told.arrives_dry_c),
    ]
    if told.dry_min is not None:
        lines.append(
            Words(
                "{limit:g} °C is reached after {minutes}",
                limit=told.limit_c,
                minutes=span(told.dry_min),
            )
        )
    if told.ice_kg > 0 and told.holds_h is not None:
        lines.append(
            Words(
                "with {ice:g} kg of ice at 0 °C: {at:.1f} °C; that ice holds {hours:.1f} h",
                ice=told.ice_kg,
                at=told.arrives_c,
                hours=told.holds_h,
            )
        )
    lines += [
        Words(
            "ice needed to arrive at {limit:g} °C: {kg:.1f} kg",
            limit=told.limit_c,
            kg=told.needs_kg,
        ),
        Words(
            "doors that open are not counted; ordinary ice only: dry ice is for trained"
            " staff with ventilation, and never in a closed box or a closed van"
        ),
        LOCAL,
    ]
    return _page(dessert, "van", Words("in the van"), Lines(lines=tuple(lines)))


def tub_page(dessert: Dessert, told: InATub, place: ColdPlace) -> Page:
    """How deep a tray may be filled to cool in time."""
    layer = told.layer
    table = Table(
        columns=(
            Column(head=Words("depth"), align="right"),
            Column(head=Words("hours"), align="right"),
            Column(share=4),
        ),
        rows=tuple(
            (
                Cell(text=f"{mm:g} mm"),
                Cell(text=f"{hours:.1f} h", known="assumed"),
                Cell(text=""),
            )
            for mm, hours in told.rows
        ),
    )
    lines = (
        Words(
            "from {start:g} to {target:g} °C in {place}, {air:g} °C, on a wire shelf, both"
            " faces in moving air ({film:g} W/m2K)",
            start=layer.start_c,
            target=layer.target_c,
            place=place.key,
            air=layer.air_c,
            film=layer.film,
        ),
        Words(
            "in {hours:g} h: no deeper than {mm:.0f} mm; stirred or on a cold plate it is"
            " quicker",
            hours=told.within_h,
            mm=told.deepest_mm,
        ),
        Words("how fast food must be cooled is the local rule's to say"),
        LOCAL,
    )
    return _page(dessert, "tub", Words("how shallow a tub"), table, Lines(lines=lines))


def beside_page(dessert: Dessert, told: Beside, place: ColdPlace) -> Page:
    """How many warm pieces may go in beside finished goods."""
    lines: list[Text] = [
        Words(
            "{kg:g} kg of finished pieces stand uncovered in {place}, {air:g} °C, and are to"
            " stay under {limit:g} °C",
            kg=told.goods_kg,
            place=place.key,
            air=place.air.value,
            limit=told.limit_c,
        ),
        Words(
            "a full round of {round} put in warm brings them to {at:.1f} °C",
            round=told.round,
            at=told.warmest_c,
        ),
        _most(told.most, told.tried),
        Words(
            "how strong the machine is and what its air does are assumed: a probe in a"
            " finished piece beside the first warm tray tells"
        ),
    ]
    return _page(
        dessert, "beside", Words("warm beside finished"), Lines(lines=tuple(lines))
    )


def dead_page(dessert: Dessert, told: Judged) -> Page:
    """What is still sound after a freezer stopped, by its readings alone."""
    return _page(
        dessert,
        "dead-freezer",
        Words("the freezer stopped"),
        Lines(
            lines=(
                Words("{verdict}: {says}", verdict=told.verdict, says=told.says),
                Words("no temperature is ever made up here: only readings count"),
                LOCAL,
            ),
            loud=told.verdict != "sound",
        ),
    )


def _page(dessert: Dessert, key: str, head: Words, *blocks: Block) -> Page:
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


def _most(most: Estimate | None, tried: int) -> Words:
    if most is None:
        return Words("even {tried} at once leave them cold enough", tried=tried)
    return Words(
        "at most {low:.0f} warm pieces at once (likely {likely:.0f}, unsure by {why})",
        low=most.low,
        likely=most.likely,
        why=most.reason,
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
