"""A formula as machines write it: answered in full, or every fault at once."""

import json
from typing import Any

import pytest

from demould.larder.read import ingredient, ingredients
from demould.matter.formula_answer import answer
from demould.matter.formula_case import ASKS, PARTS

ALL = {name: True for name in ASKS if name != "ice"} | {"ice": {"at_c": [-5, -10]}}
SUGAR_30 = {"water": 100 / 1.3, "sucrose": 30 / 1.3}


def case(**keys: object) -> dict[str, object]:
    return {"schema": "demould-formula-case/1", "id": "x", "ask": ALL} | keys


def told(**keys: object) -> dict[str, Any]:
    found, faults = answer(case(**keys))
    assert faults == []
    assert found is not None
    json.dumps(found, allow_nan=False)
    return found


def faults_of(raw: dict[str, object]) -> list[str]:
    found, faults = answer(raw)
    assert found is None
    return faults


@pytest.mark.parametrize("name", list(ingredients()))
def test_every_row_of_the_table_is_answered_in_full(name: str) -> None:
    found = told(lines=[{"g": 250, "what": name}])
    assert list(found) == ["schema", "id", *ASKS]
    made_of = ingredient(name).per_100g
    inside = found["composition"]
    assert inside["mass_g"] == pytest.approx(250)
    assert inside["sugars"] == pytest.approx(made_of.sugars)
    for key, part in PARTS.items():
        if key != "sodium_mg":
            assert inside[key] == pytest.approx(getattr(made_of, part)), key


def test_thirty_grams_of_sugar_in_a_hundred_of_water() -> None:
    # CRC Handbook, sucrose 23.1 %: between 1.46 (20 %) and 2.64 (30 %) K (from memory);
    # common practice says about 1.8. Energy 4 kcal and 17 kJ a gram of carbohydrate:
    # Regulation (EU) 1169/2011, Annex XIV.
    found = told(lines=[{"g": 130, "what": SUGAR_30}])
    assert found["freezing_point"]["c"] == pytest.approx(-1.8, abs=0.08)
    assert found["energy_eu"]["kcal"] == pytest.approx(4 * 30 / 1.3)
    assert found["energy_eu"]["printed"] == {"kj": 392, "kcal": 92}
    assert found["sweetness"] == pytest.approx(
        {"sweetness": 30 / 1.3, "antifreeze": 30 / 1.3}
    )
    at_5, at_10 = found["ice"]
    assert at_5["share"] == pytest.approx(at_5["g"] / (100 / 1.3))
    assert 0.5 < at_5["share"] < at_10["share"] < 0.9


@pytest.mark.parametrize(
    ("mol", "activity"), [(0.5, 0.9835), (1.0, 0.9669), (2.0, 0.9316)]
)
def test_salt_in_water(mol: float, activity: float) -> None:
    # Water activity of sodium chloride at 25 °C by molality (from memory).
    salt = mol * 58.44
    mix = [{"g": 1000, "what": "water"}, {"g": salt * 0.9999, "what": "salt"}]
    found = told(lines=mix)["water_activity"]
    assert found["aw"] == pytest.approx(activity, abs=0.0025)


def test_a_saturated_brine_is_beyond_the_law() -> None:
    # L. Greenspan, J. Res. NBS 81A (1977) 89: 0.7529 over saturated sodium chloride at
    # 25 °C (from memory). The law would read 0.80: it says nothing instead.
    mix = [{"g": 1000, "what": "water"}, {"g": 359, "what": "salt"}]
    assert "brine" in told(lines=mix)["water_activity"]["null"]


def test_cooked_and_strained() -> None:
    lines = [
        {"g": 330, "what": "milk_whole"},
        {"g": 15, "what": "chicory_roasted"},
        {"g": 100, "what": "sucrose"},
    ]
    strained = [{"what": "chicory_roasted", "g": 15, "keeps": 1.1}]
    mixed = told(lines=lines, strained_g=strained)["composition"]
    assert mixed["mass_g"] == pytest.approx(430 - 16.5)
    cooked = told(lines=lines, strained_g=strained, cooked_to_g=300)["composition"]
    assert cooked["mass_g"] == pytest.approx(300)
    assert cooked["sucrose"] * 300 == pytest.approx(mixed["sucrose"] * 413.5)
    lost = mixed["water"] * 4.135 - cooked["water"] * 3
    assert lost == pytest.approx(113.5)


def test_solids_never_put_in_take_only_liquid() -> None:
    found = told(
        lines=[{"g": 100, "what": "milk_whole"}],
        strained_g=[{"what": "tea_smoked", "g": 10, "keeps": 2}],
    )
    assert found["composition"]["mass_g"] == pytest.approx(80)


def test_gelatin_by_both_laws_after_cooking() -> None:
    lines = [{"g": 10, "what": "gelatin_160"}, {"g": 990, "what": "water"}]
    (dose,) = told(lines=lines, cooked_to_g=500)["setting"]
    assert dose["of_whole"] == pytest.approx(2)
    assert dose["as_200_bloom"]["root"] == pytest.approx(2 * 0.8**0.5)
    assert dose["as_200_bloom"]["ratio"] == pytest.approx(1.6)


def test_carbohydrate_of_unknown_kind_is_said_and_not_guessed() -> None:
    found = told(lines=[{"g": 100, "what": {"water": 60, "carb": 40}}])
    inside = found["composition"]
    assert inside["carb"] == pytest.approx(40)
    assert inside["sugars"] is None
    assert inside["starch"] is None
    assert "carb alone" in inside["null"]
    for name in ("sweetness", "freezing_point", "ice", "water_activity"):
        assert "carb alone" in found[name]["null"]
    assert found["energy_eu"]["kcal"] == pytest.approx(160)
    assert found["density"]["g_ml"] == pytest.approx(1.17, abs=0.02)


def test_without_water_nothing_freezes() -> None:
    found = told(lines=[{"g": 1, "what": "cocoa_butter"}])
    assert found["freezing_point"] == {"null": "it has no water that freezes"}
    assert found["setting"] == []


def test_allergens_of_a_composition_are_unknown() -> None:
    lines = [{"g": 1, "what": "hazelnut_paste"}, {"g": 1, "what": SUGAR_30}]
    found = told(lines=lines)["allergens"]
    assert found["eu"] == ["hazelnut"] or "hazelnut" in " ".join(found["eu"])
    assert found["unknown"] == ["lines[1]"]


def test_only_what_is_asked_is_answered() -> None:
    found, _ = answer(
        case(lines=[{"g": 1, "what": "water"}], ask={"density": True, "ice": False})
    )
    assert found is not None
    assert list(found) == ["schema", "id", "density"]


def test_all_faults_come_at_once_each_with_its_place() -> None:
    raw = case(
        lines=[
            {"g": 0, "what": "creem_35"},
            {"g": "1", "what": {"watter": 1}},
            {"what": 3, "grams": 5},
            4,
        ],
        cooked_to_g=-1,
        strained_g={},
        asks={},
        ask={"ice": True, "density": 1, "colour": True},
    )
    places = [fault.partition(": ")[0] for fault in faults_of(raw)]
    assert places == [
        "asks",
        "lines[0].what",
        "lines[0].g",
        "lines[1].what.watter",
        "lines[1].what",
        "lines[1].g",
        "lines[2].grams",
        "lines[2].what",
        "lines[2].g",
        "lines[3]",
        "strained_g",
        "cooked_to_g",
        "ask.colour",
        "ask.ice",
        "ask.density",
    ]


@pytest.mark.parametrize(
    ("keys", "fault"),
    [
        (
            {"lines": [{"g": 1, "what": "creem_35"}]},
            "lines[0].what: no ingredient has the id 'creem_35';"
            " the nearest are cream_35, cream_us_heavy, cream_us_light_whip",
        ),
        (
            {"lines": []},
            'lines: no line; write at least one {"g": 500, "what": "milk"}',
        ),
        (
            {"lines": [{"g": 1, "what": {"water": 60, "fat": 50}}]},
            "lines[0].what: its parts add up to 110 g in 100 g;"
            " milk_fat, cocoa_butter and sat_fat count within fat",
        ),
        (
            {"lines": [{"g": 1, "what": {"water": 60, "fat": 5, "milk_fat": 6}}]},
            "lines[0].what: milk_fat and cocoa_butter are 6 g of 5 g fat;"
            " they are parts of fat",
        ),
        (
            {"lines": [{"g": 1, "what": {"carb": 9, "sucrose": 2}}]},
            "lines[0].what.carb: 9 g, but its kinds add up to 2 g;"
            " leave carb out, or write it alone",
        ),
        (
            {"lines": [{"g": 100, "what": "sucrose"}], "cooked_to_g": 90},
            "cooked_to_g: 100 g hold 0.02 g water; they cannot be cooked to 90 g",
        ),
        (
            {"lines": [{"g": 100, "what": "water"}], "cooked_to_g": 110},
            "cooked_to_g: 100 g cannot be cooked to 110 g, which is more",
        ),
        (
            {
                "lines": [{"g": 100, "what": "water"}],
                "strained_g": [{"what": "tea_smoked", "g": 50, "keeps": 2}],
            },
            "strained_g: the solids keep 100 g and the mix is 100 g",
        ),
        (
            {
                "lines": [
                    {"g": 100, "what": "water"},
                    {"g": 5, "what": "tea_smoked"},
                ],
                "strained_g": [{"what": "tea_smoked", "g": 6, "keeps": 1}],
            },
            "strained_g[0].g: 6 g are taken out of 5 g put in",
        ),
        (
            {"lines": [{"g": 1, "what": {}}]},
            "lines[0].what: a composition of nothing; write its parts",
        ),
        (
            {"lines": [{"g": 1, "what": "water"}], "ask": {"ice": {"at_c": []}}},
            "ask.ice.at_c: no temperature; write at least one, in °C",
        ),
        ({"lines": "water"}, "lines: 'water' is no list; write objects in brackets"),
    ],
)
def test_a_fault_is_one_clear_sentence(keys: dict[str, object], fault: str) -> None:
    assert fault in faults_of(case(**keys))


def test_the_schema_and_the_questions_must_be_there() -> None:
    faults = faults_of({"lines": [{"g": 1, "what": "water"}]})
    assert faults[0].startswith("schema: this key is missing")
    assert faults[1].startswith("ask: this key is missing; write any of composition")
