"""What guests are told of the week's orders, and of every dessert in every variant."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from demould.care.guest import ForGuests, for_guests
from demould.care.requests import Answered, answer
from demould.care.shared import Dipped
from demould.larder.requests import requests
from demould.mise.dessert import Dessert
from demould.mise.folder import Folder, dessert_of
from demould.mise.order import Asked, Order
from demould.mise.variant import as_variant
from demould.mise.words import Words
from demould.week.making import Making


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """One order, what its guests are told, and what they asked for, answered."""

    order: Order
    guests: ForGuests
    answers: tuple[tuple[Asked, Answered], ...] = ()


def caring_of(folder: Folder, makings: Iterable[Making]) -> tuple[Told, ...]:
    """Give what to tell of each order: its tools and dips are shared with the others'."""
    makings = tuple(makings)
    return tuple(_told(folder, making, makings) for making in makings)


def _told(folder: Folder, making: Making, makings: tuple[Making, ...]) -> Told:
    written = dessert_of(folder, making.order.dessert)
    guests = for_guests(
        written,
        making.order.variant,
        folder.larder,
        others=[other.amounts.dessert for other in makings if other is not making],
        dipped=tuple(_dipped(folder, making, makings)),
    )
    return Told(
        order=making.order,
        guests=guests,
        answers=tuple(
            (
                asked,
                answer(
                    requests()[asked.request],
                    written,
                    folder.larder,
                    folder.desserts,
                    guests,
                ),
            )
            for asked in making.order.requests
        ),
    )


def every_variant(folder: Folder) -> tuple[ForGuests, ...]:
    """Give what is to be told of every dessert, as written and in each variant."""
    return tuple(
        for_guests(dessert, variant, folder.larder)
        for dessert in folder.desserts
        for variant in (None, *(one.name for one in dessert.variants))
    )


def _dipped(
    folder: Folder, making: Making, makings: tuple[Making, ...]
) -> Iterator[Dipped]:
    """Give what was in the left-over dips that go in first, and who else is dipped."""
    order, key = making.order, making.order.dessert
    for lot in folder.bank.lots:
        if lot.dessert != key or lot.component is None:
            continue
        if lot.component not in making.banked:
            continue
        yield Dipped(
            component=lot.component,
            dessert=_as(folder, key, lot.variant),
            where=Words(
                "left-over {what} of {day} goes in", what=lot.component, day=lot.made
            ),
        )
    for other in makings:
        if other.order.dessert != key or other.order.variant == order.variant:
            continue
        for finish in other.amounts.dessert.finish:
            yield Dipped(
                component=finish.component,
                dessert=other.amounts.dessert,
                where=Words(
                    "{other} goes through the same {what}: this order first, or its own",
                    other=other.order.key,
                    what=finish.component,
                ),
            )


def _as(folder: Folder, key: str, variant: str | None) -> Dessert:
    own = (stocked.key for stocked in folder.larder)
    return as_variant(dessert_of(folder, key), variant, own)
