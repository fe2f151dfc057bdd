"""Can we: yes, with a variant, ask first, or no; worked by hand on the demo."""

from dataclasses import replace
from pathlib import Path

import pytest

from demould.care.requests import Answered, answer, avoided
from demould.demo import NOW
from demould.larder.allergens import allergens
from demould.larder.requests import find_request, requests
from demould.mise.folder import dessert_of
from demould.mise.order import Asked
from demould.mise.own_larder import Larder
from demould.sheets.care_blocks import answer_said, who_must_not
from demould.week.caring import caring_of
from demould.week.orders import makings_of
from tests.care.test_allergens import changed
from tests.demo_folder import demo_folder
from tests.sheets.reading import lines
from tests.week.demo_week import demo_with


def asked(request: str, dessert: str, larder: Larder | None = None) -> Answered:
    folder = demo_folder()
    return answer(
        requests()[request],
        dessert_of(folder, dessert),
        larder or folder.larder,
        folder.desserts,
    )


def answered_by_suppliers() -> Larder:
    """Give the demo's larder with every "may contain" answered: nothing."""
    larder = demo_folder().larder
    return tuple(
        replace(one, may_contain="none")
        if one.may_contain or one.key == "sunflower kernel paste"
        else one
        for one in larder
    )


def test_who_says_nuts_means_every_nut_and_the_peanut() -> None:
    names = avoided(requests()["no nuts"])
    assert names == {one.name for one in allergens().values() if one.kind == "nut"} | {
        "peanut"
    }
    assert asked("no nuts", "amber-terrine").verdict == "no"


# Row 64 of the job: nut-free A is its variant, once the suppliers are asked.
def test_no_nuts_is_the_variant_once_suppliers_have_answered() -> None:
    found = asked("no nuts", "river-pebble")
    assert found.taken is not None
    assert (found.verdict, found.taken.variant) == ("ask first", "nut-free base")
    assert "hazelnut" in found.taken.handled
    sure = asked("no nuts", "river-pebble", answered_by_suppliers())
    assert sure.taken is not None
    assert (sure.verdict, sure.taken.variant) == ("yes", "nut-free base")
    said = tuple(
        replace(one, may_contain="hazelnut") if one.key.startswith("white") else one
        for one in answered_by_suppliers()
    )
    assert asked("no nuts", "river-pebble", said).verdict == "ask first"


# Row 64: gelatin-free A has no tested version; E has no gelatin, but egg, milk, almond.
def test_no_gelatin_is_never_a_swap_and_offers_the_terrine() -> None:
    found = asked("no gelatin", "river-pebble")
    assert found.verdict == "no"
    assert [one.dessert.key for one in found.offers] == ["amber-terrine"]
    assert {"egg", "milk", "almond"} <= set(found.offers[0].holds)
    said = str(answer_said(found))
    assert said.startswith("NO: gelatin 200 bloom in the Buckwheat whipped ganache")
    assert "nothing takes the place of gelatin 200 bloom gram for gram" in said
    assert "Offer Amber Terrine (has egg, milk, almond" in said


def test_which_animal_a_gelatin_is_from_decides() -> None:
    assert asked("no pork", "meadow-domes").verdict == "ask first"
    pork = changed("gelatin 200 bloom", animal="pork", ask="")
    beef = changed("gelatin 200 bloom", animal="beef", ask="")
    assert asked("no pork", "meadow-domes", pork).verdict == "no"
    assert asked("no pork", "meadow-domes", beef).verdict == "yes"
    assert asked("halal", "meadow-domes", pork).verdict == "no"
    assert asked("halal", "meadow-domes", beef).verdict == "ask first"
    assert asked("vegetarian", "meadow-domes", beef).verdict == "no"


@pytest.mark.parametrize(
    ("request_", "dessert", "verdict"),
    [
        ("no dairy", "river-pebble", "no"),
        ("no egg", "meadow-domes", "no"),
        ("no gluten", "meadow-domes", "no"),
        ("no gluten", "amber-terrine", "yes"),
        ("vegan", "amber-terrine", "no"),
        ("infant", "amber-terrine", "no"),
        ("pregnancy", "meadow-domes", "yes"),
        ("no alcohol", "river-pebble", "yes"),
        ("no buckwheat", "river-pebble", "no"),
    ],
)
def test_requests_by_hand(request_: str, dessert: str, verdict: str) -> None:
    assert asked(request_, dessert).verdict == verdict


def test_no_sheet_is_asked_for_before_any_yes() -> None:
    larder = changed("sugar", allergens=None)
    assert asked("no gluten", "amber-terrine", larder).verdict == "ask first"


def test_a_request_has_many_words() -> None:
    assert find_request("Coeliac") is requests()["no gluten"]
    assert find_request("unicorn") is None


def test_an_order_s_requests_are_read_and_answered_in_the_week(tmp_path: Path) -> None:
    folder = demo_with(
        tmp_path,
        (
            "orders.yaml",
            "  pieces: 24\n",
            "  pieces: 24\n  requests: |\n    nut allergy; one at table 6\n",
        ),
    )
    order = next(one for one in folder.orders if one.key == "saturday dinner")
    assert order.requests == (Asked(request="no nuts", who="one at table 6"),)
    blocks = tuple(who_must_not(caring_of(folder, makings_of(folder, NOW))))
    (line,) = [one for one in lines(blocks) if one.startswith("no nuts")]
    assert line.startswith(
        "no nuts (one at table 6), River Pebble: ASK FIRST, with nut-free base"
    )
