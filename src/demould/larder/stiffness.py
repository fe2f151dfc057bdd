"""How stiff a filling is by the look cooks go by."""

from collections.abc import Mapping
from functools import cache

from demould.larder.fact import Fact
from demould.larder.names import plain
from demould.larder.table import by_name, facts, named


@cache
def stiffness() -> Mapping[str, Fact]:
    """Yield stress by look, the softest first [Pa]."""
    return {
        name: facts(group)["yield stress"]
        for name, group in by_name("stiffness").items()
    }


def look_in(text: str) -> str | None:
    """The look a text speaks of, the longest name first, or None.

    >>> look_in("4 to 8 °C, soft peaks"), look_in("at once")
    ('soft peaks', None)
    """
    said = f" {plain(text)} "
    spoken = named("stiffness")
    found = [name for name in spoken if f" {name} " in said]
    return spoken[max(found, key=len)] if found else None
