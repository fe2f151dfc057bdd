"""Many weeks worked off on all the cores there are."""

import os
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from itertools import pairwise
from multiprocessing import get_context
from typing import TypeVar

Part = TypeVar("Part")

LEAST_A_PART = 50
MOST_PROCESSES = 8


def in_parts(count: int, *, workers: int | None = None) -> tuple[range, ...]:
    """Part so many numbers for the workers, none too small to be worth one.

    >>> in_parts(120, workers=2), in_parts(30, workers=4), in_parts(0, workers=2)
    ((range(0, 60), range(60, 120)), (range(0, 30),), ())
    """
    most = workers or min(MOST_PROCESSES, len(os.sched_getaffinity(0)))
    parts = max(1, min(most, count // LEAST_A_PART))
    edges = [count * part // parts for part in range(parts + 1)]
    return tuple(range(first, last) for first, last in pairwise(edges) if first < last)


def on_all_cores(
    work: Callable[[range], Part], parts: Sequence[range]
) -> Iterator[Part]:
    """Give what the work makes of each part, in their order; one part stays here."""
    if len(parts) <= 1:
        yield from map(work, parts)
        return
    with ProcessPoolExecutor(len(parts), mp_context=get_context("spawn")) as pool:
        yield from pool.map(work, parts)
