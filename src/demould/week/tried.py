"""One thing of a kitchen folder changed: found by a few of its words, read, put in.

``whipped ganache = 0.58 g/ml``, ``oval insert water = 22 ml``, ``pebble mould = dome``,
``base = oval 60 x 42 x 8 mm``, ``saturday pieces = 40``.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from demould.amounts.shape.scale import as_large_as
from demould.amounts.shape.volume import volume_ml
from demould.mise.dessert import Cut, Dessert
from demould.mise.figure import Figure, Path, Stated, figures_in, put
from demould.mise.folder import Folder
from demould.mise.mould import Mould
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_count, read_figure
from demould.mise.read_shape import read_shape
from demould.mise.shape import WaterOnly
from demould.mise.spelling import nearest_to, one_of
from demould.mise.unit import Kind
from demould.mise.words import Words
from demould.mise.write_quantity import write_shape

MOST_LISTED = 6
MOST_PIECES = 9999
_KINDS: dict[str, Kind] = {
    "g": "mass",
    "ml": "volume",
    "mm": "length",
    "min": "time",
    "°C": "temperature",
    "%": "share",
    "g/ml": "density",
    "times": "times",
    "m": "height",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Knob:
    """One thing that can be changed.

    Attributes
    ----------
    name
        What it is called: a few of these words find it.
    was
        What it is now, as written.
    turned
        Gives the folder with a new value, read from text.
    """

    name: str
    was: str
    turned: Callable[[str], tuple[Folder, str]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """What was changed: its name, what it was, what it is, and the changed folder."""

    name: str
    was: str
    new: str
    folder: Folder


def tried(folder: Folder, text: str) -> Tried:
    """Change one thing of a folder: ``what = new``.

    Raises
    ------
    UnreadableError
        If nothing or more than one thing is called that, or the new value cannot be
        read or cannot be.
    """
    what, mark, new = text.partition("=")
    if not mark or not what.strip() or not new.strip():
        raise UnreadableError(
            Words("{found!r} does not say what becomes what", found=text),
            Words("Write what = new, for example: ganache whipped = 0.58 g/ml"),
        )
    knob = _found(what, tuple(knobs(folder)))
    changed, shown = knob.turned(new.strip())
    return Tried(name=knob.name, was=knob.was, new=shown, folder=changed)


def _found(what: str, known: tuple[Knob, ...]) -> Knob:
    """The one thing that all words name; the plainest where it says all the others do."""
    wanted = _words(what)
    hits = [knob for knob in known if wanted <= _words(knob.name)]
    for knob in hits:
        if all(_words(knob.name) <= _words(other.name) for other in hits):
            return knob
    if hits:
        names = [knob.name for knob in hits]
        shown = "; ".join(names[:MOST_LISTED])
        more = len(names) - MOST_LISTED
        raise UnreadableError(
            Words(
                "{found!r} may be {count} things", found=what.strip(), count=len(names)
            ),
            Words("Write one of them: {shown}; and {more} more", shown=shown, more=more)
            if more > 0
            else Words("Write one of them: {shown}", shown=shown),
        )
    vocabulary = sorted({word for knob in known for word in _words(knob.name)})
    better = " ".join(
        word if word in vocabulary else nearest_to(word, vocabulary) or word
        for word in _in_order(what)
    )
    meant = any(_words(better) <= _words(knob.name) for knob in known)
    raise UnreadableError(
        Words("nothing here is called {found!r}", found=what.strip()),
        Words("Perhaps you meant {better!r}", better=better)
        if meant
        else Words(
            "Write words of what is to change: a component and density, a mould and"
            " water, an order and pieces"
        ),
    )


def _in_order(text: str) -> list[str]:
    return re.findall(r"[^\W_]+", text.casefold())


def _words(text: str) -> frozenset[str]:
    return frozenset(_in_order(text))


def knobs(folder: Folder) -> Iterator[Knob]:
    """Everything that can be changed: figures, shapes, moulds, pieces ordered."""
    yield from _of_kitchen(folder)
    for number, dessert in enumerate(folder.desserts):
        yield from _of_dessert(folder, number, dessert)
    yield from _of_orders(folder)


def _of_kitchen(folder: Folder) -> Iterator[Knob]:
    kitchen = folder.kitchen
    for path, figure in figures_in(kitchen):
        name = _kitchen_name(folder, path, figure)
        yield _figure_knob(folder, ("kitchen", *path), name, figure)
    for number, mould in enumerate(kitchen.moulds):
        yield _shape_knob(folder, number, mould)
        yield Knob(
            name=f"{mould.key} trays",
            was=str(mould.trays),
            turned=_tray_turner(folder, number),
        )


def _tray_turner(folder: Folder, number: int) -> Callable[[str], tuple[Folder, str]]:
    def turned(text: str) -> tuple[Folder, str]:
        count = read_count(text, name="number of trays", most=MOST_PIECES, what="trays")
        path = ("kitchen", "moulds", number, "trays")
        return put(folder, path, count), str(count)

    return turned


def _kitchen_name(folder: Folder, path: Path, figure: Figure) -> str:
    if len(path) >= 2 and isinstance(path[1], int):
        thing = getattr(folder.kitchen, str(path[0]))[path[1]]
        key = getattr(thing, "key", None) or getattr(thing, "name", None)
        if key is None and hasattr(thing, "diameter"):
            key = f"{thing.diameter.value:g} mm jug"
        return _once(key or "", figure.name)
    return figure.name


def _figure_knob(folder: Folder, path: Path, name: str, figure: Figure) -> Knob:
    def turned(text: str) -> tuple[Folder, str]:
        new = _read_like(figure, text, name)
        changed = put(folder, path, new)
        if path[:2] == ("kitchen", "moulds") and path[-1] == "water":
            changed = _grown(changed, int(path[2]), new.value / figure.value)
        return changed, str(new)

    return Knob(name=name, was=str(figure), turned=turned)


def _grown(folder: Folder, number: int, times: float) -> Folder:
    """Let a cavity keep its shape as it takes more or less: all sizes grow alike."""
    shape = folder.kitchen.moulds[number].shape
    path = ("kitchen", "moulds", number, "shape")
    return put(folder, path, as_large_as(shape, times * volume_ml(shape)))


def _read_like(figure: Figure, text: str, name: str) -> Figure:
    unit = figure.unit
    if re.fullmatch(r"[-+\u2212]?\d+(?:[.,]\d+)?", text):
        text = f"{text} {unit}"
    kind = _KINDS.get(unit)
    if kind is None:
        raise UnreadableError(
            Words("the {name} is counted in {unit}", name=name, unit=unit),
            Words("Change it in its file and run the week again"),
        )
    new = read_figure(text, name=figure.name, kinds=(kind,), line=None, zero=True)
    return replace(new, name=figure.name, origin=Stated(by="what was tried"))


def _shape_knob(folder: Folder, number: int, mould: Mould) -> Knob:
    def turned(text: str) -> tuple[Folder, str]:
        shape = read_shape(text)
        new = replace(mould, shape=shape, water=None)
        changed = put(folder, ("kitchen", "moulds", number), new)
        return changed, write_shape(shape)

    was = write_shape(mould.shape)
    if isinstance(mould.shape, WaterOnly):
        was = f"{mould.shape.water_ml:g} ml by water"
    return Knob(name=f"{mould.key} shape", was=was, turned=turned)


def _of_dessert(folder: Folder, number: int, dessert: Dessert) -> Iterator[Knob]:
    at: Path = ("desserts", number)
    for path, figure in figures_in(dessert):
        if "method" in path or "variants" in path:
            continue
        yield _figure_knob(
            folder, (*at, *path), _dessert_name(dessert, path, figure), figure
        )
    for layer, one in enumerate(dessert.layers):
        if isinstance(one.fill, Cut):
            yield _cut_knob(folder, (*at, "layers", layer, "fill"), dessert, layer)
    yield Knob(
        name=f"{dessert.name} mould",
        was=dessert.mould,
        turned=_mould_turner(folder, (*at, "mould")),
    )


def _once(*parts: str) -> str:
    """Parts of a name together, each word once, without the small ones."""
    words = " ".join(parts).split()
    kept = [word for word in words if word not in ("of", "the", "a", "in")]
    return " ".join(dict.fromkeys(kept))


def _dessert_name(dessert: Dessert, path: Path, figure: Figure) -> str:
    part = ""
    if path[0] == "components":
        part = dessert.components[int(path[1])].key
    elif path[0] == "layers":
        part = f"{dessert.layers[int(path[1])].component} height"
    elif path[0] == "finish":
        part = dessert.finish[int(path[1])].component
    line = f"line {int(path[3]) + 1}" if "formula" in path else ""
    return _once(dessert.name, part, figure.name, line)


def _cut_knob(folder: Folder, path: Path, dessert: Dessert, layer: int) -> Knob:
    fill = dessert.layers[layer].fill
    assert isinstance(fill, Cut)

    def turned(text: str) -> tuple[Folder, str]:
        shape = read_shape(text)
        return put(folder, path, Cut(shape=shape)), write_shape(shape)

    name = f"{dessert.name} {dessert.layers[layer].component} shape"
    return Knob(name=name, was=write_shape(fill.shape), turned=turned)


def _mould_turner(folder: Folder, path: Path) -> Callable[[str], tuple[Folder, str]]:
    def turned(text: str) -> tuple[Folder, str]:
        keys = tuple(mould.key for mould in folder.kitchen.moulds)
        key = one_of(text, keys, "mould")
        return put(folder, path, key), key

    return turned


def _of_orders(folder: Folder) -> Iterator[Knob]:
    for number, order in enumerate(folder.orders):
        yield Knob(
            name=f"{order.key} pieces",
            was=str(order.pieces),
            turned=_pieces_turner(folder, number),
        )


def _pieces_turner(folder: Folder, number: int) -> Callable[[str], tuple[Folder, str]]:
    def turned(text: str) -> tuple[Folder, str]:
        count = read_count(text, name="pieces", most=MOST_PIECES)
        return put(folder, ("orders", number, "pieces"), count), str(count)

    return turned
