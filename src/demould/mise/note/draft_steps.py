"""The steps of a draft: what is usual, with the times and words of the note in it."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from demould.larder.starts import WHOLE_PIECE, UsualStep, usual_steps
from demould.mise.note.kinds import kind_of
from demould.mise.note.noted import Note, NotedPart, NotedStep
from demould.mise.note.one_line import one_line
from demould.mise.number import written

FINISHES = ("dip", "glaze", "spray")
_WHIPPED = "whipped ganache"
_ALWAYS = ("fill", "freeze", "demould", "thaw", "plate")
_WAITS = ("rest", "freeze", "chill", "cool", "bake", "thaw", "steep")


def steps_of(part: NotedPart, kind: str) -> Iterator[str]:
    """The usual steps of a kind; each takes the note's words that belong to it."""
    usual = usual_steps(kind)
    left = [one for one in part.steps if not of_the_piece(one, kind)]
    for place, step in enumerate(usual):
        mine = [one for one in left if one.action in step.actions]
        left = [one for one in left if one not in mine]
        if place == len(usual) - 1:
            mine += left
        yield _told(step, mine)


def of_the_piece(step: NotedStep, kind: str) -> bool:
    """Whether a step told with a part is done to the whole piece."""
    own = {action for usual in usual_steps(kind) for action in usual.actions}
    whole = {action for usual in usual_steps(WHOLE_PIECE) for action in usual.actions}
    return step.action in whole and step.action not in own


def piece_steps(
    note: Note, needed: Mapping[str, Sequence[str]], calls: Iterable[str], filler: str
) -> Iterator[str]:
    """The steps of the whole piece that this one needs."""
    done = {one.action for part in note.parts for one in part.steps} | set(calls)
    said = [
        one
        for part in note.parts
        for one in part.steps
        if not part.lines or of_the_piece(one, kind_of(part))
    ]
    for step in usual_steps(WHOLE_PIECE):
        wanted = (
            step.step in _ALWAYS
            or (step.step == "whip" and filler == _WHIPPED)
            or (step.step in FINISHES and step.step in done)
            or (step.step == "harden" and {"dip", "spray"} <= done)
        )
        if not wanted:
            continue
        parts = ", ".join(needed.get(step.step, ()))
        needs = f"needs {parts}" if parts else ""
        yield _told(step, [one for one in said if one.action in step.actions], needs)


def _told(step: UsualStep, said: Sequence[NotedStep], more: str = "") -> str:
    """``freeze  freezer 12 h (assumed 8 to 14); core -18 °C; "freeze overnight"``."""
    waiting = step.waiting
    for one in said:
        waits = one.action in _WAITS or step.step in _WAITS
        if one.minutes is not None and waits and waiting:
            waiting = _time(one.minutes.value)
    place, _, rest = step.rest.partition("; ")
    if step.waiting and step.step == "freeze":
        how, after = f"{place} {waiting}", rest
    else:
        stands = f"stands {waiting}" if waiting else ""
        if stands and step.most:
            stands += f" to {step.most}"
        how, after = ", ".join(filter(None, (step.working, stands))), step.rest
    words = dict.fromkeys(one_line(one.written) for one in said)
    quoted = [f'"{one}"' for one in words if one]
    return f"{step.step}  " + "; ".join(filter(None, (how, after, more, *quoted)))


def _time(minutes: float) -> str:
    if minutes >= 60:
        return f"{written(round(minutes / 60, 3))} h"
    return f"{written(round(minutes, 3))} min"
