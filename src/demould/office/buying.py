"""What to call, from whom, how much, and by when."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

from demould.care.questions import asks_of
from demould.mise.figure import Figure, worked
from demould.mise.kitchen import Kitchen, Supplier
from demould.mise.own_larder import Stocked
from demould.mise.words import Words
from demould.office.delivery import arrival_of, last_call, supplier_of
from demould.office.money import total
from demould.office.needs import Need
from demould.office.ordered import Begins
from demould.office.packs import Bought, least_cost, price_of
from demould.office.season import out_of_season
from demould.office.stock import good_until, in_house

NEAR_MISS = 0.05
"""So small a part of what is short, in one pack more, is worth a word."""
NOTHING_OVER = 0.02
"""Where less than this part of a need is left over, a spill leaves too little."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Call:
    """One thing to call in.

    Attributes
    ----------
    short
        What the house has too little of. [g]
    packs
        What to buy; none where no pack size is written: then it is called by the gram.
    cost
        What the packs cost, None where no price is known.
    comes
        When it is in the house, called now.
    needed, latest
        When it is first needed as planned, and the latest that still works; None
        without a plan.
    by, last
        The last moment to call so that the plan holds, and so that it still works.
    left
        What is left over when all orders are made. [g]
    good_until
        Until when that is good; None where nobody says how long it keeps.
    remarks
        What a cook should know of the packs.
    """

    need: Need
    stocked: Stocked
    supplier: Supplier
    stock: Figure
    short: Figure
    packs: tuple[Bought, ...]
    cost: Decimal | None
    comes: datetime
    needed: datetime | None
    latest: datetime | None
    by: datetime | None
    last: datetime | None
    left: Figure
    good_until: date | None
    remarks: tuple[Words, ...]

    @property
    def only_to_melt(self) -> bool:
        """Whether there is enough for what is used up, not for what must be melted."""
        return self.need.used.value <= self.stock.value

    @property
    def too_late(self) -> bool:
        """Whether, called now, it comes after the latest start that needs it."""
        return self.latest is not None and self.comes > self.latest


@dataclass(frozen=True, slots=True, kw_only=True)
class Basket:
    """All that one supplier is called for; `under` is money short of its least order."""

    supplier: Supplier
    calls: tuple[Call, ...]
    cost: Decimal | None
    under: Decimal | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Buying:
    """What to call, the most urgent first; what is asked, because nobody says.

    `uncounted` were never counted and are taken to be there; `unknown` are in no
    larder. `asks` is what only a supplier can tell, `seasons` what is out of season.
    """

    calls: tuple[Call, ...]
    baskets: tuple[Basket, ...]
    uncounted: tuple[Need, ...]
    unknown: tuple[Need, ...]
    asks: tuple[Words, ...]
    seasons: tuple[Words, ...]

    def today(self, now: datetime) -> tuple[Call, ...]:
        """Give what is short today: called tomorrow it would be too late for the plan."""
        return tuple(
            call
            for call in self.calls
            if call.by is None
            or call.by.date() <= now.astimezone(call.by.tzinfo).date()
        )


def buying_of(
    needs: Iterable[Need], kitchen: Kitchen, begins: Begins, now: datetime
) -> Buying:
    """Set what is needed against what is there; `now` is aware."""
    needs = tuple(needs)
    calls = []
    for need in needs:
        stock = in_house(need.stocked) if need.stocked else None
        if need.stocked is None or stock is None or need.have.value <= stock.value:
            continue
        calls.append(_call(need, need.stocked, stock, kitchen, begins, now))
    far = max((call.by for call in calls if call.by), default=now)
    calls.sort(key=lambda call: (call.by or far, call.comes, call.need.name))
    return Buying(
        calls=tuple(calls),
        baskets=_baskets(calls),
        uncounted=tuple(
            need
            for need in needs
            if need.stocked and need.stocked.stock is None and _is_bought(need.stocked)
        ),
        unknown=tuple(need for need in needs if need.stocked is None),
        asks=asks_of(need.stocked for need in needs if need.stocked),
        seasons=out_of_season(needs, now),
    )


def _is_bought(stocked: Stocked) -> bool:
    """Whether it is called in at all: water from the tap has neither pack nor price."""
    return bool(stocked.packs or stocked.price is not None or stocked.supplier)


def arrivals_of(
    needs: Iterable[Need], kitchen: Kitchen, now: datetime
) -> dict[str, dict[str, datetime]]:
    """Give, by order and component, when the last thing it waits for is delivered.

    Only what is counted and short waits, called now. What was never counted is taken
    to be there.
    """
    found: dict[str, dict[str, datetime]] = {}
    for need in needs:
        stock = in_house(need.stocked) if need.stocked else None
        if need.stocked is None or stock is None or need.have.value <= stock.value:
            continue
        comes = arrival_of(need.stocked, kitchen, now)
        for use in need.uses:
            of_order = found.setdefault(use.order, {})
            of_order[use.component] = max(comes, of_order.get(use.component, comes))
    return found


def _call(
    need: Need,
    stocked: Stocked,
    stock: Figure,
    kitchen: Kitchen,
    begins: Begins,
    now: datetime,
) -> Call:
    short = worked(
        f"{need.name}, short",
        need.have.value - stock.value,
        "g",
        Words(
            "{have:.0f} g to have, {stock:g} g there",
            have=need.have.value,
            stock=stock.value,
        ),
        need.have,
        stock,
    )
    packs = least_cost(short.value, stocked)
    bought = sum(one.grams for one in packs) if packs else short.value
    left = worked(
        f"{need.name}, left over",
        stock.value + bought - need.used.value,
        "g",
        "there and bought, less what is used up",
        stock,
        short,
        need.used,
    )
    planned, latest = _first(need, begins)
    comes = arrival_of(stocked, kitchen, now)
    prices = [one.price * one.count for one in packs if one.price is not None]
    opened = max(comes, planned) if planned else comes
    return Call(
        need=need,
        stocked=stocked,
        supplier=supplier_of(stocked, kitchen),
        stock=stock,
        short=short,
        packs=packs,
        cost=total(prices) if packs and len(prices) == len(packs) else None,
        comes=comes,
        needed=planned,
        latest=latest,
        by=last_call(stocked, kitchen, planned) if planned else None,
        last=last_call(stocked, kitchen, latest) if latest else None,
        left=left,
        good_until=good_until(stocked, opened.date()),
        remarks=tuple(_remarks(need, stocked, stock, short, packs)),
    )


def _first(need: Need, begins: Begins) -> tuple[datetime | None, datetime | None]:
    known = [
        begins[use.order, use.component]
        for use in need.uses
        if (use.order, use.component) in begins
    ]
    planned = [one.planned for one in known if one.planned]
    latest = [one.latest for one in known if one.latest]
    return min(planned, default=None), min(latest, default=None)


def _remarks(
    need: Need,
    stocked: Stocked,
    stock: Figure,
    short: Figure,
    packs: tuple[Bought, ...],
) -> Iterable[Words]:
    if need.used.value <= stock.value:
        yield Words(
            "{have:.0f} g must be melted; the {stock:.0f} g there are enough only for"
            " the {used:.0f} g used up",
            have=need.have.value,
            stock=stock.value,
            used=need.used.value,
        )
    if not packs:
        yield Words("no pack size is written: called by the gram")
        return
    bought = sum(one.grams for one in packs)
    smallest = min(one.pack.size.value for one in packs)
    missing = short.value - (bought - smallest)
    if 0 < missing <= NEAR_MISS * short.value and bought > smallest:
        yield Words("{g:.0f} g less, and one pack fewer would do", g=missing)
    elif bought - short.value < NOTHING_OVER * need.have.value:
        yield Words(
            "only {g:.0f} g more than is needed: nothing may be spilt",
            g=bought - short.value,
        )
    yield from _other_packs(stocked, short, packs)


def _other_packs(
    stocked: Stocked, short: Figure, packs: tuple[Bought, ...]
) -> Iterable[Words]:
    """Say where the size of the pack is the answer: cheaper, though more is left."""
    if len(stocked.packs) < 2:
        return
    bought = sum(one.grams for one in packs)
    cost = total([one.price * one.count for one in packs if one.price is not None])
    for pack in stocked.packs:
        count = -int(-short.value // pack.size.value)
        price = price_of(pack, stocked)
        if price is None or count * pack.size.value >= bought - 1e-6:
            continue
        dearer = price * count - cost
        if dearer > 0:
            yield Words(
                "{count} x {size} would leave less, and cost {dearer:.2f} more",
                count=count,
                size=pack.size,
                dearer=dearer,
            )


def _baskets(calls: Iterable[Call]) -> tuple[Basket, ...]:
    by_name: dict[str, list[Call]] = {}
    for call in calls:
        by_name.setdefault(call.supplier.name, []).append(call)
    return tuple(_basket(each) for each in by_name.values())


def _basket(calls: list[Call]) -> Basket:
    supplier = calls[0].supplier
    known = [call.cost for call in calls if call.cost is not None]
    cost = total(known) if len(known) == len(calls) else None
    least = supplier.least
    under = least - total(known) if least is not None else None
    return Basket(
        supplier=supplier,
        calls=tuple(calls),
        cost=cost,
        under=under if under is not None and under > 0 else None,
    )
