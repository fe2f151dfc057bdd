"""Every gram taken is sold, spare, lost, left over or strained out."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.demo import NOW
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.figure import Figure
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.office.needs import uses_of
from demould.week.faults import faults_of
from demould.week.ledger import CLOSED_WITHIN_G, Entry, ledger_of, totals
from demould.week.office import ordered_of
from demould.week.orders import makings_of
from tests.demo_folder import demo_folder, demo_makings

FIND = find_in(demo_folder().larder)


def _demo(component: str) -> Entry:
    entries = ledger_of(demo_makings(), FIND)
    return next(one for one in entries if one.component == component)


def test_the_week_of_the_demo_is_closed() -> None:
    entries = ledger_of(demo_makings(), FIND)
    assert {one.order for one in entries} == {"domes to collect", "saturday dinner"}
    assert max(abs(one.off) for one in entries) < CLOSED_WITHIN_G


def test_a_ganache_for_27_is_1040_in_pieces_and_127_lost() -> None:
    # 27 x 38.5 g = 1040; 4 % of 1167 and 40 g a whip, two whips: 127. Of the pieces 24
    # are sold. 45 g groats x 1.307 and 1.1 times as much cream with them: 123.5.
    ganache = _demo("ganache")
    assert ganache.sold + ganache.spares == pytest.approx(1040, abs=0.5)
    assert ganache.sold == pytest.approx(1040 * 24 / 27, abs=0.5)
    assert ganache.lost == pytest.approx(127, abs=0.5)
    assert ganache.strained_out == pytest.approx(45 * 1.307 * 2.1, abs=0.1)
    assert ganache.taken == pytest.approx(1167 + 123.5, abs=0.5)


def test_what_cooks_away_is_lost_and_what_the_jug_keeps_is_left() -> None:
    # 4 % of 589.5 g cooks away, 2 % of the rest and 20 g stick: 54.9 g.
    assert _demo("centre").lost in (
        pytest.approx(54.9, abs=0.1),
        pytest.approx(24.7, abs=0.1),
    )
    # 313 g for the last piece and 10 g heel.
    assert _demo("dip").left == pytest.approx(323, abs=1)


def test_sauce_and_groats_are_for_the_plates_not_for_the_spares() -> None:
    assert _demo("sauce").sold == pytest.approx(24 * 15)
    assert _demo("sauce").spares == 0
    assert _demo("plate").taken == 24 * 2


def test_it_takes_what_the_needs_say() -> None:
    uses = [
        use for making in demo_makings() for use in uses_of(ordered_of(making), FIND)
    ]
    needed = sum(use.grams for use in uses if use.component)
    taken = totals(
        (one for one in ledger_of(demo_makings(), FIND) if one.component != "plate"), ""
    ).taken
    assert taken == pytest.approx(needed)


def _scaled(figure: Figure | None, by: float) -> Figure | None:
    return None if figure is None else replace(figure, value=figure.value * by)


@st.composite
def kitchens(draw: st.DrawFn) -> Folder:
    """The demo with its losses, densities, amounts, orders and moulds changed."""
    folder = demo_folder()
    by = st.floats(0.6, 1.5)

    def changed(component: Component) -> Component:
        loss = component.loss
        amount = draw(by)
        density = draw(st.floats(0.9, 1.1))
        return replace(
            component,
            density=replace(component.density, value=component.density.value * density),
            whipped=_scaled(component.whipped, density),
            cooked_away=_scaled(component.cooked_away, draw(st.floats(0, 3))),
            loss=replace(
                loss,
                share=replace(loss.share, value=draw(st.floats(0, 30))),
                fixed=_scaled(loss.fixed, draw(by)),
            ),
            formula=tuple(
                replace(line, amount=_scaled(line.amount, amount))
                for line in component.formula
            ),
        )

    desserts: tuple[Dessert, ...] = tuple(
        replace(one, components=tuple(changed(part) for part in one.components))
        for one in folder.desserts
    )
    moulds = tuple(
        replace(mould, trays=draw(st.integers(1, 6))) for mould in folder.kitchen.moulds
    )
    breakage = replace(folder.kitchen.breakage, value=draw(st.floats(0, 30)))
    return replace(
        folder,
        desserts=desserts,
        kitchen=replace(folder.kitchen, moulds=moulds, breakage=breakage),
        orders=tuple(
            replace(order, pieces=draw(st.integers(1, 90))) for order in folder.orders
        ),
    )


@given(kitchens())
def test_every_week_is_closed(folder: Folder) -> None:
    if faults_of(folder, NOW):
        return
    try:
        makings = makings_of(folder, NOW)
    except ValueError:
        return
    entries = ledger_of(makings, find_in(folder.larder))
    assert max(abs(one.off) for one in entries) < CLOSED_WITHIN_G
    assert all(
        min(one.sold, one.spares, one.lost, one.left, one.strained_out) >= -1e-9
        for one in entries
    )
