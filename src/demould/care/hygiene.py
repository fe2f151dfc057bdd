"""A temperature log against a rule: within, broken, or not shown. Never "safe"."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise
from typing import Literal

from demould.larder.hygiene import HygieneRule
from demould.mise.read_temperatures import Reading
from demould.mise.words import Words

Verdict = Literal["within", "broken", "not shown"]
FROZEN_C = -5.0
THAWED_C = -1.0
"""Between these a piece is neither frozen hard nor thawed."""
ICE_WATER_C = 1.0
"""A thermometer that reads further than this from 0 °C in ice water is not trusted."""
WARM_FRIDGE_C = 25.0
"""A cold log that is this warm from end to end was written in another unit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """What a log shows of a rule. `asks` is what a person must write down, if anything.

    `gaps` are times nobody looked: what is not shown is not taken as sound.
    """

    rule: HygieneRule
    verdict: Verdict
    says: tuple[Words, ...]
    gaps: tuple[tuple[datetime, datetime], ...]
    asks: tuple[Words, ...]


def judge(log: Sequence[Reading], rule: HygieneRule) -> Judged:
    """Judge a log, in the order of time, by one rule."""
    if len(log) < 2:
        return _judged(
            rule,
            "not shown",
            [Words("a log of {n} readings shows nothing", n=len(log))],
            (),
        )
    gaps = tuple(
        (a.at, b.at)
        for a, b in pairwise(log)
        if b.at - a.at > timedelta(minutes=rule.gap_min)
    )
    if rule.kind == "cooling":
        return _judged(rule, *_cooling(log, rule), gaps)
    if min(one.c for one in log) > WARM_FRIDGE_C:
        says = [
            Words(
                "{c:g} °C at the coldest is no cold place: is the log in Fahrenheit?",
                c=min(one.c for one in log),
            )
        ]
        return _judged(rule, "not shown", says, gaps)
    broken = list(_too_warm(log, rule))
    if rule.kind == "frozen":
        broken += _refrozen(log)
    verdict: Verdict = "broken" if broken else "not shown" if gaps else "within"
    return _judged(rule, verdict, broken, gaps)


def _judged(
    rule: HygieneRule,
    verdict: Verdict,
    says: Sequence[Words],
    gaps: tuple[tuple[datetime, datetime], ...],
) -> Judged:
    asks = []
    if verdict == "broken":
        asks.append(Words("what was done about it, by whom and when? Write it down"))
    if verdict == "not shown":
        asks.append(Words("what nobody logged counts as not sound: who knows more?"))
    return Judged(
        rule=rule, verdict=verdict, says=tuple(says), gaps=gaps, asks=tuple(asks)
    )


def _cooling(log: Sequence[Reading], rule: HygieneRule) -> tuple[Verdict, list[Words]]:
    """Count every stage from the last reading at the start's heat: the whole-time rule."""
    assert rule.start_c is not None
    hot = [one for one in log if one.c >= rule.start_c]
    if not hot:
        return "not shown", [
            Words(
                "the log begins at {c:g} °C, under {start:g} °C: how long it was on the"
                " way is not shown",
                c=log[0].c,
                start=rule.start_c,
            )
        ]
    start, says = hot[-1].at, []
    verdict: Verdict = "within"
    for to_c, within in rule.stages:
        after = [one for one in log if one.at >= start]
        warm = [index for index, one in enumerate(after) if one.c > to_c]
        stays = warm[-1] + 1 if warm else 0
        reached = after[stays] if stays < len(after) else None
        at = reached.at if reached else after[-1].at
        took = (at - start).total_seconds() / 60
        if reached and took <= within:
            word = Words("in time")
        elif reached or took > within:
            verdict, word = "broken", Words("TOO LATE")
        else:
            word = Words("NOT SHOWN: the log ends before")
            verdict = "not shown" if verdict == "within" else verdict
        says.append(
            Words(
                "to {to:g} °C within {within}: {reached}, {word}",
                to=to_c,
                within=_span(within),
                reached=Words("after {took}", took=_span(took))
                if reached
                else Words("not yet after {took}", took=_span(took)),
                word=word,
            )
        )
    return verdict, says


def _too_warm(log: Sequence[Reading], rule: HygieneRule) -> Iterator[Words]:
    """Give every time it was warmer, from the last cold reading to the next."""
    assert rule.limit_c is not None
    warm: list[Reading] = []
    before = log[0]
    for one in (*log, None):
        if one is not None and one.c > rule.limit_c:
            warm.append(one)
            continue
        if warm:
            until = one or warm[-1]
            took = (until.at - before.at).total_seconds() / 60
            most = max(warm, key=lambda reading: reading.c)
            brief = rule.brief_c if rule.kind == "frozen" else None
            if took > rule.allowed_min or (brief is not None and most.c > brief):
                yield Words(
                    "over {limit:g} °C for up to {took} from {at}, {most:g} °C at most",
                    limit=rule.limit_c,
                    took=_span(took),
                    at=f"{before.at:%a %Y-%m-%d %H:%M}",
                    most=most.c,
                )
            warm = []
        if one is not None:
            before = one


def _refrozen(log: Sequence[Reading]) -> Iterator[Words]:
    frozen = thawed = False
    for one in log:
        if one.c <= FROZEN_C:
            if thawed:
                yield Words(
                    "thawed and frozen again at {at}: not for sale",
                    at=f"{one.at:%a %Y-%m-%d %H:%M}",
                )
            frozen, thawed = True, False
        elif frozen and one.c >= THAWED_C:
            thawed = True


def fresh_minutes(log: Sequence[Reading]) -> float:
    """Give minutes that count against a shelf life: all that was not frozen hard.

    Freezing does not kill, it pauses the clock: what was used before it stays used.
    Between two readings the warmer one counts.
    """
    return sum(
        (b.at - a.at).total_seconds() / 60
        for a, b in pairwise(log)
        if max(a.c, b.c) > FROZEN_C
    )


def thermometer_fits(in_ice_water_c: float) -> bool:
    """Say whether a thermometer may be trusted: 0 ± 1 °C in ice water."""
    return abs(in_ice_water_c) <= ICE_WATER_C


def _span(minutes: float) -> str:
    hours, rest = divmod(round(minutes), 60)
    return f"{hours} h {rest:02d}" if hours else f"{rest} min"
