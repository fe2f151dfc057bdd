"""Time buying and cost: of the demo's week, and of 120 orders.

Run: ``.venv/bin/python benchmarks/office.py [ROUNDS]``. Medians; machine load beside.
The plan is not in it: its minutes are, laid out, not solved. Nor are the orders' amounts,
which the week has worked out before.
"""

import os
import statistics
import sys
import time
from dataclasses import replace
from datetime import timedelta
from importlib.resources import files
from pathlib import Path

from demould.counter.text.read_folder import read_folder
from demould.demo import NAME, NOW
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.week.costing import costings_of
from demould.week.making import Making
from demould.week.office import buying_of_week
from demould.week.orders import makings_of

ORDERS = 120


def main(rounds: int = 15) -> None:
    print("load", " ".join(f"{load:.2f}" for load in os.getloadavg()))
    folder, problems, _ = read_folder(Path(str(files("demould.demo"))) / NAME, NOW)
    assert folder is not None, problems
    makings = makings_of(folder, NOW)
    _show("the demo's week", folder, makings, rounds)
    many = tuple(
        _copied(makings[number % len(makings)], number) for number in range(ORDERS)
    )
    _show(f"{ORDERS} orders", folder, many, max(3, rounds // 5))


def _copied(making: Making, number: int) -> Making:
    order = replace(
        making.order,
        key=f"{making.order.key} {number}",
        due=making.order.due + timedelta(minutes=number),
    )
    return replace(making, order=order)


def _show(what: str, folder: Folder, makings: tuple[Making, ...], rounds: int) -> None:
    find = find_in(folder.larder)
    buying, costing = [], []
    for _ in range(rounds + 1):
        began = time.perf_counter()
        buying_of_week(folder, makings, None, NOW, find)
        between = time.perf_counter()
        costings_of(makings, folder, NOW, sizes=())
        buying.append(between - began)
        costing.append(time.perf_counter() - between)
    both = [one + other for one, other in zip(buying, costing, strict=True)][1:]
    print(
        f"{what}: {1000 * statistics.median(both):.1f} ms, buying"
        f" {1000 * statistics.median(buying[1:]):.1f}, cost"
        f" {1000 * statistics.median(costing[1:]):.1f}"
    )


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
