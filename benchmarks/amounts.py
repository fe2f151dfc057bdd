"""How long amounts take: one dessert, and a thousand what-ifs, on one core.

Prints medians of this process's own time, with the load of the machine, warm: shapes and walls met once are kept.
"""

import argparse
import os
import statistics
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import demould
from demould.amounts.counts.counts import counts
from demould.amounts.counts.factors import makes
from demould.amounts.finish.dip import best, dip_of, in_jugs
from demould.amounts.finish.rewarm import rewarm
from demould.amounts.finish.standing import warms_a_minute
from demould.amounts.layers.piece import piece
from demould.amounts.layers.wall import walls
from demould.amounts.shape.area import face_mm2
from demould.amounts.shape.body import body_of
from demould.amounts.shape.gap import nearest
from demould.amounts.shape.skin import skin_of, standing
from demould.amounts.shape.volume import mould_of, volume_up_to_ml
from demould.amounts.tools.rounds import rounds
from demould.counter.text.read_folder import read_folder
from demould.demo import NAME, NOW
from demould.mise.dessert import Dessert, component_of
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.mise.shape import CutEllipsoid, Oval

PIECES = 27
WHAT_IFS = 1000


def median_ms(work: Callable[[], object], times: int) -> float:
    """Median of several runs after one that is not counted [ms]."""
    work()
    taken = []
    for _ in range(times):
        start = time.process_time()
        work()
        taken.append(time.process_time() - start)
    return 1000 * statistics.median(taken)


def demo() -> Folder:
    """Read the demo kitchen."""
    place = Path(demould.__file__).parent / "demo" / NAME
    folder, problems, _ = read_folder(place, NOW)
    assert folder is not None, problems
    return folder


def one_dessert(folder: Folder, dessert: Dessert) -> None:
    """Counts with their spread, factors, walls and the finish."""
    find, kitchen = find_in(folder.larder), folder.kitchen
    mould = mould_of(kitchen, dessert.mould)
    counts(dessert, kitchen, find)
    makes(dessert, kitchen, find, rounds(PIECES, mould))
    walls(dessert, kitchen)
    dip = dip_of(dessert)
    way = best(in_jugs(dessert, kitchen, PIECES))
    if dip is not None and way is not None:
        rewarm(dessert, dip, mould, way, PIECES)
    warms_a_minute(dessert, kitchen, mould, piece(dessert, kitchen), find)


def what_ifs(folder: Folder, dessert: Dessert, count: int) -> None:
    """Change the whipped density of the filler a little, each time anew."""
    find, kitchen = find_in(folder.larder), folder.kitchen
    turns = rounds(PIECES, mould_of(kitchen, dessert.mould))
    ganache = component_of(dessert, dessert.components[0].key)
    assert ganache.whipped is not None
    for step in range(count):
        density = replace(ganache.whipped, value=0.55 + 0.1 * step / count)
        changed = replace(ganache, whipped=density)
        tried = replace(dessert, components=(changed, *dessert.components[1:]))
        makes(tried, kitchen, find, turns)


def a_new_wall() -> None:
    """Measure the least wall of an insert never met before."""
    pebble = CutEllipsoid(
        half_length_mm=40.2, half_width_mm=28, half_height_mm=21.64, cut_mm=12.36
    )
    insert = Oval(
        length_mm=45,
        width_mm=30,
        small_length_mm=42.4,
        small_width_mm=28.3,
        height_mm=18,
    )
    nearest(standing(skin_of(insert, lidded=True), 8.6), skin_of(pebble))


def a_new_shape() -> None:
    """Volume and area of a shape never met before."""
    for kept in (body_of, face_mm2, volume_up_to_ml):
        kept.cache_clear()
    pebble = CutEllipsoid(
        half_length_mm=40.2, half_width_mm=28, half_height_mm=21.64, cut_mm=12.36
    )
    volume_up_to_ml(pebble)
    face_mm2(pebble)


def main() -> None:
    """Print what takes how long."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--times", type=int, default=15)
    times = parser.parse_args().times
    folder = demo()
    print(f"load {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")  # its job
    rows = [
        (f"{dessert.name}: counts, factors, walls, finish", dessert)
        for dessert in folder.desserts
    ]
    for name, dessert in rows:
        ms = median_ms(lambda dessert=dessert: one_dessert(folder, dessert), times)  # type: ignore[misc]  # bound at once
        print(f"{ms:9.1f} ms  {name}")  # its job
    print(
        f"{median_ms(a_new_shape, times):9.2f} ms  volume and area of a new shape"
    )  # its job
    print(
        f"{median_ms(a_new_wall, times):9.1f} ms  least wall of a new insert"
    )  # its job
    pebbles = next(one for one in folder.desserts if one.key == "river-pebble")
    start = time.process_time()
    what_ifs(folder, pebbles, WHAT_IFS)
    print(
        f"{time.process_time() - start:9.2f} s   {WHAT_IFS} what-ifs of one dessert"
    )  # its job


if __name__ == "__main__":
    main()
