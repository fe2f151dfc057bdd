from collections.abc import Mapping

import pytest

from demould.cold.case.read import read_case
from tests.cold.cases import P1, SILICONE

SHAPE = {"kind": "sphere", "diameter_mm": 48}


def faults(**changed: object) -> list[str]:
    case, found = read_case({**P1, **changed})
    assert (case is None) == bool(found)
    return found


def test_a_sound_case_has_no_faults() -> None:
    assert faults() == []


# Each fault alone, with its whole sentence: what was found, what is right, what to do.
ALONE: dict[str, tuple[Mapping[str, object], str]] = {
    "other schema": (
        {"schema": "demould-cold-case/2"},
        "schema: 'demould-cold-case/2' is not known; write 'demould-cold-case/1'",
    ),
    "misspelt": (
        {"modell": 1},
        "modell: this key is not known (schema, id, model, shape, insert, materials,"
        " wall, open, start_c, air, h, humidity, ask, accuracy are); perhaps 'model'"
        " is meant",
    ),
    "far from any key": (
        {"accuracy": {"qq": 1}},
        "accuracy.qq: this key is not known (cell_mm, step_s are); leave it out",
    ),
    "model": (
        {"model": 7},
        "model: 7 is not known; write 'reference-a' or 'default'",
    ),
    "id": ({"id": True}, "id: true is not known; write a text"),
    "kind": (
        {"shape": {"kind": "cube"}},
        "shape.kind: 'cube' is not known; write 'sphere' or 'half_sphere' or 'dome' or"
        " 'cylinder' or 'slab' or 'log' or 'turned'",
    ),
    "no shape": ({"shape": None}, "shape: null is no object; write one in braces"),
    "no size": (
        {"shape": {"kind": "sphere"}},
        "shape.diameter_mm: this key is missing; write a number, more than 0 mm and at"
        " most 10000 mm",
    ),
    "zero size": (
        {"shape": {"kind": "sphere", "diameter_mm": 0}},
        "shape.diameter_mm: 0 is out of bounds; it must be more than 0 mm and at most"
        " 10000 mm",
    ),
    "size in words": (
        {"shape": {"kind": "sphere", "diameter_mm": "48"}},
        "shape.diameter_mm: '48' is not a number; write one, more than 0 mm and at"
        " most 10000 mm",
    ),
    "size without end": (
        {"shape": {"kind": "sphere", "diameter_mm": float("inf")}},
        "shape.diameter_mm: inf is not a number to reckon with; write a finite one",
    ),
    "profile of a word": (
        {"shape": {"kind": "turned", "profile_mm": "round"}, "insert": None},
        "shape.profile_mm: 'round' is none; write a list of [r, z]",
    ),
    "profile missing": (
        {"shape": {"kind": "log"}, "insert": None},
        "shape.profile_mm: this key is missing; write a list of [x, y]",
    ),
    "profile with a hole": (
        {
            "shape": {"kind": "turned", "profile_mm": [[0, 0], [9], [0, 9]]},
            "insert": None,
        },
        "shape.profile_mm[1]: [9] is no pair; write a list of [r, z]",
    ),
    "profile off the axis": (
        {
            "shape": {"kind": "turned", "profile_mm": [[1, 0], [9, 0], [0, 9]]},
            "insert": None,
        },
        "shape.profile_mm: a profile must start and end on the axis, at radius 0; write"
        " [r, z] in mm, in order",
    ),
    "profile upside down": (
        {
            "shape": {"kind": "turned", "profile_mm": [[0, 9], [9, 9], [0, 0]]},
            "insert": None,
        },
        "shape.profile_mm: a profile must run from the bottom of the axis to the top;"
        " write [r, z] in mm, in order",
    ),
    "a bow tie": (
        {
            "shape": {"kind": "log", "profile_mm": [[0, 0], [9, 9], [9, 0], [0, 8]]},
            "insert": None,
        },
        "shape.profile_mm: a section must enclose something, its sides never crossing;"
        " write [x, y] in mm, in order",
    ),
    "insert outside": (
        {"insert": {"kind": "sphere", "diameter_mm": 24, "bottom_mm": 30}},
        "insert.bottom_mm: 30 puts the insert's outline outside the piece; it must lie"
        " inside or touch, so raise or lower it or make it smaller",
    ),
    "insert too big": (
        {"insert": {"kind": "sphere", "diameter_mm": 60, "bottom_mm": 0}},
        "insert.bottom_mm: 0 puts the insert's outline outside the piece; it must lie"
        " inside or touch, so raise or lower it or make it smaller",
    ),
    "insert of another way": (
        {"insert": {"kind": "slab", "thickness_mm": 5, "bottom_mm": 10}},
        "insert.kind: a slab does not lie in a sphere; in a log lies a log, in a slab a"
        " slab, and all other shapes in one another",
    ),
    "insert of a word": (
        {"insert": "pear"},
        "insert: 'pear' is no object; write one in braces",
    ),
    "unknown material": (
        {"materials": {"body": "moose", "insert": "insert"}},
        "materials.body: no material is called 'moose'; write insert or mousse, or its"
        " mass fractions in braces",
    ),
    "no material": (
        {"materials": {"body": "mousse"}},
        "materials.insert: this key is missing; write an object in braces",
    ),
    "no materials": (
        {"materials": 5},
        "materials: 5 is no object; write one in braces",
    ),
    "fractions over one": (
        {"materials": {"body": {"water": 0.9, "fat": 0.3}, "insert": "insert"}},
        "materials.body: the mass fractions sum to 1.2; they must sum to 1 within 0.005",
    ),
    "carb without a mass": (
        {"materials": {"body": {"water": 0.7, "carb": 0.3}, "insert": "insert"}},
        "materials.body.carb_kg_per_mol: this key is missing; write a number, more than"
        " 0.01 kg/mol and at most 1000 kg/mol",
    ),
    "thin air wall": (
        {"wall": {**SILICONE, "thickness_mm": 0}},
        "wall.thickness_mm: 0 is out of bounds; it must be more than 0 mm and at most"
        " 100 mm",
    ),
    "wall of a word": (
        {"wall": "steel"},
        "wall: 'steel' is no object; write one in braces",
    ),
    "open of a word": (
        {"open": "top"},
        'open: \'top\' is no list; write [], or "bottom", "top"',
    ),
    "open side": (
        {"open": ["side"]},
        "open[0]: 'side' is no face; write bottom or top",
    ),
    "open round": (
        {"open": ["top"]},
        "open: this shape has no flat top to leave open; leave it out",
    ),
    "start of parts": (
        {"start_c": {"body": 6}},
        "start_c.insert: this key is missing; write a number, at least -60 °C and at"
        " most 60 °C",
    ),
    "air backwards": (
        {"air": [[0, -20], [600, -18], [300, 4]]},
        "air: the list must begin at 0 seconds and go forward",
    ),
    "air from later": (
        {"air": [[5, -20]]},
        "air: the list must begin at 0 seconds and go forward",
    ),
    "air too hot": (
        {"air": [[0, 120]]},
        "air[0][1]: 120 is out of bounds; it must be at least -60 °C and at most 60 °C",
    ),
    "no film": ({"h": 0}, "h: 0 is out of bounds; it must be more than 0"),
    "film below none": (
        {"h": {"bottom": -1, "other": 8}},
        "h.bottom: -1 is out of bounds; it must be more than 0",
    ),
    "film without the rest": (
        {"h": {"bottom": 15}},
        "h.other: this key is missing; write a number, more than 0",
    ),
    "percent": (
        {"humidity": {"relative": 70, "h_convective": 2.5}},
        "humidity.relative: 70 is out of bounds; it must be at least 0 and at most 1",
    ),
    "humidity of a number": (
        {"humidity": 0.7},
        "humidity: 0.7 is no object; write one in braces",
    ),
    "ask of a list": ({"ask": []}, "ask: [] is no object; write one in braces"),
    "targets of a number": (
        {"ask": {"core_c": -10}},
        "ask.core_c: -10 is no list; write numbers in brackets",
    ),
    "target of a word": (
        {"ask": {"core_c": [0, "cold"]}},
        "ask.core_c[1]: 'cold' is not a number; write one",
    ),
    "heat after the end": (
        {"ask": {"heat_j_at_s": [9000], "until_s": 600}},
        "ask.heat_j_at_s: 9000 s is after until_s, 600 s; ask earlier or go on longer",
    ),
    "too many rows": (
        {"ask": {"curve_every_s": 0.1, "until_s": 90000}},
        "ask.curve_every_s: 0.1 s makes over 100000 rows; ask for fewer",
    ),
    "accuracy of a word": (
        {"accuracy": "best"},
        "accuracy: 'best' is none; write 'default', or cell_mm and step_s in braces",
    ),
    "cell of nothing": (
        {"accuracy": {"cell_mm": 0}},
        "accuracy.cell_mm: 0 is out of bounds; it must be at least 0.02 mm",
    ),
}


@pytest.mark.parametrize("name", ALONE)
def test_a_fault_is_said_in_one_sentence_with_its_place(name: str) -> None:
    changed, sentence = ALONE[name]
    assert faults(**changed) == [sentence]


def test_all_faults_are_told_at_once() -> None:
    found = faults(
        h=-2,
        modle="default",
        shape={"kind": "dome", "radius_mm": -1, "straight_mm": -3},
        air="cold",
        start_c=None,
    )
    places = [fault.partition(": ")[0] for fault in found]
    assert places == [
        "modle",
        "shape.radius_mm",
        "shape.straight_mm",
        "start_c",
        "air",
        "h",
    ]


def test_what_is_missing_is_named() -> None:
    _, found = read_case({})
    assert [fault.partition(": ")[0] for fault in found] == [
        "schema",
        "model",
        "shape",
        "materials",
        "start_c",
        "air",
        "h",
    ]


def test_long_values_are_cut_short() -> None:
    (fault,) = faults(h="x" * 100)
    assert fault == f"h: 'x{'x' * 35}... is not a number; write one, more than 0"


def test_an_insert_may_touch_the_skin_and_stand_on_the_floor() -> None:
    assert faults(insert={"kind": "sphere", "diameter_mm": 24, "bottom_mm": 0}) == []
    assert faults(insert={"kind": "sphere", "diameter_mm": 24, "bottom_mm": 24}) == []


def test_a_point_written_twice_running_is_one() -> None:
    points = [[0, 0], [30, 0], [30, 0], [30, 20], [0, 20]]
    drawn = {"kind": "turned", "profile_mm": points}
    assert faults(shape=drawn, insert=None, open=["bottom", "top"]) == []
