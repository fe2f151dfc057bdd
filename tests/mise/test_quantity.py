import math
from contextlib import suppress
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.mise.figure import Assumed, Figure, Line, Measured, Origin, Stated
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_amount, read_count, read_figure, read_range
from demould.mise.unit import UNITS, Kind
from demould.mise.write_quantity import write_figure

HERE = Line("x.yaml", 3, "as written", 5)
MASS: tuple[Kind, ...] = ("mass",)


def refused(text: str, *kinds: Kind, zero: bool = False) -> str:
    with pytest.raises(UnreadableError) as fault:
        read_figure(text, name="size", kinds=kinds, line=None, zero=zero)
    return str(fault.value)


# The SI Brochure (BIPM, 9th ed., 2019), tables 7 and 8: prefixes, min = 60 s,
# h = 60 min, d = 24 h, l = 1 dm3 (from memory; all exact, so compared exactly).
@pytest.mark.parametrize(
    ("text", "kind", "value", "unit"),
    [
        ("350 g", "mass", 350, "g"),
        ("1.2 kg", "mass", 1200, "g"),
        ("500 mg", "mass", 0.5, "g"),
        ("1 200 g", "mass", 1200, "g"),
        ("12 345,5 g", "mass", 12345.5, "g"),
        ("3,6 g", "mass", 3.6, "g"),
        ("0.125 g", "mass", 0.125, "g"),
        ("1.2345 g", "mass", 1.2345, "g"),
        ("33 cl", "volume", 330, "ml"),
        ("2 dl", "volume", 200, "ml"),
        ("4.8 l", "volume", 4800, "ml"),
        ("4,8 L", "volume", 4800, "ml"),
        ("3 cm", "length", 30, "mm"),
        ("0.5 m", "length", 500, "mm"),
        ("120 m", "height", 120, "m"),
        ("2.5 h", "time", 150, "min"),
        ("75 min", "time", 75, "min"),
        ("1 h 30", "time", 90, "min"),
        ("1 h 30 min", "time", 90, "min"),
        ("2 d 4", "time", 3120, "min"),
        ("14 d", "time", 20160, "min"),
        ("5 days", "time", 7200, "min"),
        ("1 day", "time", 1440, "min"),
        ("30 s", "time", 0.5, "min"),
        ("-18 °C", "temperature", -18, "°C"),
        ("\u221218 C", "temperature", -18, "°C"),
        ("+1 deg C", "temperature", 1, "°C"),
        ("50 %", "share", 50, "%"),
        ("0.62 g/ml", "density", 0.62, "g/ml"),
        ("620 g/l", "density", 0.62, "g/ml"),
        ("1,03 kg/l", "density", 1.03, "g/ml"),
        ("107.8 cm²", "area", 107.8, "cm2"),
        ("2 leaves", "count", 2, "leaf"),
        ("1 spoon", "count", 1, "spoon"),
        ("12 pieces", "count", 12, "pieces"),
        ("2.6 times", "times", 2.6, "times"),
    ],
)
def test_amounts_come_out_in_few_units(
    text: str, kind: Kind, value: float, unit: str
) -> None:
    amount = read_amount(text, name="size", kinds=(kind,))
    assert (amount.value, amount.unit) == (value, unit)


@pytest.mark.parametrize(
    ("text", "origin"),
    [
        ("90 ml", Stated(line=HERE)),
        ("90 ml (stated)", Stated(line=HERE)),
        ("90 ml (stated by the maker)", Stated(by="the maker", line=HERE)),
        ("90 ml (measured)", Measured(line=HERE)),
        ("90 ml (measured 3 times)", Measured(readings=3, line=HERE)),
        (
            "90 ml (measured 3 times, 2026-11-16)",
            Measured(readings=3, on=date(2026, 11, 16), line=HERE),
        ),
        (
            "90 ml (measured, 2026-11-16)",
            Measured(on=date(2026, 11, 16), line=HERE),
        ),
        ("90 ml (assumed 80 to 100)", Assumed(low=80, high=100, line=HERE)),
        ("90 ml (assumed 80 to 100 ml)", Assumed(low=80, high=100, line=HERE)),
        ("9 cl (assumed 8 to 10)", Assumed(low=80, high=100, line=HERE)),
        (
            "90 ml (assumed 80 to 100, as last year)",
            Assumed(low=80, high=100, source="as last year", line=HERE),
        ),
        ("90 ml (assumed)", Assumed(low=50, high=120, line=HERE)),
    ],
)
def test_the_words_in_brackets_say_how_it_is_known(
    text: str, origin: Stated | Measured | Assumed
) -> None:
    figure = read_figure(
        text, name="cavity", kinds=("volume",), line=HERE, usual=(50, 120)
    )
    assert figure == Figure(value=90, unit="ml", name="cavity", origin=origin)


@pytest.mark.parametrize(
    ("text", "kinds", "message"),
    [
        (
            "350",
            MASS,
            "the size, '350', has no unit. Write the unit too: 350 g or 350 kg.",
        ),
        (
            "g",
            MASS,
            "the size, 'g', is not an amount. Write a number and its unit, in g or kg.",
        ),
        (
            "12 mm",
            ("mass", "volume"),
            "the size, '12 mm', is a length, and a weight or a volume is wanted. Write it"
            " in g or kg, or ml or l.",
        ),
        (
            "14 dayz",
            ("time",),
            "the size, '14 dayz', is in 'dayz', a unit nobody here knows. Perhaps you"
            " meant 'day'.",
        ),
        (
            "14 qqq",
            ("time",),
            "the size, '14 qqq', is in 'qqq', a unit nobody here knows. Write it in min,"
            " h or d.",
        ),
        (
            "70 °F",
            ("temperature",),
            "the size, '70 °F', is in Fahrenheit. Write it in °C.",
        ),
        (
            "-5 g",
            MASS,
            "the size is '-5 g', less than 0. Write it without the minus sign.",
        ),
        ("0 g", MASS, "the size is '0 g', nothing at all. Write more than 0."),
        (
            "105 %",
            ("share",),
            "the size is '105 %', more than all. Write a share from 0 to 100 %.",
        ),
        (
            "1.200 ml",
            ("volume",),
            "'1.200 ml' can be read as 1.2 ml or as 1 200 ml. Write 1.2 ml or 1 200 ml.",
        ),
        (
            "12,500 mm",
            ("length",),
            "'12,500 mm' can be read as 12.5 mm or as 12 500 mm. Write 12.5 mm or 12 500"
            " mm.",
        ),
        (
            "1.200.000 g",
            MASS,
            "'1.200.000' has more than one decimal mark. Write thousands with a space and"
            " one comma or point: 1 200.5.",
        ),
        (
            "9" * 41 + " g",
            MASS,
            "9" * 41 + " is longer than any number in a kitchen. Look at it"
            " again; leave out needless digits.",
        ),
        (
            "9000 g/ml",
            ("density",),
            "a density of '9000 g/ml' is far from any food, which has 0.2 to 1.5 g/ml."
            " Weigh a known cup of it, and write grams by millilitres.",
        ),
        (
            "620 g/ml",
            ("density",),
            "a density of '620 g/ml' is far from any food, which has 0.2 to 1.5 g/ml."
            " Write 0.62 g/ml, or 620 g/l if that is how it was given.",
        ),
        (
            "0.62 g/l",
            ("density",),
            "a density of '0.62 g/l' is far from any food, which has 0.2 to 1.5 g/ml."
            " Write 0.62 g/ml.",
        ),
        (
            "5 g 30",
            MASS,
            "the size, '5 g 30', has two numbers. Write a number and its unit, in g or kg.",
        ),
        (
            "5 % (guessed)",
            ("share",),
            "'(guessed)' does not say how the size is known. Write (measured), (stated) or"
            " (assumed LOW to HIGH).",
        ),
        (
            "5 % (assumed)",
            ("share",),
            "nobody says between which bounds the size is assumed. Write (assumed LOW to"
            " HIGH) with the two numbers.",
        ),
        (
            "5 % (assumed 8 to 2)",
            ("share",),
            "the size is assumed between 8 and 2, and 5 is outside. Write the smaller bound"
            " first, and the number between the two.",
        ),
        (
            "2.5 h (assumed 3 to 4)",
            ("time",),
            "the size is assumed between 3 and 4, and 2.5 is outside. Write the smaller"
            " bound first, and the number between the two.",
        ),
        (
            "5 % (measured often)",
            ("share",),
            "'often' after 'measured' is no date and no count. Write it like (measured 3"
            " times, 2026-11-16).",
        ),
    ],
)
def test_what_cannot_be_read_is_said_in_one_sentence(
    text: str, kinds: tuple[Kind, ...], message: str
) -> None:
    assert refused(text, *kinds) == message


def test_nothing_is_an_answer_where_it_can_be() -> None:
    figure = read_figure("0 g", name="stock", kinds=MASS, line=None, zero=True)
    assert figure.value == 0
    assert refused("-1 g", "mass", zero=True) == (
        "the size is '-1 g', less than 0. Write it without the minus sign."
    )


@pytest.mark.parametrize(
    ("text", "kind", "low", "high"),
    [
        ("12 h to 48 h", "time", 720, 2880),
        ("12 to 48 h", "time", 720, 2880),
        ("75 to 80 °C", "temperature", 75, 80),
        ("-14 °C to -12 °C", "temperature", -14, -12),
        ("12 h\u201348 h", "time", 720, 2880),
        ("2 h", "time", 120, None),
    ],
)
def test_a_range_has_two_ends_or_one(
    text: str, kind: Kind, low: float, high: float | None
) -> None:
    least, most = read_range(text, name="wait", kinds=(kind,), line=None)
    assert least.value == low
    assert (most.value if most else None) == high


def test_a_range_that_runs_backwards() -> None:
    with pytest.raises(UnreadableError) as fault:
        read_range("48 h to 12 h", name="wait", kinds=("time",), line=None)
    assert str(fault.value) == (
        "the wait, '48 h to 12 h', runs backwards. Write the smaller one first."
    )


@pytest.mark.parametrize("text", ["24", "24 pieces", "24 Pieces"])
def test_a_count_may_name_its_thing(text: str) -> None:
    assert read_count(text, name="number", most=9999) == 24


def test_a_count_with_a_point_in_it_is_asked() -> None:
    with pytest.raises(UnreadableError) as fault:
        read_count("1.200", name="number", most=9999)
    assert str(fault.value) == (
        "'1.200' can be read as 1.2 pieces or as 1 200 pieces. Write 1.2 pieces or 1 200"
        " pieces."
    )


FIGURES = st.sampled_from(
    [
        ("g", "mass"),
        ("ml", "volume"),
        ("mm", "length"),
        ("min", "time"),
        ("°C", "temperature"),
        ("%", "share"),
        ("cm2", "area"),
        ("pieces", "count"),
        ("times", "times"),
        ("m", "height"),
    ]
)


@given(
    what=FIGURES,
    value=st.floats(0.001, 90, allow_nan=False)
    | st.integers(1, 90)
    | st.decimals("0.001", "90", places=3).map(float),
    low=st.floats(0, 0.9),
    high=st.floats(0, 9),
    how=st.sampled_from(["stated", "by", "measured", "often", "assumed"]),
    day=st.none() | st.dates(date(2020, 1, 1), date(2030, 1, 1)),
)
def test_what_is_written_is_read_back(
    what: tuple[str, Kind],
    value: float,
    low: float,
    high: float,
    how: str,
    day: date | None,
) -> None:
    unit, kind = what
    value = float(value)
    origins: dict[str, Origin] = {
        "stated": Stated(),
        "by": Stated(by="the maker"),
        "measured": Measured(on=day),
        "often": Measured(on=day, readings=5),
        "assumed": Assumed(low=value * (1 - low), high=value + high, source="us"),
    }
    figure = Figure(value=value, unit=unit, name="size", origin=origins[how])
    text = write_figure(figure)
    assert read_figure(text, name="size", kinds=(kind,), line=None) == figure


@given(
    st.text(max_size=40)
    | st.from_regex(
        r"[-+]?[0-9]{1,400}([.,][0-9]{1,3}){0,2} ?(g|kg|h|min|l)?", fullmatch=True
    )
)
def test_any_text_is_a_figure_or_a_sentence(text: str) -> None:
    with suppress(UnreadableError):
        figure = read_figure(text, name="size", kinds=("mass", "time"), line=None)
        assert math.isfinite(figure.value)


def test_every_spelling_of_a_unit_is_read() -> None:
    for spelling, unit in UNITS.items():
        if unit.kind == "density":
            continue
        amount = read_amount(f"20 {spelling}", name="size", kinds=(unit.kind,))
        assert amount.unit == unit.name
