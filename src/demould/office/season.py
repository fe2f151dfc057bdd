"""What is not in season now, and what is taken instead."""

from collections.abc import Iterable
from datetime import datetime

from demould.mise.clock import MONTHS
from demould.mise.words import Words
from demould.office.needs import Need


def out_of_season(needs: Iterable[Need], now: datetime) -> tuple[Words, ...]:
    """Say what is needed and not in season now, by the cook's own list."""
    found = []
    for need in needs:
        season = need.stocked.season if need.stocked else None
        if season is None or now.month in season.months:
            continue
        found.append(
            Words(
                "{what} is out of season in {month}{instead}",
                what=need.name,
                month=MONTHS[now.month - 1],
                instead=Words(
                    ": take {instead}, weighed trimmed; thawed it gives water off, so"
                    " cook to the grams on the sheet",
                    instead=season.instead,
                )
                if season.instead
                else "",
            )
        )
    return tuple(found)
