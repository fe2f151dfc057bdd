"""Sugar on the card of a kitchen up the mountain."""

from dataclasses import replace

from demould.advice.findings import findings
from demould.advice.height import sugar_up_here
from demould.mise.find import find_in
from demould.mise.kitchen import Kitchen
from tests.demo_folder import demo_folder
from tests.desserts.build import stated

FOLDER = demo_folder()
TERRINE = next(one for one in FOLDER.desserts if one.key == "amber-terrine")


def up(metres: float | None) -> Kitchen:
    height = None if metres is None else stated(metres, "m")
    return replace(FOLDER.kitchen, height=height)


def test_at_1500_m_every_sugar_of_the_terrine_is_cooked_lower() -> None:
    told = [(str(says), str(do)) for says, do in sugar_up_here(TERRINE, up(1500))]
    # Common practice: about 1 °C less for 300 m; 121 becomes 116, 170 becomes 165.
    assert [do.split(" ")[0] for _, do in told] == ["165", "116"]
    assert "water boils at 95 °C at 1500 m" in told[0][0]
    found = findings(TERRINE, up(1500), find_in(FOLDER.larder))
    assert [one.kind for one in found].count("height") == 2


def test_near_the_sea_and_where_nobody_says_it_is_no_news() -> None:
    assert list(sugar_up_here(TERRINE, up(120))) == []
    assert list(sugar_up_here(TERRINE, up(None))) == []


def test_what_is_not_sugar_or_not_hot_is_left_alone() -> None:
    pebble = next(one for one in FOLDER.desserts if one.key == "river-pebble")
    assert list(sugar_up_here(pebble, up(1500))) == []
