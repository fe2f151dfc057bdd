"""What fights with what: each clash there, and gone once the card says the cure."""

from collections.abc import Iterable
from dataclasses import replace

import pytest

from demould.advice.clashes.agents import calcium_mg
from demould.advice.clashes.clash import Clash
from demould.advice.clashes.find import clashes
from demould.advice.findings import findings
from demould.larder.ingredient import Composition, Ingredient
from demould.larder.read import enzyme_in, ingredient, ingredients
from demould.mise.component import Component
from demould.mise.dessert import Layer, Rest
from demould.mise.find import find_in
from demould.mise.method import Step
from tests.advice.kitchenware import FIND, dessert, made
from tests.demo_folder import demo_folder
from tests.desserts.build import stated


def steps(*said: str) -> tuple[Step, ...]:
    """Read ``cook: boil 2 min``."""
    return tuple(
        Step(key=key, remarks=(remark.strip(),))
        for key, _, remark in (one.partition(":") for one in said)
    )


def of(kind: str, lines: Iterable[str], *method: str, away: float = 0.0) -> Component:
    return replace(made(kind, *lines, away=away), method=steps(*method))


def found(*components: Component) -> list[Clash]:
    return list(clashes(dessert(*components), FIND))


def says(*components: Component) -> list[str]:
    return [str(one.says) for one in found(*components)]


PINEAPPLE = ("400 pineapple", "50 sucrose", "8 gelatin_200", "40 water")


def test_raw_pineapple_melts_gelatin_and_boiled_does_not() -> None:
    # Common practice, no source: raw pineapple and gelatin clash; boiled they do not.
    raw = of("fruit gel", PINEAPPLE, "mix: gelatin at 60 °C")
    (one,) = found(raw)
    assert str(one.says) == "It: raw pineapple melts gelatin: it never sets"
    assert one.certain
    assert str(one.do) == (
        "heat the fruit right through to 80 °C and hold it 5 min first,"
        " or buy it canned"
    )
    assert found(of("fruit gel", PINEAPPLE, "cook: boil 5 min", "mix: at 60 °C")) == []


def test_where_nobody_says_it_is_asked() -> None:
    (one,) = found(of("fruit gel", PINEAPPLE))
    assert not one.certain
    assert "if it stays raw (nobody says)" in str(one.says)


@pytest.mark.parametrize("remark", ["boiled", "canned", "blanched"])
def test_the_line_itself_may_say_that_it_is_cooked(remark: str) -> None:
    lines = (f"400 pineapple; {remark}", *PINEAPPLE[1:])
    assert found(of("fruit gel", lines, "mix: at 60 °C")) == []


def test_raw_added_late_to_a_boiled_mix_is_raw() -> None:
    lines = ("400 pineapple; last, off the heat", *PINEAPPLE[1:])
    assert len(found(of("fruit gel", lines, "cook: boil 2 min"))) == 1


def test_a_raw_kiwi_centre_melts_the_mousse_beside_it() -> None:
    kiwi = replace(
        of("x", ("300 kiwi; raw", "2 xanthan")), key="centre", name="Kiwi centre"
    )
    mousse = replace(
        of("fruit mousse", ("300 cream_35", "4 gelatin_200")), name="Mousse"
    )
    sweet = dessert(mousse, kiwi)
    sweet = replace(
        sweet,
        layers=(*sweet.layers, Layer(component="centre", fill=Rest())),
    )
    (one,) = clashes(sweet, FIND)
    assert str(one.says) == (
        "Kiwi centre: raw kiwi melts the gelatin of Mousse where they touch"
    )
    assert clashes(replace(sweet, layers=sweet.layers[:1]), FIND) == ()


def test_every_enzyme_fruit_of_the_table_is_known_and_no_other() -> None:
    # Bromelain, actinidin, papain, ficin, zingibain, mango, guava, cucumisin: handbooks
    # of gelatin (from memory). Canned pineapple juice is heated.
    rows = {row.id for row in ingredients().values() if enzyme_in(row)}
    assert rows == {
        "pineapple",
        "kiwi",
        "papaya",
        "fig",
        "ginger",
        "mango",
        "guava",
        "melon",
    }


AGAR = ("300 raspberry", "60 sucrose", "4 agar_powder", "100 water")


def test_agar_boiled_in_acid() -> None:
    (one,) = found(of("agar centre", AGAR, "cook: boil 2 min"))
    assert "agar boiled in acid (pH 3" in str(one.says)
    assert "keep the mix at 50 °C or more until it is poured" in str(one.do)


def test_agar_boiled_in_water_with_the_juice_last_is_right() -> None:
    lines = ("300 raspberry; warm, off the heat", *AGAR[1:])
    assert found(of("agar centre", lines, "cook: boil 2 min")) == []
    assert found(of("agar centre", ("300 pear", *AGAR[1:]), "cook: boil")) != []
    assert found(of("agar centre", ("300 milk_whole", *AGAR[1:]), "cook: boil")) == []


CURD = ("300 cream_35", "100 milk_whole", "120 lemon_juice")


def test_juice_into_hot_cream_curdles() -> None:
    (one,) = found(of("x", CURD, "cook: 80 °C"))
    assert str(one.says).startswith("It: lemon_juice in hot milk or cream curdles it")
    assert str(one.do) == "put it in last, below 40 °C"
    late = (*CURD[:2], "120 lemon_juice; last, below 40 °C")
    assert found(of("x", late, "cook: 80 °C")) == []
    assert found(of("x", CURD, "mix: 20 °C")) == []
    assert found(of("x", ("300 cream_35", "60 honey"), "cook: 80 °C")) == []
    two = (*CURD, "10 lime_juice")
    assert says(of("x", two, "cook: 80 °C"))[0].startswith("It: lemon_juice in hot")


def test_gelatin_in_sour_fruit_sets_softer() -> None:
    (one,) = found(of("x", ("300 lemon_juice", "6 gelatin_200"), "mix: 50 °C"))
    assert "gelatin sets softer at pH" in str(one.says)
    assert not one.certain


def test_spirit_over_a_fifth_of_the_water() -> None:
    # 33.3 % alcohol by mass in 40 % spirit: 133 g in 601 g of alcohol and water. CRC
    # Handbook: 20 % ethanol freezes at -10.9, 30 % at -20.5 °C (from memory).
    strong = says(of("x", ("400 spirit_40", "200 water", "10 gelatin_200")))
    assert strong[0] == ("It: 22 % of its water is alcohol: gelatin is weak over 20 %")
    assert "starts to freeze at -1" in strong[1]
    mild = of("x", ("20 spirit_40", "400 cream_35", "4 gelatin_200"))
    assert found(mild) == []


def test_calcium_and_pectin_nh() -> None:
    # Whole milk has 113 mg calcium and 3.15 g protein in 100 g: USDA SR26 01211 (from
    # memory); calcium lactate pentahydrate has 40.08/308.3 = 13 %.
    assert calcium_mg(((ingredient("milk_whole"), 100.0),)) == pytest.approx(113, abs=1)
    assert calcium_mg(((ingredient("calcium_lactate"), 1.0),)) == pytest.approx(130)
    milky = of("pectin NH centre", ("300 milk_whole", "60 sucrose", "4 pectin_nh_use"))
    (one,) = found(milky)
    # 300 g milk: 340 mg for 4 g of pectin.
    assert str(one.says).startswith("It: 85 mg calcium a gram of pectin NH: over 30 it")
    plain = of("pectin NH centre", ("300 pear", "60 sucrose", "4 pectin_nh_use"))
    assert found(plain) == []


def test_pectin_hm_in_a_soft_centre_never_sets() -> None:
    (one,) = found(of("x", ("400 pear", "100 sucrose", "6 pectin_hm"), away=5))
    assert "pectin HM sets only from 58 to 75 °Brix" in str(one.says)
    assert found(of("x", ("100 pear", "200 sucrose", "3 pectin_hm"), away=5)) == []


def test_gelatin_that_is_boiled() -> None:
    lines = ("300 water", "5 gelatin_200")
    told = says(of("x", lines, "cook: boil with the gelatin"))
    assert told == ["It: gelatin is boiled: it loses its strength"]
    assert says(of("x", lines, "cook: boil, gelatin below 70 °C")) == []


DIP = ("330 white_couv_35", "270 cocoa_butter", "8 cocoa_black_11")


def test_water_in_a_dip_seizes_it() -> None:
    assert found(of("thin dip", DIP)) == []
    (one,) = found(of("thin dip", (*DIP, "10 honey", "5 water")))
    assert str(one.says) == "It: honey brings water into melted couverture: it seizes"


def test_a_ganache_is_not_a_seized_couverture() -> None:
    assert found(of("x", ("300 dark_couv_66", "250 cream_35"))) == []


def coloured(what: str) -> Component:
    one = of("thin dip", (*DIP, "6 cocoa_black_11"))
    *rest, last = one.formula
    return replace(one, formula=(*rest, replace(last, what=what, ingredient=None)))


def test_a_water_based_colour_in_fat() -> None:
    (one,) = found(coloured("black gel colour"))
    assert one.certain
    assert "water-based" in str(one.says)
    (asked,) = found(coloured("black colour"))
    assert not asked.certain
    assert found(coloured("black fat-soluble colour")) == []
    assert found(of("x", ("100 pear",))) == []


def test_a_ganache_with_too_much_fat_splits() -> None:
    lines = ("400 cream_35", "200 white_couv_35", "200 cocoa_butter")
    (one,) = found(of("whipped ganache", lines))
    assert str(one.says).startswith("It: 51 % fat in 30 % water: it will split")


def test_the_demo_has_no_clash() -> None:
    folder = demo_folder()
    for sweet in folder.desserts:
        assert clashes(sweet, find_in(folder.larder)) == ()


def test_a_clash_comes_before_any_band() -> None:
    kitchen = demo_folder().kitchen
    raw = of("fruit gel", PINEAPPLE, "mix: at 40 °C")
    first = findings(dessert(raw), kitchen, FIND)[0]
    assert (first.kind, first.dessert) == ("clash", "sweet")


def test_a_formula_without_grams_has_no_clash() -> None:
    stuff = Ingredient(
        id="x", name="x", per_100g=Composition(water=100), source="nobody"
    )
    empty = replace(made("thin dip"), formula=())
    assert clashes(dessert(empty), lambda _: stuff) == ()


def test_dice_block_a_nozzle_under_three_times_their_size() -> None:
    lines = ("100 pear; brunoise 3 mm",)
    (one,) = found(of("x", lines, "deposit: nozzle 8 mm"))
    assert str(one.says) == "It: pear of 3 mm block a nozzle of 8 mm"
    assert str(one.do) == "cut them to 2.7 mm or less, a third of it"
    assert found(of("x", lines, "deposit: 9 mm nozzle")) == []
    assert found(of("x", ("100 pear",), "deposit: nozzle 3 mm")) == []


def test_what_stays_in_the_sieve_is_counted() -> None:
    # Common practice, no source: 5 to 10 % stay in a sieve.
    (one,) = found(of("x", ("100 raspberry",), "blend: through a sieve"))
    assert "5 to 10 % stays in a sieve, and 0 % is counted as lost" in str(one.says)
    assert not one.certain
    honest = of("x", ("100 raspberry",), "blend: sieve")
    honest = replace(honest, loss=replace(honest.loss, share=stated(7, "%")))
    assert found(honest) == []


def test_pectin_lm_without_calcium_is_asked_about() -> None:
    (one,) = found(of("x", ("300 pear", "60 sucrose", "4 pectin_lm")))
    assert str(one.says).startswith(
        "It: 0 mg calcium a gram of pectin LM: 20 to 40 set"
    )
    assert not one.certain
    limed = ("300 pear", "60 sucrose", "4 pectin_lm", "0.9 calcium_lactate")
    assert found(of("x", limed)) == []
