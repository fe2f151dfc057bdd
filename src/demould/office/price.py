"""What to charge: from what ingredients may be of the price, or from a margin."""

from dataclasses import dataclass
from decimal import Decimal

from demould.mise.figure import Figure
from demould.mise.words import Words
from demould.office.cost import Cost
from demould.office.money import exact, rounded

USUAL_SHARE = Decimal(25)
"""What ingredients are of a price before tax, in %, where nobody says."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """A price of one piece before tax and with it, and what says so.

    `pays` is whether it covers all that a piece costs.
    """

    net: Decimal
    gross: Decimal
    rule: Words
    pays: bool


def price_from_share(cost: Cost, share: Decimal, tax: Decimal) -> Price:
    """Price a piece so that its ingredients are `share` % of it before tax.

    Ingredients are those in the piece, by the pieces sold.

    Raises
    ------
    ValueError
        If the share is not between 0 and 100 %.
    """
    if not 0 < share <= 100:
        raise ValueError(f"a share of {share:f} %; it must be over 0, up to 100 %")
    net = cost.ingredients / cost.sold * 100 / share
    rule = Words("ingredients {share:f} % of it", share=share.normalize())
    return _price(cost, net, tax, rule)


def price_from_margin(cost: Cost, margin: Decimal, tax: Decimal) -> Price:
    """Price a piece so that `margin` % of it before tax is left over all it costs.

    Raises
    ------
    ValueError
        If the margin is not from 0 to under 100 %.
    """
    if not 0 <= margin < 100:
        raise ValueError(f"a margin of {margin:f} %; it must be from 0, under 100 %")
    net = cost.a_sold_piece * 100 / (100 - margin)
    rule = Words("{margin:f} % of it left over", margin=margin.normalize())
    return _price(cost, net, tax, rule)


def price_as_sold(cost: Cost, gross: Decimal, tax: Decimal) -> Price:
    """Judge the price an order names, tax with it."""
    net = gross * 100 / (100 + tax)
    return _price(cost, net, tax, Words("as sold"))


def _price(cost: Cost, net: Decimal, tax: Decimal, rule: Words) -> Price:
    return Price(
        net=net,
        gross=net * (100 + tax) / 100,
        rule=rule,
        pays=net >= cost.a_sold_piece,
    )


def percent(figure: Figure | None, usual: Decimal) -> Decimal:
    """Give a share a kitchen wrote, in %, or the usual one."""
    return usual if figure is None else exact(figure.value)


def verdict(cost: Cost, price: Price) -> Words | None:
    """Say aloud that a price does not pay; None where it does."""
    if price.pays:
        return None
    lost = cost.a_sold_piece - price.net
    return Words(
        "at {price} before tax a piece loses {lost}: it costs {cost}",
        price=rounded(price.net),
        lost=rounded(lost),
        cost=rounded(cost.a_sold_piece),
    )
