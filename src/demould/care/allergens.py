"""Which allergens are in it, which may be, and what nobody has said."""

from collections.abc import Iterable
from dataclasses import dataclass

from demould.care.inside import Inside, inside
from demould.larder.allergens import Allergen, allergen, allergens_in, exemptions
from demould.larder.names import plain
from demould.mise.dessert import Dessert
from demould.mise.own_larder import Larder, Stocked
from demould.mise.words import Words

NOTHING_SAID = ("none", "nothing")
"""What a supplier's sheet says who has looked and found nothing that may be in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Present:
    """An allergen that is in it, and everything that brings it in.

    `by_table` where only the tool's table says so, and no sheet of the kitchen's own.
    """

    allergen: Allergen
    within: tuple[tuple[str, str], ...]
    by_table: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class May:
    """An allergen that may be in it, and why."""

    allergen: Allergen
    why: Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Unknown:
    """What nobody has said of an ingredient, and the question that settles it."""

    what: str
    asks: Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Contradiction:
    """A sheet that says less than such a thing has; `read_by` is who put a name to it."""

    what: str
    allergen: Allergen
    says: Words
    read_by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Exempt:
    """What the list of 14 does not count, where it may be in question."""

    what: str
    says: Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Allergens:
    """What there is to tell a guest of one dessert, its variant in place."""

    present: tuple[Present, ...]
    may: tuple[May, ...]
    unknown: tuple[Unknown, ...]
    contradictions: tuple[Contradiction, ...]
    exempt: tuple[Exempt, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """What is in it, by the cook's words."""
        return tuple(one.allergen.name for one in self.present)

    @property
    def none_may_be_said(self) -> bool:
        """Whether the word "none" may be printed at all: nothing unknown, nothing there."""
        return not (
            self.present
            or self.may
            or self.unknown
            or any(not one.read_by for one in self.contradictions)
        )


def allergens_of(dessert: Dessert, larder: Larder) -> Allergens:
    """Give what a dessert holds by its own ingredients, its variant already in place.

    That something is not among them is never "free from": suppliers change, and tools
    are shared.
    """
    parts = inside(dessert, larder)
    contradictions = tuple(_contradictions(parts))
    return Allergens(
        present=_present(parts, contradictions),
        may=tuple(may for one in _each(parts) for may in may_contain(one.stocked)),
        unknown=tuple(
            unknown
            for one in _each(parts)
            for unknown in unknown_of(one.name, one.stocked, one.asks)
        ),
        contradictions=contradictions,
        exempt=tuple(_exempt(parts)),
    )


def _each(parts: Iterable[Inside]) -> tuple[Inside, ...]:
    """Give each ingredient once."""
    return tuple({one.name: one for one in parts}.values())


def _present(
    parts: Iterable[Inside], contradictions: Iterable[Contradiction]
) -> tuple[Present, ...]:
    open_ones = [one for one in contradictions if not one.read_by]
    found: dict[str, tuple[Allergen, list[tuple[str, str]], list[bool]]] = {}
    for part in parts:
        told = list(allergens_in(part.ingredient)) if part.ingredient else []
        told += [one.allergen for one in open_ones if one.what == part.name]
        told += [one for one in [_animal(part.stocked)] if one]
        for one in told:
            _, within, by_table = found.setdefault(one.name, (one, [], []))
            within.append((part.place, part.name))
            by_table.append(part.stocked is None or part.stocked.allergens is None)
    return tuple(
        Present(
            allergen=one,
            within=tuple(dict.fromkeys(within)),
            by_table=all(by_table),
        )
        for one, within, by_table in found.values()
    )


def _animal(stocked: Stocked | None) -> Allergen | None:
    """Fish gelatin is fish."""
    return allergen("fish") if stocked and plain(stocked.animal) == "fish" else None


def may_contain(stocked: Stocked | None) -> tuple[May, ...]:
    """Give what the supplier says it may contain, word by word."""
    if stocked is None or not stocked.may_contain:
        return ()
    said = stocked.may_contain
    if said.startswith("unknown") or plain(said) in NOTHING_SAID:
        return ()
    return tuple(
        May(
            allergen=allergen(word),
            why=Words("{what} may contain it, its supplier says", what=stocked.key),
        )
        for word in said.replace(" and ", ",").split(",")
        if word.strip()
    )


def unknown_of(
    name: str, stocked: Stocked | None, asks: Iterable[str] = ()
) -> tuple[Unknown, ...]:
    """Give what nobody has said of one ingredient. `asks` is what the table asks of it."""
    asks = tuple(asks)
    found = []
    if stocked is None or stocked.allergens is None:
        found.append(Words("which allergens are in it? No sheet of it is written down"))
    if may_contain_unknown(stocked, asks):
        found.append(Words("what may it contain, nuts above all?"))
    if "animal" in asks and not (stocked and stocked.animal):
        found.append(Words("from which animal?"))
    if stocked is None or stocked.allergens is None:
        if "wheat starch" in asks:
            found.append(Words("is there wheat starch in it?"))
        if "sulphites" in asks:
            found.append(Words("sulphites, and over 10 mg/kg?"))
    if stocked and stocked.ask and not _same_question(stocked.ask, found):
        found.append(Words("{ask}", ask=stocked.ask))
    return tuple(Unknown(what=name, asks=one) for one in found)


def _same_question(ask: str, asked: Iterable[Words]) -> bool:
    return any(plain(str(one)) == plain(ask) for one in asked)


def may_contain_unknown(stocked: Stocked | None, asks: Iterable[str]) -> bool:
    """Say whether nobody has said what it may contain, where that is to be asked."""
    if stocked is not None and stocked.may_contain:
        return stocked.may_contain.startswith("unknown")
    return "may contain" in asks


def _told(stocked: Stocked | None) -> tuple[str, ...]:
    if stocked is None or stocked.allergens is None:
        return ()
    return tuple(allergen(one).name for one in stocked.allergens)


def _contradictions(parts: Iterable[Inside]) -> Iterable[Contradiction]:
    for part in _each(parts):
        stocked, like = part.stocked, part.like
        if stocked is None or stocked.allergens is None or like is None:
            continue
        told = _told(stocked)
        for one in allergens_in(like):
            if one.name in told or one.elsewhere:
                continue
            yield Contradiction(
                what=part.name,
                allergen=one,
                says=Words(
                    "your sheet of {what} names no {allergen}, and such a thing has it",
                    what=part.name,
                    allergen=one.name,
                ),
                read_by=stocked.read_by,
            )


def _exempt(parts: Iterable[Inside]) -> Iterable[Exempt]:
    for part in _each(parts):
        like = part.like or part.ingredient
        for one in exemptions():
            if like is not None and like.id in one.ingredients:
                yield Exempt(
                    what=part.name,
                    says=Words(
                        "{what} may be made from {allergen}: {rule} are not counted"
                        " ({page})",
                        what=part.name,
                        allergen=one.allergen,
                        rule=one.what,
                        page=one.page,
                    ),
                )
