"""Which ingredient sets, and how strong a gelatin is."""

from dataclasses import replace

import pytest

from demould.larder.read import agent_of, agents, bloom_of, ingredient, ingredients


def test_every_gelling_ingredient_of_the_table_is_known() -> None:
    for row in ingredients().values():
        assert (agent_of(row) is not None) is (row.category == "gelling"), row.id


@pytest.mark.parametrize(
    ("name", "agent"),
    [
        ("pectin_nh_use", "pectin NH"),
        ("pectin_lma", "pectin LMA"),
        ("gelatin_fish", "gelatin"),
        ("gellan_ha", "gellan high-acyl"),
        ("potato_starch", "starch"),
    ],
)
def test_agents_by_their_rows(name: str, agent: str) -> None:
    found = agent_of(ingredient(name))
    assert found is agents()[agent]


def test_an_own_entry_is_known_by_the_words_in_its_name() -> None:
    own = replace(ingredient("gelatin_200"), id="our gelatin, gold 220 bloom", names=())
    own = replace(own, name=own.id)
    found = agent_of(own)
    assert found is agents()["gelatin"]
    assert bloom_of(own).value == 220
    unknown = replace(own, id="setting stuff", name="setting stuff")
    assert agent_of(unknown) is None


def test_a_gelatin_without_a_grade_is_the_usual_one_between_its_bounds() -> None:
    own = replace(ingredient("gelatin_200"), id="gelatin", name="gelatin", names=())
    assert (bloom_of(own).low, bloom_of(own).value, bloom_of(own).high) == (
        140,
        200,
        260,
    )
    fish = bloom_of(ingredient("gelatin_fish"))
    assert (fish.low, fish.high) == (200, 240)
