"""``desserts/*.yaml``: components inside a shape, a finish, a plate, and steps."""

from collections.abc import Mapping

from demould.mise.check_dessert import check_dessert
from demould.mise.component import Component
from demould.mise.dessert import Dessert, Variant
from demould.mise.faults import Faults
from demould.mise.figure import Figure, Line, Stated
from demould.mise.formula import Formula
from demould.mise.keys import Keys, keys_of, opens
from demould.mise.known import Known, mould_called
from demould.mise.quantity import read_count
from demould.mise.read_component import read_component, read_method
from demould.mise.read_finish import read_finish
from demould.mise.read_formula import Names
from demould.mise.read_layer import read_layer, read_on_plate
from demould.mise.read_step import Around, key_of_step
from demould.mise.read_variant import read_swap
from demould.mise.tree import Block, Branch, Leaf, Node
from demould.mise.words import Words

UPSIDE_DOWN = "filled, upside down"
FILLED = "filled"
KEYS = (
    "dessert",
    "written for",
    "mould",
    "portions",
    FILLED,
    UPSIDE_DOWN,
    "finish",
    "plate",
    "method",
    "notes",
    "called for",
)
OPENINGS = ("component", "variant")
_REQUIRED = {
    "dessert": Words("Write dessert: and its name"),
    "mould": Words("Write mould: and the name of one in kitchen.yaml"),
}
MOST_PORTIONS = 9999


def read_dessert(
    branch: Branch, key: str, known: Known, faults: Faults
) -> Dessert | None:
    """The dessert of one file, or None where something cannot be read.

    Parameters
    ----------
    branch
        The file as a tree.
    key
        What orders call it: the name of its file without the ending.
    known
        What it may name from outside.
    faults
        Where everything goes that cannot be read or does not agree.
    """
    before = len(faults)
    keys = keys_of(branch, faults, known=KEYS, required=_REQUIRED, openings=OPENINGS)
    made = _named(keys, "component")
    components, doubtful = _components(keys, made, known)
    formulas: dict[str, Formula | None] = dict.fromkeys(made)
    formulas |= {one.key: one.formula for one in components if one.key not in doubtful}
    names = tuple(made)
    filled = _filled(keys)
    around = Around(
        tools=known.tools,
        cold=known.cold,
        steps={name: _step_keys(node) for name, (_, node) in made.items()},
    )
    dessert = Dessert(
        key=key,
        name=keys.text("dessert"),
        written_for=keys.text("written for"),
        mould=keys.read("mould", lambda line: mould_called(line.text, known.moulds))
        or "",
        portions=keys.read("portions", _portions),
        upside_down=filled == UPSIDE_DOWN,
        layers=keys.each(filled, lambda line: read_layer(line, names, known)),
        finish=keys.each("finish", lambda line: read_finish(line, names)),
        plate=keys.each("plate", lambda line: read_on_plate(line, names, known)),
        components=components,
        method=read_method(keys, around),
        variants=_variants(keys, formulas, Names(own=known.own)),
        notes=tuple(leaf.line.text for leaf in keys.lines("notes")),
        called_for=tuple(leaf.line.text for leaf in keys.lines("called for")),
        line=branch.line,
    )
    check_dessert(dessert, keys, made, (filled, "finish", "plate"))
    return dessert if len(faults) == before else None


def variants_in(branch: Branch) -> tuple[str, ...]:
    """The names of a dessert's variants, read or not."""
    quiet = keys_of(branch, Faults(), known=KEYS, required={}, openings=OPENINGS)
    return tuple(_named(quiet, "variant"))


def _named(keys: Keys, opening: str) -> dict[str, tuple[Leaf, Node]]:
    """``component ganache`` and the like: the name, its key and what hangs below."""
    return {
        key.partition(" ")[2].strip(): entry
        for key, entry in keys.by_key.items()
        if opens(key, (opening,))
    }


def _step_keys(node: Node) -> tuple[str, ...]:
    """The first words of a component's method, read or not."""
    if not isinstance(node, Branch):
        return ()
    blocks = (below for leaf, below in node.items if leaf.line.text == "method")
    lines = (
        leaf for block in blocks if isinstance(block, Block) for leaf in block.lines
    )
    return tuple(key_of_step(leaf.line.text) for leaf in lines)


def _components(
    keys: Keys, made: dict[str, tuple[Leaf, Node]], known: Known
) -> tuple[tuple[Component, ...], set[str]]:
    """The components, and the names of those with a fault of their own."""
    found, doubtful = [], set()
    for name, (leaf, node) in made.items():
        if not isinstance(node, Branch):
            keys.faults.tell(
                leaf.line,
                Words("nothing is said of the component {name!r}", name=name),
                Words("Write its formula, density and loss below it"),
            )
            continue
        others = tuple(other for other in made if other != name)
        around = Around(
            tools=known.tools,
            cold=known.cold,
            steps={other: _step_keys(made[other][1]) for other in others},
        )
        names = Names(own=known.own, components=others)
        before = len(keys.faults)
        component = read_component(name, node, names, around, keys.faults)
        if len(keys.faults) > before:
            doubtful.add(name)
        if component is not None:
            found.append(component)
    return tuple(found), doubtful


def _filled(keys: Keys) -> str:
    if FILLED in keys and UPSIDE_DOWN in keys:
        keys.faults.tell(
            keys.place(FILLED),
            Words("the mould is filled twice, upright and upside down"),
            Words("Keep one of the two"),
        )
    if FILLED not in keys and UPSIDE_DOWN not in keys:
        keys.faults.tell(
            keys.line,
            Words("nobody says what goes into the mould"),
            Words("Write 'filled, upside down: |' and one layer a line"),
        )
    return UPSIDE_DOWN if UPSIDE_DOWN in keys else FILLED


def _portions(line: Line) -> Figure:
    number = read_count(
        line.text, name="number of portions", most=MOST_PORTIONS, what="portions"
    )
    return Figure(
        value=number, unit="portions", name="portions", origin=Stated(line=line)
    )


def _variants(
    keys: Keys, formulas: Mapping[str, Formula | None], names: Names
) -> tuple[Variant, ...]:
    return tuple(
        Variant(
            name=name,
            swaps=keys.each(
                f"variant {name}", lambda line: read_swap(line, formulas, names)
            ),
            line=leaf.line,
        )
        for name, (leaf, _) in _named(keys, "variant").items()
    )
