"""What comes out of a sheet, cut in straight rows."""

from demould.amounts.counts.rounding import NEWS_MM, whole_pieces
from demould.amounts.shape.section import box_mm
from demould.amounts.shape.volume import volume_ml
from demould.matter.grams import Find, after_cooking
from demould.mise.component import Component, Sheet, Tray
from demould.mise.figure import Figure, worked
from demould.mise.shape import Shape
from demould.mise.words import Words


def straight_rows(length_mm: float, width_mm: float, cut: Shape, gap_mm: float) -> int:
    """How many cuts a flat sheet gives in straight rows, turned whichever way gives more.

    The gap is between cuts only, not along the edges of the tray.

    >>> from demould.mise.shape import Cylinder
    >>> straight_rows(400, 300, Cylinder(diameter_mm=60, height_mm=8), 2)
    24
    """
    long, short, _ = box_mm(cut)
    return max(
        _along(length_mm, long, gap_mm) * _along(width_mm, short, gap_mm),
        _along(length_mm, short, gap_mm) * _along(width_mm, long, gap_mm),
    )


def _along(tray_mm: float, cut_mm: float, gap_mm: float) -> int:
    return whole_pieces((tray_mm + gap_mm) / (cut_mm + gap_mm))


def cuts_of_a_tray(sheet: Sheet, cut: Shape) -> int:
    """Cuts of one full tray."""
    tray = sheet.tray
    return straight_rows(tray.length_mm, tray.width_mm, cut, sheet.gap.value)


def off_cut(sheet: Sheet, cut: Shape) -> float:
    """Share of a full tray that stays over [%]."""
    used = cuts_of_a_tray(sheet, cut) * _face_mm2(cut)
    return 100 * (1 - used / (sheet.tray.length_mm * sheet.tray.width_mm))


def _face_mm2(cut: Shape) -> float:
    return 1000 * volume_ml(cut) / box_mm(cut)[2]


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
    rest = _part_of_a_tray(sheet.tray, max(0.0, trays - full), cut, sheet.gap.value)
    rule = Words(
        "{trays:.3g} trays {tall:g} mm thick, {each} cuts a tray in straight rows",
        trays=trays,
        tall=tall,
        each=cuts_of_a_tray(sheet, cut),
    )
    value = full * cuts_of_a_tray(sheet, cut) + rest
    name = f"cuts of {component.name}"
    return worked(name, value, "pieces", rule, one, sheet.gap)


def _part_of_a_tray(tray: Tray, part: float, cut: Shape, gap_mm: float) -> int:
    return max(
        straight_rows(part * tray.length_mm, tray.width_mm, cut, gap_mm),
        straight_rows(tray.length_mm, part * tray.width_mm, cut, gap_mm),
    )
