"""The choice of packs, against trying every number of every size, and a solver."""

from decimal import Decimal
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ortools.sat.python import cp_model

from demould.mise.figure import Figure
from demould.mise.own_larder import Pack, Stocked
from demould.office.packs import cheapest_counts, least_cost, price_of
from tests.office.larder_by_hand import stocked

SIZES = st.lists(st.integers(1, 12), min_size=1, max_size=3, unique=True)


def judged(
    counts: tuple[int, ...], sizes: list[Decimal], costs: list[Decimal]
) -> tuple[Decimal, Decimal, int]:
    return (
        sum((n * cost for n, cost in zip(counts, costs, strict=True)), Decimal(0)),
        sum((n * size for n, size in zip(counts, sizes, strict=True)), Decimal(0)),
        sum(counts),
    )


@given(short=st.integers(0, 40), sizes=SIZES, data=st.data())
def test_it_is_the_best_of_all_there_are(
    short: int, sizes: list[int], data: st.DataObject
) -> None:
    costs = [Decimal(data.draw(st.integers(1, 30))) / Decimal(10) for _ in sizes]
    exact = [Decimal(size) for size in sizes]
    found = cheapest_counts(Decimal(short), exact, costs)
    every = (
        judged(counts, exact, costs)
        for counts in product(*(range(-(-short // size) + 1) for size in sizes))
        if sum(n * size for n, size in zip(counts, sizes, strict=True)) >= short
    )
    assert judged(found, exact, costs) == min(every)


def test_of_two_that_cost_the_same_the_one_with_less_left_over() -> None:
    # 9 + 9 g and 9 + 10 g both cost 2.8; 1.4 / 9 a gram has no end in decimals.
    costs = [Decimal("1.4"), Decimal("1.4")]
    assert cheapest_counts(Decimal(18), [Decimal(9), Decimal(10)], costs) == (2, 0)


# Sizes and prices that no eye can judge; the solver proves the least cost.
@pytest.mark.parametrize("short", [9_997, 123_457, 250_001])
def test_a_solver_finds_nothing_cheaper(short: int) -> None:
    sizes, cents = (
        [250, 397, 1000, 2270, 5000, 10000],
        [171, 243, 561, 1249, 2599, 5333],
    )
    model = cp_model.CpModel()
    counts = [model.new_int_var(0, 2000, str(size)) for size in sizes]
    model.add(sum(n * size for n, size in zip(counts, sizes, strict=True)) >= short)
    model.minimize(sum(n * cent for n, cent in zip(counts, cents, strict=True)))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    assert solver.solve(model) == cp_model.OPTIMAL
    found = cheapest_counts(
        Decimal(short), [Decimal(s) for s in sizes], [Decimal(c) for c in cents]
    )
    paid = sum(n * cent for n, cent in zip(found, cents, strict=True))
    assert paid == solver.objective_value
    assert sum(n * size for n, size in zip(found, sizes, strict=True)) >= short


def of_packs(*packs: tuple[float, str | None], price: str | None = None) -> Stocked:
    return stocked(
        "cream",
        price=None if price is None else Decimal(price),
        packs=tuple(
            Pack(
                size=Figure(name="pack", value=size, unit="g"),
                price=None if each is None else Decimal(each),
            )
            for size, each in packs
        ),
    )


def bought(short: float, one: Stocked) -> list[tuple[int, float]]:
    return [(each.count, each.pack.size.value) for each in least_cost(short, one)]


def test_a_large_pack_is_bought_where_it_is_cheaper() -> None:
    """700 g: 3 x 250 g cost 4.80, 1 kg costs 4.50."""
    one = of_packs((250, "1.60"), (1000, "4.50"))
    assert bought(700, one) == [(1, 1000)]
    assert bought(500, one) == [(2, 250)]


def test_at_one_price_a_kilo_least_is_left_over() -> None:
    one = of_packs((400, None), (1000, None), price="5.20")
    assert bought(1100, one) == [(3, 400)]
    assert bought(1400, one) == [(1, 400), (1, 1000)]


def test_without_any_price_least_is_left_over() -> None:
    assert bought(1100, of_packs((400, None), (1000, None))) == [(3, 400)]


def test_exactly_a_pack_is_one_pack_and_a_speck_more_is_two() -> None:
    one = of_packs((1000, None), price="5.20")
    assert bought(1000, one) == [(1, 1000)]
    assert bought(1000.01, one) == [(2, 1000)]


def test_nothing_short_or_no_pack_buys_nothing() -> None:
    assert least_cost(0, of_packs((1000, "5.20"))) == ()
    assert least_cost(500, of_packs()) == ()


# 4.20 for a kilo peeled and cored; of a kilo bought 800 g are left: 3.36 (by hand).
def test_a_price_net_is_that_of_what_is_left_of_a_pack() -> None:
    pear = stocked(
        "pear",
        price=Decimal("4.20"),
        priced="net",
        trim=Figure(name="trim", value=20, unit="%"),
        packs=(Pack(size=Figure(name="pack", value=1000, unit="g")),),
    )
    assert price_of(pear.packs[0], pear) == Decimal("3.36")
