"""Can we, for this guest: yes as it is, yes with this variant, or no, offer that one."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from demould.care.allergens import allergens_of
from demould.care.guest import ForGuests, for_guests, raw_egg_in
from demould.care.inside import BESIDE, Inside, inside
from demould.larder.allergens import allergens, allergens_in
from demould.larder.names import plain
from demould.larder.requests import Request
from demould.mise.dessert import Dessert
from demould.mise.own_larder import Larder
from demould.mise.words import Words

Verdict = Literal["yes", "ask first", "no"]
Diet = Literal["vegan", "vegetarian", "halal"]
ALCOHOL_G = 0.05
"""Less alcohol in 100 g of an ingredient than this is not counted as any."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """How one dessert, its variant in place, fits one request.

    `against` is what stands in the way, `open` what has to be asked first, `handled`
    what is asked to be left out and is in the house all the same, `holds` the allergens
    that are in it.
    """

    dessert: Dessert
    variant: str | None
    against: tuple[Words, ...]
    open: tuple[Words, ...]
    handled: tuple[str, ...] = ()
    holds: tuple[str, ...] = ()

    @property
    def verdict(self) -> Verdict:
        """Whether it can be served: not where anything is against it or open."""
        if self.against:
            return "no"
        return "ask first" if self.open else "yes"


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """The answer to a request for one dessert.

    `taken` is what to serve: the dessert as it is or one of its variants, None where
    neither fits. Then `offers` are other desserts that do; `never` is said where
    somebody would think of swapping what sets it.
    """

    request: Request
    written: Fit
    taken: Fit | None
    offers: tuple[Fit, ...]
    never: Words | None

    @property
    def verdict(self) -> Verdict:
        """Whether the dessert can be served, in whatever variant."""
        return self.taken.verdict if self.taken else "no"


def answer(
    request: Request,
    dessert: Dessert,
    larder: Larder,
    others: Iterable[Dessert] = (),
    told: ForGuests | None = None,
) -> Answered:
    """Answer one request. `others` may be offered instead.

    `told` is what is known of the dessert beyond its formula where it is ordered:
    tools, dips.
    """
    ways = list(_ways(request, dessert, larder, told))
    written = ways[0]
    taken = min(
        (one for one in ways if not one.against),
        key=lambda one: len(one.open),
        default=None,
    )
    if written.verdict == "yes" or (not written.against and written is taken):
        taken = written
    offers = () if taken else tuple(_offers(request, dessert, larder, others))
    return Answered(
        request=request,
        written=written,
        taken=taken,
        offers=offers,
        never=_never(request, dessert, larder) if taken is None else None,
    )


def _ways(
    request: Request, dessert: Dessert, larder: Larder, told: ForGuests | None = None
) -> Iterator[Fit]:
    for variant in (None, *(one.name for one in dessert.variants)):
        guests = for_guests(dessert, variant, larder)
        beyond = told.may if told is not None and told.variant == variant else ()
        names = {one.allergen.name for one in (*guests.may, *beyond)}
        yield fit(request, guests, larder, names)


def fit(
    request: Request, guests: ForGuests, larder: Larder, may: Iterable[str] = ()
) -> Fit:
    """Set one dessert against one request. `may` are allergens that may be in it."""
    parts = inside(guests.dessert, larder)
    avoid = avoided(request)
    may = set(may) & avoid
    opens = [*_open_allergens(request, guests), *_open_diet(request, parts)]
    opens += [Words("may be in it: {what}", what=name) for name in sorted(may)]
    return Fit(
        dessert=guests.dessert,
        variant=guests.variant,
        against=_once(_against(request, guests.dessert, parts, larder)),
        open=_once(opens),
        holds=guests.inside.names,
        handled=tuple(one.name for one in guests.handled if one.name in avoid),
    )


def avoided(request: Request) -> frozenset[str]:
    """Give every allergen that a request leaves out: who says nuts means each of them."""
    return frozenset(
        one.name
        for one in allergens().values()
        if {one.name, one.kind} & set(request.avoid)
    )


def _once(said: Iterable[Words]) -> tuple[Words, ...]:
    return tuple({str(one): one for one in said}.values())


def _against(
    request: Request, dessert: Dessert, parts: tuple[Inside, ...], larder: Larder
) -> Iterator[Words]:
    avoid = avoided(request)
    for present in allergens_of(dessert, larder).present:
        if present.allergen.name in avoid:
            for place, what in present.within:
                yield _in(what, place)
    for one in parts:
        if _avoided(request, one) or _unfit(request, one) is False:
            yield _in(one.name, one.place)
    if "raw egg" in request.avoid:
        for name in raw_egg_in(dessert, larder):
            yield Words("egg in the {place} that no step heats", place=name)


def _in(what: str, place: str) -> Words:
    if place == BESIDE:
        return Words("{what} on the plate", what=what)
    return Words("{what} in the {place}", what=what, place=place)


def _avoided(request: Request, one: Inside) -> bool:
    animal = plain(one.stocked.animal) if one.stocked else ""
    return (
        ("gelatin" in request.avoid and is_gelatin(one))
        or ("pork" in request.avoid and is_gelatin(one) and animal == "pork")
        or (
            "alcohol" in request.avoid
            and one.ingredient is not None
            and one.ingredient.per_100g.alcohol > ALCOHOL_G
        )
        or ("honey" in request.avoid and "honey" in plain(one.name).split())
    )


def is_gelatin(one: Inside) -> bool:
    """Say whether it is gelatin of whatever animal."""
    like = one.like or one.ingredient
    return like is not None and like.id.startswith("gelatin")


def _unfit(request: Request, one: Inside) -> bool | None:
    """Say whether an ingredient is fit for the diet asked for; None: ask."""
    if not request.diet or one.ingredient is None:
        return True
    if request.diet == "halal" and is_gelatin(one):
        animal = plain(one.stocked.animal) if one.stocked else ""
        return False if animal == "pork" else None
    said: bool | None = getattr(one.ingredient, request.diet)
    return said


def _open_diet(request: Request, parts: tuple[Inside, ...]) -> Iterator[Words]:
    for one in parts:
        if _unfit(request, one) is None or (request.diet and one.ingredient is None):
            yield Words("{what}: is it {diet}?", what=one.name, diet=request.diet)
        said = one.stocked is not None and one.stocked.animal
        if "pork" in request.avoid and is_gelatin(one) and not said:
            yield Words("{what}: from which animal?", what=one.name)


def _open_allergens(request: Request, guests: ForGuests) -> Iterator[Words]:
    asked = avoided(request)
    if not asked:
        return
    for one in guests.inside.unknown:
        if "animal" in str(one.asks) and "fish" not in asked:
            continue
        if "sulphites" in str(one.asks) and "sulphites" not in asked:
            continue
        if "wheat starch" in str(one.asks) and "wheat" not in asked:
            continue
        yield Words("{what}: {asks}", what=one.what, asks=one.asks)


def _offers(
    request: Request, dessert: Dessert, larder: Larder, others: Iterable[Dessert]
) -> Iterator[Fit]:
    """Give other desserts that fit, those with nothing open first."""
    found = [
        way
        for other in others
        if other.key != dessert.key
        for way in _ways(request, other, larder)
        if not way.against
    ]
    yield from sorted(found, key=lambda one: len(one.open))


def _never(request: Request, dessert: Dessert, larder: Larder) -> Words | None:
    sets = [one for one in inside(dessert, larder) if is_gelatin(one)]
    gelatin_is_it = sets and (
        "gelatin" in request.avoid
        or any(_unfit(request, one) is False or _avoided(request, one) for one in sets)
        or any(
            one.name in avoided(request)
            for part in sets
            if part.ingredient
            for one in allergens_in(part.ingredient)
        )
    )
    if not gelatin_is_it:
        return None
    return Words(
        "no tested version: nothing takes the place of {what} gram for gram."
        " demould swap gives a band to start from; a trial first",
        what=sets[0].name,
    )
