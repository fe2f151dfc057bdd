"""How high parts lie."""

from dataclasses import replace

import pytest

from demould.amounts.layers.place import placed
from demould.mise.dessert import Dessert, Layer, Stands
from demould.mise.shape import Box, CutEllipsoid, Cylinder, Oval, Shape, Trough
from tests.desserts.build import layer, stated
from tests.desserts.domes import MEADOW_DOMES
from tests.desserts.kitchen import KITCHEN
from tests.desserts.others import AMBER_TERRINE, ORCHARD_RING
from tests.desserts.pebble import RIVER_PEBBLE


def _oval(long: float, wide: float, small_long: float, small_wide: float) -> Oval:
    return Oval(
        length_mm=long,
        width_mm=wide,
        small_length_mm=small_long,
        small_width_mm=small_wide,
        height_mm=5,
    )


DISC = Cylinder(diameter_mm=20, height_mm=5)


def heights(dessert: Dessert) -> list[tuple[str, float]]:
    return [(one.layer.component, round(one.at, 6)) for one in placed(dessert, KITCHEN)]


def domes(*layers: Layer) -> Dessert:
    return replace(MEADOW_DOMES, layers=layers)


def standing(of: str, apart: float, shape: Cylinder = DISC) -> Layer:
    stands = Stands(of=of, apart=stated(apart, "mm"))
    return replace(layer("centre", shape), stands=stands)


def test_a_base_lies_under_the_open_side_and_a_centre_in_the_middle_of_the_rest() -> (
    None
):
    # The pebble is 34 mm high, base 5 and centre 18: (34 - 5 - 18) / 2 = 5.5.
    assert heights(RIVER_PEBBLE) == [
        ("centre", 5.5),
        ("base", 29),
    ]


def test_two_flush_parts_lie_on_each_other() -> None:
    # Ring 45 mm: sponge 9.4 and base 6 above the rest, centre 12 in 29.6.
    assert heights(ORCHARD_RING) == [
        ("centre", 8.8),
        ("sponge", 29.6),
        ("oat base", 39),
    ]


def test_what_goes_in_first_lies_on_the_bottom() -> None:
    filled = domes(layer("sponge", DISC), layer("mousse"))
    (part,) = placed(filled, KITCHEN)
    assert (part.at, part.flush, part.said) == (0, False, True)


def test_without_a_filler_parts_are_stacked() -> None:
    assert heights(domes(layer("sponge", DISC), layer("centre", DISC))) == [
        ("sponge", 0),
        ("centre", 5),
    ]


def test_two_centres_have_as_much_between_them_as_under_and_over() -> None:
    # 35 mm less two of 5 leaves 25: gaps of 25 / 3.
    filled = domes(
        layer("mousse"),
        layer("centre", DISC),
        layer("mousse"),
        layer("sponge", DISC),
        layer("mousse"),
    )
    assert heights(filled) == [
        ("centre", round(25 / 3, 6)),
        ("sponge", round(50 / 3 + 5, 6)),
    ]
    assert [one.said for one in placed(filled, KITCHEN)] == [False, False]


@pytest.mark.parametrize(
    ("of", "apart", "at"),
    [("bottom", 4, 4), ("open side", 10, 20), ("sponge", 3, 19), ("sponge", 0, 22)],
)
def test_a_centre_stands_where_its_line_says(of: str, apart: float, at: float) -> None:
    # The dome is 35 mm high, the sponge over it 8, the disc 5.
    sponge = layer("sponge", Cylinder(diameter_mm=60, height_mm=8))
    filled = domes(layer("mousse"), standing(of, apart), layer("mousse"), sponge)
    centre, _ = placed(filled, KITCHEN)
    assert (centre.at, centre.said) == (at, True)


def test_a_centre_stands_over_what_lies_below_it() -> None:
    filled = domes(
        layer("sponge", DISC), layer("mousse"), standing("sponge", 3), layer("mousse")
    )
    assert heights(filled) == [("sponge", 0), ("centre", 8)]


def test_a_centre_that_stands_off_the_filler_is_in_the_middle() -> None:
    filled = domes(layer("mousse"), standing("mousse", 3), layer("mousse"))
    (centre,) = placed(filled, KITCHEN)
    assert (centre.at, centre.said) == (15, False)


@pytest.mark.parametrize(
    ("across", "along"),
    [
        (
            Box(length_mm=30, width_mm=50, height_mm=5),
            Box(length_mm=50, width_mm=30, height_mm=5),
        ),
        (
            CutEllipsoid(
                half_length_mm=10, half_width_mm=20, half_height_mm=9, cut_mm=0
            ),
            CutEllipsoid(
                half_length_mm=20, half_width_mm=10, half_height_mm=9, cut_mm=0
            ),
        ),
        (_oval(30, 45, 28, 42), _oval(45, 30, 42, 28)),
        (Trough(length_mm=20, width_mm=30, height_mm=20),) * 2,
    ],
)
def test_a_part_lies_along_its_mould(across: Shape, along: Shape) -> None:
    filled = replace(RIVER_PEBBLE, layers=(layer("ganache"), layer("base", across)))
    assert [one.shape for one in placed(filled, KITCHEN)] == [along]


def test_a_terrine_of_one_thing_has_no_parts() -> None:
    assert placed(AMBER_TERRINE, KITCHEN) == ()
