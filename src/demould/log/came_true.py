"""Estimates beside what came true: how often they held, and which way they missed."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from statistics import median

from demould.log.now import done_steps
from demould.mise.entry import Entry
from demould.mise.figure import Estimate
from demould.mise.words import Words

ENOUGH = 3
"""From so many on a miss all one way is a rule worth saying."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CameTrue:
    """An estimate, and the hours it took in the end, in the estimate's own unit."""

    estimate: Estimate
    came: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """How estimates did: `right` of `of` lay between low and high.

    `ratio` is the middle one of what came over what was likely; None with none.
    """

    right: int
    of: int
    ratio: float | None
    says: Words


def came_true(
    entries: Iterable[Entry], estimates: Mapping[str, Estimate]
) -> tuple[CameTrue, ...]:
    """Put the estimates of steps, in hours, beside how long the steps took.

    Of what stands in the log and is over. The end must be when a probe said so: what is
    left in the freezer over night says nothing of how long it needed.
    """
    return tuple(
        CameTrue(
            estimate=estimates[step],
            came=(one.end - one.start).total_seconds() / 3600,
        )
        for step, one in done_steps(entries).items()
        if step in estimates and one.end is not None
    )


def record_of(entries: Sequence[CameTrue]) -> Record:
    """Count them."""
    right = sum(one.estimate.low <= one.came <= one.estimate.high for one in entries)
    ratios = [
        one.came / one.estimate.likely for one in entries if one.estimate.likely > 0
    ]
    ratio = median(ratios) if ratios else None
    return Record(
        right=right,
        of=len(entries),
        ratio=ratio,
        says=_says(right, len(entries), ratio),
    )


def _says(right: int, of: int, ratio: float | None) -> Words:
    if not of:
        return Words("no estimate has been put beside what came true yet")
    if ratio is None or of < ENOUGH or abs(ratio - 1) < 0.05:
        return Words("right {right} times of {of}", right=right, of=of)
    return Words(
        "right {right} times of {of}; it took {off:.0f} % {way} than likely, as a rule",
        right=right,
        of=of,
        off=100 * abs(ratio - 1),
        way=Words("longer") if ratio > 1 else Words("less"),
    )
