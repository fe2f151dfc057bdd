"""How much of a thing is usual in a component, where nobody has said."""

from demould.larder.fact import Fact
from demould.larder.names import plain
from demould.larder.table import by_name, facts, named

STEEPED = "to steep"
ANYTHING = "anything"


def usual_share(what: str) -> Fact:
    """How much of the whole is usual of this. [%] Of what nobody knows, a wide guess.

    >>> usual_share("salt").value, usual_share("zorbl").high
    (0.15, 15.0)
    """
    name = named("usual_amounts").get(plain(what), ANYTHING)
    return facts(by_name("usual_amounts")[name])["share"]


def is_colouring(what: str) -> bool:
    """Whether a thing is weighed for its shade.

    >>> is_colouring("black cocoa"), is_colouring("red colour"), is_colouring("salt")
    (True, True, False)
    """
    words = plain(what).split()
    return named("usual_amounts").get(plain(what)) == "colouring" or any(
        word.startswith(("colour", "color")) for word in words
    )
