import math
from collections.abc import Mapping
from itertools import count
from typing import Any

import pytest

from demould.cold.case.answer import answer, warm
from tests.cold.cases import P1, P2, SILICONE, THAW

Material = dict[str, float]
COARSE = {"cell_mm": 6, "step_s": 60}


def answered(case: Mapping[str, object], **changed: object) -> dict[str, Any]:
    found, faults = answer({**case, **changed})
    assert faults == []
    assert found is not None
    return found


def seconds(rows: list[dict[str, Any]]) -> list[float]:
    return [row["s"] for row in rows]


# A 48 mm ball with a 24 mm centre, ideal model, converged in one dimension to 0.1 % by
# an independent code: seconds at which the core passes the targets, and heat.
@pytest.mark.parametrize(
    ("case", "times", "heat"),
    [
        (P1, (1214, 1766, 5723, 7366, 9419), 10606.6),
        (P2, (917, 1308.5, 2911, 3200, 3531), 11387.2),
    ],
)
def test_two_layered_balls_freeze_as_the_converged_cases(
    case: Mapping[str, object], times: tuple[float, ...], heat: float
) -> None:
    found = answered(case)
    assert found["schema"] == "demould-cold-answer/1"
    assert found["id"] == case["id"]
    assert seconds(found["core"]) == pytest.approx(times, rel=0.01)
    assert found["heat_j"][0]["j"] == pytest.approx(heat, rel=0.002)
    assert found["volume_ml"] == pytest.approx(math.pi / 6 * 4.8**3, rel=1e-9)
    # Freezing points of the two materials, printed to four decimals.
    assert found["freezing_point_c"] == pytest.approx(
        {"body": -2.7792, "insert": -4.3383}, abs=6e-5
    )
    assert found["energy_residual"] <= 1e-10
    assert found["sweat"] is None


def test_a_ball_thaws_and_sweats_as_the_computed_case() -> None:
    # Independent computation, bare 56 mm ball with a 32 mm centre from -18 °C in 4 °C
    # air of 70 %: core times, when the skin passes the frost point, the most water.
    # The film's density and heat are ours (half way), worth 1 % of the water.
    found = answered(THAW)
    assert seconds(found["core"]) == pytest.approx(
        (3672, 15096, 24050, 26055, 30832), rel=0.01
    )
    assert found["sweat"]["ends_s"] == pytest.approx(23620, rel=0.01)
    assert found["sweat"]["peak_g_m2"] == pytest.approx(57, rel=0.015)
    assert found["sweat"]["peak_g"] == pytest.approx(0.56, rel=0.015)
    assert found["energy_residual"] <= 1e-10


def test_dry_air_thaws_later() -> None:
    # By heat: what settled until the core is at -2 °C brought 2834 J/g of all that came
    # in. Without it the rest takes longer in that share, less what a then colder skin
    # draws more from the air: with h 6 and half the gap to the air left, under half.
    ask = {"core_c": [-2], "heat_j_at_s": [24050], "until_s": 40000}
    damp, dry = (
        answered(THAW, ask=ask, humidity=humidity)
        for humidity in (THAW["humidity"], None)
    )
    came = -damp["heat_j"][0]["j"]
    longer = came / (came - damp["sweat"]["peak_g"] * 2834) - 1
    found = dry["core"][0]["s"] / damp["core"][0]["s"] - 1
    assert longer / 2 < found < longer


def test_water_that_settled_dries_off_and_no_more_than_settled() -> None:
    ask = {"heat_j_at_s": [400000], "until_s": 400000}
    wet, dry = (
        answered(THAW, ask=ask, humidity=humidity)
        for humidity in ({"relative": 0.7, "h_convective": 2.5}, None)
    )
    # Both end as warm as the air, so both took up the same, whatever settled between. A
    # skin still drying, or drying for ever, would stay 1 K colder: 200 J less; the
    # hundredth of a joule is 0.05 mK.
    assert wet["sweat"]["peak_g"] > 0.5
    assert wet["heat_j"][0]["j"] == pytest.approx(dry["heat_j"][0]["j"], abs=0.01)


def test_skin_over_the_dew_point_never_sweats() -> None:
    found = answered(THAW, start_c=10, ask={"until_s": 3000}, accuracy=COARSE)
    assert found["sweat"] == {"ends_s": 0.0, "peak_g_m2": 0.0, "peak_g": 0.0}


def test_air_without_water_takes_none_and_gives_none() -> None:
    none = {"relative": 0, "h_convective": 2.5}
    found = answered(THAW, humidity=none, ask={"until_s": 3000}, accuracy=COARSE)
    assert found["sweat"] == {"ends_s": 0.0, "peak_g_m2": 0.0, "peak_g": 0.0}


def log(points: list[list[float]], bottom: float | None = None) -> dict[str, object]:
    shape: dict[str, object] = {"kind": "log", "profile_mm": points}
    return shape if bottom is None else shape | {"bottom_mm": bottom}


def rectangle(wide: float, high: float, left: float = 0) -> list[list[float]]:
    return [[left, 0], [left + wide, 0], [left + wide, high], [left, high]]


def test_a_wide_log_is_a_slab() -> None:
    # Ten times as wide as high: the middle does not feel the far sides. Cells of 1 mm in
    # both, or each would have another error of its mesh.
    ask = {"core_c": [0, -5, -10]}
    even = {"cell_mm": 1}
    slab = answered(
        P2,
        ask=ask,
        accuracy=even,
        shape={"kind": "slab", "thickness_mm": 20},
        insert={"kind": "slab", "thickness_mm": 8, "bottom_mm": 6},
    )
    wide = answered(
        P2,
        ask=ask,
        accuracy=even,
        shape=log(rectangle(200, 20)),
        insert=log(rectangle(200, 8), 6),
    )
    assert seconds(wide["core"]) == pytest.approx(seconds(slab["core"]), rel=0.005)
    assert slab["volume_ml"] == pytest.approx(20_000)
    assert wide["volume_ml"] == pytest.approx(4_000)


def test_a_round_log_is_a_tall_cylinder() -> None:
    round_ = [
        [20 * math.cos(n * math.pi / 48), 20 + 20 * math.sin(n * math.pi / 48)]
        for n in range(96)
    ]
    ask = {"core_c": [0, -5, -10, -15]}
    log_ = answered(P2, ask=ask, shape=log(round_), insert=None)
    tall = answered(
        P2,
        ask=ask,
        shape={"kind": "cylinder", "diameter_mm": 40, "height_mm": 400},
        insert=None,
        accuracy={"cell_mm": 1.6, "step_s": 20},
    )
    assert seconds(log_["core"]) == pytest.approx(seconds(tall["core"]), rel=0.005)


def test_half_a_mirrored_section_gives_the_whole_of_it() -> None:
    # The same log, and one a hair lopsided, which is reckoned whole.
    even = rectangle(60, 40)
    lopsided: list[list[float]] = [[0, 0], [60, 0], [60, 40], [0.01, 40]]
    one, two = (
        answered(P2, shape=log(points), insert=log(rectangle(20, 10, 20), 15))
        for points in (even, lopsided)
    )
    assert seconds(two["core"]) == pytest.approx(seconds(one["core"]), rel=0.005)
    assert two["heat_j"][0]["j"] == pytest.approx(one["heat_j"][0]["j"], rel=0.002)
    assert two["cells"] > 0.9 * one["cells"]


def test_an_open_face_and_a_cold_floor_are_heard() -> None:
    half = {"kind": "half_sphere", "diameter_mm": 70}
    inner = {"kind": "cylinder", "diameter_mm": 24, "height_mm": 10, "bottom_mm": 5}
    ask = {"core_c": [-10], "until_s": 90000}
    thick = {**SILICONE, "thickness_mm": 8}
    closed, open_, floor = (
        answered(P1, shape=half, insert=inner, wall=thick, ask=ask, **more)
        for more in ({}, {"open": ["bottom"]}, {"h": {"bottom": 60, "other": 12}})
    )
    assert open_["core"][0]["s"] < closed["core"][0]["s"]
    assert floor["core"][0]["s"] < closed["core"][0]["s"]


def test_a_target_beyond_the_air_is_not_in_this_air() -> None:
    found = answered(P1, ask={"core_c": [-5, -25]}, accuracy=COARSE)
    assert found["core"][0]["s"] > 0
    assert found["core"][1] == {"c": -25.0, "s": None, "why": "not in this air"}
    warmed = answered(THAW, ask={"core_c": [5], "until_s": 9000}, accuracy=COARSE)
    assert warmed["core"][0] == {"c": 5.0, "s": None, "why": "not in this air"}


def test_a_target_not_reached_in_time_has_no_time() -> None:
    found = answered(P1, ask={"core_c": [-15], "until_s": 600}, accuracy=COARSE)
    assert found["core"] == [{"c": -15.0, "s": None}]


def test_a_frozen_centre_in_a_warm_body() -> None:
    found = answered(
        P1,
        start_c={"body": 20, "insert": -18},
        ask={"core_c": [-18, -10], "warmest_c": [-10], "until_s": 90000},
    )
    assert found["core"][0]["s"] == pytest.approx(0, abs=5)
    # It warms through -10 °C at once and is the last to come back to it.
    assert 0 < found["core"][1]["s"] < 600
    assert found["warmest"][0]["s"] > 4000


def test_a_curve_and_a_change_of_air() -> None:
    found = answered(
        P2,
        air=[[0, -30], [1800, 4]],
        ask={"curve_every_s": 900, "until_s": 3600, "heat_j_at_s": [0, 1800, 3600]},
    )
    rows = found["curve"]
    assert [row[0] for row in rows] == [0, 900, 1800, 2700, 3600]
    assert rows[0][1:] == pytest.approx([6, 6])
    assert rows[2][2] < rows[4][2]
    nothing, cooled, warmed = (row["j"] for row in found["heat_j"])
    assert nothing == 0
    assert cooled > warmed > 0


def test_its_own_model_has_ice_enough_and_a_lower_freezing_point() -> None:
    # Beyond an ideal solution: lower freezing point, and effective medium lies under
    # parallel, so the core is later; both by parts in a hundred to in ten.
    ideal, own = (answered(P1, model=model) for model in ("reference-a", "default"))
    for body in ("body", "insert"):
        assert own["freezing_point_c"][body] < ideal["freezing_point_c"][body]
    assert 1.0 < own["core"][3]["s"] / ideal["core"][3]["s"] < 1.2


def test_what_has_no_water_or_no_ice_only_cools() -> None:
    # Schroeder's law by hand: 16.65 mol of water in 31.87, heat of fusion 6010 J/mol,
    # 1/T = 1/273.15 - 8.314 / 6010 ln 0.5225: 219 K, of which constants move 0.5 K.
    oil: Material = {"water": 0, "fat": 1}
    liquor: Material = {"water": 0.3, "carb": 0.7, "carb_kg_per_mol": 0.046}
    for material, freezing in ((oil, None), (liquor, pytest.approx(-53.8, abs=0.5))):
        found = answered(
            P2,
            insert=None,
            materials={"body": material},
            ask={"core_c": [-15], "until_s": 90000},
        )
        assert found["freezing_point_c"]["body"] == freezing
        assert 0 < found["core"][0]["s"] < 3531


def test_a_forced_mesh_and_step_are_those_told() -> None:
    found = answered(P1, accuracy={"cell_mm": 6, "step_s": 70})
    assert found["step_s"] == pytest.approx(70)
    assert found["steps"] == 200
    # Cells are even and at most as large as told. The outline's corners stand a hair
    # outside the ball of its volume, so 48 mm and that hair take nine, not eight.
    assert found["cell_mm"] == pytest.approx(48 / 9, rel=0.002)
    assert answered(P1, accuracy={"step_s": 700})["cells"] > found["cells"]


def test_nothing_asked_runs_to_the_end() -> None:
    found = answered(P1, ask={"until_s": 600}, accuracy=COARSE)
    assert found["steps"] == 10
    assert (found["core"], found["warmest"], found["heat_j"]) == ([], [], [])


def test_the_clock_is_the_callers() -> None:
    ticks = count(1)
    found, _ = answer({**P1, "accuracy": COARSE}, lambda: float(next(ticks)))
    assert found is not None
    assert (found["solve_ms"], found["total_ms"]) == (1000, 3000)


def test_getting_warm_answers_nothing() -> None:
    warm()
    warm()
