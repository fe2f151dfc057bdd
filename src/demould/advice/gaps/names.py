"""Names that do not say which: the fat of a couverture, which nut, what nobody knows."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from demould.advice.gaps.gap import Gap, only
from demould.advice.gaps.trying import Trying
from demould.larder.ingredient import Ingredient
from demould.larder.names import plain
from demould.larder.read import ingredient, near_ingredients
from demould.larder.starts import Vague, vague
from demould.mise.component import Component
from demould.mise.formula import FormulaLine
from demould.mise.own_larder import Larder
from demould.mise.words import Words

NOT_KNOWN = "not known yet"
"""How the remark of a larder entry begins that stands for what nobody knows."""

NEAREST = 3


def name_gaps(trying: Trying, larder: Larder) -> Iterator[Gap]:
    """Give every name that is vague or unknown, once for the whole dessert."""
    own = {plain(one.key) for one in larder if not _undescribed(one.remarks)}
    undescribed = {one.key for one in larder if _undescribed(one.remarks)}
    seen: dict[str, list[tuple[Component, FormulaLine]]] = {}
    which: dict[str, Vague] = {}
    for component in trying.dessert.components:
        for line in component.formula:
            if line.ingredient in undescribed:
                yield _unknown(component, line)
            said = written_as(line)
            found = vague(said)
            if found is None or plain(line.what) in own:
                continue
            if line.amount is not None and line.amount.unit == "leaf":
                continue
            seen.setdefault(found.name, []).append((component, line))
            which[found.name] = found
    for name, lines in seen.items():
        yield _which(trying, which[name], lines)


def written_as(line: FormulaLine) -> str:
    """What the note called it, where the draft had to take something for it.

    ``hazelnut paste; written "nut paste"`` was "nut paste".
    """
    for remark in line.remarks:
        if remark.startswith('written "') and remark.endswith('"'):
            called = remark.removeprefix('written "').removesuffix('"')
            if vague(called) is not None:
                return called
    return (
        ", ".join(filter(None, (line.what, line.state)))
        if vague(line.what) is None
        else line.what
    )


def _undescribed(remarks: Sequence[str]) -> bool:
    return any(one.startswith(NOT_KNOWN) for one in remarks)


def _which(
    trying: Trying, found: Vague, lines: Sequence[tuple[Component, FormulaLine]]
) -> Gap:
    ends = []
    for id_ in (found.low, found.high):
        dessert = trying.dessert
        for component, line in lines:
            dessert = replace(
                dessert,
                components=tuple(
                    _swapped(one, line, id_) if one.key == component.key else one
                    for one in dessert.components
                ),
            )
        ends.append(trying.changed(dessert))
    places = dict.fromkeys(component.name for component, _ in lines)
    first = lines[0][1]
    return Gap(
        key=f"which: {found.name}",
        kind="which",
        says=Words(
            "{name} does not say which ({places})",
            name=written_as(first),
            places=", ".join(places),
        ),
        takes=_taken(found),
        asks=Words(found.asks),
        moves=trying.between(*ends),
        ends=(ends[0], ends[1]),
        lines=tuple(one.line for _, one in lines if one.line is not None),
    )


def _taken(found: Vague) -> Words:
    others = dict.fromkeys((found.low, found.high))
    others.pop(found.takes, None)
    if not others:
        return Words("taken as {takes}", takes=_called(found.takes))
    return Words(
        "taken as {takes}; it could be {others}",
        takes=_called(found.takes),
        others=" or ".join(map(_called, others)),
    )


def _called(id_: str) -> str:
    return ingredient(id_).name.split(", ")[0]


def _swapped(component: Component, line: FormulaLine, id_: str) -> Component:
    return replace(
        component,
        formula=tuple(
            replace(one, ingredient=id_) if one.ordinal == line.ordinal else one
            for one in component.formula
        ),
    )


def _have_in_common(what: str, row: Ingredient) -> bool:
    """Whether a near name shares a word: letters alone make sunflower of elderflower."""
    words = {word for name in (row.name, *row.names) for word in plain(name).split()}
    return bool(words & {word for word in plain(what).split() if len(word) > 2})


def _unknown(component: Component, line: FormulaLine) -> Gap:
    near = [
        one.name
        for one in near_ingredients(line.what, NEAREST)
        if _have_in_common(line.what, one)
    ]
    nearest = Words("; nearest: {names}", names=", ".join(near)) if near else Words("")
    return Gap(
        key=f"{component.key}: line {line.ordinal}, unknown",
        kind="unknown",
        says=Words(
            "{component}: nobody knows {what}", component=component.name, what=line.what
        ),
        takes=Words(
            "taken as half water until its packet is written down{nearest}",
            nearest=nearest,
        ),
        asks=Words("what stands on the packet of {what}, per 100 g?", what=line.what),
        lines=only(line.line),
    )
