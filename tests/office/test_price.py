"""Prices from a share and from a margin, worked by hand, and the laws they keep."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.mise.figure import Figure
from demould.office.cost import Cost, Line
from demould.office.labour import Labour
from demould.office.price import (
    price_as_sold,
    price_from_margin,
    price_from_share,
    verdict,
)

SHARES = st.decimals(1, 99, places=1)


def cost(ingredients: str, labour: str, sold: int = 10) -> Cost:
    return Cost(
        order="lunch",
        name="Dome",
        made=sold,
        sold=sold,
        lines=(
            Line(
                component="mousse",
                ingredient="cream",
                grams=1,
                money=Decimal(ingredients),
            ),
        ),
        beside=(),
        packing=Decimal(0),
        labour=Labour(
            minutes=Figure(name="hands", value=60, unit="min"),
            wage=Figure(name="wage", value=20, unit="an hour"),
            money=Decimal(labour),
        ),
        energy=None,
        assumed=(),
    )


# 10.00 of ingredients for 10 pieces: 1.00 each; at 25 % 4.00, with 20 % tax 4.80. All
# that it costs is 3.00: it pays.
def test_a_share_worked_by_hand() -> None:
    price = price_from_share(cost("10", "20"), Decimal(25), Decimal(20))
    assert (price.net, price.gross, price.pays) == (Decimal(4), Decimal("4.8"), True)


# 3.00 a piece and 40 % of the price left: 5.00.
def test_a_margin_worked_by_hand() -> None:
    price = price_from_margin(cost("10", "20"), Decimal(40), Decimal(0))
    assert (price.net, price.gross) == (Decimal(5), Decimal(5))


def test_sold_under_cost_is_said_aloud() -> None:
    """3.00 with 20 % tax are 2.50: 0.50 under the 3.00 it costs."""
    found = cost("10", "20")
    price = price_as_sold(found, Decimal("3.00"), Decimal(20))
    assert str(verdict(found, price)) == (
        "at 2.50 before tax a piece loses 0.50: it costs 3.00"
    )
    assert verdict(found, price_as_sold(found, Decimal("3.60"), Decimal(20))) is None


@given(share=SHARES, tax=st.decimals(0, 30, places=1))
def test_of_every_price_the_ingredients_are_the_share(
    share: Decimal, tax: Decimal
) -> None:
    found = cost("12.34", "56.78", 7)
    price = price_from_share(found, share, tax)
    assert abs(found.ingredients / 7 / price.net - share / 100) < Decimal("1e-20")
    assert abs(price.gross - price.net * (1 + tax / 100)) < Decimal("1e-20")


@given(margin=SHARES)
def test_of_every_price_the_margin_is_left(margin: Decimal) -> None:
    found = cost("12.34", "56.78", 7)
    price = price_from_margin(found, margin, Decimal(0))
    left = (price.net - found.a_sold_piece) / price.net
    assert abs(left - margin / 100) < Decimal("1e-20")
    assert price.pays


def test_what_can_be_no_share_is_refused() -> None:
    with pytest.raises(
        ValueError, match="a share of 0 %; it must be over 0, up to 100 %"
    ):
        price_from_share(cost("1", "1"), Decimal(0), Decimal(0))
    with pytest.raises(
        ValueError, match="a margin of 100 %; it must be from 0, under 100 %"
    ):
        price_from_margin(cost("1", "1"), Decimal(100), Decimal(0))
