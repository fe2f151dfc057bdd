"""What the method does not say: a temperature anywhere."""

import re
from collections.abc import Iterator

from demould.advice.gaps.gap import Gap
from demould.advice.gaps.trying import Trying
from demould.larder.read import bands
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.words import Words

_DEGREES = re.compile(r"\d\s*(?:°|degrees?\b|C\b)|\bat \d+\b|\bto \d+\b")


def method_gaps(trying: Trying) -> Iterator[Gap]:
    """Give one gap for the components whose kind lives by a temperature nobody says."""
    silent = [
        one
        for one in trying.dessert.components
        if _usual(one) and not _says_degrees(one, trying.dessert)
    ]
    if not silent:
        return
    usual = [
        f"{one.name}: {temperatures}"
        for one in silent
        for temperatures in [_usual(one)]
    ]
    every = len(silent) == len(
        [one for one in trying.dessert.components if _usual(one)]
    )
    names = ", ".join(one.name for one in silent)
    says = (
        Words("no temperature is said anywhere")
        if every
        else Words("no temperature is said for {names}", names=names)
    )
    yield Gap(
        key="temperatures",
        kind="temperature",
        says=says,
        takes=Words("usual: {usual}", usual="; ".join(usual)),
        asks=Words(
            "how warm is {name} when it is mixed, folded or used?", name=silent[0].name
        ),
        lines=tuple(
            step.line for step in silent[0].method[:1] if step.line is not None
        ),
    )


def _says_degrees(component: Component, dessert: Dessert) -> bool:
    """In its own method, on its lines, or where the whole piece takes it."""
    takes = [
        step
        for step in dessert.method
        if step.key == component.key
        or any(need.component == component.key for need in step.needs)
    ]
    words = (
        remark
        for step in (*component.method, *takes)
        for remark in (*step.remarks, step.key)
    )
    lines = (remark for line in component.formula for remark in line.remarks)
    return any(_DEGREES.search(word) for word in (*words, *lines))


def _usual(component: Component) -> str:
    """The temperatures that practice has for a component of this kind."""
    band = bands(component.kind)
    if band is None:
        return ""
    found = [
        f"{name.removesuffix(' temperature')} {fact.low:g} to {fact.high:g} °C"
        for name, fact in band.more.items()
        if fact.unit == "°C"
    ]
    return ", ".join(found)
