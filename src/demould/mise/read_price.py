"""Money: what a kilo or a pack costs, and the packs a thing is sold in."""

import re
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from demould.mise.figure import Line
from demould.mise.keys import Keys
from demould.mise.number import NUMBER, read_number
from demould.mise.own_larder import Pack, Priced
from demould.mise.parts import at_column, parts_of
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_figure
from demould.mise.words import Words

FREE = "free"
_NAME = r"(?:[^\W\d]+|[\u20ac\u00a3$])"
_MONEY = re.compile(rf"({_NAME})?\s*({NUMBER})\s*({_NAME})?")
_PRICE = re.compile(r"(.*\S)\s*(?:\ba\b|\bper\b|/)\s*(kg|pack)(?:\s+(gross|net))?")
_AT = re.compile(r"(.*\S)\s+at\s+(\S.*)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """So much money a kg or a pack, in a money that may be named."""

    amount: Decimal
    per: Literal["kg", "pack"] = "kg"
    priced: Priced = ""
    money: str = ""


def read_money(text: str, name: str) -> tuple[Decimal, str]:
    """An amount of money and what it is called, where it is: ``5.20``, ``5,20 EUR``.

    Raises
    ------
    UnreadableError
        If it is none, less than 0, or 0.
    """
    found = _MONEY.fullmatch(text.strip())
    if not found or (found[1] and found[3]):
        raise UnreadableError(
            Words("the {name}, {found!r}, is not money", name=name, found=text),
            Words("Write it like 5.20, or 5.20 EUR"),
        )
    amount = read_number(found[2])
    if amount < 0:
        raise UnreadableError(
            Words("the {name} is {found!r}, less than 0", name=name, found=text),
            Words("Write it without the minus sign"),
        )
    if amount == 0:
        raise UnreadableError(
            Words("the {name} is 0, and nobody says that it costs nothing", name=name),
            Words("Write price: free if so, or take the line away until it is known"),
        )
    return amount, found[1] or found[3] or ""


def read_price(line: Line) -> Price:
    """``5.20 a kg``, ``4.20 a kg gross``, ``4.20 a kg net``, ``6 EUR a pack``, ``free``.

    Raises
    ------
    UnreadableError
        If it is none of these.
    """
    if line.text == FREE:
        return Price(amount=Decimal(0))
    found = _PRICE.fullmatch(line.text)
    money = found and _MONEY.fullmatch(found[1])
    if not found or not money or read_number(money[2]) < 0:
        raise UnreadableError(
            Words("the price, {found!r}, is not money a kg", found=line.text),
            Words("Write it like 5.20 a kg, or 4.20 a kg gross for untrimmed"),
        )
    amount, called = read_money(found[1], "price")
    per: Literal["kg", "pack"] = "pack" if found[2] == "pack" else "kg"
    priced: Priced = ""
    if found[3] is not None:
        priced = "gross" if found[3] == "gross" else "net"
    return Price(amount=amount, per=per, priced=priced, money=called)


def read_packs(line: Line) -> tuple[tuple[Pack, str], ...]:
    """``1000 g``, ``250 g at 1.60; 1000 g at 5.20``: each with its money's name.

    Raises
    ------
    UnreadableError
        If a size or its price cannot be read, or a size is there twice.
    """
    packs: list[tuple[Pack, str]] = []
    for part in parts_of(line.text):
        with at_column(part.column):
            priced = _AT.fullmatch(part.text)
            size = read_figure(
                priced[1] if priced else part.text,
                name="pack",
                kinds=("mass",),
                line=line,
            )
            if any(size.value == pack.size.value for pack, _ in packs):
                raise UnreadableError(
                    Words("a pack of {size} is here twice", size=size),
                    Words("Keep one of them, with the price that is right"),
                )
            price, money = (
                read_money(priced[2], "price of a pack") if priced else (None, "")
            )
            packs.append((Pack(size=size, price=price), money))
    return tuple(packs)


def price_and_packs(keys: Keys) -> tuple[Price | None, tuple[Pack, ...], str]:
    """Give what a kg costs, the packs, and what the money is called: one price, not two."""
    price = keys.read("price", read_price)
    told = keys.read("pack", read_packs) or ()
    packs = tuple(pack for pack, _ in told)
    own = next((pack for pack in packs if pack.price is not None), None)
    called = [*(name for _, name in told), price.money if price else ""]
    money = next(filter(None, called), "")
    if price and own:
        keys.faults.tell(
            keys.place("price"),
            Words(
                "there are two prices: {price} a {per}, and {size} at {own}",
                price=price.amount,
                per=price.per,
                size=own.size,
                own=own.price,
            ),
            Words("Keep the one that is on the last bill"),
        )
    elif price and price.per == "pack" and len(packs) == 1:
        return None, (replace(packs[0], price=price.amount),), money
    elif price and price.per == "pack":
        _tell_no_size(keys, price, packs)
        return None, packs, money
    return price, packs, money


def _tell_no_size(keys: Keys, price: Price, packs: tuple[Pack, ...]) -> None:
    sizes = ", ".join(str(pack.size) for pack in packs)
    keys.faults.tell(
        keys.place("price"),
        Words(
            "the price is {price} a pack, and packs are of {sizes}",
            price=price.amount,
            sizes=sizes,
        )
        if packs
        else Words(
            "the price is {price} a pack, and no pack size is written",
            price=price.amount,
        ),
        Words(
            "Write each with its own price, for example pack: 250 g at 1.60; 1000 g at 5.20"
        )
        if packs
        else Words("Write what is in a pack, for example pack: 1000 g"),
    )
