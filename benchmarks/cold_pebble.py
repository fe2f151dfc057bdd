"""What it costs to let a turned body stand for a pebble, an oval or a bar.

Run: ``.venv/bin/python benchmarks/cold_pebble.py [REFINEMENTS]``. Each shape freezes as a
whole in space (scikit-fem, body-fitted, an eighth of it by symmetry) and as the turned
body `cold.from_dessert` lets stand for it; bare, the film alike all round.
"""

import sys
from dataclasses import dataclass

import numpy as np
from cold_cases import TARGETS, load, off
from cold_fem import cooled
from skfem import Basis, FacetBasis, MeshHex, MeshTet
from skfem.element import ElementHex1, ElementTetP1

from demould.amounts.shape.volume import volume_up_to_ml
from demould.cold.around.air import Film
from demould.cold.body.mesh import mesh_of
from demould.cold.run.readout import passing
from demould.cold.run.solve import run
from demould.cold.stand_in import stand_in
from demould.matter.heat import Thermal, thermal
from demould.matter.water import reference_a
from demould.mise.shape import Box, CutEllipsoid


@dataclass(frozen=True)
class Body:
    """Half axes [m] of an ellipsoid, or of a box."""

    name: str
    half: tuple[float, float, float]
    round: bool


BODIES = (
    Body("ball 44", (0.022, 0.022, 0.022), True),
    Body("pebble 62 x 44 x 34", (0.031, 0.022, 0.017), True),
    Body("oval 70 x 40 x 36", (0.035, 0.020, 0.018), True),
    Body("long egg 90 x 40 x 40", (0.045, 0.020, 0.020), True),
    Body("cube 44", (0.022, 0.022, 0.022), False),
    Body("bar 90 x 35 x 30", (0.045, 0.0175, 0.015), False),
    Body("stick 120 x 30 x 25", (0.060, 0.015, 0.0125), False),
    Body("log 160 x 60 x 50", (0.080, 0.030, 0.025), False),
)
AIRS = ((12.0, -20.0), (30.0, -35.0))


def mousse() -> Thermal:
    wet = reference_a(
        water=0.5,
        carb=0.2,
        carb_kg_mol=0.3,
        protein=0.025,
        fat=0.27,
        ash=0.005,
        air=0.25,
    )
    return thermal(wet, "parallel")


def in_space(body: Body, h: float, air: float, fine: int) -> list[float]:
    if body.round:
        ball = MeshTet.init_ball(nrefs=fine)
        inside = np.flatnonzero((ball.p[:, ball.t] > -1e-9).all(axis=(0, 1)))
        mesh = ball.restrict(inside)
        skin = mesh.facets_satisfying(
            lambda x: (np.abs(x) > 1e-9).all(axis=0), boundaries_only=True
        )
        mesh = mesh.scaled(body.half)
        element = ElementTetP1()
    else:
        cells = 3 * fine
        mesh = MeshHex.init_tensor(*(np.linspace(0, d, cells + 1) for d in body.half))
        skin = mesh.facets_satisfying(
            lambda x: np.isclose(x / np.array(body.half)[:, None], 1).any(axis=0),
            boundaries_only=True,
        )
        element = ElementHex1()
    basis = Basis(mesh, element, intorder=2)
    return cooled(
        basis,
        FacetBasis(mesh, element, facets=skin, intorder=2),
        np.zeros(mesh.nelements, int),
        (mousse(),),
        core=int(np.argmin((basis.doflocs**2).sum(axis=0))),
        air=air,
        h=h,
        longest=300.0 if h < 20 else 100.0,
        targets=TARGETS,
    )


def turned_ones(body: Body, h: float, air: float) -> tuple[list[float], float, float]:
    """The same by the turned body; and its skin's and its content's share."""
    a, b, c = (1000 * half for half in body.half)
    shape: CutEllipsoid | Box
    if body.round:
        shape = CutEllipsoid(
            half_length_mm=a, half_width_mm=b, half_height_mm=c, cut_mm=c
        )
    else:
        shape = Box(length_mm=2 * a, width_mm=2 * b, height_mm=2 * c)
    stands = stand_in(shape, volume_up_to_ml(shape))
    # A box's upper face is open and counts apart: here all of it has the same film.
    film = Film(bottom=h, top=h, other=h * stands.skin)
    done = run(
        mesh_of([stands.outline]),
        [mousse()],
        [6.0],
        air,
        film,
        until=1e5,
        done=lambda reading: reading.core < TARGETS[-1] - 0.1,
    )
    passed = [passing(done.seconds, done.core, c) for c in TARGETS]
    return [at or np.nan for at in passed], stands.skin, stands.times


def main(fine: int = 3) -> None:
    print(load())
    print("core at -10 and -15 °C; in space: carried on from two meshes (order 2)")
    print(f"{'body, mm':22} {'h':>3} {'in space, s':>15} {'turned, %':>15}  skin times")
    for body in BODIES:
        for h, air in AIRS:
            coarse, better = (in_space(body, h, air, n) for n in (fine, fine + 1))
            gain = 3.0 if body.round else ((fine + 1) / fine) ** 2 - 1
            exact = [b + (b - a) / gain for a, b in zip(coarse, better, strict=True)]
            found, skin, times = turned_ones(body, h, air)
            apart = [off([f], [e]) for f, e in zip(found, exact, strict=True)]
            print(
                f"{body.name:22} {h:3.0f} {exact[0]:7.0f} {exact[1]:7.0f}"
                f" {apart[0]:+7.2f} {apart[1]:+7.2f}  {skin:.3f} {times:.3f}",
                flush=True,
            )


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
