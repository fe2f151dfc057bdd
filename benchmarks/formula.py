"""Time what a formula is asked: bands and clashes, a swap, a trouble, a machine's case.

Run: ``.venv/bin/python benchmarks/formula.py [ROUNDS]``. Medians, warm, one thread;
machine load beside. Reading the kitchen and printing are not in it.
"""

import os
import statistics
import sys
import time
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

from demould.advice.changes import changes
from demould.advice.troubles.ranked import sign_called, troubles
from demould.counter.text.read_folder import read_folder
from demould.demo import NAME, NOW
from demould.larder.read import ingredient
from demould.matter.formula_answer import answer
from demould.matter.formula_case import ASKS
from demould.matter.substitute.swap import swapped
from demould.mise.find import find_in
from demould.week.will_it import will_it_of

CASE = {
    "schema": "demould-formula-case/1",
    "lines": [{"g": 680, "what": "cream_35"}, {"g": 190, "what": "white_couv_35"}],
    "ask": {name: True for name in ASKS if name != "ice"}
    | {"ice": {"at_c": [-5, -18]}},
}


def main(rounds: int = 5) -> None:
    print("load", " ".join(f"{load:.2f}" for load in os.getloadavg()))
    folder, problems, _ = read_folder(Path(str(files("demould.demo"))) / NAME, NOW)
    assert folder is not None, problems
    find = find_in(folder.larder)
    pebble = next(one for one in folder.desserts if one.key == "river-pebble")
    ganache = pebble.components[0]

    def swap() -> None:
        thin = ingredient("cream_30")
        held = ("mass", "water", "fat")
        found = swapped(ganache, "cream 35 %", thin, held, find)
        changes(ganache, found.gram_for_gram, pebble, find, found.find)
        changes(ganache, found.balanced, pebble, find, found.find)

    def amiss() -> None:
        troubles(sign_called("too loose"), pebble, folder.kitchen, find, {})

    _show(
        f"bands and clashes of {len(folder.desserts)} desserts",
        lambda: will_it_of(folder.desserts, folder.kitchen, find),
        rounds,
    )
    _show("a swap, both ways on", swap, rounds)
    _show("a trouble, every component looked at", amiss, rounds)
    _show("a machine's case, all asked", lambda: answer(CASE), rounds)


def _show(what: str, call: Callable[[], object], rounds: int) -> None:
    call()
    wall, cpu = [], []
    for _ in range(rounds):
        began, used = time.perf_counter(), time.process_time()
        call()
        wall.append(time.perf_counter() - began)
        cpu.append(time.process_time() - used)
    middle = 1000 * statistics.median(wall), 1000 * statistics.median(cpu)
    print(f"{what}: {middle[0]:.1f} ms, {middle[1]:.1f} ms of it at work")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
