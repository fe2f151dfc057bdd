"""Days, hours and moments as people write them."""

import re
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from demould.mise.problem import UnreadableError
from demould.mise.words import Words

WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
MONTHS = (
    "Jan",
    "Feb",
    "Mar",
    "Apr",
    "May",
    "Jun",
    "Jul",
    "Aug",
    "Sep",
    "Oct",
    "Nov",
    "Dec",
)
_FULL = (
    "monday",
    "tuesday",
    "wednesday",
    "thursday",
    "friday",
    "saturday",
    "sunday",
)
_MOMENT = re.compile(
    r"(?P<day>(?:\w+[.,]?\s+)?[\d./-]+)\s+(?P<time>\d+[:.h]\d+)(?:\s+(?P<which>first|second))?"
)


def read_time(text: str) -> time:
    """A time of day: ``09:00``, ``9.30``.

    Raises
    ------
    UnreadableError
        If it is none.
    """
    found = re.fullmatch(r"(\d{1,2})[:.h](\d\d)", text.strip())
    if not found or int(found[1]) > 23 or int(found[2]) > 59:
        raise UnreadableError(
            Words("{found!r} is not a time of day", found=text),
            Words("Write it from 00:00 to 23:59, for example 09:30"),
        )
    return time(int(found[1]), int(found[2]))


def read_weekday(text: str) -> int:
    """A weekday, Monday is 0: ``Tue``, ``Tuesday``.

    Raises
    ------
    UnreadableError
        If it is none.
    """
    spelt = text.strip(" .,").casefold()
    for number, name in enumerate(_FULL):
        if len(spelt) >= 3 and name.startswith(spelt):
            return number
    raise UnreadableError(
        Words("{found!r} is not a weekday", found=text),
        Words("Write Mon, Tue, Wed, Thu, Fri, Sat or Sun"),
    )


def read_weekdays(text: str) -> tuple[int, ...]:
    """``Tue to Fri``, ``Sat``, ``Mon, Wed``, over the week's end too.

    Raises
    ------
    UnreadableError
        If one is none.
    """
    days: list[int] = []
    for part in re.split(r",\s*|\s+and\s+", text.strip()):
        ends = [read_weekday(end) for end in re.split(r"\s+to\s+|\s*\u2013\s*", part)]
        first, last = ends[0], ends[-1]
        days.extend((first + step) % 7 for step in range((last - first) % 7 + 1))
    return tuple(dict.fromkeys(days))


def read_day(text: str) -> date:
    """``2026-11-21``, with its weekday in front or not; if so, it must be the right one.

    Raises
    ------
    UnreadableError
        If there is no such day, or it is another weekday.
    """
    found = re.fullmatch(r"(?:([^\W\d]+)[.,]?\s+)?([\d./-]+)", text.strip())
    numbers = re.fullmatch(r"(\d{4})-(\d\d?)-(\d\d?)", found[2]) if found else None
    if not found or not numbers:
        raise UnreadableError(
            Words("{found!r} is not a day", found=text),
            Words("Write year-month-day, for example 2026-11-21"),
        )
    try:
        day = date(*(int(number) for number in numbers.groups()))
    except ValueError:
        raise UnreadableError(
            Words("there is no {found}", found=found[2]),
            Words("Look at the calendar; write year-month-day"),
        ) from None
    if found[1] and read_weekday(found[1]) != day.weekday():
        right = _FULL[day.weekday()].capitalize()
        raise UnreadableError(
            Words(
                "{day} is a {right}, not a {found}",
                day=day,
                right=right,
                found=_FULL[read_weekday(found[1])].capitalize(),
            ),
            Words(
                "Write {short} {day}, or the day that was meant",
                short=right[:3],
                day=day,
            ),
        )
    return day


def read_moment(text: str, zone: ZoneInfo) -> datetime:
    """A wall-clock moment in a zone: ``Sat 2026-11-21 19:30``.

    In the night the clocks go back an hour is there twice: ``first`` or ``second``
    after it says which.

    Returns
    -------
    datetime
        Aware, in `zone`.

    Raises
    ------
    UnreadableError
        If there is no such day or time, or the moment is skipped or there twice.
    """
    found = _MOMENT.fullmatch(text.strip())
    if not found:
        raise UnreadableError(
            Words("{found!r} is not a day and a time", found=text),
            Words("Write it like Sat 2026-11-21 19:30"),
        )
    wall = datetime.combine(read_day(found["day"]), read_time(found["time"]))
    early, late = (wall.replace(tzinfo=zone, fold=fold) for fold in (0, 1))
    shown = show_day(wall)
    if early.astimezone(UTC).astimezone(zone).replace(tzinfo=None) != wall:
        raise UnreadableError(
            Words("the clocks go forward over {shown}: it never comes", shown=shown),
            Words("Write a time before or after the hour that is left out"),
        )
    if early.utcoffset() == late.utcoffset():
        return early
    if not found["which"]:
        raise UnreadableError(
            Words("the clocks go back that night: {shown} comes twice", shown=shown),
            Words("Write {shown} first, or {shown} second", shown=shown),
        )
    return early if found["which"] == "first" else late


_COMING = re.compile(r"(?P<day>[^\W\d]+)[.,]?\s+(?P<time>\d+[:.h]\d+)")


def read_coming(text: str, now: datetime) -> datetime:
    """A moment to come, by its date or only by its weekday: ``sat 19:30``.

    A weekday alone is the next one after `now`, which is aware; so is the answer.

    Raises
    ------
    UnreadableError
        If it is no moment.
    """
    zone = now.tzinfo
    if not isinstance(zone, ZoneInfo):
        raise ValueError("the present moment must be in a zone by name")
    found = _COMING.fullmatch(text.strip())
    if not found:
        return read_moment(text, zone)
    wanted, at = read_weekday(found["day"]), read_time(found["time"])
    ahead = (wanted - now.weekday()) % 7
    day = now.date() + timedelta(days=ahead)
    if not ahead and at <= now.time():
        day += timedelta(days=7)
    return read_moment(f"{day:%Y-%m-%d} {at:%H:%M}", zone)


def show_day(moment: datetime) -> str:
    """A moment as it is written: ``Sat 2026-11-21 19:30``."""
    return f"{WEEKDAYS[moment.weekday()]} {moment:%Y-%m-%d %H:%M}"
