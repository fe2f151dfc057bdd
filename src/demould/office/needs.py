"""What all orders need of everything bought: gross, and what of it is used up."""

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from demould.amounts.counts.factors import Make
from demould.amounts.counts.rounding import SPECK
from demould.larder.read import unit_weight
from demould.matter.grams import Find, kept_by_solids, known, share, weighed_lines
from demould.mise.dessert import Dessert, component_of
from demould.mise.figure import Figure, worked
from demould.mise.own_larder import Larder, Stocked
from demould.mise.words import Words
from demould.office.ordered import PLATE, Ordered

NOT_NEWS = 0.005
"""Under half a per cent over a whole fruit or egg is not news."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """What one component of an order takes of one ingredient, as it is weighed out.

    `component` is `PLATE` where it goes beside the piece. `grams` must be there; of
    them `used` do not come back: the rest only has to stand in a jug.
    """

    order: str
    component: str
    ingredient: str
    grams: float
    used: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """What all orders together need of one thing as it is bought.

    `stocked` is its entry in the larder, None where it has none. `have` must be in the
    house, `used` is used up: both as bought, untrimmed. [g] `whole` says how many
    fruits or eggs that is, None where it is not told by the piece.
    """

    name: str
    stocked: Stocked | None
    have: Figure
    used: Figure
    whole: Figure | None
    uses: tuple[Use, ...]


def needs_of(
    ordered: Iterable[Ordered], larder: Larder, find: Find
) -> tuple[Need, ...]:
    """Give what must be in the house for all orders, in the order it is first used.

    What a dip needs to cover its last piece is needed too, though most of it is left.
    What is made here (brown butter) is needed as what it is made from.
    """
    own = {stocked.key: stocked for stocked in larder}
    found: dict[str, list[tuple[Use, float]]] = {}
    makes: dict[str, list[Figure]] = {}
    for one in ordered:
        weigh = {make.component: make.weigh for make in one.makes}
        for use in uses_of(one, find):
            name, times = as_bought(use.ingredient, own)
            found.setdefault(name, []).append((use, times))
            if use.component in weigh and weigh[use.component] not in makes.get(
                name, []
            ):
                makes.setdefault(name, []).append(weigh[use.component])
    return tuple(
        _need(called(name, own, find), own.get(name), uses, makes.get(name, []))
        for name, uses in found.items()
    )


def called(name: str, own: dict[str, Stocked], find: Find) -> str:
    """Give what the kitchen calls an ingredient, or the table does where it has none."""
    return name if name in own else find(name).name


def uses_of(one: Ordered, find: Find) -> Iterator[Use]:
    """Walk everything one order takes, component by component, then the plates."""
    for make in one.makes:
        new = still_to_make(make, one.banked.get(make.component, 0.0))
        kept = _used_share(make)
        for name, grams in ingredients_of(one.dessert, make, find).items():
            grams *= new
            yield Use(
                order=one.order.key,
                component=make.component,
                ingredient=name,
                grams=grams,
                used=grams * kept,
            )
    for plate in one.dessert.plate:
        if plate.component is None:
            grams = plate.amount.value * _portions(one)
            yield Use(
                order=one.order.key,
                component=PLATE,
                ingredient=plate.what,
                grams=grams,
                used=grams,
            )


def _portions(one: Ordered) -> float:
    each = one.dessert.portions
    return one.order.pieces * (each.value if each else 1)


def still_to_make(make: Make, banked: float) -> float:
    """Give what part of a make is made new, where so many grams go in from before.

    What is made in whole batches is made in fewer of them, or as before.
    """
    cooked = (make.cook_to or make.weigh).value
    if banked <= 0 or cooked <= 0:
        return 1.0
    if make.made == "whole batches":
        one = cooked / make.factor.value
        batches = math.ceil((make.need.value - banked) / one - SPECK)
        return max(0, batches) / make.factor.value
    return max(0.0, 1 - banked / cooked)


def left_of(make: Make, banked: float) -> float:
    """Give grams left over when all is made, what went in from before counted [g]."""
    cooked = (make.cook_to or make.weigh).value
    new = still_to_make(make, banked)
    return max(0.0, make.left.value + banked - (1 - new) * cooked)


def _used_share(make: Make) -> float:
    """Give what part is used up: of a dip what stands in the jug to the end is not."""
    if make.made != "as the jug needs":
        return 1.0
    whole = make.in_pieces.value + make.lost.value + make.left.value
    return 1 - make.left.value / whole if whole else 0.0


def ingredients_of(dessert: Dessert, make: Make, find: Find) -> dict[str, float]:
    """Give grams of every ingredient in what is made of one component.

    A liquid that is made up again after straining is needed twice where the solids
    keep it.
    """
    component = component_of(dessert, make.component)
    kept = kept_by_solids(component, find)
    found: dict[str, float] = {}
    for line, grams in weighed_lines(component.formula, find):
        if line.ingredient is None:
            continue
        written = grams.value
        if line.made_up and kept is not None:
            written, kept = written + kept.value, None
        weighed = written * make.factor.value
        found[line.ingredient] = found.get(line.ingredient, 0.0) + weighed
    return found


def as_bought(ingredient: str, own: Mapping[str, Stocked]) -> tuple[str, float]:
    """Give what an ingredient is bought as, and grams of that for one gram of it."""
    stocked = own.get(ingredient)
    times = 1.0
    if stocked is not None and stocked.made_from:
        times = 1 / share(stocked.made_from.out)
        ingredient = stocked.made_from.what
        stocked = own.get(ingredient)
    if stocked is not None and stocked.trim:
        times /= 1 - share(stocked.trim)
    return ingredient, times


def _need(
    name: str,
    stocked: Stocked | None,
    uses: list[tuple[Use, float]],
    makes: list[Figure],
) -> Need:
    net = sum(use.grams for use, _ in uses)
    rule = Words("{net:.1f} g as weighed out, over all orders", net=net)
    parts = list(makes)
    if stocked is not None and stocked.trim:
        rule = Words(
            "{net:.1f} g net, {trim:g} % is trimmed away",
            net=net,
            trim=100 * share(stocked.trim),
        )
        parts.append(stocked.trim)
    have = worked(
        f"{name}, to have",
        sum(use.grams * times for use, times in uses),
        "g",
        rule,
        *parts,
    )
    used = sum(use.used * times for use, times in uses)
    return Need(
        name=name,
        stocked=stocked,
        have=have,
        used=worked(f"{name}, used up", used, "g", "less what only stands in a jug"),
        whole=_whole(name, stocked, have),
        uses=tuple(use for use, _ in uses),
    )


def _whole(name: str, stocked: Stocked | None, have: Figure) -> Figure | None:
    """Give how many whole fruits or eggs: gross grams by what one weighs, up."""
    like = stocked.like.replace("_", " ") if stocked and stocked.like else name
    for called in (name, name.partition(",")[0], like):
        fact = unit_weight(called)
        if fact is not None and fact.unit == "g":
            each = known(fact, f"one {called}")
            count = max(1, math.ceil(have.value / each.value - NOT_NEWS))
            rule = "grams by what one weighs, up to a whole one"
            return worked(f"{name}, whole", count, "pieces", rule, have, each)
    return None
