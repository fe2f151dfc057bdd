"""A few words for a step, and what is said where they are too few."""

import pytest

from demould.mise.problem import UnreadableError
from demould.week.step_called import step_called, told
from tests.week.demo_week import DOMES, PEBBLE, demo_week


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("fill pebble 24", f"{PEBBLE}.piece.1.fill"),
        ("FILL River 3", f"{PEBBLE}.piece.2.fill"),
        ("fill round 2", f"{PEBBLE}.piece.2.fill"),
        ("glaze domes", f"{DOMES}.piece.1.glaze"),
        ("melt dip", f"{PEBBLE}.dip.0.melt"),
        ("rest ganache", f"{PEBBLE}.ganache.0.rest"),
        ("steep", f"{PEBBLE}.ganache.0.steep"),
        ("steep wait", f"{PEBBLE}.ganache.0.steep.stands"),
        (f"{PEBBLE}.piece.1.whip", f"{PEBBLE}.piece.1.whip"),
    ],
)
def test_a_few_words_find_the_step(said: str, meant: str) -> None:
    assert step_called(demo_week().timing.laid, said) == meant


@pytest.mark.parametrize(
    ("said", "answer"),
    [
        (
            "whip",
            "'whip' may be 2 steps. Say more of it: whip River Pebble 24, round 1,"
            " saturday dinner; whip River Pebble 3, round 2, saturday dinner",
        ),
        (
            "fry the fish",
            "no step is called 'fry the fish'. Write it like 'fill pebble 24'; demould"
            " plan shows their names",
        ),
    ],
)
def test_too_few_words_or_wrong_ones_are_told(said: str, answer: str) -> None:
    with pytest.raises(UnreadableError) as fault:
        step_called(demo_week().timing.laid, said)
    assert f"{fault.value.wrong}. {fault.value.remedy}" == answer


def test_no_two_steps_are_told_alike() -> None:
    laid = demo_week().timing.laid
    names = [told(laid, name) for name in laid.parts]
    assert len(set(names)) == len(names)
