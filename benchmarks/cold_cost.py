"""What a freezing time costs: one piece, its parts, cells, a dessert, many what-ifs.

Run: ``.venv/bin/python benchmarks/cold_cost.py``. Medians of five, one thread; tables,
cells and what is kept between calls are made anew each time unless said.
"""

import subprocess
import sys
import time
from concurrent.futures import ProcessPoolExecutor
from importlib.resources import files
from multiprocessing import get_context
from pathlib import Path

from cold_cases import KINDS, Case, answered, load, median_of

from demould.cold.body.mesh import mesh_of
from demould.cold.case.material import table_of
from demould.cold.case.read import read_case
from demould.cold.piece import _mesh, thermal_of

FIRST = """
import time
begun = time.perf_counter()
from demould.cold.case.answer import answer
answer({case!r})
print(time.perf_counter() - begun)
"""


def what_if(number: int) -> float:
    """One slider position: the film and the air of a ball in silicone."""
    case = {
        **KINDS["sphere in silicone"],
        "h": 8 + number % 40,
        "air": -18 - number / 100,
    }
    return float(
        answered({**case, "ask": {"core_c": [-10], "until_s": 90000}})["steps"]
    )


def pieces() -> None:
    print(
        f"{'one piece, everything anew':28} {'wall ms':>8} {'cpu ms':>7} {'cells':>6}"
    )
    for name, case in KINDS.items():
        wall, cpu, found = median_of(lambda case=case: answered(case))
        print(f"{name:28} {wall * 1e3:8.1f} {cpu * 1e3:7.1f} {found['cells']:6}")


def parts() -> None:
    raw = KINDS["dome"]
    case, _ = read_case(raw)
    assert case is not None
    outlines = case.bodies.profiles
    works = {
        "read the case": lambda: read_case(raw),
        "tables": lambda: [table_of.__wrapped__(w, case.model) for w in case.materials],
        "cells": lambda: mesh_of(outlines, wall=case.wall, open_faces=case.open_faces),
        "all of it": lambda: answered(raw),
    }
    for name, work in works.items():
        wall, cpu, _ = median_of(work, 25)
        print(f"{'dome: ' + name:28} {wall * 1e3:8.2f} {cpu * 1e3:7.2f}")


def cells() -> None:
    usual: Case = answered(KINDS["dome"])
    for finer in (0.7, 1.0, 1.4, 2.0, 2.8):
        how = {"cell_mm": usual["cell_mm"] / finer, "step_s": usual["step_s"] / 2}
        wall, cpu, found = median_of(
            lambda how=how: answered(KINDS["dome"], accuracy=how)
        )
        each = cpu / found["steps"] / found["cells"] * 1e6
        print(
            f"{'dome, forced':28} {wall * 1e3:8.1f} {cpu * 1e3:7.1f} {found['cells']:6}"
            f" cells {found['steps']:4} steps {each:.2f} us a cell and step"
        )


def dessert() -> None:
    """Low, likely, high of the demo's pebble in a blast chiller, causes roughly or not."""
    from demould.cold.freeze import freeze
    from demould.cold.from_dessert import as_filled
    from demould.cold.piece import place_of
    from demould.counter.text.read_folder import read_folder
    from demould.demo import NAME, NOW
    from demould.mise.find import find_in

    here = Path(str(files("demould.demo"))) / NAME
    folder, _, _ = read_folder(here, NOW)
    assert folder is not None
    find = find_in(folder.larder)
    wanted = next(d for d in folder.desserts if d.key == "river-pebble")
    piece = as_filled(wanted, folder.kitchen, find)
    place = place_of("blast_chiller", -30.0)

    def anew(*, in_full: bool) -> object:
        thermal_of.cache_clear()
        _mesh.cache_clear()
        return freeze(piece, place, in_full=in_full)

    for name, work in (
        ("everything anew", lambda: anew(in_full=False)),
        ("cells kept", lambda: freeze(piece, place, in_full=False)),
        ("anew, causes in full", lambda: anew(in_full=True)),
        ("kept, causes in full", lambda: freeze(piece, place)),
    ):
        wall, cpu, _ = median_of(work)
        print(f"{'dessert, ' + name:28} {wall * 1e3:8.1f} {cpu * 1e3:7.1f}")


def many() -> None:
    begun = time.perf_counter()
    for number in range(1000):
        what_if(number)
    one = time.perf_counter() - begun
    with ProcessPoolExecutor(2, mp_context=get_context("spawn")) as pool:
        list(pool.map(what_if, range(2)))
        begun = time.perf_counter()
        list(pool.map(what_if, range(1000), chunksize=25))
        two = time.perf_counter() - begun
    print(f"1000 what-ifs: one process {one:.1f} s, two {two:.1f} s")


def start() -> None:
    program = FIRST.format(case=KINDS["sphere in silicone"])
    took = [
        float(
            subprocess.run(
                [sys.executable, "-c", program],
                check=True,
                capture_output=True,
                text=True,
            ).stdout
        )
        for _ in range(5)
    ]
    print(f"process start to first answer, compiled before: {sorted(took)[2]:.2f} s")


def main() -> None:
    print(load())
    pieces()
    parts()
    cells()
    dessert()
    start()
    many()
    print(load())


if __name__ == "__main__":
    main()
