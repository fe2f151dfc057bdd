"""All that one kitchen folder says."""

from dataclasses import dataclass, field

from demould.mise.dessert import Dessert
from demould.mise.kitchen import Kitchen
from demould.mise.order import Order
from demould.mise.own_bank import Bank
from demould.mise.own_larder import Larder


@dataclass(frozen=True, slots=True, kw_only=True)
class Folder:
    """A kitchen folder, read."""

    kitchen: Kitchen
    larder: Larder
    orders: tuple[Order, ...]
    desserts: tuple[Dessert, ...]
    bank: Bank = field(default_factory=Bank)


def dessert_of(folder: Folder, key: str) -> Dessert:
    """Find a dessert by its key; the reader has made sure that it is there."""
    return next(one for one in folder.desserts if one.key == key)
