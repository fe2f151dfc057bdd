"""From the market box to usable grams and back: gross, net, and how many whole ones."""

from collections.abc import Iterator
from dataclasses import dataclass

from demould.larder.read import unit_weight
from demould.matter.grams import Find, known, weighed_lines
from demould.mise.component import Component
from demould.mise.figure import Figure, worked
from demould.mise.formula import FormulaLine

_JUICE = " juice"


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole:
    """Whole fruit or eggs that a line takes: net grams, gross grams, how many.

    `gross` is None where nothing is cut away or pressed out.
    """

    what: str
    net: Figure
    gross: Figure | None
    pieces: Figure


def gross_of(net: Figure, trim: Figure) -> Figure:
    """Give what has to be bought for so much that is usable [g].

    Parameters
    ----------
    net
        Usable grams.
    trim
        The share of the bought weight that is cut away. [%] Under 100.
    """
    value = net.value / (1 - trim.value / 100)
    return worked(
        f"{net.name}, gross", value, "g", "net by what is not cut away", net, trim
    )


def wholes(component: Component, find: Find) -> Iterator[Whole]:
    """Every line in grams that is bought whole: fruit, juice of fruit, eggs."""
    for line, grams in weighed_lines(component.formula, find):
        if line.amount is not None and line.amount.unit == "pieces":
            continue
        found = whole_of(line, grams)
        if found is not None:
            yield found


def whole_of(line: FormulaLine, net: Figure) -> Whole | None:
    """Whole ones for the grams of a line; None where it is not bought whole.

    Pear is bought untrimmed; lemon juice is so much of one lemon; an egg's part is so
    much of one egg.
    """
    fruit = line.what.casefold().removesuffix(_JUICE)
    juice = unit_weight(fruit, "juice") if fruit != line.what.casefold() else None
    one = juice or unit_weight(line.what)
    if one is None or "gelatin" in line.what.casefold() or one.unit != "g":
        return None
    trimmed = None if juice else unit_weight(line.what, "trim")
    gross = gross_of(net, known(trimmed, f"trim of {line.what}")) if trimmed else None
    each = known(one, f"{line.what}, one")
    bought = gross or net
    pieces = worked(
        f"{line.what}, whole",
        bought.value / each.value,
        "pieces",
        "grams by grams of one",
        bought,
        each,
    )
    return Whole(
        what=fruit if juice else line.what, net=net, gross=gross, pieces=pieces
    )
