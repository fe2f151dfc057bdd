"""Who must not eat it: a few lines for the week, all of it for the check and the floor."""

from collections.abc import Iterable, Iterator, Sequence

from demould.care.cautions import Mind, of_dessert
from demould.care.guest import ForGuests
from demould.care.requests import Answered, Fit
from demould.larder.allergens import Allergen
from demould.mise.order import Asked
from demould.mise.words import Words
from demould.sheets.page import Blanks, Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import day_time
from demould.week.caring import Told

NEVER = Words(
    "Never say free from: made without is not a promise. Local food law and your own"
    " food-safety plan come first; whoever answers a guest reads the packs."
)


def named(allergen: Allergen) -> str:
    """Give its word, nuts and what only some countries name in capitals."""
    loud = allergen.kind == "nut" or allergen.elsewhere or allergen.name == "peanut"
    return allergen.name.upper() if loud else allergen.name


def called(guests: ForGuests) -> str:
    """Give the dessert's name with its variant."""
    name = guests.dessert.name
    return f"{name}, {guests.variant}" if guests.variant else name


def who_must_not(told: Sequence[Told]) -> Iterator[Block]:
    """Lay out the week's lines: what is in it, what may be, how much is not known."""
    if not told:
        return
    nuts = _nuts(one.guests for one in told)
    yield Head(
        text=Words("who must not eat it"),
        note=Words("made where {nuts} are handled", nuts=nuts) if nuts else "",
    )
    yield Table(
        columns=(Column(share=1.6), Column(share=5)),
        rows=tuple(row for one in told for row in _week_rows(one.guests)),
    )
    asked = [answered(*pair) for one in told for pair in one.answers]
    if asked:
        yield Lines(lines=tuple(asked))
    loud = [line for one in told for line in _contradictions(one.guests)]
    if loud:
        yield Lines(lines=tuple(dict.fromkeys(loud)), loud=True)


def answered(asked: Asked, found: Answered) -> Words:
    """Say yes as it is, yes with this variant, ask first, or no and what to offer."""
    return Words(
        "{request}{who}, {dessert}: {says}",
        request=asked.request,
        who=f" ({asked.who})" if asked.who else "",
        dessert=found.written.dessert.name,
        says=answer_said(found),
    )


def answer_said(found: Answered) -> Words:
    """Say the answer to one request."""
    taken = found.taken
    if taken is None:
        against = ", ".join(str(one) for one in found.written.against[:NAMED])
        return Words(
            "NO: {against}{never}{offers}",
            against=against,
            never=Words(". {never}", never=found.never) if found.never else "",
            offers=Words(". Offer {what}", what=_offered(found.offers))
            if found.offers
            else Words(". Nothing here fits"),
        )
    return Words(
        "{verdict}{variant}{open}{handled}",
        verdict=Words("yes") if taken.verdict == "yes" else Words("ASK FIRST"),
        variant=Words(", with {name}", name=taken.variant)
        if taken.variant
        else Words(", as it is"),
        open=Words(": {what}", what="; ".join(str(one) for one in taken.open))
        if taken.open
        else "",
        handled=Words("; made where {what} is handled", what=", ".join(taken.handled))
        if taken.handled
        else "",
    )


NAMED = 3
"""So much of what stands in the way is named in a line."""


def _offered(offers: Iterable[Fit]) -> str:
    return ", ".join(
        str(
            Words(
                "{name}{variant}{ask}{has}",
                name=one.dessert.name,
                variant=f", {one.variant}" if one.variant else "",
                ask=Words(", ask first") if one.open else "",
                has=Words(" (has {what})", what=", ".join(one.holds))
                if one.holds
                else "",
            )
        )
        for one in tuple(offers)[:NAMED]
    )


def _nuts(all_of: Iterable[ForGuests]) -> str:
    found = {
        one.name: one
        for guests in all_of
        for one in (*guests.handled, *(p.allergen for p in guests.inside.present))
        if one.kind == "nut" or one.name == "peanut"
    }
    return ", ".join(found)


def _week_rows(guests: ForGuests) -> Iterator[tuple[Cell, ...]]:
    blank = Cell(text="")
    short = [f"{one.name}: {one.short}" for one in guests.cautions]
    yield (
        Cell(text=called(guests)),
        Cell(
            text="; ".join(
                [
                    ", ".join(named(one.allergen) for one in guests.inside.present)
                    or str(_nothing(guests)),
                    *short,
                ]
            )
        ),
    )
    if guests.may:
        yield blank, Cell(text=Words("may be: {may}", may=_may_be(guests)))
    if guests.without:
        yield (
            blank,
            Cell(
                text=Words(
                    "made without {what}",
                    what=", ".join(named(one.allergen) for one in guests.without),
                )
            ),
        )
    if guests.inside.unknown:
        yield (
            blank,
            Cell(
                text=Words(
                    "NOT KNOWN of {n}: demould check",
                    n=len({one.what for one in guests.inside.unknown}),
                ),
                strong=True,
            ),
        )


def _may_be(guests: ForGuests) -> str:
    return ", ".join(dict.fromkeys(named(one.allergen) for one in guests.may))


def minded(minds: Iterable[Mind]) -> Iterator[Words]:
    """Say what to mind at which step."""
    for mind in minds:
        yield Words(
            "{steps}: {says}", steps=", ".join(mind.steps), says=mind.caution.says
        )


def careful(told: Sequence[Told]) -> Iterator[Block]:
    """Lay out in a line a dessert what may hurt, and at which step."""
    rows = [
        (
            Cell(text=one.guests.dessert.name),
            Cell(
                text="; ".join(
                    f"{mind.caution.short}: {', '.join(mind.steps)}" for mind in minds
                )
            ),
        )
        for one in told
        if (minds := of_dessert(one.guests.dessert))
    ]
    if rows:
        yield Head(text=Words("careful"), note=Words("all of it on the sheets"))
        yield Table(columns=(Column(share=1.6), Column(share=5)), rows=tuple(rows))


def _nothing(guests: ForGuests) -> Words:
    """Say that none is named; "none" itself only where nothing is unknown."""
    if guests.inside.none_may_be_said and not guests.may:
        return Words("none written in it")
    return Words("NOT KNOWN, ask before anybody eats it")


def _contradictions(guests: ForGuests) -> Iterator[Words]:
    for one in guests.inside.contradictions:
        if one.read_by:
            continue
        yield Words(
            "{says}: it counts as in it until you write read by: and a name in"
            " larder.yaml",
            says=one.says,
        )


def all_that_is_told(all_of: Iterable[ForGuests]) -> Iterator[Block]:
    """Lay out every dessert and variant, with why, and every question."""
    all_of = tuple(all_of)
    yield Head(text=Words("who must not eat it"), note=Words("ask, never assume"))
    loud = [line for one in all_of for line in _contradictions(one)]
    if loud:
        yield Lines(lines=tuple(dict.fromkeys(loud)), loud=True)
    yield Table(
        columns=(Column(share=1.6), Column(share=5)),
        rows=tuple(row for one in all_of for row in _check_rows(one)),
    )
    asked: dict[str, dict[str, None]] = {}
    for guests in all_of:
        for one in guests.inside.unknown:
            asked.setdefault(str(one.asks), {})[one.what] = None
    if asked:
        yield Head(text=Words("not known: ask the supplier"))
        yield Table(
            columns=(Column(share=2), Column(share=4)),
            rows=tuple(
                (Cell(text=asks), Cell(text=", ".join(what)))
                for asks, what in asked.items()
            ),
        )


def _check_rows(guests: ForGuests) -> Iterator[tuple[Cell, ...]]:
    blank = Cell(text="")
    yield (
        Cell(text=called(guests)),
        Cell(
            text=", ".join(named(one.allergen) for one in guests.inside.present)
            or _nothing(guests)
        ),
    )
    for one in guests.without:
        yield blank, Cell(text=_without(one.allergen, one.why))
    for line in _may(guests):
        yield blank, Cell(text=line)
    for on_it in guests.decorations:
        yield blank, Cell(text=on_it.says, strong=on_it.permit == "no")


def _without(allergen: Allergen, why: Words) -> Words:
    return Words("made without {what}: {why}", what=named(allergen), why=why)


def _may(guests: ForGuests) -> Iterator[Words]:
    """Give each reason once, with all it brings."""
    by_why: dict[str, dict[str, None]] = {}
    for one in guests.may:
        by_why.setdefault(str(one.why), {})[named(one.allergen)] = None
    for why, what in by_why.items():
        yield Words("may be: {what} ({why})", what=", ".join(what), why=why)


def floor_page(kitchen: str, told: Sequence[Told]) -> Page:
    """Lay out the sheet for the floor: each order, what is in it and where."""
    return Page(
        key="floor",
        title=Words("{kitchen}: who must not eat it", kitchen=kitchen.upper()),
        blocks=(
            *(block for one in told for block in floor_blocks(one.guests, one)),
            *careful(told),
            Blanks(labels=(Words("packs read by"), Words("day"), Words("signed"))),
        ),
        foot=(NEVER,),
    )


def guest_page(guests: ForGuests, answers: Iterable[Answered]) -> Page:
    """Lay out one dessert for the floor, and what can be done for a guest."""
    return Page(
        key="guest",
        title=Words("{name}: who must not eat it", name=called(guests).upper()),
        blocks=(
            *floor_blocks(guests),
            Head(text=Words("can we")),
            Table(
                columns=(Column(share=1), Column(share=5)),
                rows=tuple(
                    (Cell(text=one.request.name), Cell(text=answer_said(one)))
                    for one in answers
                ),
            ),
        ),
        foot=(NEVER,),
    )


def floor_blocks(guests: ForGuests, told: Told | None = None) -> Iterator[Block]:
    """Lay out one dessert for the floor."""
    yield Head(
        text=called(guests), note=day_time(told.order.due) if told is not None else ""
    )
    loud = [
        *_contradictions(guests),
        *(
            Words("NOT KNOWN, {what}: {asks}", what=one.what, asks=one.asks)
            for one in guests.inside.unknown
        ),
    ]
    if loud:
        yield Lines(lines=tuple(loud), loud=True)
    if guests.inside.present:
        yield Table(
            columns=(
                Column(head=Words("in it"), share=1.2),
                Column(head=Words("where"), share=5),
            ),
            rows=tuple(
                (
                    Cell(text=named(one.allergen), strong=True),
                    Cell(text=_where(one.within)),
                )
                for one in guests.inside.present
            ),
        )
    else:
        yield Lines(lines=(_nothing(guests),))
    yield Lines(lines=tuple(_floor_lines(guests)))


def _where(within: Iterable[tuple[str, str]]) -> str:
    by_place: dict[str, list[str]] = {}
    for place, what in within:
        by_place.setdefault(place, []).append(what)
    return "; ".join(
        f"{place}: {', '.join(dict.fromkeys(what))}" for place, what in by_place.items()
    )


def _floor_lines(guests: ForGuests) -> Iterator[Words]:
    yield from (_without(one.allergen, one.why) for one in guests.without)
    yield from _may(guests)
    if guests.handled:
        yield Words(
            "also handled in this kitchen: {what}",
            what=", ".join(named(one) for one in guests.handled),
        )
    yield from (one.says for one in guests.inside.exempt)
    yield from (one.says for one in guests.decorations)
    yield from (Words("{says}", says=one.says) for one in guests.cautions)
