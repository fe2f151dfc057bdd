"""How long one dessert freezes and thaws, with the way there."""

import math
from collections.abc import Iterator

from demould.cold.beside import LIMIT_C
from demould.cold.probe_place import probe_reads
from demould.cold.wait import Wait
from demould.larder.read import hold
from demould.mise.dessert import Dessert
from demould.mise.figure import how_known
from demould.mise.words import Words
from demould.sheets.chart import chart
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table, Text
from demould.sheets.times import between, span
from demould.week.chilling import Chilling, InPlace

EVERY = 4
"""Of the curve's two dozen points a page shows every fourth."""
HABITS = {
    "blast chiller": "blast freezing",
    "upright freezer": "freezing in a freezer",
    "still freezer": "freezing in a freezer",
}
NEAR_G = 0.05


def cold_page(dessert: Dessert, chilling: Chilling, *, drawn: bool = False) -> Page:
    """Give all waits of a dessert in the cold, with what they hang on.

    `drawn` draws each way there as a chart of signs instead of a line of numbers.
    """
    return Page(
        key=f"cold-{dessert.key}",
        title=dessert.name,
        note=chilling.load,
        blocks=(
            *_freezing(chilling, drawn=drawn),
            *_thawing(chilling, drawn=drawn),
            Head(text=Words("the probe")),
            Lines(lines=tuple(_probe(chilling))),
        ),
    )


def hours_said(wait: Wait) -> Text:
    """Give the span of a wait, or that it may never end, or does not."""
    if wait.hours is not None:
        return between(wait.hours)
    return "?" if wait.at_best else Words("never")


def _freezing(chilling: Chilling, *, drawn: bool) -> Iterator[Block]:
    if not chilling.freezing:
        return
    yield Head(text=Words("freeze, until nowhere is warmer than -18 °C"))
    yield Table(
        columns=(
            Column(share=1.5),
            Column(head=Words("between"), share=1.3),
            Column(head=Words("likely"), align="right"),
            Column(head=Words("heat"), align="right"),
            Column(head=Words("unsure first of all by"), share=4),
        ),
        rows=tuple(
            (*_start(one), Cell(text=f"{abs(one.wait.heat_kj):.1f} kJ"), _why(one))
            for one in chilling.freezing
        ),
    )
    yield Lines(lines=(*_habits(chilling), *beside_lines(chilling)))
    for one in chilling.freezing:
        yield Lines(lines=tuple(_way(one, drawn=drawn)))


def _thawing(chilling: Chilling, *, drawn: bool) -> Iterator[Block]:
    if not chilling.thawing:
        return
    yield Head(text=Words("thaw, until no ice is left and the core is +1 °C"))
    yield Table(
        columns=(
            Column(share=1.5),
            Column(head=Words("between"), share=1.3),
            Column(head=Words("likely"), align="right"),
            Column(head=Words("water on it"), align="right"),
            Column(head=Words("serve"), align="right"),
        ),
        rows=tuple(
            (
                *_start(one),
                Cell(text=_water(one.wait), known="assumed"),
                Cell(text=_serve(one.wait, chilling)),
            )
            for one in chilling.thawing
        ),
    )
    keeps = chilling.keeps
    said = Words(
        "serve: hours from the fridge door, from when even a slow one is ready to the"
        " longest hold ({keeps:g} h, {how})",
        keeps=keeps.value / 60,
        how=how_known(keeps),
    )
    water = Words(
        "water on it: the most that lies on a piece at once; some of it dries again"
    )
    yield Lines(lines=(said, water))
    for one in chilling.thawing:
        why = Words(
            "{name}: unsure first of all by {why}",
            name=_name(one),
            why=_reason(one.wait),
        )
        yield Lines(
            lines=(
                *_way(one, drawn=drawn),
                *((why,) if one.wait.hours else (_reason(one.wait),)),
            )
        )


def _name(one: InPlace) -> str:
    how = f", {one.how}" if one.how else ""
    return f"{one.place.key} {one.place.air.value:g} °C{how}"


def _start(one: InPlace) -> tuple[Cell, Cell, Cell]:
    likely = _likely_h(one.wait)
    return (
        Cell(text=_name(one)),
        Cell(text=hours_said(one.wait), known="assumed"),
        Cell(text="" if likely is None else f"{likely:.1f} h", known="assumed"),
    )


def _likely_h(wait: Wait) -> float | None:
    if wait.hours is not None:
        return wait.hours.likely
    return wait.at_best.likely if wait.at_best else None


def _why(one: InPlace) -> Cell:
    return Cell(text=_reason(one.wait), strong=one.wait.at_best is not None)


def _reason(wait: Wait) -> Text:
    if wait.hours is not None:
        return wait.hours.reason
    if wait.at_best is not None:
        return Words(
            "at best {low:.1f} h, and not at all if {unless}",
            low=wait.at_best.low,
            unless=wait.at_best.unless,
        )
    return wait.never or ""


def _water(wait: Wait) -> str:
    if wait.wet is None:
        return ""
    grams = wait.wet.grams
    if grams.high < NEAR_G:
        return f"< {NEAR_G:g} g"
    return f"{grams.low:.1f} - {grams.high:.1f} g"


def _serve(wait: Wait, chilling: Chilling) -> str:
    if wait.hours is None:
        return ""
    ready, latest = math.ceil(wait.hours.high * 2) / 2, chilling.keeps.value / 60
    return f"{ready:g} - {latest:g} h" if ready < latest else ""


def _habits(chilling: Chilling) -> Iterator[Words]:
    for state in dict.fromkeys(HABITS[one.place.kind] for one in chilling.freezing):
        known = hold(state)
        if known is None or known.least is None:
            continue
        yield Words(
            "common practice for {state}: {hours:g} h or more (between {low:g} and"
            " {high:g} h for a piece of 60 to 100 ml)",
            state=state,
            hours=known.least.value / 60,
            low=known.least.low / 60,
            high=known.least.high / 60,
        )


def beside_lines(chilling: Chilling, *, too_warm_only: bool = False) -> Iterator[Words]:
    """Say how warm finished goods get beside a full round that goes in warm."""
    least = LIMIT_C if too_warm_only else -math.inf
    for one in chilling.freezing:
        if one.beside_c is None or one.beside_c <= least:
            continue
        values = {"place": one.place.key, "at": one.beside_c, "limit": LIMIT_C}
        yield (
            Words(
                "{place}: finished pieces uncovered beside a round put in warm get to"
                " {at:.0f} °C",
                **values,
            )
            if one.beside_c <= LIMIT_C
            else Words(
                "{place}: finished pieces uncovered beside a round put in warm get to"
                " {at:.0f} °C, over {limit:g}: box them, move them, or put fewer in",
                **values,
            )
        )


def _way(one: InPlace, *, drawn: bool) -> Iterator[str | Words]:
    signs = chart(one.wait.curve) if drawn else ()
    if signs:
        yield Words("{name}: core #, surface ., both +", name=_name(one))
        yield from signs
    points = [*one.wait.curve[:-1:EVERY], one.wait.curve[-1]]
    said = [f"{hours:.1f} h {core:.0f}/{skin:.0f}" for hours, core, skin, _ in points]
    if not signs:
        yield Words(
            "{name}, core/surface °C: {said}", name=_name(one), said="  ".join(said)
        )
    if one.wait.remark:
        yield one.wait.remark
    if drawn and one.wait.alone:
        yield Words("each cause by itself at its slow end:")
        for cause, hours in one.wait.alone:
            yield Words(
                "{hours}  {cause}",
                hours=Words("never") if hours is None else f"{hours:.1f} h",
                cause=cause,
            )


def _probe(chilling: Chilling) -> Iterator[Words]:
    place = chilling.probe
    yield Words(
        "into the middle of the centre: {depth:.0f} mm straight in from the {face}",
        depth=place.depth * 1000,
        face=Words("open face") if place.face == "top" else Words("flat face below"),
    )
    yield Words("before it is demoulded it must read -18 °C and go on falling")
    for one in chilling.freezing:
        if one.wait.hours is None:
            continue
        reads = probe_reads(one.wait, place)
        if reads.early_h * 60 >= 1:
            yield Words(
                "{name}: 5 mm beside the middle a probe reads {off:.1f} °C when the"
                " middle is {middle:.1f} °C, and says it {early} too soon",
                name=_name(one),
                off=reads.off_c,
                middle=reads.middle_c,
                early=span(60 * reads.early_h),
            )
    yield Words("these are estimates for planning: a probe in the piece decides")
