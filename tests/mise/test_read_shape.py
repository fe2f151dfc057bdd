import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.mise.problem import UnreadableError
from demould.mise.read_shape import read_shape
from demould.mise.shape import (
    Box,
    Cone,
    CutEllipsoid,
    Cylinder,
    Dome,
    Egg,
    FreeForm,
    HalfEgg,
    HalfSphere,
    HollowRing,
    Oval,
    Savarin,
    Shape,
    Sphere,
    TaperedBox,
    Trough,
    WaterOnly,
)
from demould.mise.shape_points import Outlined, Turned
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
        ("sphere 60 mm", Sphere(diameter_mm=60)),
        ("dome 80 x 45 mm", Dome(diameter_mm=80, height_mm=45)),
        ("cone 60 x 80 mm", Cone(diameter_mm=60, small_mm=0, height_mm=80)),
        ("cone 60 to 20 x 80 mm", Cone(diameter_mm=60, small_mm=20, height_mm=80)),
        (
            "ring 18 cm x 4.5 cm, hole 60 mm",
            HollowRing(diameter_mm=180, hole_mm=60, height_mm=45),
        ),
        (
            "savarin 70 x 25 mm, hole 20 mm",
            Savarin(diameter_mm=70, hole_mm=20, height_mm=25),
        ),
        ("egg 60 x 42 mm", Egg(length_mm=60, width_mm=42)),
        ("half egg 60 x 42 mm", HalfEgg(length_mm=60, width_mm=42)),
        (
            "ellipsoid 78 x 58 x 34 mm",
            CutEllipsoid(
                half_length_mm=39, half_width_mm=29, half_height_mm=17, cut_mm=17
            ),
        ),
        ("frame 480 x 40 x 30 mm", Box(length_mm=480, width_mm=40, height_mm=30)),
        (
            "terrine 300 x 80 to 290 x 70, 70 mm deep",
            TaperedBox(
                length_mm=300,
                width_mm=80,
                small_length_mm=290,
                small_width_mm=70,
                height_mm=70,
            ),
        ),
        (
            "turned 0 0, 20 0, 30,5 25 mm",
            Turned(points=((0, 0), (20, 0), (30.5, 25))),
        ),
        (
            "outline 0 0, 6 0, 6 4, 0 0 cm, 25 mm high",
            Outlined(points=((0, 0), (60, 0), (60, 40), (0, 0)), height_mm=25),
        ),
        (
            "outline 0 0, 0 160, 40 0, 0 0 mm, 25 mm high",
            Outlined(points=((0, 0), (0, 160), (40, 0), (0, 0)), height_mm=25),
        ),
        (
            "free form 80 x 56 x 34 mm, water 90 ml",
            FreeForm(water_ml=90, length_mm=80, width_mm=56, height_mm=34),
        ),
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
            " hemisphere, half-sphere, sphere, dome, disc, ring, cylinder, cone, savarin, oval,"
            " ellipsoid, cut ellipsoid, egg, half egg, box, bar, frame, terrine, sheet,"
            " trough, turned, outline, free form, water with its sizes.",
        ),
        (
            "cut ellipsoid 40 x 28 x 20 mm, cut 30 mm above its widest",
            "a cut 30 mm above the widest section misses an ellipsoid 20 mm to its top."
            " Measure it again, inside, in mm.",
        ),
        (
            "turned 0 0, 20 10, 30 5 mm",
            "point 3 of the profile, 5 mm up, is lower than the one before it, 10 mm: it"
            " would cross or undercut itself. Measure it again, inside, in mm.",
        ),
        (
            "turned 0 0, 20 0 mm",
            "the profile is 0 mm high; it must be more than 0. Measure it again, inside,"
            " in mm.",
        ),
        (
            "turned 0 0 20 mm",
            "the points in 'turned 0 0 20 mm' cannot be read. Write it like turned 0 0,"
            " 20 0, 30 25, 32 40 mm: half a width and the height there, from the bottom"
            " up.",
        ),
        (
            "outline 0 0, 60 0, 60 40, 0 40 mm, 25 mm high",
            "the outline is open: it begins at 0 0 and ends at 0 40; it must end where it"
            " began. Measure it again, inside, in mm.",
        ),
        (
            "outline 0 0, 60 40, 60 0, 0 40, 0 0 mm, 25 mm high",
            "the outline crosses itself: side 1 meets side 3. Measure it again, inside,"
            " in mm.",
        ),
        (
            "outline 0 0, 60 0, 60 40, 0 0 mm, 0 mm high",
            "the outline is 0 mm high; it must be more than 0. Measure it again, inside,"
            " in mm.",
        ),
        (
            "savarin 70 x 25 mm, hole 80 mm",
            "a hole of 80 mm does not go into a ring of 70 mm. Measure it again, inside,"
            " in mm.",
        ),
        (
            "free form 80 x 56 x 34 mm, water 190 ml",
            "a form 80 x 56 x 34 mm holds at most 152.3 ml, not 190 ml. Measure it again,"
            " inside, in mm.",
        ),
        (
            "half egg 60 mm",
            "the sizes in 'half egg 60 mm' cannot be read. Write it like half egg 60 x 42"
            " mm, long and wide.",
        ),
    ],
)
def test_what_is_no_shape(text: str, message: str) -> None:
    with pytest.raises(UnreadableError) as fault:
        read_shape(text)
    assert str(fault.value) == message


SIZE = st.floats(0.1, 999) | st.decimals("0.1", "999", places=3).map(float)
SHAPES = st.one_of(
    st.builds(Sphere, diameter_mm=SIZE),
    st.builds(Dome, diameter_mm=SIZE, height_mm=SIZE),
    st.builds(Egg, length_mm=SIZE, width_mm=SIZE),
    st.builds(HalfEgg, length_mm=SIZE, width_mm=SIZE),
    st.builds(
        lambda d, share, high: Cone(diameter_mm=d, small_mm=share * d, height_mm=high),
        SIZE,
        st.sampled_from((0.0, 0.5, 1.0)),
        SIZE,
    ),
    st.builds(
        lambda kind, d, share, high: kind(
            diameter_mm=d, hole_mm=share * d, height_mm=high
        ),
        st.sampled_from((HollowRing, Savarin)),
        SIZE,
        st.sampled_from((0.25, 0.5)),
        SIZE,
    ),
    st.builds(
        TaperedBox,
        length_mm=SIZE,
        width_mm=SIZE,
        small_length_mm=SIZE,
        small_width_mm=SIZE,
        height_mm=SIZE,
    ),
    st.builds(
        lambda a, b, c, high: Outlined(
            points=((0.0, 0.0), (a, 0.0), (a, b), (0.0, c), (0.0, 0.0)), height_mm=high
        ),
        SIZE,
        SIZE,
        SIZE,
        SIZE,
    ),
    st.builds(lambda a, b: Turned(points=((0.0, 0.0), (a, b))), SIZE, SIZE),
    st.builds(
        lambda a, b, c, share: FreeForm(
            length_mm=a, width_mm=b, height_mm=c, water_ml=share * a * b * c / 1000
        ),
        SIZE,
        SIZE,
        SIZE,
        st.sampled_from((0.3, 0.5, 0.9)),
    ),
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
