"""Time against error for a ladder of settings, beside two general libraries.

Run: ``.venv/bin/python benchmarks/cold_peers.py``. Two layered balls, one in silicone and
one bare, their times summed; same property tables for all. Both peers may use what a
ball allows and we do not: scikit-fem a line along the radius, of first or second order,
FiPy its spherical grid, both fitted to the seams. A setting counts if both balls are within 1 % of the converged answer and halving
its cell and its step moves them by at most 1 %. Reading tables and making the mesh is in
the times of all; what is compiled or imported once is in none.
"""

import statistics
import time
import warnings
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from cold_cases import BALLS, TARGETS, answered, load, off, seconds
from cold_fem import SILICONE_J_M3K, Layers, cooled
from skfem import Basis, FacetBasis, MeshLine
from skfem.element import ElementLineP1, ElementLineP2

from demould.cold.case.material import NAMED, read_material
from demould.matter.heat import Thermal, thermal
from demould.mise.json_keys import Keys

warnings.filterwarnings("ignore")
SEAM, SKIN = 0.012, 0.024


@dataclass(frozen=True)
class Setting:
    cells: int
    step: float
    name: str


def tables() -> tuple[Thermal, Thermal]:
    keys = Keys(said={name: name for name in NAMED}, place="", faults=[])
    body, insert = (read_material(keys, n, "reference-a") for n in ("mousse", "insert"))
    assert body is not None
    assert insert is not None
    return thermal(body, "parallel"), thermal(insert, "parallel")


def radii(cells: int, wall: bool) -> tuple[np.ndarray, np.ndarray]:
    """Nodes along the radius, fitted to the seams, and each cell's layer."""
    half = cells // 2
    lines = [np.linspace(0, SEAM, half + 1), np.linspace(SEAM, SKIN, half + 1)[1:]]
    layer = [np.zeros(half), np.ones(half)]
    if wall:
        more = max(1, round(half / 6))
        lines.append(np.linspace(SKIN, SKIN + 0.002, more + 1)[1:])
        layer.append(np.full(more, 2))
    return np.concatenate(lines), np.concatenate(layer).astype(int)


def fem(setting: Setting, wall: bool, air: float, h: float) -> list[float]:
    """scikit-fem along the radius."""
    line, layer = radii(setting.cells, wall)
    mesh = MeshLine(line)
    element = ElementLineP2() if setting.name == "order 2" else ElementLineP1()
    basis = Basis(mesh, element, intorder=3)
    rim = mesh.facets_satisfying(lambda x: np.isclose(x[0], line[-1]))
    skin = FacetBasis(mesh, element, facets=rim, intorder=3)
    body, insert = tables()
    return cooled(
        basis,
        skin,
        layer,
        (insert, body),
        core=int(np.argmin(basis.doflocs[0])),
        air=air,
        h=h,
        longest=setting.step,
        targets=TARGETS,
        power=2,
    )


def volumes(setting: Setting, wall: bool, air: float, h: float) -> list[float]:
    """FiPy's spherical grid: linear steps, contents kept (Pham), implicit Euler."""
    from fipy import (
        CellVariable,
        DiffusionTerm,
        FaceVariable,
        ImplicitSourceTerm,
        SphericalGrid1D,
        TransientTerm,
    )
    from fipy.solvers.scipy import LinearLUSolver

    line, layer = radii(setting.cells, wall)
    mesh = SphericalGrid1D(dx=np.diff(line))
    body, insert = tables()
    layers = Layers(layer, (insert, body))
    t = CellVariable(mesh=mesh, value=6.0, hasOld=True)
    c, k = CellVariable(mesh=mesh), CellVariable(mesh=mesh)
    heat, slope, conducts = layers.at(t.value.copy())
    solver = LinearLUSolver(tolerance=1e-10, iterations=1)
    faces = FaceVariable(mesh=mesh, value=0.0)
    outer = np.flatnonzero(np.asarray(mesh.facesRight))
    last = line.size - 2
    half = (line[-1] - line[-2]) / 2
    passes, source = CellVariable(mesh=mesh), CellVariable(mesh=mesh)
    equation = TransientTerm(coeff=c, var=t) == (
        DiffusionTerm(coeff=faces, var=t)
        + source
        - ImplicitSourceTerm(coeff=passes, var=t)
    )
    # Its spherical cells count half as much again as they hold: contents are scaled.
    true = (line[1:] ** 3 - line[:-1] ** 3) / 3 / np.asarray(mesh.cellVolumes)
    to_volume = float(mesh._faceAreas[outer[0]] / mesh.cellVolumes[last])
    moment, moments, cores = 0.0, [0.0], [6.0]
    while cores[-1] > TARGETS[-1] and moment < 30_000:
        step = min(setting.step, max(2.0, 0.3 * moment))
        begin = heat.copy()
        for _ in range(8):
            c.setValue(slope * true)
            k.setValue(conducts)
            faces.setValue(k.harmonicFaceValue)
            faces.setValue(0.0, where=mesh.exteriorFaces)
            film = to_volume / (1 / h + half / conducts[last])
            passes.setValue(np.where(np.arange(last + 1) == last, film, 0.0))
            # The content at the last guess, straight about it.
            old = t.value - (heat - begin) / slope
            t.old.setValue(old)
            source.setValue(np.where(np.arange(last + 1) == last, film * air, 0.0))
            equation.solve(var=t, dt=step, solver=solver)
            found = t.value.copy()
            heat = begin + slope * (found - old)
            tried = found
            t.setValue(layers_at_heat(layers, heat))
            _, slope, conducts = layers.at(t.value.copy())
            if np.abs(t.value - tried).max() < 0.02:
                break
        moment += step
        moments.append(moment)
        cores.append(float(t.value[0] + (t.value[0] - t.value[1]) / 8))
    return [float(np.interp(-c_, -np.array(cores), moments)) for c_ in TARGETS]


def layers_at_heat(layers: Layers, heat: np.ndarray) -> np.ndarray:
    t = np.empty_like(heat)
    for mine, at_c, content, _ in layers.parts:
        t[mine] = np.interp(heat[mine], content, at_c)
    t[layers.wall] = heat[layers.wall] / SILICONE_J_M3K
    return t


def both(solve: Callable[..., list[float]], setting: Setting) -> tuple[float, float]:
    """Summed seconds of both balls, and the worst error [%]."""
    begun = time.perf_counter()
    found = [solve(setting, True, -20.0, 12.0), solve(setting, False, -30.0, 20.0)]
    took = time.perf_counter() - begun
    return took, max(
        (off(f, e) for f, (_, e) in zip(found, BALLS, strict=True)), key=abs
    )


def moved(solve: Callable[..., list[float]], setting: Setting) -> float:
    """How far halving cell and step moves the worst of both balls [%]."""
    half = Setting(2 * setting.cells, setting.step / 2, setting.name)
    return max(
        (
            off(solve(setting, *how), solve(half, *how))
            for how in ((True, -20.0, 12.0), (False, -30.0, 20.0))
        ),
        key=abs,
    )


def ours(cell_mm: float | None, step: float | None) -> tuple[float, float]:
    how = {k: v for k, v in (("cell_mm", cell_mm), ("step_s", step)) if v}
    begun = time.perf_counter()
    found = [seconds(answered(c, accuracy=how or "default")) for c, _ in BALLS]
    took = time.perf_counter() - begun
    return took, max(
        (off(f, e) for f, (_, e) in zip(found, BALLS, strict=True)), key=abs
    )


def main() -> None:
    print(load())
    ours(None, None)
    print(f"{'':34}{'s':>9} {'error %':>8} {'halving %':>10}")
    usual = statistics.median(ours(None, None)[0] for _ in range(5))
    print(f"{'ours, defaults':34}{usual:9.4f} {ours(None, None)[1]:+8.2f}")
    for cell, step in ((4.0, 120), (3.0, 90), (2.0, 60), (1.5, 40), (1.0, 20)):
        took = statistics.median(ours(cell, step)[0] for _ in range(5))
        wrong = ours(cell, step)[1]
        halved = ours(cell / 2, step / 2)[1] - wrong
        print(
            f"{f'ours, {cell:g} mm, {step} s':34}{took:9.4f} {wrong:+8.2f} {halved:+10.2f}"
        )
    fastest: dict[str, float] = {}
    ladders = (
        ("scikit-fem", fem, "order 1", ((6, 480), (8, 240), (12, 240), (16, 120))),
        ("scikit-fem", fem, "order 2", ((2, 480), (4, 240), (6, 240), (8, 120))),
        ("FiPy", volumes, "radius", ((12, 120), (16, 60), (24, 30), (32, 15))),
    )
    for peer, solve, name, settings in ladders:
        for cells, step in settings:
            setting = Setting(cells, step, name)
            took, wrong = both(solve, setting)
            halved = moved(solve, setting)
            sound = max(abs(wrong), abs(halved)) <= 1
            label = f"{peer}, {name}: {cells} cells, {step} s"
            print(f"{label:34}{took:9.3f} {wrong:+8.2f} {halved:+10.2f}", flush=True)
            way = peer
            if sound and took < fastest.get(way, np.inf):
                times = [both(solve, setting)[0] for _ in range(5)]
                fastest[way] = statistics.median(times)
    again = statistics.median(ours(None, None)[0] for _ in range(5))
    for way, took in fastest.items():
        print(
            f"{way}: fastest sound {took:.3f} s, {took / again:.0f} x ours ({again:.4f} s)"
        )
    print(load())


if __name__ == "__main__":
    main()
