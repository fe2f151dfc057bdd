"""When what is called comes, and the last moment to call it."""

from collections.abc import Iterator
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from demould.mise.kitchen import Kitchen, Opening, Supplier
from demould.mise.own_larder import Stocked
from demould.plan.kitchen.clock import open_days

LONGEST_LEAD = timedelta(days=60)


def supplier_of(stocked: Stocked, kitchen: Kitchen) -> Supplier:
    """Give who brings it; a supplier nobody wrote a line about has the kitchen's days."""
    named = (one for one in kitchen.suppliers if one.name == stocked.supplier)
    return next(named, Supplier(name=stocked.supplier))


def arrival_of(stocked: Stocked, kitchen: Kitchen, now: datetime) -> datetime:
    """Give when an ingredient called now is in the house.

    Where no lead time is written it comes with the next delivery there is. Called
    after the supplier's hour, or after the kitchen closed, it counts as called on the
    next open day. Where there is never a delivery it is taken to come after its lead.
    """
    place = ZoneInfo(kitchen.zone)
    supplier = supplier_of(stocked, kitchen)
    now = now.astimezone(place)
    called = _counts_as_called(supplier, kitchen, now)
    earliest = (called + lead_of(stocked, supplier)).date()
    deliveries = deliveries_of(supplier, kitchen, earliest, earliest + LONGEST_LEAD)
    never = datetime.combine(earliest, _hour(supplier, kitchen), place)
    return next((moment for moment in deliveries if moment > now), never)


def last_call(stocked: Stocked, kitchen: Kitchen, by: datetime) -> datetime | None:
    """Give the last moment to call so that it is there `by` then; None if none is.

    It may be past. One calls while the kitchen is open, before the supplier's hour.
    """
    place = ZoneInfo(kitchen.zone)
    supplier = supplier_of(stocked, kitchen)
    by = by.astimezone(place)
    lead = lead_of(stocked, supplier)
    first = by.date() - LONGEST_LEAD
    moments = [
        moment
        for moment in deliveries_of(supplier, kitchen, first, by.date())
        if moment <= by
    ]
    for moment in reversed(moments):
        days = list(open_days(kitchen, first - LONGEST_LEAD, moment.date()))
        for day in reversed(days):
            cutoff = datetime.combine(day, _until(supplier, kitchen, day), place)
            call = min(cutoff, moment - timedelta(minutes=1))
            if (call + lead).date() <= moment.date():
                return call
    return None


def deliveries_of(
    supplier: Supplier, kitchen: Kitchen, first: date, last: date
) -> Iterator[datetime]:
    """Walk the moments by which a supplier has delivered, between two days.

    It comes on its days, where the kitchen is open before the hour of deliveries:
    somebody has to take it in.
    """
    place = ZoneInfo(kitchen.zone)
    hour = _hour(supplier, kitchen)
    for day in open_days(kitchen, first, last):
        if supplier.weekdays is not None and day.weekday() not in supplier.weekdays:
            continue
        opens = min(one.opens for one in _openings(kitchen, day))
        if hour == time() or opens < hour:
            yield datetime.combine(day, hour, place)


def lead_of(stocked: Stocked, supplier: Supplier) -> timedelta:
    """Give the time from the call to the delivery: the entry's own, or the supplier's."""
    lead = stocked.lead or supplier.lead
    return timedelta(minutes=lead.value if lead else 0.0)


def _hour(supplier: Supplier, kitchen: Kitchen) -> time:
    return supplier.by or kitchen.deliveries or time()


def _openings(kitchen: Kitchen, day: date) -> list[Opening]:
    return [one for one in kitchen.openings if day.weekday() in one.weekdays]


def _until(supplier: Supplier, kitchen: Kitchen, day: date) -> time:
    closes = max(one.closes for one in _openings(kitchen, day))
    return min(closes, supplier.order_by) if supplier.order_by else closes


def _counts_as_called(supplier: Supplier, kitchen: Kitchen, now: datetime) -> datetime:
    """Give `now`, or the next open day where it is too late to call today."""
    days = open_days(kitchen, now.date(), now.date() + LONGEST_LEAD)
    for day in days:
        if day > now.date():
            return datetime.combine(day, time(), now.tzinfo)
        if now.time() <= _until(supplier, kitchen, day):
            return now
    return now
