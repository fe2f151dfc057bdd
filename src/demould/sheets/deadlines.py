"""How late each thing may start, and after which moment there is no way back."""

from demould.mise.words import Words
from demould.sheets.naming import doing
from demould.sheets.page import Block, Head, Lines
from demould.sheets.times import day_time
from demould.week.timing import Timing

BETWEEN = " . "


def deadlines(timing: Timing) -> tuple[Block, ...]:
    """Give the latest starts in order of the clock, and each order's first one."""
    named = sorted(timing.latest, key=lambda name: timing.latest[name])
    said = [f"{_short(timing, name)} {day_time(timing.latest[name])}" for name in named]
    first: dict[str, str] = {}
    for name in named:
        first.setdefault(timing.laid.parts[name].make.order.key, name)
    gone = [
        f"{day_time(timing.latest[name])} ({_short(timing, name)})"
        for name in first.values()
    ]
    return (
        Head(text=Words("latest starts")),
        Lines(lines=(BETWEEN.join(said),)),
        Head(text=Words("no way back after")),
        Lines(lines=(BETWEEN.join(gone),)),
    )


def _short(timing: Timing, name: str) -> str:
    return doing(timing.laid, timing.laid.parts[name])
