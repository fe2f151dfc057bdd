"""Money against what the decimal module documents of its rounding."""

from decimal import ROUND_HALF_UP, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.office.money import exact, rounded, total

# Python documentation, library reference, "decimal": ROUND_HALF_UP is "round to nearest
# with ties going away from zero"; quantize keeps the exponent of its argument; "decimal
# numbers can be represented exactly", 1.1 + 2.2 is not 3.3000000000000003.
HALF_UP = [
    ("2.344999", "2.34"),
    ("2.345", "2.35"),
    ("2.335", "2.34"),
    ("-2.345", "-2.35"),
    ("24.5628206", "24.56"),
    ("0.005", "0.01"),
    ("7", "7.00"),
]


@pytest.mark.parametrize(("amount", "cents"), HALF_UP)
def test_half_a_cent_goes_away_from_zero(amount: str, cents: str) -> None:
    assert str(rounded(Decimal(amount))) == cents


def test_what_floats_get_wrong_money_gets_right() -> None:
    assert 1.1 + 2.2 != 3.3
    assert exact(1.1) + exact(2.2) == exact(3.3)
    assert total([Decimal("0.1")] * 3) - Decimal("0.3") == 0


@given(st.decimals(-(10**9), 10**9, places=6))
def test_a_rounded_sum_is_never_more_than_half_a_cent_off(amount: Decimal) -> None:
    assert abs(rounded(amount) - amount) <= Decimal("0.005")
    assert rounded(amount) == amount.quantize(Decimal("0.01"), ROUND_HALF_UP)
