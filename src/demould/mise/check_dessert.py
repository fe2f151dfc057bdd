"""Whether the parts of a dessert agree: everything made is used, something fills it."""

from collections.abc import Mapping, Sequence

from demould.mise.dessert import Dessert, Rest
from demould.mise.figure import Line
from demould.mise.keys import Keys
from demould.mise.parts import parts_of
from demould.mise.tree import Block, Branch, Leaf, Node
from demould.mise.words import Words

Made = Mapping[str, tuple[Leaf, Node]]


def check_dessert(
    dessert: Dessert, keys: Keys, made: Made, used_in: Sequence[str]
) -> None:
    """Note what does not agree between the parts of a dessert.

    Parameters
    ----------
    dessert
        As far as it could be read.
    keys
        Its file by key, with where faults go.
    made
        Its components by name, each with its key and what hangs below, read or not:
        what another fault left out is not blamed for being missing.
    used_in
        The keys whose lines begin with the name of a component.
    """
    if not made:
        keys.faults.tell(
            keys.line,
            Words("the dessert has no component"),
            Words("Write 'component NAME:' with its formula, density and loss"),
        )
    mentioned = _mentioned(keys, made, used_in)
    for name, (leaf, _) in made.items():
        if name.casefold() not in mentioned:
            keys.faults.tell(
                leaf.line,
                Words("{name!r} is made and never used", name=name),
                Words(
                    "Name it in the filling, the finish or the plate, or take it out"
                ),
            )
        if _goes_into_itself(dessert, name):
            keys.faults.tell(
                leaf.line,
                Words("{name!r} goes into itself, by way of others", name=name),
                Words("Take one of them out of the other's formula"),
            )
    _check_rest(dessert, keys, used_in[0])


def _mentioned(keys: Keys, made: Made, used_in: Sequence[str]) -> set[str]:
    """Components that any line names, whether it could be read or not."""
    lines = [leaf for key in used_in for leaf in keys.quietly().lines(key)]
    names = {
        part.text.casefold() for leaf in lines for part in parts_of(leaf.line.text)[:1]
    }
    formulas = [
        leaf.line.text.casefold()
        for _, node in made.values()
        if isinstance(node, Branch)
        for key, block in node.items
        if key.line.text == "formula" and isinstance(block, Block)
        for leaf in block.lines
    ]
    inside = {
        name.casefold()
        for name in made
        if any(name.casefold() in line for line in formulas)
    }
    return names | inside


def _goes_into_itself(dessert: Dessert, name: str) -> bool:
    parts = {
        component.key: [line.component for line in component.formula if line.component]
        for component in dessert.components
    }
    seen: set[str] = set()
    ahead = list(parts.get(name, ()))
    while ahead:
        part = ahead.pop()
        if part == name:
            return True
        if part not in seen:
            seen.add(part)
            ahead.extend(parts.get(part, ()))
    return False


def _check_rest(dessert: Dessert, keys: Keys, filled: str) -> None:
    """Exactly one component fills what the others leave."""
    if len(dessert.layers) < len(keys.quietly().lines(filled)) or not dessert.layers:
        return
    filling: dict[str, Line] = {}
    for layer in dessert.layers:
        if isinstance(layer.fill, Rest):
            filling.setdefault(layer.component, layer.line or keys.line)
    if not filling:
        keys.faults.tell(
            keys.place(filled),
            Words("nothing fills the rest of the mould"),
            Words("Write 'the rest' after the component that does"),
        )
        return
    first, *others = filling
    for other in others:
        keys.faults.tell(
            filling[other],
            Words(
                "{other!r} and {first!r} both fill the rest", other=other, first=first
            ),
            Words("Give one of them a size or a mould of its own"),
        )
