"""The demo kitchen, read once for all tests that need a whole folder."""

from functools import cache
from importlib.resources import files
from pathlib import Path

from demould.counter.text.read_folder import read_folder
from demould.demo import NAME, NOW
from demould.mise.folder import Folder
from demould.mise.order import Order
from demould.week.making import Making
from demould.week.orders import makings_of

DEMO = Path(str(files("demould.demo"))) / NAME


@cache
def demo_folder() -> Folder:
    folder, problems, _ = read_folder(DEMO, NOW)
    assert folder is not None, "\n".join(map(str, problems))
    return folder


@cache
def demo_makings() -> tuple[Making, ...]:
    """Amounts of both demo orders, the domes first: they are due first."""
    return makings_of(demo_folder(), NOW)


def order_of(dessert: str) -> Order:
    return next(one for one in demo_folder().orders if one.dessert == dessert)
