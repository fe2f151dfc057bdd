"""What of a batch gets into the pieces."""

from demould.matter.grams import share
from demould.mise.component import Component
from demould.mise.figure import Figure, worked
from demould.mise.words import Words


def usable(component: Component, made: Figure, times: int = 1) -> Figure:
    """What is left of `made` grams after what sticks: the % first, then fixed grams [g].

    `times` is how often the fixed grams are lost: once a whip, or once a batch.
    """
    loss = component.loss
    kept = made.value * (1 - share(loss.share))
    parts = [made, loss.share]
    rule = Words("batch less {lost:g} %", lost=100 * share(loss.share))
    if loss.fixed is not None:
        kept -= loss.fixed.value * times
        parts.append(loss.fixed)
        rule = Words(
            "(batch less {lost:g} %) less {times} x {fixed:g} g, once a {once}",
            lost=100 * share(loss.share),
            times=times,
            fixed=loss.fixed.value,
            once=loss.once_a,
        )
    name = f"{component.name} that can be used"
    return worked(name, max(0.0, kept), "g", rule, *parts)


def to_make_g(component: Component, usable_g: float, times: int = 1) -> float:
    """Grams, cooked, of which `usable_g` are left after what sticks [g]."""
    fixed = component.loss.fixed
    stuck = fixed.value * times if fixed is not None else 0.0
    return (usable_g + stuck) / (1 - share(component.loss.share))
