"""What is in the freezer already, set against the orders and the counter, oldest first."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta

from demould.mise.dessert import Dessert, component_of
from demould.mise.order import Frozen, Order
from demould.mise.own_bank import Bank, Lot, Par
from demould.office.stock import DAY_MIN


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What an order wants: `pieces` of a dessert, `grams` of each component, in all."""

    order: Order
    dessert: Dessert
    pieces: int
    grams: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """Pieces or grams of one lot that go to an order."""

    order: str
    amount: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """One lot, until when it is good, who takes of it, and what stays.

    `name` is the dessert's, or the component's with it. `good_until` is None where
    nobody says; `gone` where that day is past.
    """

    lot: Lot
    name: str
    good_until: date | None
    gone: bool
    taken: tuple[Taken, ...]
    stays: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Thaw:
    """What goes into the fridge tonight for the counter, by the day it was made.

    `missing` are pieces the freezer does not have.
    """

    par: Par
    name: str
    lots: tuple[tuple[date, int], ...]
    missing: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Allotted:
    """The freezer, parted: what each order finds there, and tonight's list.

    `frozen` are pieces by order, `grams` what is left over of a dip or glaze and goes
    in first, by order and component.
    """

    shelves: tuple[Shelf, ...] = ()
    frozen: Mapping[str, tuple[Frozen, ...]] = field(default_factory=dict)
    grams: Mapping[str, Mapping[str, float]] = field(default_factory=dict)
    thaw: tuple[Thaw, ...] = ()


Known = Mapping[str, Dessert]


@dataclass(slots=True)
class _Standing:
    """A lot while it is parted."""

    lot: Lot
    until: date | None
    left: float
    taken: list[Taken]


def allot(
    bank: Bank, wanted: Iterable[Wanted], desserts: Iterable[Dessert], today: date
) -> Allotted:
    """Part the freezer over the orders, by due time, then over the counter.

    An order is given the same variant only, and only what is good until it is due. One
    that names what is frozen for it has said all. The oldest lot goes first.
    """
    known = {one.key: one for one in desserts}
    lots = [
        _Standing(lot, good_until(lot, known.get(lot.dessert)), _amount(lot), [])
        for lot in sorted(bank.lots, key=lambda lot: lot.made)
    ]
    frozen: dict[str, tuple[Frozen, ...]] = {}
    grams: dict[str, dict[str, float]] = {}
    for want in sorted(wanted, key=lambda one: one.order.due):
        if not want.order.frozen and (found := tuple(_pieces(lots, want, today))):
            frozen[want.order.key] = found
        if over := dict(_grams(lots, want, today)):
            grams[want.order.key] = over
    return Allotted(
        thaw=tuple(_tonight(lots, bank.pars, known, today)),
        shelves=tuple(_shelf(one, known, today) for one in lots),
        frozen=frozen,
        grams=grams,
    )


def good_until(lot: Lot, dessert: Dessert | None) -> date | None:
    """Until when a lot is good: what it says itself, else the longest hold of its steps.

    Those are of pieces. What is left over of a dip or glaze has been warm: only its own
    line can tell.
    """
    minutes = [lot.keeps.value] if lot.keeps else []
    if not minutes and dessert is not None and lot.grams is None:
        method = (
            component_of(dessert, lot.component).method
            if lot.component
            else dessert.method
        )
        minutes = [step.hold.value for step in method if step.hold]
    if not minutes:
        return None
    return lot.made + timedelta(days=int(max(minutes) // DAY_MIN))


def _amount(lot: Lot) -> float:
    return lot.grams.value if lot.grams else float(lot.pieces or 0)


def _of_order(lots: list[_Standing], order: Order) -> list[_Standing]:
    return [
        one
        for one in lots
        if one.lot.dessert == order.dessert and one.lot.variant == order.variant
    ]


def _take(
    lots: Iterable[_Standing], amount: float, by: date, today: date
) -> Iterator[tuple[_Standing, float]]:
    """Take up to an amount of what is good today and until `by`, and say of which lot."""
    for one in lots:
        if one.until is not None and one.until < max(by, today):
            continue
        part = min(one.left, amount)
        if part > 0:
            one.left -= part
            amount -= part
            yield one, part


def _for_order(
    lots: Iterable[_Standing], amount: float, order: Order, today: date
) -> float:
    got = 0.0
    for one, part in _take(lots, amount, order.due.date(), today):
        one.taken.append(Taken(order=order.key, amount=part))
        got += part
    return got


def _pieces(lots: list[_Standing], want: Wanted, today: date) -> Iterator[Frozen]:
    own = [one for one in _of_order(lots, want.order) if one.lot.pieces]
    whole = [one for one in own if one.lot.component is None]
    pieces = int(_for_order(whole, want.pieces, want.order, today))
    if pieces:
        yield Frozen(pieces=pieces)
    for key in dict.fromkeys(layer.component for layer in want.dessert.layers):
        parts = [one for one in own if one.lot.component == key]
        found = int(_for_order(parts, want.pieces - pieces, want.order, today))
        if found:
            yield Frozen(pieces=found, component=key)


def _grams(
    lots: list[_Standing], want: Wanted, today: date
) -> Iterator[tuple[str, float]]:
    for key, amount in want.grams.items():
        over = [
            one
            for one in _of_order(lots, want.order)
            if one.lot.component == key and one.lot.grams
        ]
        got = _for_order(over, amount, want.order, today)
        if got:
            yield key, got


def _tonight(
    lots: list[_Standing], pars: Iterable[Par], known: Known, today: date
) -> Iterator[Thaw]:
    """Fill the counter up to its par for tomorrow, oldest first."""
    for par in pars:
        short = max(0, par.pieces - par.there)
        whole = [
            one
            for one in lots
            if one.lot.dessert == par.dessert
            and one.lot.component is None
            and one.lot.variant is None
            and one.lot.pieces
        ]
        tomorrow = today + timedelta(days=1)
        given = [
            (one.lot.made, int(part))
            for one, part in _take(whole, short, tomorrow, today)
        ]
        missing = short - sum(pieces for _, pieces in given)
        if short:
            name = known[par.dessert].name if par.dessert in known else par.dessert
            yield Thaw(par=par, name=name, lots=tuple(given), missing=missing)


def _shelf(one: _Standing, known: Known, today: date) -> Shelf:
    dessert = known.get(one.lot.dessert)
    name = dessert.name if dessert else one.lot.dessert
    if one.lot.component and dessert:
        component = component_of(dessert, one.lot.component).name
        name = f"{component}, {name}"
    return Shelf(
        lot=one.lot,
        name=name,
        good_until=one.until,
        gone=one.until is not None and one.until < today,
        taken=tuple(one.taken),
        stays=one.left,
    )
