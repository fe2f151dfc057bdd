"""Where every gram goes: sold, spares, lost, left over, strained out."""

from collections.abc import Iterable
from dataclasses import dataclass

from demould.amounts.counts.factors import Make
from demould.matter.grams import Find, kept_by_solids, weighed_lines
from demould.mise.dessert import component_of
from demould.office.needs import ingredients_of, left_of, still_to_make
from demould.week.making import Making

PLATE = "plate"
CLOSED_WITHIN_G = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One component of one order, all in g.

    Attributes
    ----------
    taken
        What its ingredients weigh as they are taken out of the store, the liquid that
        strained solids keep with them.
    from_before
        What was left over from an earlier week and goes in first.
    sold, spares
        In, on and beside the pieces that are ordered, and in those made above them.
    lost
        What sticks, what cooks away, what is blown past the pieces.
    left
        What stays in jug, pan and tray, good for something else.
    strained_out
        Solids, and the liquid they keep.
    """

    order: str
    component: str
    name: str
    taken: float
    from_before: float
    sold: float
    spares: float
    lost: float
    left: float
    strained_out: float

    @property
    def off(self) -> float:
        """What of the taken grams is nowhere: 0 if the ledger is closed."""
        told = self.sold + self.spares + self.lost + self.left + self.strained_out
        return self.taken + self.from_before - told


def ledger_of(makings: Iterable[Making], find: Find) -> tuple[Entry, ...]:
    """Give an entry for every component of every order, then for what is bought ready.

    Taken grams are added up ingredient by ingredient as they are bought; where they go
    is worked out component by component from the pieces. Both must meet.
    """
    entries: list[Entry] = []
    for making in makings:
        entries += [_entry(making, make, find) for make in making.amounts.makes]
        entries += _ready_made(making)
    return tuple(entries)


def _entry(making: Making, make: Make, find: Find) -> Entry:
    banked = making.banked.get(make.component, 0.0)
    new = still_to_make(make, banked)
    each = ingredients_of(making.amounts.dessert, make, find)
    taken = new * sum(each.values())
    strained = new * _strained_out(making, make, find)
    cooked = make.weigh if make.cook_to is None else make.cook_to
    gone = new * (make.weigh.value - cooked.value)
    sold = make.in_pieces.value * _share_sold(making, make)
    return Entry(
        order=making.order.key,
        component=make.component,
        name=make.name,
        taken=taken,
        from_before=banked,
        sold=sold,
        spares=make.in_pieces.value - sold,
        lost=make.lost.value + gone,
        left=left_of(make, banked),
        strained_out=strained,
    )


def _share_sold(making: Making, make: Make) -> float:
    """Share of the pieces this was made for that are ordered; the others are spares."""
    made = making.amounts.still.get(make.component, making.amounts.pieces)
    return min(1.0, making.order.pieces / made) if made else 1.0


def _strained_out(making: Making, make: Make, find: Find) -> float:
    component = component_of(making.amounts.dessert, make.component)
    solids = sum(
        grams.value
        for line, grams in weighed_lines(component.formula, find)
        if line.strained_out
    )
    kept = kept_by_solids(component, find)
    return (solids + (kept.value if kept else 0.0)) * make.factor.value


def _ready_made(making: Making) -> list[Entry]:
    """What is bought as it goes beside the portions."""
    dessert = making.amounts.dessert
    portions = making.order.pieces * (
        dessert.portions.value if dessert.portions else 1.0
    )
    return [
        Entry(
            order=making.order.key,
            component=PLATE,
            name=plate.what,
            taken=plate.amount.value * portions,
            from_before=0.0,
            sold=plate.amount.value * portions,
            spares=0.0,
            lost=0.0,
            left=0.0,
            strained_out=0.0,
        )
        for plate in dessert.plate
        if plate.component is None and plate.amount.unit == "g"
    ]


def totals(entries: Iterable[Entry], name: str) -> Entry:
    """Add entries up to one line."""
    entries = tuple(entries)

    def of(part: str) -> float:
        return float(sum(getattr(entry, part) for entry in entries))

    return Entry(
        order="",
        component="",
        name=name,
        taken=of("taken"),
        from_before=of("from_before"),
        sold=of("sold"),
        spares=of("spares"),
        lost=of("lost"),
        left=of("left"),
        strained_out=of("strained_out"),
    )
