"""What a case comes to, ``demould-cold-answer/1``."""

from collections.abc import Callable, Mapping
from functools import cache
from itertools import pairwise

import numpy as np

from demould.cold.around.air import air_at
from demould.cold.around.moist import settling_point_c
from demould.cold.body.mesh import Mesh, mesh_of
from demould.cold.case.material import table_of
from demould.cold.case.read import Ask, Case, read_case
from demould.cold.run.reading import Reading
from demould.cold.run.readout import passing, value_at
from demould.cold.run.solve import Accuracy, Run, run

Answer = dict[str, object]
SCHEMA = "demould-cold-answer/1"
BEYOND_K = 1e-6


def answer(
    raw: Mapping[str, object], clock: Callable[[], float] = lambda: 0.0
) -> tuple[Answer | None, list[str]]:
    """Answer a case, or give every fault in it, one sentence each.

    `clock` tells seconds, for what the answer says of its own time.
    """
    begun = clock()
    case, faults = read_case(raw)
    if case is None:
        return None, faults
    tables = [table_of(wet, case.model) for wet in case.materials]
    mesh = mesh_of(
        case.bodies.profiles,
        wall=case.wall,
        open_faces=case.open_faces,
        cell=case.cell,
        endless=case.bodies.way != "turned",
        flat=case.bodies.way == "flat",
    )
    meshed = clock()
    done = run(
        mesh,
        tables,
        case.start_c,
        case.air,
        case.film,
        until=case.ask.until,
        done=_told(case),
        accuracy=Accuracy(step=case.step),
        damp=case.damp,
    )
    solved = clock()
    names = ("body", "insert")
    told: Answer = {
        "schema": SCHEMA,
        "id": case.id,
        "core": _passings(case, done, done.core, case.ask.core_c),
        "warmest": _passings(case, done, done.warmest, case.ask.warmest_c),
        "heat_j": [
            {"s": at, "j": _heat_at(done, at) * case.bodies.times}
            for at in case.ask.heat_at
        ],
        "volume_ml": case.bodies.volume_ml,
        "freezing_point_c": {
            name: table.freezing_c for name, table in zip(names, tables, strict=False)
        },
        "energy_residual": done.residual,
        "sweat": _sweat(case, mesh, done) if case.damp else None,
        "cells": int(mesh.body.size),
        "steps": int(done.seconds.size - 1),
        "cell_mm": mesh.cell * 1000,
        "step_s": max((float(b - a) for a, b in pairwise(done.seconds)), default=0.0),
        "solve_ms": (solved - meshed) * 1000,
    }
    if case.ask.curve_every is not None:
        told["curve"] = _curve(done, case.ask)
    told["total_ms"] = (clock() - begun) * 1000
    return told, []


@cache
def warm() -> None:
    """Answer a tiny case once, so that what is compiled and read is there for good."""
    answer(
        {
            "schema": "demould-cold-case/1",
            "model": "default",
            "shape": {"kind": "sphere", "diameter_mm": 20},
            "insert": {"kind": "sphere", "diameter_mm": 10, "bottom_mm": 5},
            "materials": {"body": "mousse", "insert": "insert"},
            "wall": {"thickness_mm": 1, "k": 0.2, "density": 1150, "cp": 1300},
            "start_c": 6,
            "air": -20,
            "h": 10,
            "ask": {"core_c": [0], "until_s": 60, "curve_every_s": 60},
            "accuracy": {"cell_mm": 3},
        }
    )


def _told(case: Case) -> Callable[[Reading], bool]:
    """Whether everything asked for has been passed, so that the run may end.

    A goal is left behind when the reading is on its other side. Heat, curves and water
    are asked of times, not temperatures: then the run goes on to its end.
    """
    ask = case.ask
    if (
        ask.curve_every is not None
        or ask.heat_at
        or case.damp
        or not (ask.core_c or ask.warmest_c)
    ):
        return lambda _: False
    start = case.start_c[-1]
    goals = [("core", at, start > at) for at in ask.core_c if at != start]
    hottest = max(case.start_c)
    goals += [("warmest", at, hottest > at) for at in ask.warmest_c if at != hottest]

    def told(reading: Reading) -> bool:
        still = [
            goal for goal in goals if (getattr(reading, goal[0]) > goal[1]) == goal[2]
        ]
        goals[:] = still
        return not still

    return told


def _passings(
    case: Case, done: Run, values: np.ndarray, targets: tuple[float, ...]
) -> list[Answer]:
    rows: list[Answer] = []
    for target in targets:
        at = passing(done.seconds, values, target)
        row: Answer = {"c": target, "s": at}
        if at is None and not _reachable(case, float(values[0]), target):
            row["why"] = "not in this air"
        rows.append(row)
    return rows


def _reachable(case: Case, start: float, target: float) -> bool:
    """Whether some air of the case, or some body, lies beyond the target."""
    air = case.air
    airs = [air] if isinstance(air, int | float) else [at_c for _, at_c in air]
    ends = [*airs, *case.start_c]
    if start > target:
        return min(ends) < target - BEYOND_K
    return max(ends) > target + BEYOND_K


def _heat_at(done: Run, at: float) -> float:
    return 0.0 if at == 0 else value_at(done.seconds, done.heat, at)


def _curve(done: Run, ask: Ask) -> list[list[float]]:
    every = ask.curve_every or ask.until
    moments = [n * every for n in range(int(ask.until / every + 1e-9) + 1)]
    return [
        [
            at,
            value_at(done.seconds, done.core, at),
            value_at(done.seconds, done.surface, at),
        ]
        for at in moments
    ]


def _sweat(case: Case, mesh: Mesh, done: Run) -> Answer:
    """When water stops settling, and the most there is of it.

    It stops when the mean of the outermost surface is over the dew or frost point.
    """
    relative = case.damp.relative if case.damp else 0.0
    points = [
        settling_point_c(air_at(case.air, float(at)), relative) for at in done.seconds
    ]
    over = np.array(
        [
            skin - (-273.15 if p is None else p)
            for skin, p in zip(done.skin, points, strict=True)
        ]
    )
    ends = 0.0 if over[0] >= 0 else passing(done.seconds, over, 0.0)
    most = float(done.water.max())
    area = float(mesh.rim.outer_area.sum())
    return {
        "ends_s": ends,
        "peak_g_m2": most / area * 1000,
        "peak_g": most * case.bodies.times * 1000,
    }
