"""What is still sound after a freezer stopped: by readings, and by nothing else.

Unknown temperature is not sound. No reading is ever made up, and what warmed past the
limit is not called safe by any estimate.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise
from typing import Literal

from demould.mise.words import Words

LIMIT_C = -15.0
"""Warmest a frozen piece may have been. A house's own plan may be stricter."""
LONGEST_GAP = timedelta(hours=1)
Soundness = Literal["sound", "not sound", "take a reading"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A temperature that somebody or a logger read; `in_piece`, or of the air."""

    at: datetime
    at_c: float
    in_piece: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Outage:
    """From when the freezer was last known to run, and when it ran again, if it does."""

    last_good: datetime
    back: datetime | None
    now: datetime

    def __post_init__(self) -> None:
        end = self.back or self.now
        if not self.last_good <= end <= self.now:
            raise ValueError("an outage ends before it began, or after now")


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A verdict on what lay in the freezer, and why."""

    verdict: Soundness
    says: Words


def still_sound(
    outage: Outage, readings: Sequence[Reading], limit_c: float = LIMIT_C
) -> Judged:
    """Judge what lay there by its readings.

    Sound is what a reading in the piece found under the limit while the freezer still
    stood still, or an air log without a gap over an hour all under the limit. A piece
    found cold after the freezer ran again proves nothing: it may have thawed between.
    """
    during = sorted(
        (one for one in readings if outage.last_good <= one.at <= outage.now),
        key=lambda one: one.at,
    )
    in_piece = [one for one in during if one.in_piece]
    warm = [one for one in in_piece if one.at_c > limit_c]
    if warm:
        worst = max(warm, key=lambda one: one.at_c)
        return Judged(
            verdict="not sound",
            says=Words(
                "{at_c:g} °C in the piece on {at:%a %H:%M}, over {limit:g} °C: not sound"
                " as frozen stock, and not to be frozen again",
                at_c=worst.at_c,
                at=worst.at,
                limit=limit_c,
            ),
        )
    if _cold_to_the_end(outage, in_piece):
        return Judged(
            verdict="sound",
            says=Words(
                "{at_c:g} °C in the piece at the end, before it could freeze again",
                at_c=in_piece[-1].at_c,
            ),
        )
    if _covered(outage, [one for one in during if not one.in_piece], limit_c):
        return Judged(
            verdict="sound",
            says=Words("the air's log never left {limit:g} °C", limit=limit_c),
        )
    if outage.back is None:
        return Judged(
            verdict="take a reading",
            says=Words(
                "nobody knows how warm it is: put a probe in the warmest piece now;"
                " without a reading it is not sound"
            ),
        )
    return Judged(
        verdict="not sound",
        says=Words(
            "no reading from before the freezer ran again: it may have thawed and"
            " frozen, and unknown is not sound; is there a log of its air?"
        ),
    )


def _cold_to_the_end(outage: Outage, in_piece: Sequence[Reading]) -> bool:
    """Whether the last reading in the piece is of the outage's own last hour."""
    end = outage.back or outage.now
    before = [one for one in in_piece if one.at <= end]
    return bool(before) and end - before[-1].at <= LONGEST_GAP


def _covered(outage: Outage, air: Sequence[Reading], limit_c: float) -> bool:
    end = outage.back or outage.now
    times = [outage.last_good, *(one.at for one in air if one.at <= end), end]
    close = all(later - sooner <= LONGEST_GAP for sooner, later in pairwise(times))
    return bool(air) and close and all(one.at_c <= limit_c for one in air)
