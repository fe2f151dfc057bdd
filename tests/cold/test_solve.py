import math
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq
from scipy.special import j0, j1

from demould.cold.around.air import Film, even_film
from demould.cold.body.mesh import mesh_of
from demould.cold.body.profile import Profile, cylinder, raised, sphere, volume
from demould.cold.body.skin import Wall
from demould.cold.run.readout import passing, value_at
from demould.cold.run.solve import Accuracy, Run, run
from demould.matter.heat import Thermal

Plain = Callable[[float, float, float], Thermal]
SILICONE = Wall(thickness=0.002, conductivity=0.2, density=1150, heat_capacity=1300)
FINE = Accuracy(tolerance=2e-4)

# Eigenvalue equations and weights of the one-dimensional series: Incropera, DeWitt,
# Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 6th ed., Wiley 2007, sec. 5.5
# and 5.6; first roots and weights of its Table 5.1 (from memory), four decimals.
FIRST = {
    "slab": {0.1: (0.3111, 1.0161), 1.0: (0.8603, 1.1191), 10.0: (1.4289, 1.2620)},
    "cylinder": {0.1: (0.4417, 1.0246), 1.0: (1.2558, 1.2071), 10.0: (2.1795, 1.5677)},
    "sphere": {0.1: (0.5423, 1.0298), 1.0: (1.5708, 1.2732), 10.0: (2.8363, 1.9249)},
}


def equation(kind: str, biot: float) -> Callable[[float], float]:
    match kind:
        case "slab":
            return lambda z: z * math.sin(z) - biot * math.cos(z)
        case "cylinder":
            return lambda z: float(z * j1(z) - biot * j0(z))
        case _:
            return lambda z: (1 - biot) * math.sin(z) - z * math.cos(z)


def weight(kind: str, z: float) -> float:
    match kind:
        case "slab":
            return 4 * math.sin(z) / (2 * z + math.sin(2 * z))
        case "cylinder":
            return float(2 / z * j1(z) / (j0(z) ** 2 + j1(z) ** 2))
        case _:
            return 4 * (math.sin(z) - z * math.cos(z)) / (2 * z - math.sin(2 * z))


def roots(kind: str, biot: float, terms: int) -> list[float]:
    f, z = equation(kind, biot), 1e-6
    found: list[float] = []
    while len(found) < terms:
        if f(z) * f(z + 0.05) < 0:
            found.append(float(brentq(f, z, z + 0.05, xtol=1e-13)))
        z += 0.05
    return found


def series(kind: str, biot: float, fourier: float) -> float:
    """What the middle still has of its first difference to the air."""
    return sum(
        weight(kind, z) * math.exp(-z * z * fourier) for z in roots(kind, biot, 30)
    )


@pytest.mark.parametrize("kind", FIRST)
@pytest.mark.parametrize("biot", [0.1, 1.0, 10.0])
def test_the_series_here_is_the_printed_one(kind: str, biot: float) -> None:
    z = roots(kind, biot, 1)[0]
    assert (z, weight(kind, z)) == pytest.approx(FIRST[kind][biot], abs=6e-5)


def one_way(kind: str) -> tuple[Profile, Film, Film]:
    """A body of half depth 20 mm and films that leave heat one way out."""
    match kind:
        case "slab":
            shape, open_ = cylinder(0.01, 0.04), Film(bottom=1, top=1, other=0)
        case "cylinder":
            shape, open_ = cylinder(0.04, 0.01), Film(bottom=0, top=0, other=1)
        case _:
            shape, open_ = sphere(0.04), even_film(1)
    return shape, open_, open_


@pytest.mark.parametrize("kind", FIRST)
@pytest.mark.parametrize("biot", [0.1, 1.0, 10.0])
def test_the_middle_cools_like_the_series(plain: Plain, kind: str, biot: float) -> None:
    # Twelve cells over the half depth: (1/12)^2 / 2 = 0.35 % of curvature at most, the
    # rest is for steps at the default tolerance.
    shape, unit, _ = one_way(kind)
    h = biot * 0.5 / 0.02
    film = Film(bottom=unit.bottom * h, top=unit.top * h, other=unit.other * h)
    second = 0.02**2 * 3.6e6 / 0.5
    done = run(
        mesh_of([shape], cell=0.02 / 12),
        [plain(0.5, 1000, 3600)],
        [1.0],
        0.0,
        film,
        until=2 * second,
        accuracy=FINE,
    )
    for fourier in (0.1, 0.2, 0.5, 1.0, 1.9):
        read = value_at(done.seconds, done.core, fourier * second)
        assert read == pytest.approx(series(kind, biot, fourier), abs=4e-3)


# Product of a slab's and a cylinder's series: bare, R = 30 mm, H = 40 mm, k = 0.5,
# rho cp = 3.6e6, h = 20 all round, 20 °C into -5 °C; independently computed centre.
FINITE_CYLINDER = ((600, 18.3749), (1200, 13.4660), (1800, 8.8947), (3600, 0.7062))


def test_a_short_cylinder_cools_like_the_product_solution(plain: Plain) -> None:
    done = run(
        mesh_of([cylinder(0.06, 0.04)]),
        [plain(0.5, 1000, 3600)],
        [20],
        -5,
        even_film(20),
        until=3700,
    )
    for seconds, centre in FINITE_CYLINDER:
        theta = series("slab", 0.8, 0.5 / 3.6e6 * seconds / 0.02**2) * series(
            "cylinder", 1.2, 0.5 / 3.6e6 * seconds / 0.03**2
        )
        assert -5 + 25 * theta == pytest.approx(centre, abs=6e-5)
        # 25 K over some twenty cells across: a few hundredths of a kelvin.
        assert value_at(done.seconds, done.core, seconds) == pytest.approx(
            centre, abs=0.05
        )


def stefan_water() -> Thermal:
    """Freezes at 0 °C with steps in all: the two-phase problem's own material."""
    at_c = np.array([-60.0, -1e-3, 0.0, 60.0])
    frozen = 2050 * (at_c[:2] + 1e-3) - 333.6e3
    return Thermal(
        at_c=at_c,
        enthalpy=np.array([*frozen, 0.0, 4180 * 60.0]),
        conductivity=np.array([2.2, 2.2, 0.57, 0.57]),
        ice=np.array([1.0, 1.0, 0.0, 0.0]),
        density=1000.0,
        freezing_c=0.0,
    )


def neumann_lambda() -> float:
    """Root of the two-phase similarity solution, wall -20, start 5 °C."""
    ice, water = 2.2 / (1000 * 2050), 0.57 / (1000 * 4180)
    v = math.sqrt(ice / water)

    def balance(x: float) -> float:
        solid = math.exp(-x * x) / math.erf(x)
        liquid = 0.57 / 2.2 * v * 5 / 20
        liquid *= math.exp(-((v * x) ** 2)) / math.erfc(v * x)
        return solid - liquid - x * 333.6e3 * math.sqrt(math.pi) / (2050 * 20)

    return float(brentq(balance, 0.05, 1))


def test_a_front_moves_as_neumann_found() -> None:
    # Printed: lambda 0.232189, front 11.784 mm after 600 s, 28.864 mm after 3600 s.
    growth = neumann_lambda()
    assert growth == pytest.approx(0.232189, abs=6e-7)
    # A rod insulated along its side; the film is as good as a held temperature (1e5 /
    # (2.2 / 0.012) = 500). The front lags by half a cell, 0.0625 mm, and a quarter more.
    bar = cylinder(0.00025, 0.1)
    mesh = mesh_of([bar], cell=0.000125)
    film = Film(bottom=1e5, top=0, other=0)
    done = run(mesh, [stefan_water()], [5], -20, film, until=3600, accuracy=FINE)
    for seconds, front in ((600, 0.011784), (3600, 0.028864)):
        exact = 2 * growth * math.sqrt(2.2 / (1000 * 2050) * seconds)
        assert exact == pytest.approx(front, abs=6e-7)
        ice = value_at(done.seconds, done.ice, seconds)
        assert ice / (1000 * math.pi * 0.000125**2) == pytest.approx(front, abs=0.00008)


# A 48 mm ball with a 24 mm centre, ideal model, converged in one dimension to 0.1 %:
# seconds at which the core passes 0, -2, -5, -10, -15 °C, and heat with the wall's.
LAYERED = {
    "in silicone": (
        SILICONE,
        12,
        -20,
        (1214, 1766, 5723, 7366, 9419),
        14000,
        10606.6,
    ),
    "bare": (None, 20, -30, (917, 1308.5, 2911, 3200, 3531), 7000, 11387.2),
}


@pytest.mark.parametrize("name", LAYERED)
def test_a_layered_ball_freezes_as_the_converged_case(
    mousse: Thermal, insert: Thermal, name: str
) -> None:
    wall, h, air_c, times, until, heat = LAYERED[name]
    mesh = mesh_of([sphere(0.048), raised(sphere(0.024), 0.012)], wall=wall)
    done = run(mesh, [mousse, insert], [6, 6], air_c, even_film(h), until=until)
    passed = [passing(done.seconds, done.core, c) for c in (0, -2, -5, -10, -15)]
    assert passed == pytest.approx(times, rel=0.01)
    assert done.heat[-1] == pytest.approx(heat, rel=0.005)
    assert done.residual <= 1e-10


def test_the_layered_ball_comes_nearer_on_a_finer_mesh(
    mousse: Thermal, insert: Thermal
) -> None:
    _, h, air_c, times, until, _ = LAYERED["bare"]
    off = []
    for cell in (0.003, 0.001):
        mesh = mesh_of([sphere(0.048), raised(sphere(0.024), 0.012)], cell=cell)
        done = run(mesh, [mousse, insert], [6, 6], air_c, even_film(h), until=until)
        passed = passing(done.seconds, done.core, -10)
        assert passed is not None
        off.append(abs(passed / times[3] - 1))
    # The reference itself is good to 0.1 %.
    assert off[1] < 0.5 * off[0] + 0.001


def test_half_the_step_leaves_a_quarter_of_the_error(plain: Plain) -> None:
    mesh = mesh_of([sphere(0.05)], cell=0.00125)

    def core(step: float) -> float:
        done = run(
            mesh,
            [plain(0.5, 1000, 3600)],
            [20],
            -20,
            even_film(15),
            until=2000,
            accuracy=Accuracy(step=step),
        )
        return float(done.core[-1])

    exact = core(5)
    coarse, fine = abs(core(400) - exact), abs(core(200) - exact)
    # Second order: 4 in the limit; 3.3 leaves room for the next term.
    assert 3.3 < coarse / fine < 5.5


def test_half_the_cell_leaves_a_quarter_of_the_error(plain: Plain) -> None:
    exact = series("cylinder", 1.0, 0.5)
    off = []
    for cells in (6, 12):
        done = run(
            mesh_of([cylinder(0.04, 0.01)], cell=0.02 / cells),
            [plain(0.5, 1000, 3600)],
            [1.0],
            0.0,
            Film(bottom=0, top=0, other=25),
            until=0.5 * 0.02**2 * 3.6e6 / 0.5,
            accuracy=Accuracy(step=5),
        )
        off.append(abs(float(done.core[-1]) - exact))
    # Fourth order but for the turned cells and the rim: a sixteenth at best.
    assert 3.7 < off[0] / off[1] < 17
    assert off[0] < 1e-3


def test_what_is_as_cold_as_its_air_stays_so(mousse: Thermal, insert: Thermal) -> None:
    mesh = mesh_of([sphere(0.048), raised(sphere(0.02), 0.01)], wall=SILICONE)
    done = run(mesh, [mousse, insert], [-7, -7], -7, even_film(20), until=50000)
    assert np.abs(done.core + 7).max() < 1e-9
    assert np.abs(done.heat).max() < 1e-9
    assert done.residual == 0


def test_the_whole_heat_is_the_difference_of_contents(
    mousse: Thermal, insert: Thermal
) -> None:
    # At rest in -25 °C air all of H(6) - H(-25) must have left, wall and all.
    body, centre = sphere(0.048), raised(sphere(0.024), 0.012)
    mesh = mesh_of([body, centre], wall=SILICONE, cell=0.004)
    done = run(mesh, [mousse, insert], [6, 6], -25, even_film(30), until=4e5)
    given_off = sum(
        part * t.density * float(np.diff(np.interp([-25, 6], t.at_c, t.enthalpy))[0])
        for part, t in (
            (volume(body) - volume(centre), mousse),
            (volume(centre), insert),
        )
    )
    shell = math.pi / 6 * (0.052**3 - 0.048**3) * 1150 * 1300 * 31
    # The shell is a polygon's: a part in 5000 of one part in forty.
    assert done.heat[-1] == pytest.approx(given_off + shell, rel=2e-5)


def test_twice_the_size_at_half_the_film_takes_four_times_as_long(
    mousse: Thermal, insert: Thermal
) -> None:
    # Exact for the scheme too, cell and step scaled alike: to rounding.
    small = mesh_of([sphere(0.03), raised(sphere(0.014), 0.008)], cell=0.003)
    large = mesh_of([sphere(0.06), raised(sphere(0.028), 0.016)], cell=0.006)
    one = run(
        small,
        [mousse, insert],
        [6, -18],
        -30,
        even_film(20),
        until=900,
        accuracy=Accuracy(step=30),
    )
    two = run(
        large,
        [mousse, insert],
        [6, -18],
        -30,
        even_film(10),
        until=3600,
        accuracy=Accuracy(step=120),
    )
    assert two.core == pytest.approx(one.core, abs=1e-6)
    assert two.heat == pytest.approx(8 * one.heat, rel=1e-6)


def test_a_ball_upside_down_is_the_same_ball(mousse: Thermal, insert: Thermal) -> None:
    film = Film(bottom=25, top=5, other=10)
    flipped = Film(bottom=5, top=25, other=10)
    low = mesh_of(
        [cylinder(0.06, 0.04), raised(cylinder(0.03, 0.01), 0.005)], cell=0.005
    )
    high = mesh_of(
        [cylinder(0.06, 0.04), raised(cylinder(0.03, 0.01), 0.025)], cell=0.005
    )
    even = Accuracy(step=60)
    one = run(low, [mousse, insert], [6, 6], -30, film, until=3000, accuracy=even)
    two = run(high, [mousse, insert], [6, 6], -30, flipped, until=3000, accuracy=even)
    assert two.core == pytest.approx(one.core, abs=1e-6)


def test_a_cold_floor_cools_what_lies_low_first(mousse: Thermal) -> None:
    film = Film(bottom=200, top=1, other=1)
    cores = []
    for at in (0.004, 0.026):
        mesh = mesh_of([cylinder(0.06, 0.04), raised(cylinder(0.03, 0.01), at)])
        done = run(mesh, [mousse, mousse], [6, 6], -30, film, until=1800)
        cores.append(float(done.core[-1]))
    low, high = cores
    assert low < -10 < high


def test_air_over_time_moves_the_piece_both_ways(mousse: Thermal) -> None:
    mesh = mesh_of([sphere(0.04)], cell=0.004)
    air = ((0.0, -30.0), (4000.0, 20.0))
    done = run(mesh, [mousse], [5], air, even_film(20), until=20000)
    assert 4000.0 in done.seconds
    turned = int(np.flatnonzero(done.seconds == 4000.0)[0])
    assert done.core[turned] < -10
    assert done.core[-1] > 10
    assert (np.diff(done.heat[: turned + 1]) > 0).all()
    warming = np.diff(done.heat[turned:])
    # At rest in the end the scheme swings by parts in a thousand of what moved.
    assert (warming < 1e-3 * np.abs(done.heat[turned])).all()
    assert done.heat[-1] < 0
    assert done.residual <= 1e-10


def test_surface_lies_between_core_and_air_and_under_the_wall(
    mousse: Thermal,
) -> None:
    for wall in (None, SILICONE):
        mesh = mesh_of([sphere(0.04)], cell=0.004, wall=wall)
        done = run(mesh, [mousse], [5], -30, even_film(30), until=1500)
        later = done.seconds > 60
        assert (done.surface[later] < done.core[later]).all()
        assert (done.surface > -30).all()


def test_a_slabs_surface_is_what_newton_says(plain: Plain) -> None:
    # q = h (Ts - Ta): mean surface from the heat of one small step, bare slab.
    mesh = mesh_of([cylinder(0.01, 0.04)])
    done = run(
        mesh,
        [plain(0.5, 1000, 3600)],
        [20],
        0,
        Film(bottom=20, top=20, other=20),
        until=600,
        accuracy=Accuracy(step=1),
    )
    flow = (done.heat[-1] - done.heat[-2]) / 1.0
    whole = float(mesh.rim.area.sum())
    # First-order in the second between the two readings: 1e-3 of 20 K.
    assert done.surface[-1] == pytest.approx(flow / (20 * whole), abs=0.03)


def test_a_goal_stops_the_run(mousse: Thermal) -> None:
    mesh = mesh_of([sphere(0.04)], cell=0.004)
    done = run(
        mesh,
        [mousse],
        [5],
        -30,
        even_film(20),
        until=1e6,
        done=lambda reading: reading.core < -10,
    )
    assert done.core[-1] < -10 <= done.core[-2]


def test_a_violent_start_is_taken_in_small_steps(mousse: Thermal) -> None:
    mesh = mesh_of([sphere(0.02)], cell=0.002)
    done = run(mesh, [mousse], [60], -60, even_film(1e4), until=200)
    assert done.residual <= 1e-10
    # The bowl read at the core swings a little ahead of a front as steep as this.
    assert done.warmest.max() <= 60 + 0.02 * 120
    assert done.warmest[-1] < 0


def test_forced_steps_are_even(mousse: Thermal) -> None:
    mesh = mesh_of([sphere(0.02)], cell=0.004)
    done = run(
        mesh,
        [mousse],
        [5],
        -20,
        even_film(10),
        until=100,
        accuracy=Accuracy(step=30),
    )
    assert done.seconds.tolist() == [0, 30, 60, 90, 100]


def test_a_table_that_falls_has_no_answer(plain: Plain) -> None:
    falling = replace(plain(0.5, 1000, 3600), enthalpy=-3600 * np.array([-80.0, 80.0]))
    with pytest.raises(
        ArithmeticError, match=r"^the cells' balance has no answer \(\d+\)$"
    ):
        run(
            mesh_of([sphere(0.02)], cell=0.004),
            [falling],
            [5],
            -20,
            even_film(10),
            until=100,
        )


def cycle(
    mousse: Thermal, insert: Thermal, start: float, cold: float, h: float
) -> tuple[Run, Run]:
    mesh = mesh_of([sphere(0.04), raised(sphere(0.018), 0.01)], cell=0.008)
    down = run(mesh, [mousse, insert], [start, start], cold, even_film(h), until=3e5)
    up = run(mesh, [mousse, insert], [cold, cold], start, even_film(h), until=3e5)
    return down, up


@given(start=st.floats(1, 30), cold=st.floats(-40, -8), h=st.floats(4, 60))
@settings(max_examples=25, deadline=None)
def test_what_freezing_took_thawing_gives_back(
    mousse: Thermal, insert: Thermal, start: float, cold: float, h: float
) -> None:
    down, up = cycle(mousse, insert, start, cold, h)
    assert down.residual <= 1e-10
    assert up.residual <= 1e-10
    # At rest what is left of the deferred correction still rings by microkelvins.
    assert up.heat[-1] == pytest.approx(-down.heat[-1], rel=1e-5)
    # Five cells across read the core's bowl only roughly: a twentieth of all.
    swing = 0.05 * (start - cold)
    assert cold - swing <= down.core.min()
    assert down.warmest.max() <= start + swing
    assert down.ice[-1] > 0
    assert up.ice[-1] == 0
    assert up.margin[-1] > 0


@given(
    h=st.floats(5, 40),
    more=st.floats(1.1, 2),
    at=st.floats(-19, 10),
    air=st.floats(-40, -25),
)
@settings(max_examples=15, deadline=None)
def test_more_air_freezes_sooner(
    mousse: Thermal, h: float, more: float, at: float, air: float
) -> None:
    mesh = mesh_of([sphere(0.04)], cell=0.006)

    def hours(film: float) -> float:
        done = run(
            mesh,
            [mousse],
            [at],
            air,
            even_film(film),
            until=1e6,
            done=lambda reading: reading.warmest < -20,
        )
        passed = passing(done.seconds, done.warmest, -20)
        assert passed is not None
        return passed

    assert hours(h * more) < hours(h)
