"""Prices, packs and suppliers as they are written, and every way to write them wrong."""

from collections.abc import Callable
from datetime import time
from decimal import Decimal
from typing import Any

import pytest

from demould.mise.read_kitchen import read_kitchen
from demould.mise.read_larder import read_larder

Read = Callable[..., tuple[Any, list[str]]]


def larder(*below: str) -> str:
    lines = "".join(f"  {line}\n" for line in below)
    return f"cream:\n  like: cream_35\n{lines}"


@pytest.mark.parametrize(
    ("written", "price", "priced", "money"),
    [
        ("5.20 a kg", "5.20", "", ""),
        ("5,20 EUR a kg", "5.20", "", "EUR"),
        ("€ 5.20 per kg net", "5.20", "net", "€"),
        ("4.20/kg gross", "4.20", "gross", ""),
        ("free", "0", "", ""),
    ],
)
def test_a_price_a_kg(
    read: Read, written: str, price: str, priced: str, money: str
) -> None:
    (entry,), faults = read(read_larder, larder(f"price: {written}"))
    assert faults == []
    assert (entry.price, entry.priced, entry.money) == (Decimal(price), priced, money)


def test_packs_with_their_own_prices(read: Read) -> None:
    text = larder("pack: 250 g at 1.60 EUR; 1 kg at 5.20 EUR")
    (entry,), faults = read(read_larder, text)
    assert faults == []
    assert [(pack.size.value, pack.price) for pack in entry.packs] == [
        (250, Decimal("1.60")),
        (1000, Decimal("5.20")),
    ]
    assert (entry.price, entry.money) == (None, "EUR")


def test_a_price_a_pack_is_the_one_packs(read: Read) -> None:
    (entry,), faults = read(read_larder, larder("price: 6 a pack", "pack: 500 g"))
    assert faults == []
    assert [(pack.size.value, pack.price) for pack in entry.packs] == [(500, 6)]


def test_what_is_made_here_and_who_brings_it(read: Read) -> None:
    text = larder("supplier: Weir Dairy", "keeps: 3 d") + (
        "brown:\n  like: butter_brown\n  made from: cream; 80 % comes out\n"
    )
    (cream, brown), faults = read(read_larder, text)
    assert faults == []
    assert (cream.supplier, cream.keeps.value) == ("Weir Dairy", 3 * 24 * 60)
    assert (brown.made_from.what, brown.made_from.out.value) == ("cream", 80)


@pytest.mark.parametrize(
    ("below", "message"),
    [
        (
            ["price: 5 a pack"],
            "3:3: the price is 5 a pack, and no pack size is written. Write what is in a"
            " pack, for example pack: 1000 g.",
        ),
        (
            ["price: 5 a pack", "pack: 250 g; 1000 g"],
            "3:3: the price is 5 a pack, and packs are of 250 g, 1000 g. Write each with"
            " its own price, for example pack: 250 g at 1.60; 1000 g at 5.20.",
        ),
        (
            ["price: 5.20 a kg", "pack: 1000 g at 5.00"],
            "3:3: there are two prices: 5.20 a kg, and 1000 g at 5.00. Keep the one that"
            " is on the last bill.",
        ),
        (
            ["price: 5.20 a kg", "price: 5.00 a kg"],
            "4:3: 'price' is here twice, first on line 3. Keep one of the two.",
        ),
        (
            ["price: 0 a kg"],
            "3:10: the price is 0, and nobody says that it costs nothing. Write price: free"
            " if so, or take the line away until it is known.",
        ),
        (
            ["pack: 250 g at lots"],
            "3:9: the price of a pack, 'lots', is not money. Write it like 5.20, or 5.20"
            " EUR.",
        ),
        (
            ["pack: 250 g at -2"],
            "3:9: the price of a pack is '-2', less than 0. Write it without the minus"
            " sign.",
        ),
        (
            ["pack: 250 g; 250 g at 2"],
            "3:16: a pack of 250 g is here twice. Keep one of them, with the price that"
            " is right.",
        ),
        (
            ["stock: -3 g"],
            "3:10: the stock is '-3 g', less than 0. Write it without the minus sign.",
        ),
        (
            ["made from: milk; 80 % comes out"],
            "3:14: the larder has no 'milk'. Write an entry for it.",
        ),
        (
            ["made from: cream"],
            "3:14: 'cream' does not say how much comes out. Write it like butter 82 %; 80"
            " % comes out.",
        ),
        (
            ["made from: cream; 80 % comes out"],
            "3:14: 'cream' is made from 'cream', which is made here too. Name what is"
            " bought.",
        ),
    ],
)
def test_a_bad_price(read: Read, below: list[str], message: str) -> None:
    assert read(read_larder, larder(*below))[1] == [f"x.yaml:{message}"]


def test_two_moneys(read: Read) -> None:
    text = larder("price: 5 EUR a kg") + "milk:\n  like: milk\n  price: 2 GBP a kg\n"
    assert read(read_larder, text)[1] == [
        "x.yaml:4:1: 'milk' is priced in GBP, 'cream' in EUR. Write all prices in one"
        " money."
    ]


def test_a_supplier(read: Read) -> None:
    text = """kitchen: K
zone: UTC
cost share: 25 %
tax: 20 %
suppliers: |
  Weir Dairy; delivers Tue to Sat by 08:30; order by 15:00; lead 1 day; at least 30.00; ring
  Hill; delivers Mon
"""
    kitchen, faults = read(read_kitchen, text)
    assert faults == []
    dairy, hill = kitchen.suppliers
    assert (dairy.name, dairy.weekdays) == ("Weir Dairy", (1, 2, 3, 4, 5))
    assert (dairy.by, dairy.order_by) == (time(8, 30), time(15))
    assert (dairy.lead.value, dairy.least) == (1440, Decimal("30.00"))
    assert dairy.remarks == ("ring",)
    assert (hill.weekdays, hill.by) == ((0,), None)
    assert (kitchen.cost_share.value, kitchen.tax.value) == (25, 20)


@pytest.mark.parametrize(
    ("line", "message"),
    [
        (
            "Hill; delivers Xday",
            "4:9: 'Xday' is not a weekday. Write Mon, Tue, Wed, Thu, Fri, Sat or Sun.",
        ),
        (
            "Hill; order by 26:00",
            "4:9: '26:00' is not a time of day. Write it from 00:00 to 23:59, for example"
            " 09:30.",
        ),
        (
            "Hill; at least some",
            "4:9: the least order, 'some', is not money. Write it like 5.20, or 5.20 EUR.",
        ),
    ],
)
def test_a_bad_supplier(read: Read, line: str, message: str) -> None:
    text = f"kitchen: K\nzone: UTC\nsuppliers: |\n  {line}\n"
    assert read(read_kitchen, text)[1] == [f"x.yaml:{message}"]
