"""What people write, made comparable: one spelling for many."""

import re
import unicodedata
from collections.abc import Iterable

_SPELLINGS = {
    "gelatine": "gelatin",
    "yoghurt": "yogurt",
    "yoghourt": "yogurt",
}


def plain(text: str) -> str:
    """The text without case, accents, ``%``, points and needless spaces.

    A comma or point between digits is a decimal point; other marks part words.

    >>> plain("Blackcurrant purée"), plain("CREAM  35%"), plain("Whole yoghurt, 3,8 %")
    ('blackcurrant puree', 'cream 35', 'whole yogurt 3.8')
    """
    flat = unicodedata.normalize("NFKD", text.casefold())
    flat = "".join(mark for mark in flat if not unicodedata.combining(mark))
    flat = re.sub(r"(?<=\d),(?=\d)", ".", flat)
    words = re.findall(r"\d+(?:\.\d+)?|[^\W\d_]+", flat)
    return " ".join(_SPELLINGS.get(word, word) for word in words)


def nearest(text: str, known: Iterable[str], n: int) -> list[str]:
    """The known plain names nearest to a plain text, best first, at most n.

    Names that hold every word of the text, or a longer word with it inside ("nut paste"
    in "hazelnut paste"), come first, the shortest at the head; then those spelt alike.
    """
    from difflib import get_close_matches  # takes longer to load than most tables

    names = list(dict.fromkeys(known))
    words = text.split()
    holding = [name for name in names if words and all(w in name for w in words)]
    holding.sort(key=lambda name: (not set(words) <= set(name.split()), len(name)))
    alike = get_close_matches(text, names, n=n, cutoff=0.6)
    return list(dict.fromkeys(holding + alike))[:n]
