"""One clash: what fights with what, and what to do instead."""

from dataclasses import dataclass

from demould.mise.component import Component
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """Two things that fight. `certain` where the card says it, else it hangs on a question."""

    component: str
    says: Words
    do: Words
    certain: bool = True


def clash(
    component: Component, says: Words, do: Words, *, certain: bool = True
) -> Clash:
    """A clash inside one component, its name first."""
    named = Words("{name}: {says}", name=component.name, says=says)
    return Clash(component=component.key, says=named, do=do, certain=certain)
