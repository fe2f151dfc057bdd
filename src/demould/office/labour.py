"""Minutes of hands an order takes, out of the plan's own steps."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from demould.mise.figure import Figure, Stated, worked
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.office.money import exact
from demould.plan.kitchen.from_kitchen import Laid
from demould.plan.kitchen.lines import hands_min


@dataclass(frozen=True, slots=True, kw_only=True)
class Labour:
    """Person-minutes of an order, what an hour costs, and what all of them do.

    `wage` and `money` are None where no wage is written.
    """

    minutes: Figure
    wage: Figure | None
    money: Decimal | None


def labour_of(
    laid: Laid, kitchen: Kitchen, pieces: Mapping[str, int]
) -> dict[str, Labour]:
    """Give the labour of every order of a plan.

    Minutes are those the methods say, not rounded to the plan's. What is made once for
    several orders is parted by their `pieces`. The hour is the mean of the wages that
    are written.
    """
    minutes = dict.fromkeys(pieces, 0.0)
    for step in laid.problem.steps:
        part = laid.parts[step.id]
        if part.stands or part.step.hands is None:
            continue
        whole = hands_min(part.step.hands, part.pieces, part.make.order.pieces)
        shared = sum(pieces[order] for order in step.order)
        for order in step.order:
            minutes[order] += whole * pieces[order] / shared
    wage = wage_of(kitchen)
    return {order: _labour(order, each, wage) for order, each in minutes.items()}


def wage_of(kitchen: Kitchen) -> Figure | None:
    """Give what an hour of hands costs: the mean of the wages that are written."""
    wages = [person.wage for person in kitchen.people if person.wage is not None]
    if not wages:
        return None
    if len(wages) == 1:
        return wages[0]
    mean = sum(wage.value for wage in wages) / len(wages)
    return worked("an hour of hands", mean, "an hour", "the mean of the wages", *wages)


def _labour(order: str, minutes: float, wage: Figure | None) -> Labour:
    return Labour(
        minutes=Figure(
            name=f"hands for {order}",
            value=minutes,
            unit="min",
            origin=Stated(by="methods"),
        ),
        wage=wage,
        money=None if wage is None else exact(minutes) * exact(wage.value) / 60,
    )


def in_words(labour: Labour) -> Words:
    """Say the minutes, and what an hour is."""
    if labour.wage is None:
        return Words(
            "{min:.0f} min of hands, no wage written", min=labour.minutes.value
        )
    return Words(
        "{min:.0f} min of hands at {wage:g} an hour",
        min=labour.minutes.value,
        wage=labour.wage.value,
    )
