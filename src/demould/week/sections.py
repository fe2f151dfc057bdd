"""The week: every section in one record, each one public function of its own inputs."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from demould.advice.findings import Finding
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.mise.kitchen import Kitchen
from demould.office.bank import Allotted
from demould.office.buying import Buying
from demould.office.use_up import UseUp
from demould.week.caring import Told, caring_of
from demould.week.chilling import Chilling, chilling_of
from demould.week.costing import Costing, costings_of
from demould.week.deciding import Decision, decisions_of
from demould.week.making import Making
from demould.week.office import buying_of_week, use_up_of_week
from demould.week.orders import allotted_of, makings_of, wanted
from demould.week.sure import Sure, sure_of
from demould.week.timing import Timing, timing_of
from demould.week.will_it import will_it_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Week:
    """All orders of a folder, worked out as from `now`. `makings` by due time."""

    kitchen: Kitchen
    now: datetime
    makings: tuple[Making, ...]
    chilling: Mapping[str, Chilling]
    timing: Timing
    decisions: tuple[Decision, ...]
    will_it: tuple[Finding, ...]
    bank: Allotted
    buying: Buying
    use_up: tuple[UseUp, ...]
    costings: tuple[Costing, ...]
    caring: tuple[Told, ...]
    sure: Sure


def week_of(folder: Folder, now: datetime) -> Week:
    """Work the whole week out; `now` is aware.

    Raises
    ------
    ValueError
        If there is no order, or a piece cannot be: the reader has said so before.
    """
    if not folder.orders:
        raise ValueError("a week without an order has nothing to work out")
    find = find_in(folder.larder)
    makings = makings_of(folder, now)
    timing = planned(folder, makings, now)
    bank = allotted_of(folder, now)
    buying = buying_of_week(folder, makings, timing, now, find)
    return Week(
        kitchen=folder.kitchen,
        now=now,
        makings=makings,
        chilling={
            making.amounts.dessert.key: chilling_of(
                making.amounts.dessert, folder.kitchen, find, in_full=False
            )
            for making in makings
        },
        timing=timing,
        decisions=decisions_of(makings, folder.kitchen, timing),
        will_it=will_it_of(
            (making.amounts.dessert for making in makings), folder.kitchen, find
        ),
        bank=bank,
        buying=buying,
        use_up=use_up_of_week(folder, makings, buying, bank, find),
        costings=costings_of(makings, folder, now, timing.laid, sizes=()),
        caring=caring_of(folder, makings),
        sure=sure_of(makings, folder.kitchen, find),
    )


def planned(
    folder: Folder, makings: Sequence[Making], now: datetime, *, seed: int = 0
) -> Timing:
    """Plan all orders together, from what is in the house or can be called now."""
    return timing_of(folder.kitchen, wanted(folder, makings, now), now, seed=seed)
