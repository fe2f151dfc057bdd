import pytest

from demould.cold.around.air import Film, air_at, changes, checked_air, even_film

OVERNIGHT = ((0.0, -20.0), (3600.0, -12.0), (7200.0, -20.0))


def test_air_holds_until_the_next_entry() -> None:
    assert [air_at(OVERNIGHT, s) for s in (0, 3599, 3600, 7200, 9e9)] == [
        -20,
        -20,
        -12,
        -20,
        -20,
    ]
    assert air_at(-35, 100) == -35


def test_changes_end_with_the_end() -> None:
    assert changes(OVERNIGHT, 5000) == (3600, 5000)
    assert changes(-35, 5000) == (5000,)


@pytest.mark.parametrize(
    "air",
    [(), ((5.0, 1.0),), ((0.0, 1.0), (0.0, 2.0)), ((0.0, 1.0), (9.0, 2.0), (5.0, 3.0))],
)
def test_air_that_does_not_go_forward_from_the_start_is_refused(
    air: tuple[tuple[float, float], ...],
) -> None:
    with pytest.raises(
        ValueError, match=r"^air over time must begin at 0 s and go forward$"
    ):
        checked_air(air)


def test_sound_air_is_given_back() -> None:
    assert checked_air(OVERNIGHT) == OVERNIGHT
    assert checked_air(3) == 3


def test_films_are_not_below_nought() -> None:
    assert even_film(8) == Film(bottom=8, top=8, other=8)
    with pytest.raises(ValueError, match=r"^a film below 0 W/\(m2 K\)$"):
        even_film(-1)
