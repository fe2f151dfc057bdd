"""What a dessert may name from outside its own file."""

from collections.abc import Iterable
from dataclasses import dataclass

from demould.mise.problem import UnreadableError
from demould.mise.spelling import nearest_to
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """Names a kitchen and its larder give.

    None where the file that would give them cannot be read at all: then a name is not
    checked.
    """

    moulds: tuple[str, ...] | None = None
    tools: tuple[str, ...] | None = None
    cold: tuple[str, ...] | None = None
    own: tuple[str, ...] | None = ()


def component_called(text: str, components: Iterable[str]) -> str:
    """The component of the dessert that is called this.

    Raises
    ------
    UnreadableError
        If none is; the nearest is suggested.
    """
    keys = tuple(components)
    for key in keys:
        if key.casefold() == text.casefold():
            return key
    near = nearest_to(text, keys)
    raise UnreadableError(
        Words("{found!r} is named here and nowhere made", found=text),
        Words("Perhaps you meant {near!r}", near=near)
        if near
        else Words("Write 'component {found}:' with its formula", found=text),
    )


def mould_called(text: str, moulds: tuple[str, ...] | None) -> str:
    """The kitchen's mould that is called this.

    Raises
    ------
    UnreadableError
        If there is none; the nearest is suggested.
    """
    if moulds is None or text in moulds:
        return text
    near = nearest_to(text, moulds)
    raise UnreadableError(
        Words("the kitchen has no mould called {found!r}", found=text),
        Words("Perhaps you meant {near!r}", near=near)
        if near
        else Words("Write it under moulds in kitchen.yaml"),
    )
