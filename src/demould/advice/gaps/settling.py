"""The measurement that settles an assumed figure, in a cook's words."""

from demould.mise.figure import Figure
from demould.mise.words import Words

_BY_NAME = {
    "water in a cavity": "fill one cavity with water and weigh it: {name}",
    "share lost": "weigh what is made and what is used: {name}",
    "grams lost": "weigh what stays in the bowl and the bag: {name}",
    "cooked away": "weigh it before and after the pan or the oven: {name}",
    "clearance": "measure how far off the bottom of the jug a piece stops: {name}",
    "heel": "weigh what stays in the jug at the end: {name}",
    "lands": "weigh what is loaded and what the pieces take: {name}",
    "poured": "weigh what is poured and what the pieces take: {name}",
}
_BY_UNIT = {
    "g/ml": "weigh a known cup of it: {name}",
    "mm": "weigh three pieces before and after: {name}",
    "%": "count it for a week: {name}",
    "min": "time it once: {name}",
}


def settled_by(figure: Figure) -> Words:
    """Name the measurement that settles an assumed figure."""
    for name, words in _BY_NAME.items():
        if name in figure.name:
            return Words(words, name=figure.name)
    words = _BY_UNIT.get(figure.unit, "measure it: {name}")
    return Words(words, name=figure.name)
