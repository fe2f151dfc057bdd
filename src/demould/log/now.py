"""Where the kitchen stands: the agreed plan, what is done and what is running."""

from collections.abc import Iterable, Mapping

from demould.mise.entry import Agreed, Entry, Happened, TakenBack


def standing(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """Give the entries nobody has taken back, in the order they were written."""
    entries = tuple(entries)
    gone = {one.entry for one in entries if isinstance(one, TakenBack)}
    return tuple(
        one for one in entries if one.id not in gone and not isinstance(one, TakenBack)
    )


def agreed_plan(entries: Iterable[Entry]) -> Agreed | None:
    """Give the plan agreed on last, None where there is none."""
    plans = [one for one in standing(entries) if isinstance(one, Agreed)]
    return plans[-1] if plans else None


def done_steps(entries: Iterable[Entry]) -> Mapping[str, Happened]:
    """Give what has begun, by step; what was written last about a step counts."""
    return {one.step: one for one in standing(entries) if isinstance(one, Happened)}
