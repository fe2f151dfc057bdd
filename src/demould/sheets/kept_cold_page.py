"""What stays cold enough, each question a page: van, tub, warm round, dead freezer."""

from demould.cold.beside import Beside
from demould.cold.dead_freezer import Judged
from demould.mise.dessert import Dessert
from demould.mise.figure import Estimate
from demould.mise.kitchen import ColdPlace
from demould.mise.words import Words
from demould.sheets.page import Cell, Column, Lines, Page, Table, Text
from demould.sheets.room_page import asked_page
from demould.sheets.times import span
from demould.week.kept_cold import InATub, OnTheRoad

LOCAL = Words("local food law and your own food-safety plan come first")


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
    return asked_page(dessert, "van", Words("in the van"), Lines(lines=tuple(lines)))


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
    return asked_page(
        dessert, "tub", Words("how shallow a tub"), table, Lines(lines=lines)
    )


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
    return asked_page(
        dessert, "beside", Words("warm beside finished"), Lines(lines=tuple(lines))
    )


def dead_page(dessert: Dessert, told: Judged) -> Page:
    """What is still sound after a freezer stopped, by its readings alone."""
    return asked_page(
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


def _most(most: Estimate | None, tried: int) -> Words:
    if most is None:
        return Words("even {tried} at once leave them cold enough", tried=tried)
    return Words(
        "at most {low:.0f} warm pieces at once (likely {likely:.0f}, unsure by {why})",
        low=most.low,
        likely=most.likely,
        why=most.reason,
    )
