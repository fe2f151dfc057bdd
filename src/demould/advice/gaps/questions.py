"""The few questions to ask first, and what an answer changes in the files."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from demould.advice.gaps.gap import Gap
from demould.mise.figure import Assumed, Figure
from demould.mise.number import NUMBER, read_number, written
from demould.mise.problem import UnreadableError
from demould.mise.words import Words

MOST = 5
"""More questions than this at once are not answered by anybody."""

_BLOOM = re.compile(r"(\d+)\s*(?:bloom|bl)\b", re.IGNORECASE)
_NO = frozenset({"no", "not", "never", "n"})
_ANSWERED_BY_TAKING_OUT = ("called for", "total")


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """A question with its number, and the gap that it settles."""

    number: int
    gap: Gap

    @property
    def asks(self) -> Words:
        """The question itself."""
        return self.gap.asks


def questions_of(gaps: Iterable[Gap], most: int = MOST) -> tuple[Question, ...]:
    """The questions to ask first, what moves most at the head; `gaps` are ranked."""
    first = [gap for gap in gaps if gap.line is not None][:most]
    return tuple(Question(number=at, gap=gap) for at, gap in enumerate(first, start=1))


def answered(gap: Gap, text: str, answer: str) -> str | None:
    """A line of a file with the answer in it; None where the line is to go.

    Parameters
    ----------
    gap
        What is answered.
    text
        The line as it stands, that `gap.line` tells of.
    answer
        As a cook types it: ``90 ml``, ``1.8 g, 200 bloom``, ``yes``, ``35 %``.

    Raises
    ------
    UnreadableError
        If the answer has no place in the line.
    """
    answer = answer.strip()
    if not answer:
        raise UnreadableError(Words("there is no answer"), Words("Write it after ="))
    if gap.kind in _ANSWERED_BY_TAKING_OUT:
        return None
    if gap.figure is not None and isinstance(gap.figure.origin, Assumed):
        return _figure_in(text, gap.figure, gap.figure.origin, answer)
    match gap.kind:
        case "amount" | "used, not listed":
            return re.sub(r"^(\s*)\?", rf"\g<1>{answer}", text).replace(
                "; only the method names it", ""
            )
        case "unit":
            return re.sub(rf"^(\s*){NUMBER}\s*[^\W\d]+", rf"\g<1>{answer}", text)
        case "leaf":
            return _leaves(text, answer)
        case "make-up":
            no = answer.casefold().split()[0].strip(".,") in _NO
            return f"{text}; {'not made up' if no else 'made up'}"
        case "which" | "unknown":
            return _named(text, answer)
        case _:
            return f'{text}; "{answer}"'


def _figure_in(text: str, figure: Figure, origin: Assumed, answer: str) -> str:
    """``80 ml by water (assumed 40 to 150)`` with 90 ml is ``90 ml by water (stated)``."""
    pattern = re.compile(
        rf"(?P<number>{NUMBER})(?P<gap>\s*)(?P<unit>[^\s;,()]+)?(?P<between>[^;()]*?)"
        rf"\s*\(assumed (?P<low>{NUMBER}) to (?P<high>{NUMBER})[^)]*\)"
    )
    for found in pattern.finditer(text):
        ends = [_number(found[name]) for name in ("number", "low", "high")]
        if not _in_proportion(ends, (figure.value, origin.low, origin.high)):
            continue
        bare = re.fullmatch(NUMBER, answer)
        shown = f"{answer} {found['unit'] or ''}".strip() if bare else answer
        new = f"{shown}{found['between']} (stated)"
        return text[: found.start()] + new + text[found.end() :]
    raise UnreadableError(
        Words("{answer!r} has no place in {text!r}", answer=answer, text=text),
        Words("Write it into the file"),
    )


def _number(text: str) -> float:
    return float(read_number(text))


def _in_proportion(written_as: Sequence[float], wanted: Sequence[float]) -> bool:
    """Whether they are the same three numbers, in whatever unit they are written."""
    unit = next((w / g for g, w in zip(written_as, wanted, strict=True) if g), 1.0)
    return all(
        abs(g * unit - w) <= 1e-6 * max(1.0, abs(w))
        for g, w in zip(written_as, wanted, strict=True)
    )


def _leaves(text: str, answer: str) -> str:
    """Two leaves of 1.8 g at 200 bloom are 3.6 g of that gelatin."""
    bloom = _BLOOM.search(answer)
    weight = re.search(rf"({NUMBER})\s*(?:g|gram|grams)\b", answer)
    count = re.match(rf"(\s*)({NUMBER})\s*(?:leaf|leaves)\s+(\S+)", text)
    if count is None or (weight is None and bloom is None):
        raise UnreadableError(
            Words("{answer!r} is no weight of a leaf", answer=answer),
            Words("Write it like 1.8 g, 200 bloom"),
        )
    rest = text[count.end() :]
    indent, number = count[1], count[2]
    name = f"gelatin {bloom[1]} bloom" if bloom else count[3]
    if weight is None:
        return f"{indent}{number} leaves  {name}{rest}"
    grams = _number(number) * _number(weight[1])
    return f"{indent}{written(round(grams, 3))} g  {name}{rest}"


def _named(text: str, answer: str) -> str:
    """A share goes behind the name, any other answer takes its place."""
    bare = re.sub(r'; written "[^"]*"', "", text)
    found = re.match(
        rf"(\s*(?:\?|{NUMBER}\s*[^\W\d]+(?:\s*\([^)]*\))?)\s+)([^;]*)", bare
    )
    if found is None:
        raise UnreadableError(
            Words("{answer!r} has no place in {text!r}", answer=answer, text=text),
            Words("Write it into the file"),
        )
    share = re.fullmatch(rf"({NUMBER})\s*%?", answer)
    name = f"{found[2].rstrip()} {share[1]} %" if share else answer
    return f"{found[1]}{name}{bare[found.end() :]}"
