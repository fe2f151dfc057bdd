"""Which ingredient a line of a formula means."""

from collections.abc import Iterable
from functools import partial

from demould.larder.names import plain
from demould.larder.read import find_ingredient, near_ingredients
from demould.mise.problem import UnreadableError
from demould.mise.spelling import nearest_to
from demould.mise.words import Words


def resolve(text: str, own: Iterable[str]) -> str | None:
    """The id of the ingredient that a text means, or None; see `resolve_line`."""
    try:
        return resolve_line(text, own)[0]
    except UnreadableError:
        return None


def resolve_line(text: str, own: Iterable[str]) -> tuple[str, str, str]:
    """The ingredient of a line, what of the text names it, and its state.

    The own larder comes first, with the whole text, then with what stands before the
    first comma; the rest is the state. Then the tool's table in the same way.

    Raises
    ------
    UnreadableError
        If nothing is called that; the nearest is suggested.
    """
    keys = tuple(own)
    what, _, state = text.partition(",")
    ways = ((text, ""), (what.strip(), state.strip()))
    for look in (partial(_mine, keys=keys), _row):
        for name, rest in ways:
            if (found := look(name)) is not None:
                return found, name, rest
    raise unknown(text, keys)


def _mine(text: str, keys: tuple[str, ...]) -> str | None:
    return next((key for key in keys if plain(key) == plain(text)), None)


def _row(text: str) -> str | None:
    row = find_ingredient(text)
    return row.id if row else None


def unknown(text: str, own: Iterable[str]) -> UnreadableError:
    """What to say of an ingredient that nobody knows."""
    near = nearest_to(text, own)
    if near is None:
        rows = near_ingredients(text, 1)
        near = rows[0].name if rows else None
    return UnreadableError(
        Words("no ingredient is called {found!r}", found=text),
        Words(
            "Perhaps you meant {near!r}; or add {found!r} to the larder",
            near=near,
            found=text,
        )
        if near
        else Words("Add it to larder.yaml, with its sheet per 100 g"),
    )
