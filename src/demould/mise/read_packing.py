"""Lines of what pieces are packed in, and of what is drawn from the wall."""

import re
from decimal import Decimal

from demould.mise.figure import Line
from demould.mise.kitchen import Draws, Packing
from demould.mise.number import NUMBER, read_number
from demould.mise.parts import after, at_column, name_and_rest
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_count
from demould.mise.read_price import read_money
from demould.mise.words import Words

MOST_IN_A_BOX = 9999
_EACH = re.compile(r"(.*\S)\s+each")
_KWH = re.compile(r"(.*\S)\s*(?:\ba\b|\bper\b|/)\s*kWh")
_KW = re.compile(rf"({NUMBER})\s*kW")


def read_packing(line: Line) -> Packing:
    """``cake box; 0.60 each; takes 6; for meadow-domes, ember-log``.

    Raises
    ------
    UnreadableError
        If its price or number cannot be read, or no price is there.
    """
    name, rest = name_and_rest(line.text)
    price, takes = None, 1
    desserts: tuple[str, ...] = ()
    for part in rest:
        with at_column(part.column):
            if money := _EACH.fullmatch(part.text):
                price, _ = read_money(money[1], "price of a box")
            elif told := after(part.text, "takes"):
                takes = read_count(told, name="number in a box", most=MOST_IN_A_BOX)
            elif told := after(part.text, "for"):
                desserts = tuple(one.strip() for one in told.split(",") if one.strip())
            else:
                raise UnreadableError(
                    Words("{found!r} says nothing about a box", found=part.text),
                    Words("Write it like cake box; 0.60 each; takes 6"),
                )
    if price is None:
        raise UnreadableError(
            Words("nobody says what {name!r} costs", name=name.text),
            Words("Write it like {name}; 0.60 each; takes 6", name=name.text),
        )
    return Packing(
        name=name.text, price=price, takes=takes, desserts=desserts, line=line
    )


def read_energy(line: Line) -> Decimal:
    """``0.30 a kWh``.

    Raises
    ------
    UnreadableError
        If it is not money a kWh.
    """
    found = _KWH.fullmatch(line.text)
    if not found:
        raise UnreadableError(
            Words("{found!r} is not money a kWh", found=line.text),
            Words("Write it like 0.30 a kWh"),
        )
    amount, _ = read_money(found[1], "price of energy")
    return amount


def read_draws(line: Line) -> Draws:
    """``oven; 3.5 kW``.

    Raises
    ------
    UnreadableError
        If no kW stand behind the name.
    """
    name, rest = name_and_rest(line.text)
    found = _KW.fullmatch(rest[0].text) if len(rest) == 1 else None
    if not found:
        raise UnreadableError(
            Words("{found!r} does not say how many kW", found=line.text),
            Words("Write it like oven; 3.5 kW"),
        )
    return Draws(name=name.text, kilowatts=read_number(found[1]), line=line)
