"""What a place was found to do: its film and how damp it is."""

import pytest

from demould.mise.figure import Assumed, Line, Measured
from demould.mise.problem import UnreadableError
from demould.mise.read_cold import read_cold_place
from demould.mise.write_kitchen import write_cold_place

WHOLE = (
    "freezer; -20 °C; upright freezer; 6 shelves of 600 x 400 mm;"
    " film 12 W/m2K (assumed 9 to 20); 80 % humid (measured)"
)


def line(text: str) -> Line:
    return Line("kitchen.yaml", 1, text)


def test_film_and_humidity_are_read_with_how_they_are_known() -> None:
    place = read_cold_place(line(WHOLE))
    assert place.film is not None
    assert (place.film.value, place.film.unit) == (12, "W/m2K")
    assert isinstance(place.film.origin, Assumed)
    assert (place.film.origin.low, place.film.origin.high) == (9, 20)
    assert place.humidity is not None
    assert place.humidity.value == 80
    assert isinstance(place.humidity.origin, Measured)
    assert place.remarks == ()


@pytest.mark.parametrize("unit", ["W/m2K", "W/m²K", "W / m2 K", "w/m2k"])
def test_the_films_unit_in_its_spellings(unit: str) -> None:
    place = read_cold_place(line(f"fridge; 3 °C; fan fridge; film 9.5 {unit}"))
    assert place.film is not None
    assert place.film.value == 9.5


def test_what_was_read_is_written_and_read_again() -> None:
    place = read_cold_place(line(WHOLE))
    again = read_cold_place(line(write_cold_place(place)))
    assert again.film is not None
    assert place.film is not None
    assert again.film.value == place.film.value
    assert again.humidity is not None
    assert isinstance(again.humidity.origin, Measured)


@pytest.mark.parametrize(
    ("part", "fault"),
    [
        ("film 0 W/m2K", "the film of the freezer is '0 W/m2K', nothing at all. Write more than 0."),
        ("film -3 W/m2K", "the film of the freezer is '-3 W/m2K', less than 0. Write it without the minus sign."),
        ("film 12", "the film of the freezer, '12', has no unit. Write the unit too: 12 W/m2K."),
        ("130 % humid", "the humidity of the freezer is '130 %', more than all. Write a share from 0 to 100 %."),
    ],
)  # fmt: skip
def test_what_cannot_be_is_one_sentence(part: str, fault: str) -> None:
    with pytest.raises(UnreadableError) as said:
        read_cold_place(line(f"freezer; -20 °C; upright freezer; {part}"))
    assert str(said.value) == fault
