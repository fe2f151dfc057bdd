"""What to mind at which step, on the sheets, in the week, on the terminal."""

import pytest

from demould.care.cautions import of_component, of_dessert
from demould.larder.cautions import cautions, cautions_at
from demould.mise.dessert import component_of
from demould.mise.folder import dessert_of
from demould.sheets.care_blocks import careful, minded
from demould.week.caring import caring_of
from tests.demo_folder import demo_folder, demo_makings
from tests.sheets.reading import rows, table_in, under


def test_the_steps_of_the_pebble_by_hand() -> None:
    found = {
        one.caution.name: one.steps
        for one in of_dessert(dessert_of(demo_folder(), "river-pebble"))
    }
    assert "spray" in found["spray"]
    assert "cook" in found["hot sugar"]
    assert "mix" in found["blender"]
    assert "dip" in found["picks"]
    assert "dry ice" not in found


def test_a_component_has_only_its_own() -> None:
    pebble = dessert_of(demo_folder(), "river-pebble")
    centre = of_component(component_of(pebble, "centre"))
    assert [one.caution.name for one in centre] == ["hot sugar"]
    assert of_component(component_of(pebble, "base")) == ()
    (line,) = minded(centre)
    assert str(line).startswith("cook: hot sugar or pulp")


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("over dry ice", "dry ice"),
        ("liquid nitrogen", "dry ice"),
        ("flambé at the table", "torch"),
        ("caramel to 180", "hot sugar"),
        ("into the walk-in", "cold room"),
        ("spray, light", "spray"),
    ],
)
def test_words_that_call_for_care(said: str, name: str) -> None:
    assert name in {one.name for one in cautions_at("step", [said])}


def test_a_word_inside_another_is_not_meant() -> None:
    assert cautions_at("step", ["parboiled", "begun"]) == ()


def test_every_caution_has_something_to_say() -> None:
    assert all(one.says and one.short and one.words for one in cautions())


def test_the_week_has_a_line_a_dessert() -> None:
    blocks = tuple(careful(caring_of(demo_folder(), demo_makings())))
    told = dict(rows(table_in(under(blocks, "careful"))))
    assert "lungs and floor: spray" in told["River Pebble"]
    assert "burns: cook" in told["Meadow Domes"]
