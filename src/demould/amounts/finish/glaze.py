"""How much glaze stays, how much is poured, how much runs off."""

from dataclasses import dataclass

from demould.amounts.layers.piece import Part
from demould.matter.grams import share
from demould.mise.dessert import Glaze
from demould.mise.figure import Figure, worked
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Poured:
    """Glaze for so many pieces, in g: what stays on them, is poured, runs off."""

    stays: Figure
    pour: Figure
    runs_off: Figure


def poured(glaze: Glaze, part: Part, pieces: int) -> Poured:
    """Pour over `pieces` in one go. What runs off can be sieved and warmed again."""
    times = share(glaze.pour)
    each = part.grams
    pour = worked(
        f"{each.name}: to pour",
        pieces * each.value * times,
        "g",
        Words(
            "{n} pieces x {g:.1f} g x {times:g}", n=pieces, g=each.value, times=times
        ),
        each,
        glaze.pour,
    )
    stays = worked(
        each.name,
        pieces * each.value,
        "g",
        Words("{n} pieces x {g:.1f} g", n=pieces, g=each.value),
        each,
    )
    runs_off = worked(
        f"{each.name}: runs off",
        pour.value - stays.value,
        "g",
        "poured less what stays",
        pour,
        stays,
    )
    return Poured(stays=stays, pour=pour, runs_off=runs_off)
