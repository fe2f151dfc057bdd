"""Packs, leads, money and days as a cook reads them."""

from datetime import date, datetime
from decimal import Decimal

from demould.mise.figure import Figure
from demould.mise.words import Words
from demould.office.buying import Call
from demould.office.money import rounded
from demould.office.stock import DAY_MIN
from demould.sheets.times import grams


def weight(value: float) -> str:
    """Give grams, or kilos from one up.

    >>> weight(1000), weight(1244.9), weight(183.8), weight(2500), weight(67.43)
    ('1 kg', '1.24 kg', '184 g', '2.5 kg', '67.4 g')
    """
    if value >= 1000:
        return f"{round(value / 1000, 2):g} kg"
    return f"{grams(value)} g"


def packs(call: Call) -> str:
    """Give ``2 x 1 kg``; grams where no pack size is written."""
    if not call.packs:
        return weight(call.short.value)
    return " + ".join(
        f"{one.count} x {weight(one.pack.size.value)}" for one in call.packs
    )


def lead(figure: Figure | None) -> Words | str:
    """Give ``1 day``, ``3 days``; hours under a day.

    >>> str(lead(Figure(value=4320, unit="min", name="lead")))
    '3 days'
    """
    if figure is None:
        return ""
    days = figure.value / DAY_MIN
    if days < 1:
        return Words("{n:g} h", n=figure.value / 60)
    return Words("1 day") if days == 1 else Words("{n:g} days", n=round(days, 1))


def money(amount: Decimal | None) -> str:
    """Give money to the cent, ``?`` where it is not known.

    >>> money(Decimal("24.5628")), money(None)
    ('24.56', '?')
    """
    return "?" if amount is None else f"{rounded(amount):f}"


def day(value: date | datetime) -> str:
    """Give ``Sat 21 Nov``.

    >>> day(date(2026, 11, 21))
    'Sat 21 Nov'
    """
    return f"{value:%a} {value.day} {value:%b}"


def which(call: Call) -> str:
    """Say how much of what: by the piece too, where it is bought so."""
    whole = call.need.whole
    count = f", about {whole.value:g}" if whole else ""
    gross = " gross" if call.stocked.trim else ""
    return f"{call.need.name}, {weight(call.need.have.value)}{gross}{count}"
