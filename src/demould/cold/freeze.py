"""How long a piece takes to freeze through."""

from typing import Literal

from demould.cold.around.air import coldest_and_warmest
from demould.cold.corners import likely_corner
from demould.cold.follow import follow
from demould.cold.piece import FrozenPiece, Place, thermal_of
from demould.cold.run.readout import passing
from demould.cold.run.solve import Run
from demould.cold.wait import LONGEST_S, Goal, Wait, wait
from demould.mise.words import Words

NEAR_K = 3.0
TOO_NEAR_K = 0.2
PLANK = {"slab": (1 / 2, 1 / 8), "cylinder": (1 / 4, 1 / 16), "sphere": (1 / 6, 1 / 24)}


def freeze(
    piece: FrozenPiece,
    place: Place,
    target_c: float = -18.0,
    *,
    in_full: bool = True,
) -> Wait:
    """Hours until no point of the piece is warmer than the target.

    The warmest point counts, not the middle of the centre: a centre that goes in
    frozen is below the target from the start, and warms before it cools. Not `in_full`
    it costs less: the same hours, without each cause's own.

    Not counted: supercooling, and what drips and dries. Fat that crystallises in the
    freezer (up to 6 to 15 % more heat) lies within the slow corner.
    """
    goal = _through(place, target_c)
    gap = _beyond(place, target_c)
    near = Words(
        "the air is only {gap:.1f} °C colder than the target: one degree more or less"
        " in this place moves the time a lot; measure its air",
        gap=gap,
    )
    if _stays_soft(piece, target_c):
        soft = Words("nothing in it freezes: cold, never hard")
        return wait(piece, place, goal, soft, in_full=in_full)
    remark = near if TOO_NEAR_K <= gap < NEAR_K else None
    return wait(piece, place, goal, remark, in_full=in_full)


def likely_hours(
    piece: FrozenPiece, place: Place, target_c: float = -18.0
) -> float | None:
    """The likely hours of `freeze` alone, in one solve; None where it never gets there.

    It says nothing of how unsure it is: made to lay two pieces side by side.
    """
    goal = _through(place, target_c)
    if not goal.reachable(0.0):
        return None
    corner = likely_corner(place)
    followed = follow(piece, place, corner, until=LONGEST_S, done=goal.done)
    moment = goal.moment(followed.run)
    return None if moment is None else moment / 3600


def _through(place: Place, target_c: float) -> Goal:
    """No point of the piece is warmer than the target."""

    def frozen(run: Run) -> float | None:
        if run.warmest[0] <= target_c:
            return 0.0
        return passing(run.seconds, run.warmest, target_c)

    end_c, _ = coldest_and_warmest(place.air_c)
    gap = _beyond(place, target_c)
    return Goal(
        cooling=True,
        reachable=lambda off: gap - off >= TOO_NEAR_K,
        done=lambda reading: reading.warmest <= target_c,
        moment=frozen,
        never=Words(
            "air of {air:g} °C does not bring a piece to {target:g} °C in any time"
            " worth waiting",
            air=end_c,
            target=target_c,
        ),
    )


def _beyond(place: Place, target_c: float) -> float:
    """How much colder than the target the air gets [K]."""
    end_c, _ = coldest_and_warmest(place.air_c)
    return target_c - end_c


def _stays_soft(piece: FrozenPiece, target_c: float) -> bool:
    """Whether no part of it has any ice at the target: no water, or too much spirit."""
    points = [thermal_of(part.made_of, part.air).freezing_c for part in piece.parts]
    return all(point is None or point <= target_c for point in points)


def plank_seconds(
    shape: Literal["slab", "cylinder", "sphere"],
    *,
    thickness: float,
    density: float,
    latent: float,
    conductivity: float,
    freezing_c: float,
    air_c: float,
    film: float,
) -> float:
    r"""Plank's freezing time, a sanity check beside `freeze` [s].

    .. math:: t = \frac{\rho L}{t_f - t_a}\left(\frac{P d}{h} + \frac{R d^2}{k}\right)

    SI; `thickness` is a slab's (cold from both sides) or a diameter, `latent` in J/kg
    of product. Starts at the freezing point, ends when the last of it is frozen: no
    cooling before, none after.

    Raises
    ------
    ValueError
        If the air is not colder than the freezing point.

    References
    ----------
    .. [1] R. Plank, Z. ges. Kälte-Ind. 20 (1913) 109-114, from memory; as in R. P.
       Singh and D. R. Heldman, Introduction to Food Engineering, chapter 7.
    """
    if air_c >= freezing_c:
        raise ValueError(
            f"air of {air_c:g} °C freezes nothing that freezes at {freezing_c:g} °C"
        )
    p, r = PLANK[shape]
    return (
        density
        * latent
        / (freezing_c - air_c)
        * (p * thickness / film + r * thickness**2 / conductivity)
    )
