import pytest

from demould.larder.ingredient import Composition, Ingredient
from demould.mise.find import find_in
from demould.mise.own_larder import Stocked
from demould.mise.resolve import resolve

MINE = Ingredient(id="honey", name="mine", per_100g=Composition(), source="x.yaml:1")


def test_the_own_larder_comes_first() -> None:
    find = find_in((Stocked(key="honey", ingredient=MINE),))
    assert find("honey") is MINE
    assert find("sucrose").id == "sucrose"
    with pytest.raises(KeyError):
        find("qqq")


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Cream  35%", "cream 35 %"),
        ("cream 35 %, hot", "cream 35 %"),
        ("cream 40 %, cold", "cream_40"),
        ("pear, peeled", "pear, peeled"),
        ("pear, diced", "pear"),
        ("qqq", None),
    ],
)
def test_own_names_then_the_table_whole_then_before_the_comma(
    text: str, found: str | None
) -> None:
    assert resolve(text, ("cream 35 %", "pear, peeled")) == found
