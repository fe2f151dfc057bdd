"""What each word of a note may be: the longest phrase the trade knows, spelling forgiven."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache

from demould.larder.find import find_ingredient
from demould.larder.trade_words import Word, single_words, trade_words
from demould.mise.note.numbers import spelt_number
from demould.mise.note.tokens import Token, number_of

LONGEST_PHRASE = 5
LEAST_SHORTENED = 5
"""A word without a point behind it is taken as shortened from so many letters on."""

ALIKE = 0.8
"""How alike two spellings must be, from 0 to 1, to be one word."""

_MARKS = {
    ":": "colon",
    ",": "comma",
    ";": "stop",
    "+": "plus",
    "&": "plus",
    "/": "comma",
    "|": "comma",
    "(": "open",
    "[": "open",
    ")": "close",
    "]": "close",
    "%": "percent sign",
    "°": "degree sign",
    "º": "degree sign",
    "@": "at",
    "-": "dash",
    "\u2013": "dash",
    "\u2014": "dash",
    "=": "dash",
    "•": "dash",
    "*": "mark",
    "~": "about",
    "≈": "about",
    "\u00d7": "times",
}
_INSIDE = frozenset(" \t'\u2019`\u00b4-.()\u00a0")
_SHORT = frozenset(
    [
        "couv",
        "choc",
        "b",
        "c",
        "f",
        "cuil",
        "pers",
        "approx",
        "ca",
        "std",
        "min",
        "stk",
        "tbsp",
        "tsp",
        "tbs",
        "hr",
        "hrs",
        "mins",
        "pcs",
        "sol",
        "st",
        "env",
        "gr",
        "g",
        "ml",
        "cl",
        "kg",
        "gel",
        "p",
        "max",
        "s",
        "a",
    ]
)
_ALWAYS_SHORT = frozenset(
    ["std", "min", "ca", "f", "pers", "stk", "cuil", "approx", "c"]
)


_EXACT = frozenset({"number", "one", "join", "at", "about", "makes", "while", "time"})
"""Kinds of words that are not guessed from another spelling: there is not three."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tag:
    """A word, phrase, number or mark with everything it may be."""

    kind: str
    start: int
    end: int
    plain: str = ""
    words: tuple[Word, ...] = ()
    low: Decimal | None = None
    high: Decimal | None = None
    unit: str = ""
    each: tuple[Decimal, ...] = ()
    guessed: bool = False

    def may_be(self, kind: str) -> str | None:
        """What it means as this kind of word, or None."""
        return next((one.means for one in self.words if one.kind == kind), None)


def tags_of(tokens: list[Token], language: str) -> Iterator[Tag]:
    """Tag every token, the longest phrases first."""
    lexicon = trade_words(language)
    place = 0
    while place < len(tokens):
        token = tokens[place]
        if token.kind == "word":
            tag, taken = _word(tokens, place, lexicon, language)
        else:
            tag, taken = _other(tokens, place, language), 1
        yield tag
        place += taken
        while place < len(tokens) and tokens[place].start < tag.end:
            place += 1


def _other(tokens: list[Token], place: int, language: str) -> Tag:
    token = tokens[place]
    match token.kind:
        case "line":
            kind = "line"
        case "number":
            value = number_of(token.text)
            kind = "number" if value is not None else "unknown"
            return _tag(kind, token, token, low=value, high=value)
        case _:
            kind = _MARKS.get(token.text, "mark")
            if token.text == ".":
                kind = "stop" if _ends_here(tokens, place, language) else "mark"
    return _tag(kind, token, token)


def _ends_here(tokens: list[Token], place: int, language: str) -> bool:
    """Whether a point ends a sentence: not after a shortened word, not in a row of them."""
    before = tokens[place - 1] if place else None
    after = tokens[place + 1] if place + 1 < len(tokens) else None
    if after is None or after.kind == "line":
        return True
    if before is None or "." in (before.text, after.text):
        return False
    if after.start == tokens[place].end:
        return after.text[0].isupper() and before.plain not in _SHORT
    if before.kind == "word" and place > 1 and _is_degree(tokens[place - 2], before):
        return True
    if len(before.plain) > 2 and not after.text[0].isupper():
        known = before.plain in trade_words(language)
        if not known and _longer(before.plain, language):
            return False
    if before.plain in _SHORT and before.kind == "word":
        return after.text[0].isupper() and before.plain not in _ALWAYS_SHORT
    return True


def _is_degree(first: Token, letter: Token) -> bool:
    """The ``C`` of 103 °C is no shortened word."""
    sign = first.text in ("°", "º") or first.kind == "number"
    return sign and letter.plain in ("c", "f") and first.end == letter.start


def _word(
    tokens: list[Token],
    place: int,
    lexicon: Mapping[str, tuple[Word, ...]],
    language: str,
) -> tuple[Tag, int]:
    row = _row(tokens, place)
    phrase = _phrase([one.plain for one in row], lexicon)
    number = spelt_number([one.plain for one in row], lexicon)
    if number and number[1] >= phrase:
        value, taken = number
        return _tag("number", row[0], row[taken - 1], low=value, high=value), taken
    if _article(row, phrase, lexicon):
        return _tag("number", row[0], row[0], low=Decimal(1), high=Decimal(1)), 1
    if phrase:
        return _known(row, phrase, lexicon, guessed=False), phrase
    spelt = [
        _shortened(one, lexicon, language) or _forgiven(one, lexicon, language)
        for one in row
    ]
    if spelt[0] != row[0].plain:
        phrase = _phrase(spelt, lexicon)
        if phrase:
            return _known(row, phrase, lexicon, guessed=True, spelt=spelt), phrase
    if fruit := _puree_of(row[0].plain, language):
        return _tag("ingredient", row[0], row[0], words=lexicon[fruit], guessed=True), 1
    if part := _ends_in_part(row[0].plain, lexicon, language):
        return _tag("part", row[0], row[0], words=part), 1
    return _tag("unknown", row[0], row[0], plain=row[0].plain), 1


def _is_fruit(word: Word) -> bool:
    found = find_ingredient(word.means) if word.kind == "ingredient" else None
    return found is not None and found.category == "fruit"


@cache
def _puree_of(word: str, language: str) -> str:
    """``Kirschpüree``: the fruit whose name a German word for its purée begins with."""
    if language != "de":
        return ""
    lexicon = trade_words(language)
    for ending in ("puree", "mark", "pulpe"):
        stem = word.removesuffix(ending)
        if stem != word and len(stem) >= 4:
            fruit = [
                one
                for one, words in lexicon.items()
                if one.startswith(stem) and " " not in one and _is_fruit(words[0])
            ]
            return min(fruit, key=lambda one: (len(one), one), default="")
    return ""


def _ends_in_part(
    word: str, lexicon: Mapping[str, tuple[Word, ...]], language: str
) -> tuple[Word, ...]:
    """``Kirschgelee`` is a gelee: German puts what it is at the end of the word."""
    if language != "de":
        return ()
    for start in range(2, len(word) - 3):
        found = tuple(
            one for one in lexicon.get(word[start:], ()) if one.kind == "part"
        )
        if found:
            return found
    return ()


def _row(tokens: list[Token], place: int) -> list[Token]:
    """The words from here on with nothing between them that parts them."""
    row = [tokens[place]]
    for token in tokens[place + 1 : place + 12]:
        if token.kind == "mark" and token.text in _INSIDE:
            continue
        if token.kind != "word":
            break
        row.append(token)
        if len(row) == 8:
            break
    return row


def _phrase(words: list[str], lexicon: Mapping[str, tuple[Word, ...]]) -> int:
    for length in range(min(LONGEST_PHRASE, len(words)), 0, -1):
        if " ".join(words[:length]) in lexicon:
            return length
    return 0


def _article(
    row: list[Token], phrase: int, lexicon: Mapping[str, tuple[Word, ...]]
) -> bool:
    """``a spoon``, ``un pizzico``: a small word that counts one."""
    if phrase > 1 or not _kinds(row[0].plain, lexicon) & {"one"}:
        return False
    rest = [one.plain for one in row[1:]]
    length = _phrase(rest, lexicon)
    return bool(length and _kinds(" ".join(rest[:length]), lexicon) & {"unit"})


def _kinds(phrase: str, lexicon: Mapping[str, tuple[Word, ...]]) -> set[str]:
    return {one.kind for one in lexicon.get(phrase, ())}


def _known(
    row: list[Token],
    length: int,
    lexicon: Mapping[str, tuple[Word, ...]],
    *,
    guessed: bool,
    spelt: list[str] | None = None,
) -> Tag:
    phrase = " ".join((spelt or [one.plain for one in row])[:length])
    words = lexicon[phrase]
    if words[0].kind == "number":
        value = Decimal(words[0].means)
        return _tag("number", row[0], row[length - 1], low=value, high=value)
    return _tag(
        words[0].kind,
        row[0],
        row[length - 1],
        plain=phrase,
        words=words,
        guessed=guessed,
    )


def _tag(
    kind: str,
    first: Token,
    last: Token,
    *,
    plain: str = "",
    words: tuple[Word, ...] = (),
    low: Decimal | None = None,
    high: Decimal | None = None,
    guessed: bool = False,
) -> Tag:
    return Tag(
        kind=kind,
        start=first.start,
        end=last.end,
        plain=plain or first.plain,
        words=words,
        low=low,
        high=high,
        guessed=guessed,
    )


def _shortened(
    token: Token,
    lexicon: Mapping[str, tuple[Word, ...]],
    language: str,
) -> str:
    """The word that one is the beginning of: ``pist. paste``, ``strawb puree``."""
    least = 3 if token.shortened else LEAST_SHORTENED
    if len(token.plain) < least or token.plain in lexicon:
        return ""
    return _longer(token.plain, language)


@cache
def _longer(word: str, language: str) -> str:
    """The shortest known word that begins with one that is not known itself, or ""."""
    known = single_words(language)
    if word in known:
        return ""
    longer = [one for one in known if one.startswith(word)]
    return min(longer, key=lambda one: (len(one), one), default="")


def _forgiven(
    token: Token, lexicon: Mapping[str, tuple[Word, ...]], language: str
) -> str:
    if token.plain in lexicon or len(token.plain) < 4:
        return token.plain
    return _alike(token.plain, language)


@cache
def _alike(word: str, language: str) -> str:
    """The known word that one is spelt most like, or itself."""
    from difflib import get_close_matches  # a note without slips does not need it

    known = single_words(language)
    if word in known or len(word) > 30:
        return word
    lexicon = trade_words(language)
    near = [
        one
        for one in known
        if one[0] == word[0]
        and abs(len(one) - len(word)) <= 2
        and not _kinds(one, lexicon) & _EXACT
    ]
    found = get_close_matches(word, near, n=3, cutoff=ALIKE)
    best = max((_likeness(word, one) for one in found), default=0.0)
    ties = [one for one in found if _likeness(word, one) > best - 0.01]
    eaten = [one for one in ties if _kinds(one, lexicon) & {"ingredient"}]
    return next(iter(eaten or ties), word)


def _likeness(one: str, other: str) -> float:
    from difflib import SequenceMatcher  # a note without slips does not need it

    return SequenceMatcher(None, one, other).ratio()
