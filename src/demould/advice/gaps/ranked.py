"""Everything a dessert does not say, what moves most first."""

from demould.advice.gaps.agree import agreement_gaps
from demould.advice.gaps.amounts import amount_gaps
from demould.advice.gaps.assumed import assumed_gaps
from demould.advice.gaps.gap import Gap, Kind
from demould.advice.gaps.method import method_gaps
from demould.advice.gaps.names import name_gaps
from demould.advice.gaps.trying import Trying
from demould.matter.grams import Find
from demould.mise.dessert import Dessert
from demould.mise.kitchen import Kitchen
from demould.mise.own_larder import Larder

_NOT_BY_NUMBERS: dict[Kind, float] = {
    "called for": 0.3,
    "unknown": 0.3,
    "used, not listed": 0.2,
    "temperature": 0.15,
    "total": 0.05,
    "listed, not used": 0.05,
}
"""What weighs in though nobody can work out what it moves: a part that is missing is
much, a total that is out by a little is little."""


def gaps_of(
    dessert: Dessert, kitchen: Kitchen, find: Find, larder: Larder = ()
) -> tuple[Gap, ...]:
    """Give everything the dessert does not say, what moves most first.

    Parameters
    ----------
    dessert, kitchen
        As read; a draft from a note is one like any other.
    find
        The look-up of ingredients.
    larder
        The kitchen's own: a name that is described there is not vague, and its prices
        say how far the money of a piece moves.
    """
    trying = Trying(dessert=dessert, kitchen=kitchen, find=find, larder=larder)
    found = (
        *assumed_gaps(trying),
        *amount_gaps(trying),
        *name_gaps(trying, larder),
        *agreement_gaps(trying),
        *method_gaps(trying),
    )
    return tuple(sorted(found, key=lambda one: -weight_of(one)))


def weight_of(gap: Gap) -> float:
    """How much a gap weighs: what it moves, or what its kind weighs by itself."""
    return max(gap.weight, _NOT_BY_NUMBERS.get(gap.kind, 0.0))
