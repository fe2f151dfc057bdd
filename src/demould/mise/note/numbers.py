"""Numbers written out: two hundred, deux cents, zweihundertfünfzig."""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from demould.larder.trade_words import Word

_AND = frozenset({"and", "et", "e", "y", "und"})
_TENS = Decimal(100)


def spelt_number(
    words: Sequence[str], lexicon: Mapping[str, tuple[Word, ...]]
) -> tuple[Decimal, int] | None:
    """The number these plain words begin with, and how many of them it takes.

    >>> from demould.larder.trade_words import trade_words
    >>> spelt_number("a hundred and eighty grams".split(), trade_words("en"))
    (Decimal('180'), 4)
    >>> spelt_number(["zweihundertfunfzig"], trade_words("de"))
    (Decimal('250'), 1)
    """
    total = Decimal(0)
    taken = 0
    place = 0
    if len(words) > 1 and _one(words[0], lexicon) and _values(words[1], lexicon):
        place = 1
    while place < len(words):
        two = " ".join(words[place : place + 2])
        if (pair := _values(two, lexicon)) and " " in two:
            values, step = pair, 2
        elif values := _values(words[place], lexicon):
            step = 1
        elif (
            taken
            and words[place] in _AND
            and total >= _TENS
            and _next(words, place, lexicon)
        ):
            place += 1
            continue
        else:
            break
        if taken and not _may_follow(total, values[0]):
            break
        if _hundreds_left_out(total, values[0]) and step == 1:
            total *= _TENS
        for value in values:
            total = _joined(total, value)
        place += step
        taken = place
    return (total, taken) if taken else None


def _next(
    words: Sequence[str], place: int, lexicon: Mapping[str, tuple[Word, ...]]
) -> bool:
    following = words[place + 1 : place + 2]
    values = _values(following[0], lexicon) if following else []
    return bool(values) and values[0] < _TENS


def _may_follow(total: Decimal, value: Decimal) -> bool:
    """``hundred`` after a small one, a small one after ``hundred`` or ``twenty``."""
    if value < 1:
        return False
    if value >= _TENS:
        return total < value
    if _hundreds_left_out(total, value):
        return True
    return (
        total % _TENS == 0
        or (value < 10 and total % 10 == 0)
        or total % 100 == 60
        or total % 100 == 80
    )


def _hundreds_left_out(total: Decimal, value: Decimal) -> bool:
    """``one sixty`` is 160."""
    return 0 < total < 10 and 10 < value < _TENS and value % 10 == 0


def _joined(total: Decimal, value: Decimal) -> Decimal:
    if value in (_TENS, Decimal(1000)):
        return max(total, Decimal(1)) * value
    return total + value


def _one(word: str, lexicon: Mapping[str, tuple[Word, ...]]) -> bool:
    return any(one.kind == "one" for one in lexicon.get(word, ()))


def _values(word: str, lexicon: Mapping[str, tuple[Word, ...]]) -> list[Decimal]:
    for one in lexicon.get(word, ()):
        if one.kind == "number":
            return [Decimal(one.means)]
    return _parts(word, lexicon) if len(word) > 5 and " " not in word else []


def _parts(word: str, lexicon: Mapping[str, tuple[Word, ...]]) -> list[Decimal]:
    """The numbers a long word is made of (``zwei hundert``), or none.

    The unit stands before the ten in German (``fünfunddreißig``); added up it is all one.
    """
    if not word:
        return []
    for length in range(min(len(word), 12), 2, -1):
        head, tail = word[:length], word[length:]
        value = next(
            (Decimal(w.means) for w in lexicon.get(head, ()) if w.kind == "number"),
            None,
        )
        if value is None:
            continue
        if not tail:
            return [value]
        bare = tail.removeprefix("und")
        if rest := _parts(bare, lexicon):
            return [value, *rest]
    return []
