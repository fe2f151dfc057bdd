"""What is not in the house yet, and when it can be."""

from collections.abc import Iterable, Mapping
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

from demould.amounts.counts.factors import Make
from demould.matter.grams import Find, kept_by_solids, weighed_lines
from demould.mise.dessert import component_of
from demould.mise.kitchen import Kitchen
from demould.mise.own_larder import Larder, Stocked
from demould.plan.kitchen.clock import open_days
from demould.week.making import Making

DAY_MIN = 24 * 60
LONGEST_LEAD = timedelta(days=60)


def needs_of(makings: Iterable[Making], find: Find) -> dict[str, float]:
    """Give grams of every ingredient over all orders, by its id, nothing rounded.

    What a dip needs to cover its last piece is needed too, though most of it is left.
    """
    needs: dict[str, float] = {}
    for making in makings:
        for make in making.amounts.makes:
            for name, grams in ingredients_of(making, make, find).items():
                needs[name] = needs.get(name, 0.0) + grams
    return needs


def ingredients_of(making: Making, make: Make, find: Find) -> dict[str, float]:
    """Give grams of every ingredient in what is made of one component.

    A liquid that is made up again after straining is needed twice where the solids
    keep it.
    """
    component = component_of(making.amounts.dessert, make.component)
    kept = kept_by_solids(component, find)
    found: dict[str, float] = {}
    for line, grams in weighed_lines(component.formula, find):
        if line.ingredient is None:
            continue
        written = grams.value
        if line.made_up and kept is not None:
            written, kept = written + kept.value, None
        weighed = written * make.factor.value
        found[line.ingredient] = found.get(line.ingredient, 0.0) + weighed
    return found


def arrivals_of(
    makings: Iterable[Making],
    larder: Larder,
    kitchen: Kitchen,
    now: datetime,
    find: Find,
) -> dict[str, dict[str, datetime]]:
    """Give, by order and component, when the last thing it waits for is delivered.

    Only what is counted and short waits: called today, it comes after its lead time on
    an open day, by the kitchen's hour of deliveries. What was never counted is taken
    to be there.
    """
    makings = tuple(makings)
    short = dict(_short(needs_of(makings, find), larder))
    return {
        making.order.key: {
            make.component: max(
                arrival_of(short[name], kitchen, now)
                for name in ingredients_of(making, make, find)
                if name in short
            )
            for make in making.amounts.makes
            if any(name in short for name in ingredients_of(making, make, find))
        }
        for making in makings
    }


def _short(needs: Mapping[str, float], larder: Larder) -> Iterable[tuple[str, Stocked]]:
    for stocked in larder:
        need = needs.get(stocked.key, 0.0)
        if stocked.trim:
            need /= 1 - stocked.trim.value / 100
        if stocked.stock is not None and need > stocked.stock.value:
            yield stocked.key, stocked


def arrival_of(stocked: Stocked, kitchen: Kitchen, now: datetime) -> datetime:
    """Give when an ingredient called now is in the house.

    Where no lead time is written it comes with the next delivery there is.
    """
    place = ZoneInfo(kitchen.zone)
    lead = stocked.lead.value / DAY_MIN if stocked.lead else 0.0
    earliest = (now.astimezone(place) + timedelta(days=lead)).date()
    last = earliest + LONGEST_LEAD
    hour = kitchen.deliveries or time()
    days = open_days(kitchen, earliest, last)
    moments = (datetime.combine(day, hour, place) for day in days)
    never_open = datetime.combine(earliest, hour, place)
    return next((moment for moment in moments if moment > now), never_open)
