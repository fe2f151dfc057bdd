"""What no single entry of a larder can tell: sources and moneys that do not agree."""

from demould.mise.faults import Faults
from demould.mise.figure import Line
from demould.mise.own_larder import Larder
from demould.mise.spelling import perhaps
from demould.mise.words import Words

NOWHERE = Line("", 0, "")


def check_larder(larder: Larder, faults: Faults) -> None:
    """Note what is made from nothing that is bought, and a second money."""
    _sources(larder, faults)
    _moneys(larder, faults)


def _sources(larder: Larder, faults: Faults) -> None:
    named = [one.key for one in larder]
    made = {one.key: one.made_from for one in larder if one.made_from}
    for key, source in made.items():
        line = source.line or NOWHERE
        if source.what not in named:
            faults.tell(
                line,
                Words("the larder has no {found!r}", found=source.what),
                perhaps(source.what, named, Words("Write an entry for it")),
            )
        elif source.what in made:
            faults.tell(
                line,
                Words(
                    "{key!r} is made from {what!r}, which is made here too",
                    key=key,
                    what=source.what,
                ),
                Words("Name what is bought"),
            )


def _moneys(larder: Larder, faults: Faults) -> None:
    named = [one for one in larder if one.money]
    for one in named[1:]:
        if one.money != named[0].money:
            faults.tell(
                one.line or NOWHERE,
                Words(
                    "{key!r} is priced in {money}, {first!r} in {other}",
                    key=one.key,
                    money=one.money,
                    first=named[0].key,
                    other=named[0].money,
                ),
                Words("Write all prices in one money"),
            )
