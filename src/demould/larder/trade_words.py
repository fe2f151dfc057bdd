"""The words of the trade in five languages: ingredients, units, steps, parts, numbers."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

from demould.larder.find import ingredients
from demould.larder.names import plain
from demould.larder.table import rows, several

FIRST = "en"


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """What a word or a phrase can mean.

    `kind` is ``ingredient``, ``step``, ``part``, ``piece``, ``makes``, ``unit``,
    ``time``, ``while``, ``length``, ``degree``, ``fahrenheit``, ``join``, ``at``,
    ``total``, ``split``, ``about``, ``state``, ``juice``, ``number`` or ``one``. `means`
    is the English name, an id of the ingredient table, a unit, an action or a number.
    """

    kind: str
    means: str
    language: str


@cache
def languages() -> tuple[str, ...]:
    """The languages there are words of, English first."""
    return tuple(dict.fromkeys(row["language"] for row in rows("trade_words")))


@cache
def trade_words(language: str) -> Mapping[str, tuple[Word, ...]]:
    """What each plain phrase can mean in a note of this language.

    A phrase means what it means there; else what it means in English, the names of the
    ingredient table with it; else in any other language.

    >>> [word.means for word in trade_words("de")["sahne"]]
    ['cream']
    """
    found: dict[str, tuple[Word, ...]] = {}
    for one in dict.fromkeys((language, FIRST, *languages())):
        for phrase, words in _of(one).items():
            found.setdefault(phrase, words)
    return found


@cache
def single_words(language: str) -> frozenset[str]:
    """Every single word inside the phrases of a language and of English."""
    return frozenset(
        part
        for one in (language, FIRST)
        for phrase in _of(one)
        for part in phrase.split()
    )


def language_of(words: Iterable[str]) -> str:
    """The language most of these plain words belong to; English where none stands out.

    >>> language_of("sucre creme jaunes 83 pour".split())
    'fr'
    """
    votes: Counter[str] = Counter()
    for word in words:
        spoken_in = [one for one in languages() if word in _words_of(one)]
        for one in spoken_in:
            votes[one] += 12 // len(spoken_in)
    best = max(languages(), key=lambda one: votes[one])
    return best if votes[best] > votes[FIRST] else FIRST


@cache
def _words_of(language: str) -> frozenset[str]:
    return frozenset(
        part
        for row in rows("trade_words")
        if row["language"] == language
        for phrase in several(row["words"])
        for part in plain(phrase).split()
    )


@cache
def _of(language: str) -> Mapping[str, tuple[Word, ...]]:
    found: dict[str, list[Word]] = {}
    for row in rows("trade_words"):
        if row["language"] != language:
            continue
        for phrase in several(row["words"]):
            word = Word(kind=row["kind"], means=row["means"], language=language)
            found.setdefault(plain(phrase), []).append(word)
    if language == FIRST:
        for phrase, id_ in _table_names():
            if phrase not in found:
                word = Word(kind="ingredient", means=id_, language=FIRST)
                found[phrase] = [word]
    return {phrase: tuple(words) for phrase, words in found.items()}


def _table_names() -> Iterable[tuple[str, str]]:
    """Names of the ingredient table; those ending in a number wait for their ``%``."""
    for row in ingredients().values():
        for name in (row.name, *row.names):
            phrase = plain(name)
            if phrase and not phrase[-1].isdigit():
                yield phrase, row.id
