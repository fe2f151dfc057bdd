import re
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
    assert str(one.says) == "River Pebble, Stone dip: how much black cocoa is not said"
    assert str(one.asks) == "how many grams of black cocoa?"


def test_cream_without_an_amount_is_told_with_the_hours_to_freeze(
    tmp_path: Path,
) -> None:
    """Cream is most of the water of the ganache: more of it takes longer."""
    folder = demo_with(
        tmp_path,
        (
            "desserts/river-pebble.yaml",
            "    400 g  cream 35 %, cold",
            "    cream 35 %, cold",
        ),
    )
    (one,) = unsaid_of(folder)
    told = [str(words) for words in one.moves if "freezes" in str(words)]
    assert len(told) == 1
    numbers = [float(word) for word in re.findall(r"[0-9.]+", told[0])]
    *_, high, likely = numbers
    assert high > likely


def test_a_centre_in_the_middle_of_a_pebble_will_show(tmp_path: Path) -> None:
    """2.1 mm where it is centred in what the base leaves: (29 - 18) / 2 = 5.5 mm up."""
    folder = demo_with(
        tmp_path,
        (
            "desserts/river-pebble.yaml",
            "2.4 mm above the base",
            "5.5 mm from the bottom",
        ),
    )
    (one,) = unsaid_of(folder)
    assert str(one.says) == (
        "River Pebble: Blackcurrant-pear centre comes within 2.1 mm of the face and will"
        " show"
    )
    assert str(one.asks) == (
        "can it stand elsewhere, or be smaller? 5 mm all round is the habit"
    )
