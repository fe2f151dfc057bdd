from dataclasses import dataclass

import pytest

from demould.mise.figure import (
    Assumed,
    Estimate,
    Figure,
    Measured,
    assumed_in,
    figures_in,
    how_known,
    put,
    unfold,
    worked,
)
from demould.mise.words import Words

GUESS = Figure(
    value=0.62, unit="g/ml", name="density", origin=Assumed(low=0.5, high=0.7)
)
WEIGHED = Figure(value=62.1, unit="ml", name="volume", origin=Measured())
SAID = Figure(value=3, unit="g", name="salt")
PIECE = worked("ganache", 38.5, "g", "ml x density", WEIGHED, GUESS)
WHOLE = worked("piece", 41.5, "g", Words("{n} parts", n=2), PIECE, SAID)


@dataclass(frozen=True)
class Thing:
    name: str
    figure: Figure
    more: tuple[Figure, ...]


THING = Thing("x", GUESS, (SAID, WEIGHED))


def test_a_figure_shows_its_unit() -> None:
    assert str(GUESS) == "0.62 g/ml"
    assert str(Figure(value=2, unit="", name="")) == "2"


def test_a_figure_unfolds_to_what_was_written() -> None:
    assert [(depth, one.name) for depth, one in unfold(WHOLE)] == [
        (0, "piece"),
        (1, "ganache"),
        (2, "volume"),
        (2, "density"),
        (1, "salt"),
    ]


def test_each_assumption_counts_once() -> None:
    assert assumed_in((WHOLE, PIECE, GUESS)) == (GUESS,)
    assert assumed_in((SAID, WEIGHED)) == ()


def test_one_assumption_below_makes_it_assumed() -> None:
    known = [how_known(figure) for figure in (GUESS, WEIGHED, SAID, WHOLE)]
    assert known == ["assumed", "measured", "stated", "assumed"]
    assert how_known(worked("x", 1, "g", "as it is", SAID)) == "worked out"


def test_figures_are_found_and_put_by_their_way() -> None:
    found = dict(figures_in(THING))
    assert found == {("figure",): GUESS, ("more", 0): SAID, ("more", 1): WEIGHED}
    changed = put(THING, ("more", 1), SAID)
    assert changed == Thing("x", GUESS, (SAID, SAID))
    assert put(SAID, (), GUESS) == GUESS


def test_what_can_never_be() -> None:
    with pytest.raises(ValueError, match=r"^assumed between 2 and 1: turned$"):
        Assumed(low=2, high=1)
    with pytest.raises(ValueError, match=r"^an estimate of 3, 2, 4 is out of order$"):
        Estimate(low=3, likely=2, high=4, unit="g", reason=Words("none"))
