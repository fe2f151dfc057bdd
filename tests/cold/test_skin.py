import math

import numpy as np
import pytest

from demould.cold.body.mesh import mesh_of
from demould.cold.body.profile import Profile, cylinder, half_sphere, raised, sphere
from demould.cold.body.skin import FACES, Wall

SILICONE = Wall(thickness=0.002, conductivity=0.2, density=1150, heat_capacity=1300)


def test_a_balls_wall_has_the_shell_formulas() -> None:
    # Outside (R + d)^2, resistance d / (4 pi k R (R + d)), shell volume; the polygon
    # has 48 chords: a part in 5000 too much surface.
    rim = mesh_of([sphere(0.048)], wall=SILICONE).rim
    outside = math.pi * 0.052**2
    shell = math.pi / 6 * (0.052**3 - 0.048**3)
    through = 1 / float((1 / rim.wall_resistance).sum())
    assert rim.outer_area.sum() == pytest.approx(outside, rel=5e-4)
    assert rim.wall_capacity.sum() == pytest.approx(1150 * 1300 * shell, rel=5e-4)
    by_hand = 0.002 / (0.2 * 4 * math.pi * 0.024 * 0.026)
    assert through == pytest.approx(by_hand, rel=5e-4)


def test_a_cylinders_wall_wraps_round_its_edge() -> None:
    rim = mesh_of([cylinder(0.06, 0.04)], wall=SILICONE).rim
    box = math.pi * 0.032**2 * 0.044 - math.pi * 0.03**2 * 0.04
    outside = 2 * math.pi * 0.032 * (0.032 + 0.044)
    assert rim.wall_capacity.sum() == pytest.approx(1150 * 1300 * box, rel=1e-9)
    assert rim.outer_area.sum() == pytest.approx(outside, rel=1e-9)


def test_an_open_face_has_no_wall_and_the_wall_ends_level_with_it() -> None:
    rim = mesh_of([cylinder(0.06, 0.04)], wall=SILICONE, open_faces=["top"]).rim
    top = rim.face == FACES.index("top")
    assert rim.area[top].sum() == pytest.approx(math.pi * 0.03**2)
    assert not rim.wall_resistance[top].any()
    assert not rim.wall_capacity[top].any()
    assert np.array_equal(rim.outer_area[top], rim.area[top])
    cup = math.pi * 0.032**2 * 0.042 - math.pi * 0.03**2 * 0.04
    assert rim.wall_capacity.sum() == pytest.approx(1150 * 1300 * cup, rel=1e-9)


def test_faces_are_told_apart() -> None:
    rim = mesh_of([cylinder(0.06, 0.04)]).rim
    by_face = np.bincount(rim.face, rim.area)
    end, side = math.pi * 0.03**2, 2 * math.pi * 0.03 * 0.04
    assert by_face == pytest.approx([end, end, side])
    assert not rim.wall_resistance.any()


def test_a_step_half_way_up_is_no_bottom() -> None:
    mushroom: Profile = (
        (0, 0),
        (0.01, 0),
        (0.01, 0.02),
        (0.03, 0.02),
        (0.03, 0.03),
        (0, 0.03),
    )
    rim = mesh_of([mushroom]).rim
    assert rim.area[rim.face == 0].sum() == pytest.approx(math.pi * 0.01**2)


def test_a_face_that_is_not_there_cannot_be_open() -> None:
    with pytest.raises(ValueError, match=r"^there is no flat top to leave open$"):
        mesh_of([half_sphere(0.07)], wall=SILICONE, open_faces=["top"])


def test_an_insert_touching_the_wall_is_behind_it() -> None:
    body = cylinder(0.06, 0.04)
    layer = raised(cylinder(0.06, 0.01), 0.01)
    mesh = mesh_of([body, layer], wall=SILICONE)
    behind = mesh.body[mesh.rim.cell] == 1
    assert mesh.rim.area[behind].sum() == pytest.approx(math.pi * 0.06 * 0.01)
    assert (mesh.rim.wall_resistance[behind] > 0).all()


def test_impossible_walls_are_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^a wall must have a thickness and a conductivity over 0$"
    ):
        Wall(thickness=0, conductivity=0.2, density=1150, heat_capacity=1300)
    with pytest.raises(
        ValueError, match=r"^a wall has a density or a heat capacity below 0$"
    ):
        Wall(thickness=0.002, conductivity=0.2, density=-1, heat_capacity=1300)
