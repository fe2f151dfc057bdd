"""Where a layer stands, and which way up."""

import pytest

from demould.mise.dessert import Layer
from demould.mise.figure import Assumed, Line
from demould.mise.known import Known
from demould.mise.problem import UnreadableError
from demould.mise.read_layer import read_layer

COMPONENTS = ("mousse", "centre", "oat base")
KNOWN = Known(moulds=("oval insert",), tools=(), cold=())


def layer(text: str) -> Layer:
    line = Line("d.yaml", 7, f"centre; from the oval insert mould; {text}")
    return read_layer(line, COMPONENTS, KNOWN)


@pytest.mark.parametrize(
    ("text", "of", "apart"),
    [
        ("2.4 mm above the oat base", "oat base", 2.4),
        ("2,4 mm off the Oat Base", "oat base", 2.4),
        ("1 cm from the bottom", "bottom", 10),
        ("3 mm below the open side", "open side", 3),
        ("on the oat base", "oat base", 0),
        ("resting on the bottom", "bottom", 0),
    ],
)
def test_a_layer_stands_so_far_from_another(text: str, of: str, apart: float) -> None:
    read = layer(text)
    assert read.stands is not None
    assert (read.stands.of, read.stands.apart.value) == (of, apart)
    assert read.remarks == ()


def test_how_it_is_known_may_stand_in_brackets() -> None:
    read = layer("2 mm (assumed 1 to 4) above the oat base; slowly")
    assert read.stands is not None
    origin = read.stands.apart.origin
    assert isinstance(origin, Assumed)
    assert (origin.low, origin.high) == (1, 4)
    assert read.remarks == ("slowly",)


@pytest.mark.parametrize("text", ["on the tray", "small side down"])
def test_what_is_said_beside_it_stays_a_remark(text: str) -> None:
    read = layer(text)
    assert (read.stands, read.turned_over, read.remarks) == (None, False, (text,))


@pytest.mark.parametrize("text", ["small side up", "round side up", "flat side down"])
def test_a_part_is_turned_over(text: str) -> None:
    read = layer(text)
    assert (read.turned_over, read.remarks) == (True, ())


def test_a_distance_from_what_is_no_part_is_refused() -> None:
    with pytest.raises(UnreadableError) as fault:
        layer("2 mm above the oat bse")
    assert str(fault.value) == (
        "'oat bse' is named here and nowhere made. Perhaps you meant 'oat base'."
    )
    assert fault.value.column == 36
