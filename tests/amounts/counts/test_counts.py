"""Counts side by side, and how sure they are."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from demould.amounts.counts.counts import Count, counts
from demould.amounts.counts.yields import yields
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.figure import Figure, Line, Stated, unfold
from demould.mise.formula import FormulaLine
from demould.mise.kitchen import Kitchen
from tests.desserts.build import assumed, component, formula, layer, stated
from tests.desserts.domes import MEADOW_DOMES
from tests.desserts.kitchen import KITCHEN, jug
from tests.desserts.larder import find
from tests.desserts.others import AMBER_TERRINE, EMBER_LOG, ORCHARD_RING, PEAR
from tests.desserts.pebble import COMPONENTS, DIP, GANACHE, RIVER_PEBBLE


def pieces(dessert: Dessert, kitchen: Kitchen = KITCHEN) -> dict[str, int]:
    return {one.component: one.pieces for one in counts(dessert, kitchen, find).each}


def exact(dessert: Dessert, key: str) -> float:
    found = yields(dessert, KITCHEN, find)
    return next(one.exact.value for one in found if one.component == key)


def having(dessert: Dessert, *changed: Component) -> Dessert:
    by_key = {one.key: one for one in changed}
    return replace(
        dessert,
        components=tuple(by_key.get(one.key, one) for one in dessert.components),
    )


def one_count(dessert: Dessert, key: str) -> Count:
    found = counts(dessert, KITCHEN, find).each
    return next(one for one in found if one.component == key)


def test_the_pebble_as_written_gives_21_29_30_31() -> None:
    found = pieces(RIVER_PEBBLE)
    assert found["ganache"] == 21
    assert found["centre"] == 29
    assert found["base"] == 30
    assert found["dip"] == 31
    # By hand: 100 g x 50 % / 1.08 g; 400 g x 0.95 / 15 g.
    assert found["spray"] == 46
    assert found["sauce"] == 25


def test_the_weakest_is_marked_and_the_others_left_over() -> None:
    found = counts(RIVER_PEBBLE, KITCHEN, find)
    assert [one.component for one in found.each if one.weakest] == ["ganache"]
    # 641.5 g less 4 %, less 2 %, less 20 g, less 21 x 19.8 g.
    left = one_count(RIVER_PEBBLE, "centre").left_over
    assert left.value == pytest.approx(167.7, abs=0.05)


def test_domes_give_13_of_both() -> None:
    found = counts(MEADOW_DOMES, KITCHEN, find)
    assert [one.component for one in found.each if one.weakest] == ["mousse", "centre"]
    assert exact(MEADOW_DOMES, "mousse") == pytest.approx(13.92, abs=0.005)
    assert exact(MEADOW_DOMES, "centre") == pytest.approx(13.84, abs=0.005)
    # 639 g / (2.5 x 16.4 g) poured in one go; one tray of 24.
    assert pieces(MEADOW_DOMES) == {
        "mousse": 13,
        "centre": 13,
        "sponge": 24,
        "glaze": 15,
    }


def test_the_ring_gives_2_and_its_centre_just() -> None:
    assert counts(ORCHARD_RING, KITCHEN, find).pieces.likely == 2
    # 827 x 0.94 / 386 g; 2 at 5 % boiled off, 1 at 2 % more.
    assert exact(ORCHARD_RING, "bavarois") == pytest.approx(2.01, abs=0.005)
    boiled = replace(PEAR, cooked_away=stated(7, "%"))
    assert pieces(having(ORCHARD_RING, boiled))["centre"] == 1


def test_the_log_gives_1() -> None:
    assert counts(EMBER_LOG, KITCHEN, find).pieces.likely == 1
    assert {"mousse": 1, "centre": 1}.items() <= pieces(EMBER_LOG).items()


def test_the_terrine_is_4_g_short_and_fits() -> None:
    one = one_count(AMBER_TERRINE, "nougat")
    assert one.pieces == 1
    assert str(getattr(one.gives.origin, "rule", "")) == (
        "the last one is 0.27 mm short at the rim: it fits"
    )
    assert exact(AMBER_TERRINE, "nougat") < 1


def test_a_terrine_a_centimetre_short_does_not_fit() -> None:
    nougat = AMBER_TERRINE.components[0]
    short = replace(nougat, loss=replace(nougat.loss, share=stated(20, "%")))
    assert pieces(having(AMBER_TERRINE, short)) == {"nougat": 0}


def test_21_is_between_19_and_23() -> None:
    # Whipped 0.57 to 0.66 g/ml: 816.9 g by 35.4 is 23.1, by 41.0 is 19.9.
    found = counts(RIVER_PEBBLE, KITCHEN, find)
    assert (found.pieces.low, found.pieces.likely, found.pieces.high) == (19, 21, 23)
    assert str(found.pieces.reason) == (
        "whipped density of the ganache between 0.57 and 0.66 g/ml"
    )
    assert found.measure_first == GANACHE.whipped
    centre = one_count(RIVER_PEBBLE, "centre").spread
    assert (centre.low, centre.high) == (29, 29)
    assert str(centre.reason) == "nothing it hangs on is assumed"


def test_a_lighter_whip_gives_22() -> None:
    lighter = replace(GANACHE, whipped=stated(0.58, "g/ml"))
    assert pieces(having(RIVER_PEBBLE, lighter))["ganache"] == 22


def test_all_doubts_together_are_wider_than_each() -> None:
    # A loss of 2 to 6 % besides: 23.1 becomes 23.6, 19.9 becomes 19.5.
    doubted = replace(
        GANACHE, loss=replace(GANACHE.loss, share=assumed(4, "%", 0, 10, "lost"))
    )
    spread = one_count(having(RIVER_PEBBLE, doubted), "ganache").spread
    assert (spread.low, spread.high) == (18, 24)
    assert str(spread.reason).startswith("whipped density")


def test_a_doubt_that_leaves_no_room_counts_nothing() -> None:
    moulds = list(KITCHEN.moulds)
    moulds[0] = replace(moulds[0], water=assumed(90, "g", 20, 95, "water in a pebble"))
    kitchen = replace(KITCHEN, moulds=tuple(moulds))
    found = counts(RIVER_PEBBLE, kitchen, find)
    assert found.pieces.low == 0
    assert found.measure_first == moulds[0].water


def test_the_weight_of_an_egg_is_a_doubt_of_its_line() -> None:
    line = FormulaLine(
        ordinal=1, amount=stated(4, "eggs", "eggs"), what="eggs", ingredient="whole egg"
    )
    cake = component("cake", (line,), 1.0)
    plain = replace(
        MEADOW_DOMES, layers=(layer("cake"),), finish=(), components=(cake,)
    )
    found = counts(plain, KITCHEN, find)
    # 4 x 50 g by 89.8 g; the egg from 45 to 58 g: 180 and 232 g.
    assert (found.pieces.low, found.pieces.likely, found.pieces.high) == (2, 2, 2)
    assert found.measure_first is not None
    assert found.measure_first.name == "eggs, each"


def test_a_dessert_nothing_is_assumed_of_wants_no_measuring() -> None:
    found = counts(MEADOW_DOMES, KITCHEN, find)
    assert found.measure_first is None
    assert found.pieces.low == found.pieces.high == 13


def test_the_dip_counts_in_the_narrowest_jug_that_takes_the_piece() -> None:
    assert str(one_count(RIVER_PEBBLE, "dip").remark) == "in the 100 mm jug"
    wide = replace(KITCHEN, jugs=(jug(80), jug(110), jug(140)))
    # (608 - 398 - 10) g by 9.14 g.
    assert pieces(RIVER_PEBBLE, wide)["dip"] == 21
    none = replace(KITCHEN, jugs=(jug(80),))
    # No jug takes the piece: nothing stands, all of it counts, and no jug is named.
    assert pieces(RIVER_PEBBLE, none)["dip"] == 66


def test_a_dip_too_small_for_the_jug_gives_none() -> None:
    little = replace(DIP, formula=formula("300 white couverture 35 %"))
    assert pieces(having(RIVER_PEBBLE, little))["dip"] == 0


def test_whips_cost_as_many_times_as_the_moulds_are_filled() -> None:
    double = tuple(
        replace(line, amount=stated(line.amount.value * 2, "g"))
        for line in GANACHE.formula
        if line.amount
    )
    # 1785.2 x 0.96 less 2 x 40 g by 38.5 g is 42.4; with one whip 24 cavities are filled.
    both = having(RIVER_PEBBLE, replace(GANACHE, formula=double))
    assert pieces(both)["ganache"] == 42


def test_a_whip_that_pays_for_itself_badly_is_not_begun() -> None:
    # 24.9 pieces with one whip, 23.9 with two: 24 cavities are filled once.
    cream = formula("1040 cream 35 %")
    more = having(RIVER_PEBBLE, replace(GANACHE, formula=cream))
    assert pytest.approx(24.89, abs=0.01) == (1040 * 0.96 - 40) / 38.504
    assert pieces(more)["ganache"] == 24


def test_a_component_nothing_uses_is_not_counted() -> None:
    spare = component("spare", formula("10 sugar"), 1)
    more = replace(MEADOW_DOMES, components=(*MEADOW_DOMES.components, spare))
    assert "spare" not in pieces(more)


def test_sauce_goes_by_portions_of_a_piece() -> None:
    cut = replace(RIVER_PEBBLE, portions=stated(2, "portions"))
    assert pieces(cut)["sauce"] == 12


def test_a_dessert_of_nothing_cannot_be_counted() -> None:
    nothing = replace(MEADOW_DOMES, layers=(), finish=())
    with pytest.raises(ValueError, match=r"^nothing in Meadow Domes can be counted$"):
        counts(nothing, KITCHEN, find)


def test_21_unfolds_to_the_lines_as_written() -> None:
    gives = one_count(RIVER_PEBBLE, "ganache").gives
    whipped = [part for _, part in unfold(gives) if part == GANACHE.whipped]
    lines = [
        part.origin.line
        for _, part in unfold(gives)
        if isinstance(part.origin, Stated) and part.origin.line
    ]
    assert whipped
    assert Line("desserts/test.yaml", 6, "400 cream 35 %") in lines
    rules = [str(getattr(part.origin, "rule", "")) for _, part in unfold(gives)]
    assert rules[:2] == [
        "rounded down",
        "(batch less 4 %) less 40 g a whip, by 38.5 g a piece",
    ]


@settings(max_examples=40, deadline=None)
@given(st.floats(0.05, 6), st.floats(1, 1.5), st.sampled_from(COMPONENTS))
def test_a_larger_batch_never_gives_less(
    factor: float, more: float, made: Component
) -> None:
    def gives(times: float) -> int:
        lines = tuple(
            replace(line, amount=_times(line.amount, times)) for line in made.formula
        )
        return pieces(having(RIVER_PEBBLE, replace(made, formula=lines)))[made.key]

    assert gives(factor) <= gives(factor * more)


def _times(amount: Figure | None, factor: float) -> Figure:
    assert amount is not None
    return replace(amount, value=amount.value * factor)


@settings(max_examples=40, deadline=None)
@given(st.floats(0.4, 1.2), st.floats(0, 0.2), st.floats(0, 0.2))
def test_the_likely_count_lies_between_low_and_high(
    density: float, below: float, above: float
) -> None:
    doubted = assumed(
        density, "g/ml", density - below, density + above, "whipped density"
    )
    found = counts(
        having(RIVER_PEBBLE, replace(GANACHE, whipped=doubted)), KITCHEN, find
    )
    for one in found.each:
        assert one.spread.low <= one.pieces <= one.spread.high
    assert found.pieces.likely == min(one.pieces for one in found.each)
