"""Money is counted exactly and rounded once, at the end, as a till does."""

from decimal import ROUND_HALF_UP, Decimal

CENT = Decimal("0.01")


def exact(value: float) -> Decimal:
    """Take a number over into money's arithmetic by its shortest written form.

    >>> exact(0.1) * 3
    Decimal('0.3')
    """
    return Decimal(str(value))


def rounded(amount: Decimal) -> Decimal:
    """Give money to the cent, half a cent up: for reading, never to count on with.

    >>> rounded(Decimal("2.345")), rounded(Decimal("2.344999"))
    (Decimal('2.35'), Decimal('2.34'))
    """
    return amount.quantize(CENT, rounding=ROUND_HALF_UP)


def total(amounts: "list[Decimal] | tuple[Decimal, ...]") -> Decimal:
    """Add money up; nothing is 0, as money.

    >>> total([Decimal("0.10"), Decimal("0.20")])
    Decimal('0.30')
    """
    return sum(amounts, Decimal(0))
