"""A kitchen nobody has described yet: everything in it assumed, the mould first of all."""

from collections.abc import Iterable, Sequence
from datetime import datetime

from demould.mise.note.draft import INSERT_MOULD, MOULD
from demould.mise.tree import Branch
from demould.mise.write_tree import block, branch

KITCHEN = "Kitchen not described yet"
_CAVITY = "half-sphere 68 mm; 80 ml by water (assumed 40 to 150)"
_INSERT = "half-sphere 38 mm; 15 ml by water (assumed 8 to 25)"


def draft_kitchen(zone: str, mould: str = "") -> Branch:
    """A file of a kitchen with one of each, for a draft week from a note alone."""
    return branch(
        (
            ("kitchen", KITCHEN),
            ("zone", zone),
            ("room", "21 °C, 55 % humid"),
            ("breakage", "5 % (assumed 2 to 8)"),
            ("sure", "95 %"),
            ("hours", block(["Mon to Sun 07:00 to 23:00"])),
            ("people", block(["Cook", "Second pair of hands"])),
            (
                "moulds",
                block(
                    [
                        f"{mould or MOULD}; 4 x 6; {_CAVITY}",
                        f"{INSERT_MOULD}; 4 x 6; {_INSERT}",
                    ]
                ),
            ),
            (
                "tools",
                block(
                    [
                        "mixer; bowl 4.8 l; full to 70 % (assumed 60 to 75);"
                        " at least 300 g (assumed 200 to 400)",
                        "blender; bowl 1 l",
                        "oven",
                        "pan",
                        "gun",
                    ]
                ),
            ),
            ("jugs", block(["100 mm wide, 160 mm high"])),
            (
                "cold",
                block(
                    [
                        "freezer; -20 °C (assumed -25 to -16); upright freezer",
                        "fridge; 3 °C (assumed 1 to 5); fan fridge",
                    ]
                ),
            ),
        )
    )


def draft_larder(unknown: Sequence[str]) -> Branch | None:
    """A larder with what the note names and nobody knows, to be described."""
    if not unknown:
        return None
    return branch(
        (name, branch((("per 100 g", UNKNOWN_SHEET), ("remarks", UNKNOWN_REMARK))))
        for name in unknown
    )


UNKNOWN_SHEET = "water 50, other 50"
UNKNOWN_REMARK = "not known yet: write what is on its packet"


def draft_orders(dessert: str, pieces: int, due: datetime) -> Branch:
    """One order: so many pieces of the dessert on the plate at that hour."""
    return branch(
        (
            (
                "first order",
                branch(
                    (
                        ("dessert", dessert),
                        ("pieces", f"{pieces}"),
                        ("plates", f"{due:%a %Y-%m-%d %H:%M}"),
                    )
                ),
            ),
        )
    )


def texts(branches: Iterable[tuple[str, Branch | None]]) -> dict[str, Branch]:
    """The files that are there."""
    return {name: one for name, one in branches if one is not None}
