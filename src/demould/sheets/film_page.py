"""The film from the scale, beside the card's."""

from collections.abc import Iterator

from demould.mise.words import Words
from demould.sheets.page import Lines, Page, Text
from demould.week.own_film import OwnFilm

ENOUGH = 3
"""Pieces to weigh before the spread says something: common practice, no source."""


def film_page(own: OwnFilm, name: str) -> Page:
    """Give the film weighed, its spread, the card's, and the line for the card."""
    return Page(
        key="film",
        title=Words("{name}, the film of its {dip}", name=name, dip=own.dip),
        blocks=(Lines(lines=tuple(_lines(own))),),
    )


def for_the_card(own: OwnFilm) -> Words:
    """Give what to write in the line of the finish, in place of the film there."""
    times = f"measured {own.pieces} times" if own.pieces > 1 else "measured"
    return Words("film {mm:.2f} mm ({how})", mm=own.film.value, how=times)


def _lines(own: OwnFilm) -> Iterator[Text]:
    yield Words(
        "weighed, {n} pieces: {g:.1f} g each, a film of {mm:.2f} mm, from {low:.2f} to"
        " {high:.2f}",
        n=own.pieces,
        g=own.each_g,
        mm=own.film.value,
        low=own.spread.low,
        high=own.spread.high,
    )
    yield Words("the card: {card}", card=own.card)
    if own.pieces < ENOUGH:
        yield Words("weigh three or more: fewer say little of the spread")
    yield Words("write in the card, for the film there: {line}", line=for_the_card(own))
