import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.mise.problem import UnreadableError
from demould.mise.read_shape import read_shape
from demould.mise.shape import (
    Box,
    CutEllipsoid,
    Cylinder,
    HalfSphere,
    Oval,
    Shape,
    Trough,
    WaterOnly,
)
from demould.mise.write_quantity import write_shape


@pytest.mark.parametrize(
    ("text", "shape"),
    [
        ("half-sphere 70 mm", HalfSphere(diameter_mm=70)),
        ("half sphere 7 cm", HalfSphere(diameter_mm=70)),
        ("disc 160 x 12 mm", Cylinder(diameter_mm=160, height_mm=12)),
        ("Ring 180 mm x 4,5 cm", Cylinder(diameter_mm=180, height_mm=45)),
        ("cylinder 160\u00d712 mm", Cylinder(diameter_mm=160, height_mm=12)),
        (
            "oval 60 x 42 x 5 mm",
            Oval(
                length_mm=60,
                width_mm=42,
                small_length_mm=60,
                small_width_mm=42,
                height_mm=5,
            ),
        ),
        (
            "oval 45 x 30 to 42.4 x 28.3, 18 mm deep",
            Oval(
                length_mm=45,
                width_mm=30,
                small_length_mm=42.4,
                small_width_mm=28.3,
                height_mm=18,
            ),
        ),
        (
            "cut ellipsoid 40.2 x 28.0 x 21.64 mm, cut 12.36 mm above its widest",
            CutEllipsoid(
                half_length_mm=40.2,
                half_width_mm=28,
                half_height_mm=21.64,
                cut_mm=12.36,
            ),
        ),
        ("box 300 x 80 x 70 mm", Box(length_mm=300, width_mm=80, height_mm=70)),
        ("bar 490 x 70 x 8 mm", Box(length_mm=490, width_mm=70, height_mm=8)),
        ("trough 500 x 80 x 70 mm", Trough(length_mm=500, width_mm=80, height_mm=70)),
        ("water 90 ml", WaterOnly(water_ml=90)),
    ],
)
def test_a_cooks_words_for_bodies(text: str, shape: Shape) -> None:
    assert read_shape(text) == shape


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "disc 60",
            "the sizes in 'disc 60' cannot be read. Write it like disc 160 x 12 mm, across"
            " and high.",
        ),
        (
            "disc 60 x 8",
            "the sizes in 'disc 60 x 8' have no unit. Write the unit too: disc 60 x 8 mm.",
        ),
        (
            "disc 60 x 8 g",
            "the size, '8 g', is a weight, and a length is wanted. Write it in mm or cm.",
        ),
        (
            "disc -60 x 8 mm",
            "a diameter of -60 mm; it must be more than 0. Measure it again, inside, in"
            " mm.",
        ),
        (
            "pyramid 60 mm",
            "'pyramid 60 mm' is not a shape known here. Write one of half sphere,"
            " hemisphere, half-sphere, disc, ring, cylinder, oval, cut ellipsoid, box, bar,"
            " trough, water with its sizes.",
        ),
        (
            "cut ellipsoid 40 x 28 x 20 mm, cut 30 mm above its widest",
            "a cut 30 mm above the widest section misses an ellipsoid 20 mm to its top."
            " Measure it again, inside, in mm.",
        ),
    ],
)
def test_what_is_no_shape(text: str, message: str) -> None:
    with pytest.raises(UnreadableError) as fault:
        read_shape(text)
    assert str(fault.value) == message


SIZE = st.floats(0.1, 999) | st.decimals("0.1", "999", places=3).map(float)
SHAPES = st.one_of(
    st.builds(HalfSphere, diameter_mm=SIZE),
    st.builds(Cylinder, diameter_mm=SIZE, height_mm=SIZE),
    st.builds(
        Oval,
        length_mm=SIZE,
        width_mm=SIZE,
        small_length_mm=SIZE,
        small_width_mm=SIZE,
        height_mm=SIZE,
    ),
    st.builds(
        lambda half, share: CutEllipsoid(
            half_length_mm=half,
            half_width_mm=half / 2,
            half_height_mm=half,
            cut_mm=half * share,
        ),
        SIZE,
        st.integers(-9, 10).map(lambda tenths: tenths / 10),
    ),
    st.builds(Box, length_mm=SIZE, width_mm=SIZE, height_mm=SIZE),
    st.builds(
        lambda wide, more: Trough(length_mm=500, width_mm=wide, height_mm=wide + more),
        SIZE,
        SIZE,
    ),
    st.builds(WaterOnly, water_ml=SIZE),
)


@given(SHAPES)
def test_what_is_written_is_read_back(shape: Shape) -> None:
    assert read_shape(write_shape(shape)) == shape


def test_an_ellipsoid_has_three_half_axes() -> None:
    with pytest.raises(UnreadableError) as fault:
        read_shape("cut ellipsoid 0 x 28 x 20 mm, cut 0 mm above its widest")
    assert str(fault.value) == (
        "an ellipsoid needs three half-axes of more than 0 mm. Measure it again, inside,"
        " in mm."
    )
    with pytest.raises(UnreadableError) as fault:
        read_shape("trough 500 x 80 x 30 mm")
    assert str(fault.value) == (
        "a trough 80 mm wide has a half-round 40 mm high; it cannot be 30 mm high in all."
        " Measure it again, inside, in mm."
    )
