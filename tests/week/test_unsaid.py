from pathlib import Path

from demould.week.unsaid import unsaid_of
from tests.demo_folder import demo_folder
from tests.week.demo_week import demo_with


def test_nothing_is_unsaid_in_the_demo() -> None:
    assert unsaid_of(demo_folder()) == ()


def test_salt_without_an_amount_is_told_with_its_question(tmp_path: Path) -> None:
    folder = demo_with(
        tmp_path,
        ("desserts/river-pebble.yaml", "    8 g    black cocoa", "    black cocoa"),
    )
    (one,) = unsaid_of(folder)
    assert str(one.says) == "River Pebble, Stone dip: black cocoa has no amount"
    assert str(one.asks) == "how many grams of black cocoa?"
