"""How long a frozen piece takes until it can be served."""

from demould.cold.around.air import coldest_and_warmest
from demould.cold.piece import FrozenPiece, Place
from demould.cold.run.readout import passing
from demould.cold.run.solve import Run
from demould.cold.wait import Goal, Wait, wait
from demould.mise.words import Words

TOO_NEAR_K = 0.2


def thaw(
    piece: FrozenPiece, place: Place, core_c: float = 1.0, *, in_full: bool = True
) -> Wait:
    """Hours until no ice is left anywhere and the middle of the core is that warm.

    In +3 °C air the core never gets to +3 °C, so +1 °C is asked for. Not `in_full` it
    costs less: the same hours, without each cause's own.

    Where the place says how damp its air is, frost and dew settle while the skin is
    under the dew point and bring their heat, and take it again as they dry; `Wait.wet`
    tells the water. Not counted: fat melting, a coat, water that runs off.
    """

    def served(run: Run) -> float | None:
        free = passing(run.seconds, run.margin, 0.0) if run.ice[0] > 0 else 0.0
        warm = passing(run.seconds, run.core, core_c) if run.core[0] < core_c else 0.0
        return None if free is None or warm is None else max(free, warm)

    _, end_c = coldest_and_warmest(place.air_c)
    goal = Goal(
        cooling=False,
        reachable=lambda off: end_c + off - core_c >= TOO_NEAR_K,
        done=lambda reading: reading.margin >= 0 and reading.core >= core_c,
        moment=served,
        never=Words(
            "air of {air:g} °C does not bring the core to {core:g} °C in any time"
            " worth waiting",
            air=end_c,
            core=core_c,
        ),
    )
    return wait(piece, place, goal, in_full=in_full)
