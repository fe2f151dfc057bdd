"""The frozen bank, tonight's thaw list, and what should be used up."""

from collections.abc import Iterable, Iterator, Sequence

from demould.amounts.counts.factors import Make
from demould.mise.dessert import Dip, Glaze
from demould.mise.words import Words
from demould.office.bank import Allotted, Shelf, Thaw
from demould.office.needs import left_of, still_to_make
from demould.office.use_up import UseUp
from demould.sheets.office_words import day, weight
from demould.sheets.page import Block, Cell, Column, Head, Lines, Table
from demould.week.making import Making

FITS_SHOWN = 3
LEAST_LEFT_G = 50.0
"""Less of a dip or glaze than this is not worth a box in the freezer."""


def bank_blocks(bank: Allotted, makings: Sequence[Making] = ()) -> Iterator[Block]:
    """Give the lots, oldest first, what goes in first, tonight's list, what comes to it."""
    comes = tuple(_left_over(makings))
    first = tuple(_goes_first(makings))
    if not bank.shelves and not bank.thaw and not comes:
        return
    yield Head(
        text=Words("frozen bank"), note=Words("oldest first") if bank.shelves else ""
    )
    if bank.shelves:
        yield Table(
            columns=(
                Column(share=2.2),
                Column(share=1.1),
                Column(share=1.4),
                Column(share=2.4),
            ),
            rows=tuple(_row(shelf) for shelf in bank.shelves),
        )
    lines = (*first, *(line for one in bank.thaw for line in _tonight(one)), *comes)
    if lines:
        yield Lines(lines=lines)


def _row(shelf: Shelf) -> tuple[Cell, ...]:
    lot = shelf.lot
    return (
        Cell(text=_what(shelf)),
        Cell(text=Words("of {day}", day=day(lot.made))),
        Cell(
            text=Words("good until {day}", day=day(shelf.good_until))
            if shelf.good_until
            else Words("good until: ?"),
            strong=shelf.gone,
        ),
        Cell(text=_goes_to(shelf)),
    )


def _what(shelf: Shelf) -> str:
    lot = shelf.lot
    variant = f", {lot.variant}" if lot.variant else ""
    much = weight(lot.grams.value) if lot.grams else f"{lot.pieces}"
    return f"{much} {shelf.name}{variant}"


def _goes_to(shelf: Shelf) -> Words:
    if shelf.gone:
        return Words("PAST ITS DAY: not counted")
    unit = " g" if shelf.lot.grams else ""
    taken = ", ".join(f"{one.amount:.0f}{unit} for {one.order}" for one in shelf.taken)
    if not taken:
        return Words("stays")
    if shelf.stays < 1:
        return Words("{taken}", taken=taken)
    return Words(
        "{taken}; {stays:.0f}{unit} stay", taken=taken, stays=shelf.stays, unit=unit
    )


def _goes_first(makings: Iterable[Making]) -> Iterator[Words]:
    for making in makings:
        for make in making.amounts.makes:
            banked = making.banked.get(make.component, 0.0)
            if banked:
                yield goes_first(make, banked)


def goes_first(make: Make, banked: float) -> Words:
    """Say that what is left over goes in first, and what to weigh new."""
    new = still_to_make(make, banked)
    return Words(
        "{name}: {banked:.0f} g from the freezer go in first, {new:.0f} g are made new",
        name=make.name,
        banked=banked,
        new=make.weigh.value * new,
    )


def _tonight(one: Thaw) -> Iterator[Words]:
    if one.lots:
        lots = ", ".join(f"{pieces} of {day(made)}" for made, pieces in one.lots)
        yield Words(
            "tonight into the fridge, for the counter: {name}, {lots}",
            name=one.name,
            lots=lots,
        )
    if one.missing:
        yield Words(
            "the counter wants {n} {name} more than the freezer has to spare",
            n=one.missing,
            name=one.name,
        )


def _left_over(makings: Iterable[Making]) -> Iterator[Words]:
    """Say what of a dip or glaze is left when all is made: it comes into the freezer."""
    left = []
    for making in makings:
        finish = {
            one.component
            for one in making.amounts.dessert.finish
            if isinstance(one, Dip | Glaze)
        }
        left += [
            f"{over:.0f} g {make.name}"
            for make in making.amounts.makes
            if make.component in finish
            and (over := left_of(make, making.banked.get(make.component, 0.0)))
            >= LEAST_LEFT_G
        ]
    if left:
        yield Words(
            "comes to it when all is made: {what}; write its day and what it touched"
            " on the box",
            what=", ".join(left),
        )


def use_up_blocks(use_up: Iterable[UseUp]) -> Iterator[Block]:
    """Give what to use up, first what must go first, and what it fits into."""
    use_up = tuple(use_up)
    if not use_up:
        return
    yield Head(text=Words("use up"), note=Words("what must go first, first"))
    yield Table(
        columns=(Column(share=2.2), Column(share=1.2), Column(share=4)),
        rows=tuple(
            (
                Cell(text=f"{weight(one.grams)} {one.what}"),
                Cell(text=Words("by {day}", day=day(one.until)) if one.until else ""),
                Cell(text=_fits(one)),
            )
            for one in use_up
        ),
    )


def _fits(one: UseUp) -> Words:
    fits = " / ".join(
        f"{fit.dessert}: {fit.component}, {weight(fit.grams)}"
        if fit.grams != one.grams
        else f"the next {fit.dessert}"
        for fit in one.fits[:FITS_SHOWN]
    )
    caution = Words("; {caution}", caution=one.caution) if one.caution else ""
    return Words(
        "{fits}{caution}", fits=fits or Words("nothing written"), caution=caution
    )
