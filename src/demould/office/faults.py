"""What no single line of a larder or kitchen can tell is wrong with money and stock."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime
from zoneinfo import ZoneInfo

from demould.mise.figure import Assumed, Line, Measured, Stated
from demould.mise.folder import Folder
from demould.mise.kitchen import Supplier
from demould.mise.own_larder import Stocked
from demould.mise.problem import Problem
from demould.mise.spelling import perhaps
from demould.mise.words import Words
from demould.office.delivery import LONGEST_LEAD, deliveries_of
from demould.office.stock import DAY_MIN, overdrawn_g

KITCHEN = Line("kitchen.yaml", 0, "")
LARDER = Line("larder.yaml", 0, "")


def faults_of(folder: Folder, now: datetime) -> tuple[Problem, ...]:
    """Give every fault of stock, money, suppliers, boxes and the freezer; `now` is aware."""
    today = now.astimezone(ZoneInfo(folder.kitchen.zone)).date()
    return (
        *(
            fault
            for stocked in folder.larder
            for fault in (
                *_stock(stocked, today),
                *_money(stocked, folder),
                *_called(stocked, folder),
                *_instead(stocked, folder),
            )
        ),
        *_never_delivers(folder, today),
        *_names(folder),
        *_freezer(folder, today),
    )


def _fault(line: Line | None, wrong: Words, remedy: Words) -> Problem:
    place = line or LARDER
    return Problem(place.file, place.number, place.column, wrong, remedy)


def _stock(stocked: Stocked, today: date) -> Iterator[Problem]:
    counted = stocked.counted_on
    line = _line_of(stocked)
    if counted is not None and stocked.stock is not None and counted > today:
        yield _fault(
            line,
            Words(
                "{key!r} was counted on {counted}, and today is {today}",
                key=stocked.key,
                counted=counted,
                today=today,
            ),
            Words("Write the day it was counted on"),
        )
    for moved in stocked.since:
        what = "came" if moved.came else "was used"
        if moved.on > today:
            yield _fault(
                moved.line,
                Words(
                    "{key!r} {what} on {on}, and today is {today}",
                    key=stocked.key,
                    what=what,
                    on=moved.on,
                    today=today,
                ),
                Words("Write it when it has happened"),
            )
        elif counted is not None and moved.on < counted:
            yield _fault(
                moved.line,
                Words(
                    "{key!r} {what} on {on}, before it was counted on {counted}",
                    key=stocked.key,
                    what=what,
                    on=moved.on,
                    counted=counted,
                ),
                Words("Take the line away: the count has it already"),
            )
    if stocked.since and stocked.stock is None:
        yield _fault(
            line,
            Words("{key!r} came and went and was never counted", key=stocked.key),
            Words("Write stock: and what was there on the day it was counted"),
        )
    elif overdrawn_g(stocked) > 0:
        yield _fault(
            line,
            Words(
                "{more:.0f} g more of {key!r} was used than was there",
                more=overdrawn_g(stocked),
                key=stocked.key,
            ),
            Words("Count it again, and take the old lines away"),
        )


def _line_of(stocked: Stocked) -> Line | None:
    origin = stocked.stock.origin if stocked.stock else None
    written = origin.line if isinstance(origin, Measured | Stated | Assumed) else None
    return written or stocked.line


def _money(stocked: Stocked, folder: Folder) -> Iterator[Problem]:
    own = folder.kitchen.money
    if own and stocked.money and stocked.money != own:
        yield _fault(
            stocked.line,
            Words(
                "{key!r} is priced in {money}, and the kitchen's money is {own}",
                key=stocked.key,
                money=stocked.money,
                own=own,
            ),
            Words("Write all prices in {own}", own=own),
        )


def _called(stocked: Stocked, folder: Folder) -> Iterator[Problem]:
    names = [supplier.name for supplier in folder.kitchen.suppliers]
    if stocked.supplier and names and stocked.supplier not in names:
        yield _fault(
            stocked.line,
            Words(
                "{key!r} comes from {supplier!r}, and kitchen.yaml has no such supplier",
                key=stocked.key,
                supplier=stocked.supplier,
            ),
            perhaps(
                stocked.supplier, names, Words("Write a line for it under suppliers")
            ),
        )
    most = LONGEST_LEAD.days
    if stocked.lead and stocked.lead.value > most * DAY_MIN:
        yield _fault(
            stocked.line,
            Words(
                "{key!r} takes {days:g} days to come; over {most} nobody can plan",
                key=stocked.key,
                days=stocked.lead.value / DAY_MIN,
                most=most,
            ),
            Words("Keep it in stock, and write the lead of the last time"),
        )


def _instead(stocked: Stocked, folder: Folder) -> Iterator[Problem]:
    season = stocked.season
    names = [one.key for one in folder.larder]
    if season and season.instead and season.instead not in names:
        yield _fault(
            season.line,
            Words("the larder has no {found!r}", found=season.instead),
            perhaps(season.instead, names, Words("Write an entry for it")),
        )


def _never_delivers(folder: Folder, today: date) -> Iterator[Problem]:
    kitchen = folder.kitchen
    for supplier in kitchen.suppliers if kitchen.openings else ():
        if next(_some(supplier, folder, today), None) is None:
            yield _fault(
                supplier.line or KITCHEN,
                Words(
                    "{name!r} delivers only while the kitchen is closed",
                    name=supplier.name,
                ),
                Words("Write the days and the hour it can be taken in"),
            )


def _some(supplier: Supplier, folder: Folder, today: date) -> Iterator[datetime]:
    return deliveries_of(supplier, folder.kitchen, today, today + LONGEST_LEAD)


def _names(folder: Folder) -> Iterator[Problem]:
    kitchen = folder.kitchen
    desserts = [one.key for one in folder.desserts]
    places = [one.key for one in kitchen.tools] + [one.key for one in kitchen.cold]
    # One dessert may be read alone, without orders: then others are not missing.
    for box in kitchen.packing if folder.orders else ():
        for key in box.desserts:
            yield from _unknown(box.line, key, desserts, "dessert")
    for one in kitchen.draws:
        yield from _unknown(one.line, one.name, places, "tool or cold place")


def _unknown(
    line: Line | None, name: str, known: Iterable[str], what: str
) -> Iterator[Problem]:
    names = tuple(known)
    if name not in names:
        yield _fault(
            line or KITCHEN,
            Words("no {what} is called {name!r}", what=what, name=name),
            perhaps(name, names, Words("It has: {names}", names=", ".join(names))),
        )


def _freezer(folder: Folder, today: date) -> Iterator[Problem]:
    for lot in folder.bank.lots:
        if lot.made > today:
            yield _fault(
                lot.line,
                Words(
                    "it was made on {on}, and today is {today}",
                    on=lot.made,
                    today=today,
                ),
                Words("Write it when it is in the freezer"),
            )
