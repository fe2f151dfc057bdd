"""Every key of a cold case is read where it belongs, and no other key passes silently."""

from collections.abc import Mapping
from typing import Any

import pytest

from demould.cold.case.answer import answer
from demould.cold.case.read import read_case

M: Mapping[str, object] = {
    "water": 0.5, "carb": 0.2, "carb_kg_per_mol": 0.3, "protein": 0.025, "fat": 0.26,
    "fibre": 0.01, "ash": 0.005, "ash_kg_per_mol": 0.06, "air_fraction": 0.25,
}  # fmt: skip
# One case with every key that there is.
FULL: Mapping[str, Any] = {
    "schema": "demould-cold-case/1",
    "id": "full",
    "model": "default",
    "shape": {"kind": "cylinder", "diameter_mm": 60, "height_mm": 40},
    "insert": {"kind": "sphere", "diameter_mm": 20, "bottom_mm": 10},
    "materials": {"body": M, "insert": "insert"},
    "wall": {"thickness_mm": 1.5, "k": 0.2, "density": 1150, "cp": 1300},
    "open": ["top"],
    "start_c": {"body": 6, "insert": -18},
    "air": [[0, -30], [600, -28]],
    "h": {"bottom": 15, "other": 20},
    "humidity": {"relative": 0.8, "h_convective": 2.5},
    "ask": {
        "core_c": [-10], "warmest_c": [-10], "heat_j_at_s": [600], "curve_every_s": 300,
        "until_s": 900,
    },
    "accuracy": {"cell_mm": 4, "step_s": 60},
}  # fmt: skip
SHAPES: Mapping[str, Mapping[str, Any]] = {
    "sphere": {"kind": "sphere", "diameter_mm": 56},
    "half_sphere": {"kind": "half_sphere", "diameter_mm": 70},
    "dome": {"kind": "dome", "radius_mm": 30, "straight_mm": 15},
    "cylinder": {"kind": "cylinder", "diameter_mm": 60, "height_mm": 40},
    "slab": {"kind": "slab", "thickness_mm": 30},
    "log": {"kind": "log", "profile_mm": [[-30, 0], [30, 0], [30, 40], [-30, 40]]},
    "turned": {"kind": "turned", "profile_mm": [[0, 0], [30, 0], [25, 30], [0, 35]]},
}
SMALL: Mapping[str, Mapping[str, Any]] = {
    "sphere": {"kind": "sphere", "diameter_mm": 20, "bottom_mm": 8},
    "half_sphere": {"kind": "half_sphere", "diameter_mm": 24, "bottom_mm": 8},
    "dome": {"kind": "dome", "radius_mm": 9, "straight_mm": 4, "bottom_mm": 8},
    "cylinder": {"kind": "cylinder", "diameter_mm": 20, "height_mm": 12, "bottom_mm": 8},
    "slab": {"kind": "slab", "thickness_mm": 10, "bottom_mm": 8},
    "log": {"kind": "log", "profile_mm": [[-9, 0], [9, 0], [9, 12], [-9, 12]], "bottom_mm": 8},
    "turned": {"kind": "turned", "profile_mm": [[0, 0], [10, 0], [8, 12], [0, 14]], "bottom_mm": 8},
}  # fmt: skip
OBJECTS = (
    "", "shape", "insert", "materials", "materials.body", "wall", "start_c", "h",
    "humidity", "ask", "accuracy",
)  # fmt: skip


def changed(
    place: str, key: str, value: object, *, gone: bool = False
) -> dict[str, Any]:
    """A copy of the full case with one key put in, or taken out, at a place."""

    def copy(thing: Any) -> Any:
        return (
            {k: copy(v) for k, v in thing.items()}
            if isinstance(thing, Mapping)
            else thing
        )

    case = copy(FULL)
    inner = case
    for step in place.split(".") if place else ():
        inner = inner[step]
    if gone:
        del inner[key]
    else:
        inner[key] = value
    return dict(case)


def test_every_key_there_is_is_read() -> None:
    case, faults = read_case(FULL)
    assert faults == []
    assert case is not None
    assert (case.id, case.model) == ("full", "default")
    assert list(case.start_c) == [6, -18]
    assert not isinstance(case.air, float)
    assert [list(one) for one in case.air] == [[0, -30], [600, -28]]
    film = case.film
    assert (film.bottom, film.top, film.other) == (15, 20, 20)
    assert case.damp is not None
    assert (case.damp.relative, case.damp.h_convective) == (0.8, 2.5)
    assert case.wall is not None
    assert (case.wall.thickness, case.wall.conductivity) == (0.0015, 0.2)
    assert (case.wall.density, case.wall.heat_capacity) == (1150, 1300)
    assert case.open_faces == ("top",)
    assert (case.cell, case.step) == (0.004, 60)
    assert (case.ask.core_c, case.ask.warmest_c) == ((-10,), (-10,))
    assert (case.ask.heat_at, case.ask.curve_every, case.ask.until) == (
        (600,),
        300,
        900,
    )


@pytest.mark.parametrize("place", OBJECTS)
def test_a_key_nobody_knows_is_refused_by_its_name(place: str) -> None:
    case, faults = read_case(changed(place, "wrongly_spelt", 1))
    assert case is None
    (fault,) = faults
    name = f"{place}.wrongly_spelt" if place else "wrongly_spelt"
    assert fault.startswith(f"{name}: this key is not known (")


@pytest.mark.parametrize("kind", SHAPES)
def test_a_size_of_another_kind_is_refused_by_its_name(kind: str) -> None:
    other = "thickness_mm" if kind != "slab" else "diameter_mm"
    case, faults = read_case(
        {**FULL, "insert": None, "open": [], "shape": {**SHAPES[kind], other: 5}}
    )
    assert case is None
    assert faults[0].startswith(f"shape.{other}: this key is not known (kind, ")


# What may be left out, with what is taken then.
@pytest.mark.parametrize(
    ("place", "key"),
    [
        ("", "id"), ("", "insert"), ("", "wall"), ("", "open"), ("", "humidity"),
        ("", "ask"), ("", "accuracy"), ("h", "bottom"), ("ask", "core_c"),
        ("ask", "warmest_c"), ("ask", "heat_j_at_s"), ("ask", "curve_every_s"),
        ("ask", "until_s"), ("accuracy", "cell_mm"), ("accuracy", "step_s"),
        ("materials.body", "air_fraction"), ("materials.body", "ash_kg_per_mol"),
    ],
)  # fmt: skip
def test_what_may_be_left_out(place: str, key: str) -> None:
    assert read_case(changed(place, key, None, gone=True))[1] == []


@pytest.mark.parametrize(
    ("place", "key"),
    [
        ("", "schema"), ("", "model"), ("", "shape"), ("", "materials"), ("", "start_c"),
        ("", "air"), ("", "h"), ("shape", "kind"), ("shape", "height_mm"),
        ("insert", "bottom_mm"), ("materials", "body"), ("materials", "insert"),
        ("materials.body", "water"), ("materials.body", "carb_kg_per_mol"),
        ("wall", "thickness_mm"), ("wall", "k"), ("wall", "density"), ("wall", "cp"),
        ("start_c", "body"), ("start_c", "insert"), ("h", "other"),
        ("humidity", "relative"), ("humidity", "h_convective"),
    ],
)  # fmt: skip
def test_what_must_be_there_is_named_where_it_is_not(place: str, key: str) -> None:
    case, faults = read_case(changed(place, key, None, gone=True))
    assert case is None
    name = f"{place}.{key}" if place else key
    assert any(fault.startswith(f"{name}: this key is missing") for fault in faults)


@pytest.mark.parametrize("kind", SHAPES)
def test_every_kind_is_answered_alone_and_with_an_insert_of_its_way(kind: str) -> None:
    for insert in (None, SMALL[kind]):
        told, faults = answer(
            {
                **FULL,
                "shape": SHAPES[kind],
                "insert": insert,
                "open": [],
                "wall": None,
                "humidity": None,
                "start_c": 6,
                "accuracy": "default",
                "ask": {"core_c": [0, -10], "heat_j_at_s": [600], "until_s": 20000},
            }
        )
        assert faults == []
        assert told is not None
        times = [row["s"] for row in told["core"]]  # type: ignore[attr-defined]  # rows of the answer
        assert all(at is not None and at >= 0 for at in times)
        assert float(str(told["energy_residual"])) <= 1e-10
        assert float(str(told["volume_ml"])) > 0


@pytest.mark.parametrize("kind", [one for one in SMALL if one not in ("slab", "log")])
def test_any_turned_kind_may_lie_in_any_other(kind: str) -> None:
    for body in ("sphere", "half_sphere", "dome", "cylinder", "turned"):
        assert (
            read_case(
                {**FULL, "shape": SHAPES[body], "open": [], "insert": SMALL[kind]}
            )[1]
            == []
        )


# One sentence each, or an answer: what cannot be, and what does not come about.
@pytest.mark.parametrize(
    ("place", "key", "value", "fault"),
    [
        ("", "h", 0, "h: 0 is out of bounds; it must be more than 0"),
        ("h", "bottom", -1, "h.bottom: -1 is out of bounds; it must be more than 0"),
        ("wall", "thickness_mm", 0, "wall.thickness_mm: 0 is out of bounds; it must be more than 0 mm and at most 100 mm"),
        ("shape", "height_mm", 0, "shape.height_mm: 0 is out of bounds; it must be more than 0 mm and at most 10000 mm"),
        ("insert", "bottom_mm", 35, "insert.bottom_mm: 35 puts the insert's outline outside the piece; it must lie inside or touch, so raise or lower it or make it smaller"),
        ("humidity", "relative", 80, "humidity.relative: 80 is out of bounds; it must be at least 0 and at most 1"),
        ("", "air", [[60, -20]], "air: the list must begin at 0 seconds and go forward"),
        ("", "air", [[0, -20], [0, -21]], "air: the list must begin at 0 seconds and go forward"),
        ("materials.body", "water", 0.9, "materials.body: the mass fractions sum to 1.4; they must sum to 1 within 0.005"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_one_sentence(
    place: str, key: str, value: object, fault: str
) -> None:
    assert read_case(changed(place, key, value)) == (None, [fault])


@pytest.mark.parametrize(
    ("air", "target"), [(-20, -25), (5, -10), (-18, -18)]
)  # fmt: skip
def test_a_target_the_air_never_gives_is_an_answer(air: float, target: float) -> None:
    told, faults = answer(
        {
            **FULL, "air": air, "humidity": None, "start_c": 6,
            "ask": {"core_c": [target], "until_s": 3000},
        }
    )  # fmt: skip
    assert faults == []
    assert told is not None
    assert told["core"] == [{"c": target, "s": None, "why": "not in this air"}]


def test_what_has_no_water_is_answered_without_ice() -> None:
    dry = {"water": 0, "carb": 0.4, "carb_kg_per_mol": 0.342, "fat": 0.6}
    told, faults = answer(
        {
            **FULL, "materials": {"body": dry}, "insert": None, "humidity": None,
            "start_c": 6, "accuracy": "default", "ask": {"core_c": [-10], "until_s": 20000},
        }
    )  # fmt: skip
    assert faults == []
    assert told is not None
    assert told["freezing_point_c"] == {"body": None}
    assert told["core"][0]["s"] is not None  # type: ignore[index]  # rows of the answer
