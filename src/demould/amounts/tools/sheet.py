"""What a batch gives, spread on trays and cut."""

from dataclasses import replace

from demould.amounts.counts.rounding import NEWS_MM, whole_pieces
from demould.amounts.shape.section import box_mm
from demould.amounts.tools.layout import laid_out
from demould.matter.grams import Find, after_cooking
from demould.mise.component import Component, Sheet, Tray
from demould.mise.figure import Figure, worked
from demould.mise.shape import Shape
from demould.mise.words import Words


def cuts_of_a_tray(sheet: Sheet, cut: Shape) -> int:
    """Cuts of one full tray, as it is cut here."""
    return len(laid_out(sheet, cut).places)


def thickness(component: Component, sheet: Sheet, made: Figure) -> Figure:
    """How thick `made` grams, baked, stand in one tray [mm]."""
    tray = sheet.tray
    area_mm2 = tray.length_mm * tray.width_mm
    value = 1000 * made.value / component.density.value / area_mm2
    rule = Words(
        "grams / density, over {length:g} x {width:g} mm",
        length=tray.length_mm,
        width=tray.width_mm,
    )
    name = f"{component.name} in one tray"
    return worked(name, value, "mm", rule, made, component.density)


def cuts_of_a_batch(
    component: Component, sheet: Sheet, cut: Shape, find: Find
) -> Figure:
    """Cuts of the batch as written, spread as thick as the cut [pieces].

    Full trays first; a tray thinner by under 0.5 mm is full. What is left is spread
    over a part of one more tray, along whichever side gives more.
    """
    made = after_cooking(component, find)
    tall = box_mm(cut)[2]
    one = thickness(component, sheet, made)
    trays = one.value / tall
    full = whole_pieces(trays)
    if (full + 1 - trays) * tall < NEWS_MM:
        full += 1
    rest = _part_of_a_tray(sheet, max(0.0, trays - full), cut)
    rule = Words(
        "{trays:.3g} trays {tall:g} mm thick, {each} cuts a tray in {rows} rows",
        trays=trays,
        tall=tall,
        each=cuts_of_a_tray(sheet, cut),
        rows="shifted" if laid_out(sheet, cut).shifted else "straight",
    )
    value = full * cuts_of_a_tray(sheet, cut) + rest
    name = f"cuts of {component.name}"
    return worked(name, value, "pieces", rule, one, sheet.gap)


def _part_of_a_tray(sheet: Sheet, part: float, cut: Shape) -> int:
    long, wide = sheet.tray.length_mm, sheet.tray.width_mm
    return max(
        cuts_of_a_tray(replace(sheet, tray=tray), cut)
        for tray in (
            Tray(length_mm=part * long, width_mm=wide),
            Tray(length_mm=long, width_mm=part * wide),
        )
    )
