"""Things as such: without where they were read, and without what figures are called."""

from collections.abc import Callable
from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeVar

from demould.larder.ingredient import Ingredient
from demould.mise.figure import Figure, Line
from demould.mise.words import Words

Thing = TypeVar("Thing")
Change = Callable[[object, str, object], object]
"""From what holds a field, the field's name and what is in it, to what shall be."""


def bare(thing: Thing) -> Thing:
    """A copy in which no line and no name of a figure is left.

    Two readings of the same words at different places are then equal.
    """
    return rebuilt(thing, _without_place)


def rebuilt(thing: Thing, change: Change) -> Thing:
    """A copy of a frozen thing with every field changed, the inmost first."""
    held: Any = thing
    if isinstance(held, tuple):
        parts: Any = tuple(rebuilt(part, change) for part in held)
        return parts  # type: ignore[no-any-return]  # a tuple like the one given
    if not is_dataclass(held) or isinstance(held, Words | Line):
        return thing
    changed = {
        part.name: change(held, part.name, rebuilt(getattr(held, part.name), change))
        for part in fields(held)
    }
    made: Any = replace(held, **changed)  # type: ignore[type-var]  # a thing, not a type
    return made  # type: ignore[no-any-return]  # of the class given


def _without_place(held: object, name: str, value: object) -> object:
    if isinstance(value, Line):
        return None
    if (isinstance(held, Figure) and name == "name") or (
        isinstance(held, Ingredient) and name == "source"
    ):
        return ""
    return value
