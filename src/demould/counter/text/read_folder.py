"""A whole kitchen folder, read at once: all faults of all files in one go."""

from collections.abc import Callable, Iterable, Mapping
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from demould.counter.text.read_tree import read_tree
from demould.mise.dessert import Dessert
from demould.mise.faults import Faults
from demould.mise.figure import Line
from demould.mise.folder import Folder
from demould.mise.kitchen import Kitchen
from demould.mise.known import Known
from demould.mise.own_bank import Bank
from demould.mise.problem import Problem
from demould.mise.read_bank import read_bank
from demould.mise.read_dessert import read_dessert, variants_in
from demould.mise.read_kitchen import names_in, read_kitchen
from demould.mise.read_larder import NO_ENTRIES, read_larder
from demould.mise.read_orders import Wanted, read_orders
from demould.mise.tree import Branch, Leaf
from demould.mise.words import Words

Check = Callable[[Folder], tuple[Problem, ...]]

KITCHEN = "kitchen.yaml"
LARDER = "larder.yaml"
ORDERS = "orders.yaml"
DESSERTS = "desserts"


def read_folder(
    path: Path,
    now: datetime,
    further: Iterable[Check] = (),
    *,
    only: str | None = None,
) -> tuple[Folder | None, tuple[Problem, ...], Mapping[str, str]]:
    """What a kitchen folder says.

    Parameters
    ----------
    path
        The folder. ``kitchen.yaml`` must be in it; larder, orders and desserts may.
    now
        Aware; orders before it are a fault.
    further
        Checks that need more than text. They see the files without a fault of their
        own, so that one bad line somewhere hides nothing elsewhere.
    only
        A dessert's key: the other desserts and the orders are left aside.

    Returns
    -------
    Folder or None
        None where anything cannot be read.
    tuple of Problem
        Every fault of every file, in the order of the files, then of `further`.
    Mapping
        The text of each file that is text, by its path inside the folder.
    """
    if not path.is_dir():
        wrong = Words("there is no folder called {name!r}", name=str(path))
        remedy = Words("Look at the name, or make one with: demould demo")
        return None, (Problem(path.name, 0, 0, wrong, remedy),), {}
    texts, problems = read_texts(path, only=only)
    faults = Faults()
    if KITCHEN not in texts and not (path / KITCHEN).exists():
        faults.tell(
            Line(KITCHEN, 0, ""),
            Words("the file is not there"),
            Words("Write what the kitchen has: its moulds, hours, people and cold"),
        )
    trees: dict[str, Branch] = {}
    for file, text in texts.items():
        tree, found = read_tree(text, file)
        problems = (*problems, *found)
        if tree is not None:
            trees[file] = tree
    sound = read_trees(trees, now, faults, _files(path, only=only), whole=only is None)
    problems = in_order((*problems, *faults.found))
    folder = None if problems else sound
    if sound is not None:
        problems = (*problems, *(one for check in further for one in check(sound)))
    return folder, problems, texts


def read_texts(
    path: Path, *, only: str | None = None
) -> tuple[dict[str, str], tuple[Problem, ...]]:
    """The text of each file of the kitchen, and what is no text."""
    texts: dict[str, str] = {}
    problems = []
    for file in _files(path, only=only):
        try:
            texts[file] = _text(path / file)
        except OSError:
            problems.append(
                Problem(
                    file,
                    0,
                    0,
                    Words("this is not a file that can be opened"),
                    Words("Put a text file of that name in its place"),
                )
            )
        except UnicodeDecodeError as fault:
            line = fault.object[: fault.start].count(b"\n") + 1
            problems.append(
                Problem(
                    file,
                    line,
                    1,
                    Words("this is not text, or not in UTF-8"),
                    Words("Save it as plain text, in UTF-8"),
                )
            )
    strays = [
        Problem(
            file,
            0,
            0,
            Words("the file is not read: its name ends in .yml"),
            Words("Call it {name}", name=Path(file).with_suffix(".yaml").name),
        )
        for file in _strays(path)
    ]
    return texts, (*problems, *strays)


def _files(path: Path, *, only: str | None = None) -> list[str]:
    """Names inside the folder, in the order they are read and shown."""
    top = [file for file in (KITCHEN, LARDER) if (path / file).exists()]
    below = sorted(
        f"{DESSERTS}/{one.name}"
        for one in (path / DESSERTS).glob("[!.]*.yaml")
        if only in (None, one.stem)
    )
    last = [ORDERS] if only is None and (path / ORDERS).exists() else []
    return [*top, *below, *last]


def _strays(path: Path) -> list[str]:
    found = (*path.glob("[!.]*.yml"), *(path / DESSERTS).glob("[!.]*.yml"))
    return sorted(one.relative_to(path).as_posix() for one in found)


def _text(file: Path) -> str:
    """Line ends as they are, the mark some programs put first left out."""
    return file.read_bytes().decode("utf-8").removeprefix("\ufeff")


def read_trees(
    trees: Mapping[str, Branch],
    now: datetime,
    faults: Faults,
    files: Iterable[str] = (),
    *,
    whole: bool = True,
) -> Folder | None:
    """A folder from the files without a fault; a file that is not there says nothing.

    None where the kitchen itself has one.
    `files` are all that are there: what one that has no tree would have named is not
    called missing elsewhere. Not `whole`, what is in the freezer stays unread.
    """
    broken = {file for file in files if file not in trees}
    larder = read_larder(trees[LARDER], faults) if LARDER in trees else ()
    kitchen, known = _kitchen(trees, broken, faults)
    desserts = _desserts(trees, known, faults)
    named: dict[str, tuple[str, ...] | None] = {
        _key(file): None for file in broken if file.startswith(DESSERTS)
    }
    wanted = Wanted(
        desserts=named
        | {
            _key(file): variants_in(tree)
            for file, tree in trees.items()
            if file.startswith(DESSERTS)
        },
        zone=kitchen.zone if kitchen else "UTC",
        now=now,
    )
    orders = read_orders(trees[ORDERS], wanted, faults) if ORDERS in trees else ()
    bank = (
        read_bank(trees[LARDER], _made(desserts, wanted), faults)
        if LARDER in trees and whole
        else Bank()
    )
    faulty = {problem.file for problem in faults.found}
    if kitchen is None or KITCHEN in faulty:
        return None
    sound = tuple(one for one in desserts if f"{DESSERTS}/{one.key}.yaml" not in faulty)
    return Folder(
        kitchen=kitchen,
        larder=larder,
        orders=() if ORDERS in faulty else orders,
        desserts=sound,
        bank=bank,
    )


def _made(
    desserts: Iterable[Dessert], wanted: Wanted
) -> dict[str, tuple[str, ...] | None]:
    """The components of each dessert there is; None where it cannot be read."""
    return dict.fromkeys(wanted.desserts, None) | {
        one.key: tuple(part.key for part in one.components) for one in desserts
    }


def _kitchen(
    trees: Mapping[str, Branch], broken: set[str], faults: Faults
) -> tuple[Kitchen | None, Known]:
    """The kitchen, and every name it and the larder give, well written or not."""
    own: tuple[str, ...] | None = None
    if LARDER not in broken:
        entries = trees[LARDER].items if LARDER in trees else ()
        own = tuple(
            leaf.line.text for leaf, _ in entries if leaf.line.text not in NO_ENTRIES
        )
    tree = trees.get(KITCHEN)
    if tree is None:
        return None, Known(own=own)
    known = Known(
        moulds=names_in(tree, "moulds"),
        tools=names_in(tree, "tools"),
        cold=names_in(tree, "cold"),
        own=own,
    )
    return read_kitchen(tree, faults), known


def _desserts(
    trees: Mapping[str, Branch], known: Known, faults: Faults
) -> tuple[Dessert, ...]:
    read = (
        read_dessert(tree, _key(file), known, faults)
        for file, tree in trees.items()
        if file.startswith(DESSERTS)
    )
    return tuple(dessert for dessert in read if dessert is not None)


def _key(file: str) -> str:
    return Path(file).stem


def in_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Problems by file in the order read, then by place."""
    first = {KITCHEN: 0, LARDER: 1, ORDERS: 3}
    return tuple(
        sorted(
            problems,
            key=lambda one: (first.get(one.file, 2), one.file, one.line, one.column),
        )
    )


def zone_of(path: Path) -> ZoneInfo:
    """The zone a kitchen folder names; UTC where it names none that is known."""
    try:
        tree, _ = read_tree(_text(path / KITCHEN), KITCHEN)
    except (OSError, UnicodeDecodeError):
        return ZoneInfo("UTC")
    for leaf, node in tree.items if tree else ():
        if leaf.line.text == "zone" and isinstance(node, Leaf):
            try:
                return ZoneInfo(node.line.text)
            except (ZoneInfoNotFoundError, ValueError):
                break
    return ZoneInfo("UTC")


def desserts_in(path: Path) -> tuple[str, ...]:
    """The keys of the desserts a folder has files of."""
    return tuple(sorted(one.stem for one in (path / DESSERTS).glob("[!.]*.yaml")))
