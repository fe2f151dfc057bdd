"""The name that was meant, when the one that was written is not known."""

from collections.abc import Iterable

from demould.larder.names import nearest, plain
from demould.mise.problem import UnreadableError
from demould.mise.words import Words


def nearest_to(text: str, known: Iterable[str]) -> str | None:
    """The known name nearest to a text, or None where none is near.

    >>> nearest_to("mixr", ["mixer", "oven"])
    'mixer'
    """
    by_plain = {plain(name): name for name in known}
    found = nearest(plain(text), by_plain, 1)
    return by_plain[found[0]] if found else None


def perhaps(text: str, known: Iterable[str], else_: Words) -> Words:
    """What to do about an unknown name: the nearest one, or something else."""
    near = nearest_to(text, known)
    return Words("Perhaps you meant {near!r}", near=near) if near else else_


def one_of(text: str, known: Iterable[str], what: str) -> str:
    """The known name that a text is, whatever its case and spacing.

    Raises
    ------
    UnreadableError
        If no `what` is called that; the nearest is suggested, or all are listed.
    """
    names = tuple(known)
    wanted = " ".join(text.casefold().split())
    for name in names:
        if " ".join(name.casefold().split()) == wanted:
            return name
    listed = Words("Write one of: {names}", names=", ".join(names) or "(none yet)")
    raise UnreadableError(
        Words("no {what} is called {found!r}", what=what, found=text),
        perhaps(text, names, listed),
    )


def very_near(text: str, known: Iterable[str]) -> str | None:
    """A known name that a text is but for a slip of the finger, or None.

    >>> very_near("mixr", ["mixer"]), very_near("mixed", ["oven"])
    ('mixer', None)
    """
    from difflib import get_close_matches  # takes longer to load than most modules

    found = get_close_matches(text, list(known), n=1, cutoff=0.87)
    return found[0] if found else None
