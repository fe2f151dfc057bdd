"""Cases the cold benchmarks share: one of every shape kind, and two balls with peers."""

import os
import statistics
import time
from collections.abc import Callable
from typing import Any, TypeVar

from demould.cold.case.answer import answer
from demould.cold.case.material import table_of

T = TypeVar("T")
TARGETS = (-10.0, -15.0)
Case = dict[str, Any]

SILICONE = {"thickness_mm": 2, "k": 0.2, "density": 1150, "cp": 1300}
BALL: Case = {
    "schema": "demould-cold-case/1",
    "id": "in silicone",
    "model": "reference-a",
    "shape": {"kind": "sphere", "diameter_mm": 48},
    "insert": {"kind": "sphere", "diameter_mm": 24, "bottom_mm": 12},
    "materials": {"body": "mousse", "insert": "insert"},
    "wall": SILICONE,
    "open": [],
    "start_c": 6,
    "air": -20,
    "h": 12,
    "humidity": None,
    "ask": {"core_c": list(TARGETS), "until_s": 90000},
    "accuracy": "default",
}
BARE: Case = {**BALL, "id": "bare", "wall": None, "air": -30, "h": 20}
# Converged in one dimension to 0.1 % by an independent code: core at -10, -15 °C.
BALLS = ((BALL, (7366.0, 9419.0)), (BARE, (3200.0, 3531.0)))


def _kind(shape: Case, insert: Case | None, **more: Any) -> Case:
    return {**BALL, "shape": shape, "insert": insert, **more}


KINDS: dict[str, Case] = {
    "sphere in silicone": BALL,
    "sphere, bare": BARE,
    "half-sphere": _kind(
        {"kind": "half_sphere", "diameter_mm": 70},
        {"kind": "half_sphere", "diameter_mm": 40, "bottom_mm": 8},
        open=["bottom"],
    ),
    "dome": _kind(
        {"kind": "dome", "radius_mm": 30, "straight_mm": 15},
        {"kind": "sphere", "diameter_mm": 28, "bottom_mm": 9},
        open=["bottom"],
    ),
    "cylinder": _kind(
        {"kind": "cylinder", "diameter_mm": 60, "height_mm": 40},
        {"kind": "cylinder", "diameter_mm": 40, "height_mm": 14, "bottom_mm": 12},
        open=["top"],
        h={"bottom": 20, "other": 12},
    ),
    "ring": _kind(
        {
            "kind": "turned",
            "profile_mm": [[14, 0], [35, 0], [35, 30], [14, 30], [14, 0]],
        },
        {
            "kind": "turned",
            "profile_mm": [[20, 0], [29, 0], [29, 12], [20, 12], [20, 0]],
            "bottom_mm": 9,
        },
        open=["top"],
    ),
    "turned, a waist": _kind(
        {
            "kind": "turned",
            "profile_mm": [
                [0, 0],
                [30, 0],
                [32, 12],
                [24, 25],
                [30, 38],
                [22, 48],
                [0, 50],
            ],
        },
        {"kind": "sphere", "diameter_mm": 26, "bottom_mm": 10},
    ),
    "slab": _kind(
        {"kind": "slab", "thickness_mm": 40},
        {"kind": "slab", "thickness_mm": 12, "bottom_mm": 14},
    ),
    "log, rectangular": _kind(
        {"kind": "log", "profile_mm": [[0, 0], [70, 0], [70, 55], [0, 55]]},
        {
            "kind": "log",
            "profile_mm": [[20, 0], [50, 0], [50, 20], [20, 20]],
            "bottom_mm": 18,
        },
        open=["top"],
        wall={"thickness_mm": 1, "k": 15, "density": 7900, "cp": 480},
    ),
    "log, lopsided": _kind(
        {"kind": "log", "profile_mm": [[0, 0], [70, 0], [60, 50], [22, 58], [4, 30]]},
        {
            "kind": "log",
            "profile_mm": [[22, 0], [50, 0], [46, 18], [26, 18]],
            "bottom_mm": 15,
        },
    ),
    "frozen insert": {**BALL, "start_c": {"body": 12, "insert": -18}},
    "own model": {**BALL, "model": "default"},
}


def load() -> str:
    """What the machine does beside this, for the head of every table."""
    return "load " + " ".join(f"{each:.2f}" for each in os.getloadavg())


def median_of(work: Callable[[], T], rounds: int = 5) -> tuple[float, float, T]:
    """Medians of wall and processor seconds, and what the last round gave."""
    walls, cpus, given = [], [], work()
    for _ in range(rounds):
        wall, cpu = time.perf_counter(), time.thread_time()
        given = work()
        walls.append(time.perf_counter() - wall)
        cpus.append(time.thread_time() - cpu)
    return statistics.median(walls), statistics.median(cpus), given


def answered(case: Case, **changed: Any) -> Case:
    """Answer a case, its tables made anew."""
    table_of.cache_clear()
    found, faults = answer({**case, **changed}, time.perf_counter)
    if found is None:
        raise SystemExit(f"{case['id']}: {faults}")
    return found


def seconds(found: Case, which: str = "core") -> list[float]:
    return [row["s"] for row in found[which]]


def off(found: list[float], exact: tuple[float, ...] | list[float]) -> float:
    """The worst of the targets [%], with its sign."""
    return max((100 * (a / b - 1) for a, b in zip(found, exact, strict=True)), key=abs)
