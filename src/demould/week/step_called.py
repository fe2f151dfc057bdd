"""Which step is meant by a few words: ``fill pebble 24``, ``glaze domes``."""

import re
from collections.abc import Iterable

from demould.mise.problem import UnreadableError
from demould.mise.words import Words
from demould.plan.kitchen.from_kitchen import Laid
from demould.plan.kitchen.parts import Part

MOST_LISTED = 6


def step_called(laid: Laid, said: str, among: Iterable[str] | None = None) -> str:
    """Give the step whose name has all the words, or is the one written whole.

    Words are those of the step, its component, dessert, order, round or pieces; the
    beginning of a word will do.

    Raises
    ------
    UnreadableError
        If no step is called so, or more than one.
    """
    names = tuple(laid.parts if among is None else among)
    if said in names:
        return said
    wanted = _words(said)
    found = [name for name in names if _has(_words(told(laid, name)), wanted)]
    exact = [name for name in found if wanted <= _words(told(laid, name))]
    found = exact if len(exact) == 1 else found
    keyed = [name for name in found if laid.parts[name].step.key.casefold() in wanted]
    found = keyed or found
    hands = [name for name in found if not laid.parts[name].stands]
    found = hands if len(hands) == 1 else found
    if len(found) == 1:
        return found[0]
    if not found:
        raise UnreadableError(
            Words("no step is called {said!r}", said=said),
            Words("Write it like 'fill pebble 24'; demould plan shows their names"),
        )
    listed = "; ".join(told(laid, name) for name in found[:MOST_LISTED])
    raise UnreadableError(
        Words("{said!r} may be {n} steps", said=said, n=len(found)),
        Words("Say more of it: {listed}", listed=listed),
    )


def told(laid: Laid, name: str) -> str:
    """Give the full name of a step, unlike that of any other."""
    part = laid.parts[name]
    what = part.component.name if part.component else ""
    turn = f" {part.pieces}, round {part.round}" if _by_rounds(laid, part) else ""
    wait = f" {part.step.place or 'wait'}" if part.stands and part.step.hands else ""
    dessert = part.make.dessert.name
    of = f"{what} of {dessert}" if what else dessert
    return f"{part.step.key}{wait} {of}{turn}, {part.make.order.key}"


def _by_rounds(laid: Laid, part: Part) -> bool:
    rounds = {
        other.round
        for other in laid.parts.values()
        if other.step is part.step
        and other.component is part.component
        and other.make.order.key == part.make.order.key
    }
    return len(rounds) > 1


def _words(text: str) -> set[str]:
    return set(re.findall(r"[^\W_]+", text.casefold()))


def _has(words: set[str], wanted: set[str]) -> bool:
    return all(any(word.startswith(one) for word in words) for one in wanted)
