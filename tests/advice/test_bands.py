"""A component against its bands, and the change that brings it inside."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.advice.bands.change import at_amount
from demould.advice.bands.judge import judged, out_of_band
from demould.advice.bands.judged import Judged, rounded
from demould.advice.bands.quantity import measured, quantity
from demould.matter.acidity import acidity
from demould.matter.inside import inside
from demould.mise.component import Component
from demould.mise.dessert import Dip, Spray
from demould.mise.find import find_in
from demould.mise.method import Stand, Step
from tests.advice.kitchenware import FIND, airy, dessert, made
from tests.demo_folder import demo_folder
from tests.desserts.build import stated

GANACHE = (
    "280 cream_35",
    "3.6 gelatin_200",
    "18 water; for the gelatin",
    "190 white_couv_35",
    "400 cream_35",
)


def of(component: Component, what: str) -> Judged:
    found = judged(component, dessert(component), FIND)
    return next(one for one in found if one.what.startswith(what))


def with_gelatin(grams: float, row: str = "gelatin_200") -> Component:
    lines = [text.replace("3.6 gelatin_200", f"{grams} {row}") for text in GANACHE]
    return airy(made("whipped ganache", *lines, density=1.03), 0.62)


def test_the_demo_ganache_is_inside_every_band() -> None:
    folder = demo_folder()
    pebble = next(one for one in folder.desserts if one.key == "river-pebble")
    ganache = next(one for one in pebble.components if one.key == "ganache")
    found = judged(ganache, pebble, find_in(folder.larder))
    # Nobody says on its card that the couverture is melted first.
    out = [one.what for one in found if one.verdict != "inside"]
    assert out == ["mix with unmelted couverture"]
    # Worked by hand from the planning composition: fat 34.1, sugars 14.2, water 47.1,
    # gelatin 0.40 of the whole.
    told = {
        one.what: rounded(one.figure.value, one.unit) for one in found if one.figure
    }
    assert told["fat"] == "34.1"
    assert told["sugars"] == "14.2"
    assert told["water"] == "47.1"
    assert told["gelatin"] == "0.4"
    assert told["final mix temperature"] == "35"
    assert told["whipping temperature"] == "4"
    assert told["rest"] == "12"


def test_too_little_gelatin_is_said_with_how_much_more() -> None:
    one = of(with_gelatin(2.0), "gelatin")
    assert str(one.says) == "It: gelatin 0.22, under 0.3 to 0.6 %"
    # 0.3 % of 890 g is 2.67 g; with its water it is 2.7 g.
    assert str(one.change) == "0.7 g more gelatin_200 (2.7 g in all)"


@given(grams=st.floats(0.2, 20))
def test_what_the_change_gives_is_inside(grams: float) -> None:
    component = with_gelatin(round(grams, 1))
    one = of(component, "gelatin")
    if one.verdict == "inside":
        return
    assert one.change is not None
    to = float(str(one.change).split("(")[1].split(" ")[0])
    line = component.formula[1]
    assert line.amount is not None
    soak = 18 / line.amount.value
    mended = at_amount(component, line, to, soak)
    gelatin = quantity("gelatin")
    assert gelatin is not None
    dose = measured(mended, gelatin, FIND).value
    assert 0.3 <= dose <= 0.6
    step = at_amount(
        component, line, to + (0.1 if one.verdict == "over" else -0.1), soak
    )
    assert not 0.301 < measured(step, gelatin, FIND).value < 0.599


def test_another_bloom_is_judged_by_the_root_law_and_both_are_said() -> None:
    one = of(with_gelatin(3.0, "gelatin_140"), "gelatin")
    assert one.what == "gelatin as 200 bloom"
    assert one.verdict == "under"
    # 3.0 g in 891 g is 0.337 %; x sqrt(0.7) = 0.282, x 0.7 = 0.236.
    assert str(one.remark) == (
        "0.28 % as 200 bloom by the root law, 0.24 % by the straight ratio"
    )


def test_no_gelatin_at_all_is_not_said() -> None:
    lines = [text for text in GANACHE if "gelatin" not in text]
    one = of(airy(made("whipped ganache", *lines), 0.62), "gelatin")
    assert (one.verdict, str(one.says)) == (
        "not said",
        "It: no gelatin; 0.3 to 0.6 % is usual",
    )


def test_another_agent_has_no_band_and_wants_a_trial() -> None:
    one = of(with_gelatin(2, "carrageenan_iota"), "gelatin")
    assert one.verdict == "inside"
    assert "trial first" in str(one.remark)


def test_too_much_fat_is_mended_by_one_line_where_that_can_be() -> None:
    rich = airy(made("whipped ganache", *GANACHE, "60 cocoa_butter"), 0.62)
    one = of(rich, "fat")
    assert one.verdict == "over"
    # 364.5 g fat of 951.6 g; (364.5 - x)/(951.6 - x) = 0.38 gives 4.7 g less.
    assert str(one.change) == "5 g less cocoa_butter (55 g in all)"


def test_where_no_one_line_can_mend_it_another_ingredient_is_named() -> None:
    lines = [text.replace("cream_35", "cream_light20") for text in GANACHE]
    one = of(airy(made("whipped ganache", *lines, density=1.03), 0.62), "fat")
    assert one.verdict == "under"
    assert "take another ingredient" in str(one.change)


def test_a_stated_density_that_the_composition_does_not_give() -> None:
    light = airy(made("whipped ganache", *GANACHE, density=0.93), 0.62)
    one = of(light, "density without air")
    assert str(one.says) == "It: 0.93 g/ml stated without air, 1.03 by composition"
    assert str(one.change) == "weigh a cup of it before it is whipped"
    assert one.outside > 0


def test_baked_things_hold_air_and_are_not_compared() -> None:
    sponge = made(
        "sponge",
        "150 egg_whole",
        "105 sucrose",
        "95 flour_wheat",
        "40 butter_82",
        density=0.4,
        away=10,
    )
    assert out_of_band(dessert(sponge), FIND) == ()
    burnt = replace(sponge, cooked_away=stated(20, "%"))
    assert of(burnt, "bake loss").verdict == "over"


def centre(*more: str) -> Component:
    return made(
        "pectin NH centre",
        "410 pear",
        "112 pear",
        "60 sucrose",
        "5 pectin_nh_use",
        *more,
        density=1.09,
        away=5,
    )


def test_a_sour_pectin_centre_is_told_how_much_acid_is_enough() -> None:
    one = of(centre("5 citric_sol_50"), "pH")
    assert one.verdict == "under"
    assert str(one.change).endswith("g citric_sol_50 is enough, last, off the heat")
    enough = float(str(one.change).split(" ")[0])
    assert 0 < enough < 5
    assert of(centre(f"{enough} citric_sol_50"), "pH").verdict == "inside"


def test_fruit_that_is_sour_by_itself_cannot_be_mended_by_less_acid() -> None:
    sour = made("pectin NH centre", "500 blackcurrant", "80 sucrose", "6 pectin_nh_use")
    assert "as sour as that" in str(of(sour, "pH").change)


def test_pectin_wants_five_times_its_weight_of_sugar() -> None:
    one = made("pectin NH centre", "500 pear", "20 sugar", "6 pectin")
    lean = replace(
        one,
        formula=tuple(
            replace(part, ingredient=name)
            for part, name in zip(
                one.formula, ("pear", "sucrose", "pectin_nh_use"), strict=True
            )
        ),
    )
    found = of(lean, "sugar to mix")
    assert found.verdict == "under"
    assert str(found.change) == "mix it with 30 g of sugar or more"


def test_a_short_rest_is_said() -> None:
    step = Step(key="rest", stand=Stand(least=stated(240, "min")))
    one = of(replace(with_gelatin(3.6), method=(step,)), "rest")
    assert str(one.says) == "It: rest 4, under 12 h or more"
    assert str(one.change) == "let it rest 12 h or more"


def test_a_mix_that_ends_too_cold_is_said() -> None:
    step = Step(key="mix", remarks=("75 to 80 °C on the couverture, ends near 29 °C",))
    one = of(replace(with_gelatin(3.6), method=(step,)), "final mix")
    assert str(one.says) == "It: final mix temperature 29, under 32 to 45 °C"


def test_the_worst_comes_first() -> None:
    found = out_of_band(dessert(with_gelatin(9)), FIND)
    assert [one.outside for one in found] == sorted(
        (one.outside for one in found), reverse=True
    )
    assert found[0].what == "gelatin"


def test_a_kind_nobody_knows_has_no_bands() -> None:
    assert judged(made("moon dust", "10 sucrose"), dessert(made("x")), FIND) == ()
    assert judged(made("sponge"), dessert(made("x")), FIND) == ()


@pytest.mark.parametrize(
    ("agent", "grams", "low", "high"),
    [
        ("carrageenan_kappa", 12, 0.02, 1),
        ("gellan_la", 5, 0.05, 0.4),
        ("alginate", 20, 0.4, 1),
        ("pectin_lm", 20, 0.5, 1.5),
    ],
)
def test_what_sets_it_is_judged_by_its_own_dose_all_the_same(
    agent: str, grams: float, low: float, high: float
) -> None:
    # Handbooks of hydrocolloids, the class of values they give (from memory).
    one = of(
        made("moon dust", "900 water", f"{grams} {agent}"), agent.split("_")[0][:5]
    )
    assert (one.verdict, one.low, one.high) == ("over", low, high)
    assert "maker's sheet" in str(one.change)


def test_starch_is_one_agent_whatever_it_is_of() -> None:
    one = of(
        made("moon dust", "900 water", "60 cornstarch", "60 potato_starch"), "starch"
    )
    assert (one.verdict, one.low, one.high) == ("over", 2, 8)


@pytest.mark.parametrize("key", ["ember-log", "meadow-domes", "orchard-ring"])
def test_every_demo_dessert_can_be_judged(key: str) -> None:
    folder = demo_folder()
    one = next(d for d in folder.desserts if d.key == key)
    found = [
        judge
        for part in one.components
        for judge in judged(part, one, find_in(folder.larder))
    ]
    assert len(found) > 12
    doses = [j for j in found if j.what in ("gelatin", "pectin NH")]
    assert all(j.verdict == "inside" for j in doses)


def test_a_band_of_ph_that_is_only_half_outside_is_no_news() -> None:
    sour = made(
        "pectin NH centre",
        "500 pear",
        "80 sucrose",
        "6 pectin_nh_use",
        "3.3 citric_sol_50",
    )
    found = acidity(inside(sour, FIND))
    assert found is not None
    assert found.likely < 3.2 < found.high
    assert of(sour, "pH").verdict == "inside"


def test_a_range_that_ends_outside_is_outside() -> None:
    step = Step(key="mix", remarks=("70 °C, ends at 40 to 50 °C",))
    one = of(replace(with_gelatin(3.6), method=(step,)), "final mix")
    assert str(one.says) == "It: final mix temperature 50, over 32 to 45 °C"


HOT = (
    "280 cream_35; hot",
    "3.6 gelatin_200",
    "18 water; for the gelatin",
    "190 white_couv_35",
    "400 cream_35; cold",
)


def mixed(*lines: str) -> Component:
    step = Step(key="mix", remarks=("75 to 80 °C on the couverture, ends near 35 °C",))
    made_so = airy(made("whipped ganache", *lines, density=1.03), 0.62)
    return replace(made_so, method=(step,))


def test_a_mix_on_unmelted_couverture_ends_below_its_window_and_is_told() -> None:
    one = of(mixed(*HOT), "mix with unmelted")
    assert one.verdict == "under"
    assert str(one.change).startswith("melt the couverture to 40 °C first")


def test_melted_couverture_ends_inside() -> None:
    lines = [line.replace("white_couv_35", "white_couv_35; melted") for line in HOT]
    one = of(mixed(*lines), "mix with melted")
    assert one.verdict == "inside"


def test_a_mix_too_hot_is_to_cool_first() -> None:
    lines = [line.replace("; cold", "") for line in HOT]
    lines = [line.replace("white_couv_35", "white_couv_35; melted") for line in lines]
    lines = [line.replace("400 cream_35", "400 cream_35; hot") for line in lines]
    one = of(mixed(*lines), "mix with melted")
    assert (one.verdict, str(one.change)) == (
        "over",
        "let it cool before the cold part",
    )


def test_without_a_hot_line_nothing_is_reckoned() -> None:
    lines = [line.replace("; hot", "") for line in HOT]
    found = judged(mixed(*lines), dessert(mixed(*lines)), FIND)
    assert not [one for one in found if one.what.startswith("mix with")]


def test_water_for_the_gelatin_is_written_once() -> None:
    assert of(with_gelatin(3.6), "water to soak").verdict == "inside"
    forgotten = [text for text in GANACHE if "water" not in text]
    one = of(airy(made("whipped ganache", *forgotten), 0.62), "water to soak")
    assert str(one.says) == (
        "It: no water to soak the gelatin; 4.5 to 7 times its weight is usual"
    )
    # Common practice, no source: 3.6 g take up 4.5 to 7 times their weight.
    assert str(one.change).startswith("3.6 g gelatin takes up 16 to 25 g")
    twice = of(
        airy(made("whipped ganache", *GANACHE, "18 water; for the gelatin"), 0.62),
        "water to soak",
    )
    assert twice.verdict == "over"


def test_overrun_stands_beside_the_whipped_density() -> None:
    # 1.03 to 0.62 g/ml: 66 %.
    assert str(of(with_gelatin(3.6), "density, whipped").remark) == "66 % overrun"


def coated(finish: Dip | Spray, *lines: str, density: float) -> list[Judged]:
    kind = "thin dip" if isinstance(finish, Dip) else "velvet spray"
    one = made(kind, *lines, density=density)
    return list(judged(one, replace(dessert(one), finish=(finish,)), FIND))


def test_a_coat_over_a_millimetre_is_said() -> None:
    # Common practice, no source: 0.6 to 1.0 mm.
    thick = Dip(
        component="it",
        film=stated(1.2, "mm"),
        clearance=stated(15, "mm"),
        heel=stated(10, "g"),
    )
    lines = ("330 white_couv_35", "270 cocoa_butter")
    (one,) = (j for j in coated(thick, *lines, density=1.06) if j.what == "coat")
    assert str(one.says) == "It: coat 1.2, over 0.6 to 1 mm"


def test_a_spray_goes_by_grams_on_100_cm2_and_by_what_lands() -> None:
    # 0.05 mm of 1.00 g/ml are 0.5 g on 100 cm2; 0.5 to 2 g is usual, 40 to 60 % lands.
    fine = Spray(component="it", film=stated(0.05, "mm"), lands=stated(30, "%"))
    lines = ("60 cocoa_butter", "40 white_couv_35")
    found = {j.what: j for j in coated(fine, *lines, density=1.0)}
    assert found["laid on"].figure is not None
    assert found["laid on"].figure.value == pytest.approx(0.5)
    assert found["laid on"].verdict == "inside"
    assert found["what lands"].verdict == "under"
