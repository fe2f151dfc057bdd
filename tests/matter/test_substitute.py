"""Something else instead: what is held is held, what cannot be is refused."""

from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import minimize

from demould.larder.read import ingredient
from demould.matter.composition import composition
from demould.matter.grams import batch
from demould.matter.substitute.agents import (
    NeverOneForOne,
    OtherGelatin,
    other_agent,
)
from demould.matter.substitute.balance import Moving, balanced
from demould.matter.substitute.held import HELD, usual
from demould.matter.substitute.sugared import sugared
from demould.matter.substitute.swap import Swapped, swapped
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.find import find_in
from tests.advice.kitchenware import FIND, made
from tests.demo_folder import demo_folder


def demo(dessert: str, key: str) -> tuple[Dessert, Component]:
    folder = demo_folder()
    sweet = next(one for one in folder.desserts if one.key == dessert)
    return sweet, next(one for one in sweet.components if one.key == key)


LOOK = find_in(demo_folder().larder)


def grams(found: Swapped) -> dict[str, float]:
    told: dict[str, float] = {}
    for line in found.lines:
        told[line.ingredient] = told.get(line.ingredient, 0.0) + line.after_g
    return told


def test_a_puree_with_a_tenth_of_sugar() -> None:
    # 380 g unsweetened become 380 / 0.9 = 422 g of a 90/10 purée, which carry 42 g of
    # sugar: 85 g of added sugar become 43 g.
    _, centre = demo("river-pebble", "centre")
    sweet = sugared(LOOK("blackcurrant purée"), 0.1, LOOK("sugar"))
    held = ("mass", "water", "sugars")
    found = swapped(centre, "blackcurrant purée", sweet, held, LOOK)
    told = grams(found)
    assert told[sweet.id] == pytest.approx(380 / 0.9, abs=0.3)
    assert told["sugar"] == pytest.approx(85 - 42.2, abs=0.3)
    # The sugar to mix with the pectin stays five times its weight.
    kept = [line.after_g for line in found.lines if line.ingredient == "sugar"]
    assert kept[1] >= 5 * 6.5 - 1e-6


def test_cream_of_30_for_35_gram_for_gram_and_held() -> None:
    # 680 g x 5 % of 892.6 g: fat 34.1 falls to 30.3 %.
    sweet, ganache = demo("river-pebble", "ganache")
    thin = ingredient("cream_30")
    found = swapped(ganache, "cream 35 %", thin, ("mass", "water", "fat"), LOOK)
    straight = composition(found.gram_for_gram, found.find, sweet.components)
    assert straight.fat == pytest.approx(30.3, abs=0.05)
    held = composition(found.balanced, found.find, sweet.components)
    assert held.fat == pytest.approx(34.1, abs=0.3)
    assert held.water == pytest.approx(47.1, abs=0.3)
    assert batch(found.balanced, found.find).value == pytest.approx(892.6, abs=3)


def test_syrup_in_powder_brings_less_water_and_gets_it() -> None:
    _, glaze = demo("meadow-domes", "glaze")
    powder = ingredient("glucose_powder_de38")
    held = ("mass", "water", "sweetness")
    told = grams(swapped(glaze, "glucose syrup DE40", powder, held, LOOK))
    # 96 g of solids in 120 g of syrup: near 101 g of powder and 19 g of water.
    assert told[powder.id] == pytest.approx(101, abs=4)
    assert told["water"] - 115 == pytest.approx(19, abs=3)
    assert told["inulin"] == 20


def test_a_nut_paste_stays_at_its_grams_and_its_fat_is_made_up() -> None:
    # Hazelnut 90 g carry 56.7 g fat, sunflower 50.4: 6.3 g of fat are made up.
    _, crisp = demo("river-pebble", "base")
    found = swapped(
        crisp, "hazelnut paste", LOOK("sunflower kernel paste"), ("fat",), LOOK
    )
    told = grams(found)
    assert told["sunflower kernel paste"] == pytest.approx(90, abs=1.5)
    more = told["brown butter"] - 15 + told.get("cocoa_butter", 0)
    assert more == pytest.approx(6.3, abs=1)


def test_what_brings_the_taste_is_not_watered_down() -> None:
    _, centre = demo("meadow-domes", "centre")
    held = ("mass", "water", "sugars")
    told = grams(swapped(centre, "rhubarb, trimmed", ingredient("pear"), held, LOOK))
    assert told["pear"] >= 0.9 * 216 - 1e-6


def test_sugar_that_is_not_there_cannot_be_saved_by_thinning() -> None:
    # 300 g of mango bring 40 g of sugars where rhubarb brought 3: it stays at 270 g.
    it = made("x", "300 rhubarb", "10 sucrose", "3 pectin_nh_use")
    held = ("mass", "water", "sugars")
    told = grams(swapped(it, "rhubarb", ingredient("mango"), held, FIND))
    assert told["mango"] >= 0.9 * 300 - 1e-6


FRUIT = st.sampled_from(["raspberry", "strawberry", "mango", "apricot", "plum"])


@given(out=FRUIT, into=FRUIT, sugar=st.floats(60, 200))
def test_what_is_held_is_held_where_it_can_be(
    out: str, into: str, sugar: float
) -> None:
    it = made("x", f"300 {out}", f"{sugar} sucrose", "100 water")
    found = swapped(it, out, ingredient(into), ("water", "sugars"), FIND)
    before, after = composition(it, FIND), composition(found.balanced, FIND)
    mass, other = batch(it, FIND).value, batch(found.balanced, FIND).value
    assert after.water * other == pytest.approx(before.water * mass, rel=0.01)
    assert after.sugars * other == pytest.approx(before.sugars * mass, rel=0.01)


def test_against_a_plainer_minimiser() -> None:
    # The same sum of squares, minimised by another method of scipy from the start.
    rows: Sequence[Moving] = [
        Moving(key=name, made_of=ingredient(name).per_100g, grams=g)
        for name, g in (("cream_30", 400.0), ("sucrose", 50.0), ("water", 50.0))
    ]
    wanted = {"mass": 480.0, "fat": 130.0, "water": 270.0}
    found = balanced(rows, wanted, 500.0)

    def squares(x: Sequence[float]) -> float:
        total = sum(
            (
                sum(
                    HELD[q](one.made_of) / 100 * g
                    for one, g in zip(rows, x, strict=True)
                )
                - want
            )
            ** 2
            / 0.25
            for q, want in wanted.items()
        )
        moved = sum((g - one.grams) ** 2 for one, g in zip(rows, x, strict=True))
        return float(total + moved / 500**2)

    best = minimize(squares, [400, 50, 50], bounds=[(0, None)] * 3, method="L-BFGS-B")
    assert list(found.values()) == pytest.approx(list(best.x), abs=0.2)


def test_nothing_is_ever_less_than_none() -> None:
    it = made("x", "300 dark_couv_66", "10 sucrose", "300 cream_35")
    held = ("mass", "fat", "sugars")
    found = swapped(it, "dark_couv_66", ingredient("milk_40"), held, FIND)
    assert all(line.after_g >= 0 for line in found.lines)


@pytest.mark.parametrize(
    ("outgoing", "held", "fault"),
    [
        ("cream_35", ("colour",), "'colour' cannot be held; any of mass, water"),
        ("gelatin_200", ("mass",), "a setting agent is never exchanged gram for gram"),
        ("milk_skim", ("mass",), "nothing of it in It can be weighed"),
    ],
)
def test_what_cannot_be_is_refused(
    outgoing: str, held: tuple[str, ...], fault: str
) -> None:
    it = made("x", "300 cream_35", "3 gelatin_200")
    with pytest.raises(ValueError, match=f"^{fault}"):
        swapped(it, outgoing, ingredient("cream_30"), held, FIND)


def test_strained_out_lines_are_not_swapped() -> None:
    _, bavarois = demo("orchard-ring", "bavarois")
    with pytest.raises(ValueError, match=r"can be weighed$"):
        swapped(bavarois, "chicory_roasted", ingredient("coffee"), ("mass",), LOOK)


def test_a_sugared_puree_has_its_share_of_sugar() -> None:
    sweet = sugared(ingredient("pear"), 0.1, ingredient("sucrose"))
    pear = ingredient("pear").per_100g
    assert sweet.per_100g.water == pytest.approx(0.9 * pear.water, abs=0.01)
    assert sweet.per_100g.sugars == pytest.approx(0.9 * pear.sugars + 10, abs=0.01)
    with pytest.raises(ValueError, match=r"^100 % sugar in it; it must be over 0"):
        sugared(ingredient("pear"), 1.0, ingredient("sucrose"))


JELLY = ("500 water", "10 gelatin_200")


def test_gelatin_for_gelatin_goes_by_both_laws() -> None:
    it = made("x", *JELLY)
    found = other_agent(it, FIND("gelatin_200"), FIND("gelatin_160"), FIND)
    assert isinstance(found, OtherGelatin)
    assert found.grams.root == pytest.approx(11.18, abs=0.005)
    assert found.grams.ratio == pytest.approx(12.5)
    assert found.warn is None
    weak = replace(FIND("gelatin_160"), id="gelatin 80 bloom", name="gelatin 80 bloom")
    warned = other_agent(it, FIND("gelatin_200"), weak, FIND)
    assert isinstance(warned, OtherGelatin)
    assert "140 to 260 bloom" in str(warned.warn)


@pytest.mark.parametrize(
    ("kind", "agent", "low", "high"),
    [
        ("agar centre", "agar_powder", 0.5, 1.0),
        ("x", "agar_powder", 0.5, 1.0),
        ("pectin NH centre", "pectin_nh", 0.8, 1.3),
        ("x", "carrageenan_iota", 0.1, 1.5),
        ("mirror glaze", "gelatin_200", 1.2, 1.8),
        ("x", "gelatin_200", 0.5, 3.0),
    ],
)
def test_any_other_agent_is_never_one_for_one(
    kind: str, agent: str, low: float, high: float
) -> None:
    it = made(kind, "500 water", "10 xanthan")
    found = other_agent(it, FIND("xanthan"), FIND(agent), FIND)
    assert isinstance(found, NeverOneForOne)
    assert (found.low, found.high) == (low, high)
    assert found.low_g == pytest.approx(low * 5.1)
    assert "no grams" in str(found.why)


def test_sugar_for_gelatin_is_refused() -> None:
    with pytest.raises(ValueError, match=r"sets and .* does not$"):
        other_agent(made("x", *JELLY), FIND("gelatin_200"), FIND("sucrose"), FIND)
    with pytest.raises(ValueError, match=r"can be weighed$"):
        other_agent(made("x", *JELLY), FIND("agar_powder"), FIND("gelatin_200"), FIND)


def test_what_is_usually_held() -> None:
    assert usual(FIND("cream_35")) == ("mass", "water", "fat")
    assert usual(FIND("thyme")) == ("mass",)
