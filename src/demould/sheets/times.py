"""Clock times, spans and amounts as a cook reads them."""

from datetime import datetime
from math import ceil, floor

from demould.mise.figure import Estimate

SHORT_H = 2.0
"""Under this a span is told in minutes."""


def day_time(moment: datetime) -> str:
    """Give ``Thu 16:05``."""
    return f"{moment:%a %H:%M}"


def clock(moment: datetime) -> str:
    """Give ``16:05``."""
    return f"{moment:%H:%M}"


def span(minutes: float) -> str:
    """Give ``25 min`` or ``1 h 05``.

    >>> span(25), span(65), span(-5)
    ('25 min', '1 h 05', '-5 min')
    """
    whole = round(minutes)
    if abs(whole) < 60:
        return f"{whole} min"
    hours, rest = divmod(abs(whole), 60)
    return f"{'-' if whole < 0 else ''}{hours} h {rest:02d}"


def between(estimate: Estimate) -> str:
    """Give the two ends of an estimate in hours, rounded outwards.

    >>> from demould.mise.words import Words
    >>> said = Words("air")
    >>> between(Estimate(low=0.41, likely=0.5, high=0.57, unit="h", reason=said))
    '20 - 35 min'
    >>> between(Estimate(low=4.49, likely=5.4, high=6.8, unit="h", reason=said))
    '4 - 7 h'
    """
    if estimate.high <= SHORT_H:
        return f"{floor(estimate.low * 12) * 5} - {ceil(estimate.high * 12) * 5} min"
    return f"{floor(estimate.low * 2) / 2:g} - {ceil(estimate.high * 2) / 2:g} h"


def grams(value: float) -> str:
    """Give whole grams, or tenths below 100 where they are not whole.

    >>> grams(1166.4), grams(38.505), grams(282.0), grams(488.6)
    ('1166', '38.5', '282', '489')
    """
    if abs(value) < 100:
        return f"{round(value, 1):g}"
    return f"{value:.0f}"
