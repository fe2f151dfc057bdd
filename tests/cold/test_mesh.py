import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from demould.cold.body.mesh import Mesh, mesh_of
from demould.cold.body.profile import (
    Profile,
    area,
    checked,
    cylinder,
    dome,
    half_sphere,
    raised,
    sphere,
    volume,
)

SHAPES = {
    "sphere": sphere(0.048),
    "half sphere": half_sphere(0.07),
    "dome": dome(0.03, 0.015),
    "cylinder": cylinder(0.06, 0.04),
    "spool": checked(
        [
            (0, 0),
            (0.03, 0),
            (0.03, 0.01),
            (0.018, 0.02),
            (0.03, 0.031),
            (0.02, 0.04),
            (0, 0.04),
        ]
    ),
}


def in_body(mesh: Mesh, body: int) -> float:
    return float(mesh.volume[mesh.body == body].sum())


def seam(mesh: Mesh) -> float:
    """Area of all openings between different bodies."""
    apart = mesh.body[mesh.links.low] != mesh.body[mesh.links.high]
    return float(mesh.links.area[apart].sum())


@pytest.mark.parametrize("name", SHAPES)
@pytest.mark.parametrize("cell", [0.0031, 0.0017, None])
def test_cells_keep_volume_and_skin_of_the_true_outline(
    name: str, cell: float | None
) -> None:
    # Volume loses only the nudge off grid lines, 1e-9 of a cell; skin loses nothing.
    shape = SHAPES[name]
    mesh = mesh_of([shape], cell=cell)
    assert mesh.volume.sum() == pytest.approx(volume(shape), rel=1e-7)
    assert mesh.rim.area.sum() == pytest.approx(area(shape), rel=1e-9)
    assert (mesh.volume > 0).all()
    assert (mesh.rim.depth > 0).all()


def test_the_exact_sphere_not_its_polygon_is_kept() -> None:
    mesh = mesh_of([sphere(0.048)])
    assert mesh.volume.sum() == pytest.approx(math.pi / 6 * 0.048**3, rel=1e-6)


@given(
    wide=st.floats(0.01, 0.044),
    high=st.floats(0.004, 0.02),
    at=st.floats(0.005, 0.0149),
    cell=st.floats(0.002, 0.006),
)
@settings(max_examples=60, deadline=None)
def test_a_body_and_its_seam_are_whole_wherever_it_lies(
    wide: float, high: float, at: float, cell: float
) -> None:
    outer, inner = cylinder(0.05, 0.04), raised(cylinder(wide, high), at)
    mesh = mesh_of([outer, inner], cell=cell)
    assert mesh.volume.sum() == pytest.approx(volume(outer), rel=1e-6)
    assert in_body(mesh, 1) == pytest.approx(volume(inner), rel=1e-6)
    assert seam(mesh) == pytest.approx(area(inner), rel=1e-6)


@given(
    small=st.floats(0.006, 0.03),
    at=st.floats(0.002, 0.017),
    cell=st.floats(0.002, 0.005),
)
@settings(max_examples=60, deadline=None)
def test_a_ball_in_a_ball_is_whole_at_any_height(
    small: float, at: float, cell: float
) -> None:
    outer, inner = sphere(0.05), raised(sphere(small), at)
    if at + small > 0.048:
        inner = raised(sphere(small), 0.048 - small)
    mesh = mesh_of([outer, inner], cell=cell)
    assert mesh.volume.sum() == pytest.approx(volume(outer), rel=1e-6)
    assert in_body(mesh, 1) == pytest.approx(volume(inner), rel=1e-6)
    assert seam(mesh) == pytest.approx(area(inner), rel=1e-6)


def test_a_base_flush_with_the_bottom_shows_its_underside() -> None:
    outer, base = cylinder(0.06, 0.04), cylinder(0.05, 0.005)
    centre = raised(cylinder(0.02, 0.01), 0.015)
    mesh = mesh_of([outer, centre, base])
    assert in_body(mesh, 2) == pytest.approx(volume(base), rel=1e-6)
    seen = mesh.body[mesh.rim.cell] == 2
    assert mesh.rim.area[seen].sum() == pytest.approx(math.pi * 0.025**2, rel=1e-9)
    assert mesh.rim.area.sum() == pytest.approx(area(outer), rel=1e-9)
    buried = area(centre) + math.pi * (0.025**2 + 0.05 * 0.005)
    assert seam(mesh) == pytest.approx(buried, rel=1e-9)


def test_a_centre_standing_on_the_base_meets_it_once() -> None:
    outer, base = cylinder(0.06, 0.04), cylinder(0.05, 0.005)
    centre = raised(cylinder(0.02, 0.01), 0.005)
    mesh = mesh_of([outer, centre, base])
    pair = {1, 2}
    both = [
        {int(mesh.body[a]), int(mesh.body[b])} == pair
        for a, b in zip(mesh.links.low, mesh.links.high, strict=True)
    ]
    assert mesh.links.area[both].sum() == pytest.approx(math.pi * 0.01**2, rel=1e-9)


def test_a_body_may_lie_in_a_body_that_lies_in_the_piece() -> None:
    bodies = [
        cylinder(0.06, 0.04),
        raised(cylinder(0.04, 0.02), 0.01),
        raised(cylinder(0.02, 0.01), 0.015),
    ]
    mesh = mesh_of(bodies)
    assert in_body(mesh, 1) == pytest.approx(
        volume(bodies[1]) - volume(bodies[2]), rel=1e-6
    )
    assert seam(mesh) == pytest.approx(area(bodies[1]) + area(bodies[2]), rel=1e-9)


def test_a_body_outside_the_piece_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^body 1 of the piece does not lie inside it$"
    ):
        mesh_of([cylinder(0.06, 0.04), raised(sphere(0.02), 0.05)])


def test_slivers_lose_no_skin() -> None:
    # A belly that passes a grid line by a hundred-millionth of a cell: what lies beyond is too
    # small to count, what it shows goes to its neighbours.
    beyond = 5e-11
    shape: Profile = (
        (0, 0),
        (0.03, 0),
        (0.03, 0.005),
        (0.0199, 0.005),
        (0.02 + beyond, 0.0101),
        (0.0199, 0.02),
        (0, 0.02),
    )
    mesh = mesh_of([shape], cell=0.005)
    assert mesh.volume.min() > 1e-12
    assert mesh.rim.area.sum() == pytest.approx(area(shape), rel=1e-9)


@pytest.mark.parametrize("cell", [0.0024, 0.0014])
def test_the_core_reads_a_bowl_exactly(cell: float) -> None:
    # Over a full ring cell the mean of r^2 is (r0^2 + r1^2) / 2, that of z^2 is
    # (z0^2 + z0 z1 + z1^2) / 3: from these means the bowl's bottom comes out.
    body, centre = cylinder(0.06, 0.04), raised(cylinder(0.03, 0.02), 0.008)
    mesh = mesh_of([body, centre], cell=cell)
    wide, high = 0.015 / math.ceil(0.015 / cell), 0.02 / math.ceil(0.02 / cell)
    mine = mesh.body == 1
    r0 = np.floor(mesh.centre[:, 0] / wide) * wide
    z0 = 0.008 + np.floor((mesh.centre[:, 1] - 0.008) / high) * high
    r1, z1 = r0 + wide, z0 + high
    means = 5 + 2e4 * (r0**2 + r1**2) / 2 + 300 * (z0 + z1) / 2
    means -= 1e4 * (z0**2 + z0 * z1 + z1**2) / 3
    assert mesh.core @ np.where(mine, means, 0) == pytest.approx(
        5 + 300 * 0.018 - 1e4 * 0.018**2, abs=1e-8
    )
    assert mesh.core.sum() == pytest.approx(1)


def test_a_core_of_few_cells_still_reads_an_even_temperature() -> None:
    mesh = mesh_of(
        [cylinder(0.06, 0.04), raised(cylinder(0.004, 0.004), 0.02)], cell=0.01
    )
    assert mesh.core.sum() == pytest.approx(1)
    assert (mesh.core @ np.full(mesh.body.size, 7.0)) == pytest.approx(7)


def test_neighbours_stay_close_in_the_order() -> None:
    # A flat cake and a tall stick: counted along the shorter side either way.
    for shape in (cylinder(0.18, 0.03), cylinder(0.03, 0.18)):
        mesh = mesh_of([shape], cell=0.003)
        band = int((mesh.links.high - mesh.links.low).max())
        assert band == 10 if shape[1][0] > 0.05 else band == 5
