"""Wall clocks and elapsed minutes: a rest of 12 h is 12 h in any night."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from demould.mise.kitchen import Kitchen, Person
from demould.plan.problem.steps import Window


def midnight_of(now: datetime, zone: str) -> datetime:
    """Give the local midnight that the day of `now` began with."""
    place = ZoneInfo(zone)
    return datetime.combine(now.astimezone(place).date(), time(), place)


def minutes_since(origin: datetime, moment: datetime) -> int:
    """Count elapsed minutes, rounded down; both moments are aware."""
    elapsed = moment.astimezone(UTC) - origin.astimezone(UTC)
    return int(elapsed // timedelta(minutes=1))


def moment_at(origin: datetime, minute: int) -> datetime:
    """Give the wall-clock moment of an elapsed minute, in the zone of `origin`."""
    later = origin.astimezone(UTC) + timedelta(minutes=minute)
    return later.astimezone(origin.tzinfo)


def open_days(kitchen: Kitchen, first: date, last: date) -> Iterator[date]:
    """Walk the days the kitchen opens, first and last included."""
    weekdays = {day for opening in kitchen.openings for day in opening.weekdays}
    for days in range((last - first).days + 1):
        day = first + timedelta(days=days)
        if day.weekday() in weekdays:
            yield day


def open_windows(
    kitchen: Kitchen, origin: datetime, now: datetime, until: datetime
) -> tuple[Window, ...]:
    """Give the open hours between two moments, in elapsed minutes from `origin`."""
    place = ZoneInfo(kitchen.zone)
    floor, ceiling = minutes_since(origin, now), minutes_since(origin, until)
    found = []
    for day in open_days(kitchen, now.astimezone(place).date(), until.date()):
        for opening in kitchen.openings:
            if day.weekday() not in opening.weekdays:
                continue
            opens, closes = (
                minutes_since(origin, datetime.combine(day, clock, place))
                for clock in (opening.opens, opening.closes)
            )
            window = max(opens, floor), min(closes, ceiling)
            if window[0] < window[1]:
                found.append(
                    Window(open=window[0], close=window[1], overtime=opening.overtime)
                )
    return tuple(sorted(found, key=lambda window: window.open))


def hours_of(
    person: Person, windows: tuple[Window, ...], origin: datetime
) -> tuple[Window, ...]:
    """Give the open hours that are left when somebody is away."""
    for away in person.away:
        day = datetime.combine(away.day, time(), origin.tzinfo)
        leaves = datetime.combine(away.day, away.from_ or time(), origin.tzinfo)
        back = (
            datetime.combine(away.day, away.to, origin.tzinfo)
            if away.to
            else day + timedelta(days=1)
        )
        gone = minutes_since(origin, leaves), minutes_since(origin, back)
        windows = tuple(part for one in windows for part in _without(one, *gone))
    return windows


def _without(window: Window, leaves: int, back: int) -> Iterator[Window]:
    if window.open < min(leaves, window.close):
        yield replace(window, close=min(leaves, window.close))
    if max(back, window.open) < window.close:
        yield replace(window, open=max(back, window.open))
