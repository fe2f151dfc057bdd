"""How much glaze stays, how much is poured, how much runs off."""

from dataclasses import dataclass

from demould.amounts.layers.piece import Part
from demould.larder.read import bands
from demould.matter.grams import known, share
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Recovered:
    """What becomes of glaze that ran off, in g.

    `again` can be sieved, warmed and poured once more, `times` at the most; `lost`
    stays on rack and spatula.
    """

    again: Figure
    lost: Figure
    times: int


def recovered(made: Poured, kind: str = "mirror glaze") -> Recovered:
    """Say how much of what ran off comes back, as is usual for this kind."""
    band = bands(kind) or bands("mirror glaze")
    assert band is not None
    part = known(band.more["recovered"], "share that is recovered")
    again = worked(
        f"{made.runs_off.name}, comes back",
        made.runs_off.value * share(part),
        "g",
        Words("{part:g} % of what runs off", part=100 * share(part)),
        made.runs_off,
        part,
    )
    lost = worked(
        f"{made.runs_off.name}, lost on rack and spatula",
        made.runs_off.value - again.value,
        "g",
        "what runs off less what comes back",
        made.runs_off,
        again,
    )
    return Recovered(again=again, lost=lost, times=int(band.more["used again"].value))
