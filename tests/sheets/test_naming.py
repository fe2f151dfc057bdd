import pytest

from demould.sheets.naming import doing, thing
from tests.week.demo_week import DOMES, PEBBLE, demo_week


@pytest.mark.parametrize(
    ("name", "told"),
    [
        (f"{PEBBLE}.ganache.0.steep", "steep ganache"),
        (f"{PEBBLE}.centre.0.cook", "cook pebble centre"),
        (f"{DOMES}.centre.0.cook", "cook domes centre"),
        (f"{PEBBLE}.piece.1.set-out", "set out pebble"),
        (f"{DOMES}.piece.0.box", "box domes"),
    ],
)
def test_a_step_is_called_by_what_is_done_to_what(name: str, told: str) -> None:
    laid = demo_week().timing.laid
    assert doing(laid, laid.parts[name]) == told


def test_no_two_components_are_called_the_same() -> None:
    laid = demo_week().timing.laid
    things = {
        (part.make.dessert.key, part.component.key if part.component else ""): thing(
            laid, part
        )
        for part in laid.parts.values()
    }
    assert len(set(things.values())) == len(things)
