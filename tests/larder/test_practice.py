"""Bands, holds and weights: common practice, no source, as agreed on in the trade."""

import pytest

from demould.larder.read import (
    bands,
    component_kinds,
    density,
    hold,
    holds,
    unit_weight,
)

HOUR, DAY = 60, 24 * 60

# Common practice, no source: dose %, fat %, sugars %, density g/ml; None where no band.
Pair = tuple[float, float] | None
BANDS: list[tuple[str, str | None, Pair, Pair, Pair, Pair]] = [
    ("whipped ganache", "gelatin", (0.3, 0.6), (28, 38), (8, 18), (0.55, 0.70)),
    ("bavarois", "gelatin", (0.8, 1.2), (15, 25), (12, 20), (0.60, 0.70)),
    ("chocolate mousse", "gelatin", (0, 0.5), (22, 32), (10, 20), (0.60, 0.75)),
    ("fruit mousse", "gelatin", (0.9, 1.4), (10, 20), (12, 22), (0.60, 0.70)),
    ("pectin centre", "pectin", (0.8, 1.3), None, (15, 40), (1.05, 1.14)),
    ("agar centre", "agar", (0.5, 1.0), None, None, (1.02, 1.10)),
    ("fluid gel", "agar", (0.6, 1.5), None, None, (1.02, 1.10)),
    ("mirror glaze", "gelatin", (1.2, 1.8), (5, 14), (35, 55), (1.20, 1.30)),
    ("thin dip", None, None, (55, 75), None, (1.03, 1.08)),
    ("velvet spray", None, None, (65, 80), None, (0.98, 1.02)),
    ("sponge", None, None, (8, 25), (22, 32), (0.35, 0.50)),
    ("parfait", None, None, (15, 24), (24, 34), (0.50, 0.65)),
]


@pytest.mark.parametrize(("kind", "agent", "dose", "fat", "sugars", "dense"), BANDS)
def test_bands_are_those_of_the_trade(
    kind: str, agent: str | None, dose: Pair, fat: Pair, sugars: Pair, dense: Pair
) -> None:
    band = bands(kind)
    assert band is not None
    assert band.agent == agent
    said = [
        (fact and (fact.low, fact.high)) for fact in (band.dose, band.fat, band.sugars)
    ]
    assert said == [dose, fat, sugars]
    assert band.density is not None
    assert (band.density.low, band.density.high) == dense


def test_a_kind_is_found_by_any_of_its_names() -> None:
    for kind in component_kinds():
        band = bands(kind)
        assert band is not None
        assert band.kind == kind
        for name in band.names:
            assert bands(name.upper()) == band
    assert bands("yoghurt mousse") == bands("fruit mousse")
    assert bands("gearbox") is None


def test_more_is_said_of_a_whipped_ganache() -> None:
    band = bands("whipped ganache")
    assert band is not None
    final = band.more["final mix temperature"]
    assert (final.low, final.high, final.unit) == (32, 45, "°C")
    assert "gelatin" not in band.more


# Common practice, no source: state, least, most, in minutes, the careful end.
HOLDS: list[tuple[str, float | None, float | None]] = [
    ("gelatin soaking", 10, 30),
    ("ganache resting", 12 * HOUR, 48 * HOUR),
    ("whipped ganache in the bag", None, 20),
    ("mousse before it grips", None, 20),
    ("blast freezing", 2.5 * HOUR, None),
    ("freezing in a freezer", 12 * HOUR, None),
    ("boxed and frozen", None, 21 * DAY),
    ("frozen centre or base", None, 14 * DAY),
    ("mirror glaze resting", 12 * HOUR, 5 * DAY),
    ("dip kept", None, 21 * DAY),
    ("thawing open with a fan", 6 * HOUR, None),
    ("thawing in closed boxes", 12 * HOUR, None),
    ("thawing a ring", 11 * HOUR, None),
    ("thawed with velvet or dip", None, 24 * HOUR),
    ("thawed with glaze", None, 36 * HOUR),
    ("pectin centre unfrozen", 24 * HOUR, 3 * DAY),
    ("fruit sauce boiled", None, 3 * DAY),
    ("on display", None, 12 * HOUR),
    ("out of the cold", None, 30),
    ("custard or egg cream", None, 24 * HOUR),
]


@pytest.mark.parametrize(("state", "least", "most"), HOLDS)
def test_holds_take_the_careful_end(
    state: str, least: float | None, most: float | None
) -> None:
    known = hold(state)
    assert known is not None
    assert known.counted_from
    assert (known.least and known.least.value) == least
    assert (known.most and known.most.value) == most
    if known.least:
        assert known.least.value == known.least.high
    if known.most:
        assert known.most.value == known.most.low


def test_every_hold_is_spoken_for() -> None:
    assert list(holds()) == [state for state, _, _ in HOLDS]
    assert hold("mousse") == holds()["mousse before it grips"]
    assert hold("gearbox") is None


def test_counted_things_have_their_weights() -> None:
    # Common practice, no source; leaves weigh 1.7 to 5 g by grade.
    weights = {
        "egg": 50, "yolks": 19, "whites": 31, "titanium leaf": 5, "bronze leaf": 3.3,
        "silver leaf gelatin": 2.5, "gold leaf gelatin": 2, "platinum leaf": 1.7,
        "gelatine leaves": 2,
    }  # fmt: skip
    for unit, grams in weights.items():
        fact = unit_weight(unit)
        assert fact is not None, unit
        assert (fact.value, fact.unit) == (grams, "g")
    assert unit_weight("gearbox") is None
    assert unit_weight("egg", "bloom") is None


def test_leaves_of_all_grades_set_about_the_same_by_straight_ratio() -> None:
    # Leaves are made to be exchanged one for one: grams times bloom is even. Printed
    # weights and grades give 400 to 550.
    for grade in ("titanium", "bronze", "silver", "gold", "platinum"):
        mass = unit_weight(f"gelatin leaf {grade}")
        bloom = unit_weight(f"gelatin leaf {grade}", "bloom")
        assert mass is not None
        assert bloom is not None
        assert 400 <= mass.value * bloom.value <= 550


def test_spoons_of_powder_vary_by_two_fifths() -> None:
    for spoon, millilitres in (("tsp", 5), ("tablespoon", 15)):
        fact = unit_weight(spoon, "volume of powder")
        assert fact is not None
        assert fact.value == millilitres
        assert fact.low == pytest.approx(0.6 * millilitres)
        assert fact.high == pytest.approx(1.4 * millilitres)


def test_a_third_of_a_litre_of_cream_weighs_327_grams() -> None:
    # Common practice, no source: 1 l of 35 % cream is about 0.99 kg, 33 cl 327 g.
    fact = density("cream")
    assert fact is not None
    assert 330 * fact.value == pytest.approx(327, abs=0.5)
    assert density("cocoa butter") is None
    assert density("cocoa butter", "density melted") is not None
    assert density("gearbox") is None
