"""What one piece holds."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.layers.piece import fillers_of, piece
from demould.amounts.shape.volume import cavity, mould_of
from demould.mise.dessert import Dessert, Dip, Spray
from demould.mise.figure import Stated, unfold
from tests.desserts.build import layer, stated
from tests.desserts.domes import MEADOW_DOMES
from tests.desserts.kitchen import KITCHEN
from tests.desserts.others import AMBER_TERRINE, EMBER_LOG, ORCHARD_RING
from tests.desserts.pebble import RIVER_PEBBLE


def parts(dessert: Dessert) -> dict[str, float]:
    return {part.component: part.grams.value for part in piece(dessert, KITCHEN).parts}


def test_a_pebble_weighs_77_9_g() -> None:
    # (90 - 18 - 9.9) ml x 0.62; 18 ml x 1.10; 9.9 ml x 0.95; 107.8 cm2 x 0.8 mm x 1.06 and
    # x 0.10 mm x 1.00. Printed to 0.1 g.
    assert parts(RIVER_PEBBLE) == pytest.approx(
        {"ganache": 38.5, "centre": 19.8, "base": 9.4, "dip": 9.1, "spray": 1.1},
        abs=0.051,
    )
    assert piece(RIVER_PEBBLE, KITCHEN).whole.value == pytest.approx(77.9, abs=0.05)


def test_the_ganache_takes_62_1_ml() -> None:
    (rest,) = (p for p in piece(RIVER_PEBBLE, KITCHEN).parts if p.how == "rest")
    assert rest.volume.value == pytest.approx(62.1, abs=0.05)


@pytest.mark.parametrize(
    ("dessert", "printed"),
    [
        (MEADOW_DOMES, {"mousse": 32.8, "centre": 18.3, "sponge": 9.0, "glaze": 16.4}),
        (ORCHARD_RING, {"bavarois": 386, "centre": 263, "sponge": 85, "oat base": 109}),
        (EMBER_LOG, {"mousse": 1092, "centre": 645, "sponge": 137, "glaze": 231}),
        (AMBER_TERRINE, {"nougat": 1008}),
    ],
)
def test_other_pieces_hold_what_is_printed(
    dessert: Dessert, printed: dict[str, float]
) -> None:
    found = parts(dessert)
    for key, grams in printed.items():
        off = 0.051 if grams < 40 else 0.51
        assert found[key] == pytest.approx(grams, abs=off), key


def test_the_velvet_goes_on_all_but_the_side_it_stands_on() -> None:
    # 509 cm2 x 0.12 mm x 1.00 g/ml.
    assert parts(ORCHARD_RING)["velvet"] == pytest.approx(6.1, abs=0.05)


def test_a_ring_cake_weighs_843_g_and_its_velvet() -> None:
    whole = piece(ORCHARD_RING, KITCHEN).whole.value
    assert whole - parts(ORCHARD_RING)["velvet"] == pytest.approx(843, abs=0.5)


@pytest.mark.parametrize(
    "dessert", [RIVER_PEBBLE, MEADOW_DOMES, ORCHARD_RING, EMBER_LOG, AMBER_TERRINE]
)
def test_layers_add_up_to_the_cavity(dessert: Dessert) -> None:
    inside = [
        part.volume.value
        for part in piece(dessert, KITCHEN).parts
        if part.how in ("rest", "cut", "mould")
    ]
    hollow = cavity(mould_of(KITCHEN, dessert.mould)).value
    assert sum(inside) == pytest.approx(hollow)


def test_only_the_face_up_to_the_depth_is_dipped() -> None:
    # A dome 35 mm high, 14 mm deep in: two fifths of 2 π r2, after Archimedes.
    half = Dip(
        component="glaze",
        film=stated(1, "mm"),
        clearance=stated(15, "mm"),
        heel=stated(10, "g"),
        depth=stated(14, "mm"),
    )
    dipped = replace(MEADOW_DOMES, finish=(half,))
    assert parts(dipped)["glaze"] == pytest.approx(0.4 * 76.97 * 0.1 * 1.25, abs=0.001)


def test_without_a_filler_a_piece_is_what_is_cut() -> None:
    sheet = replace(MEADOW_DOMES, layers=(MEADOW_DOMES.layers[3],), finish=())
    assert parts(sheet) == pytest.approx({"sponge": 9.05}, abs=0.005)
    assert fillers_of(sheet) == ()


def test_two_fillers_cannot_be_reckoned() -> None:
    two = replace(MEADOW_DOMES, layers=(*MEADOW_DOMES.layers, layer("sponge")))
    with pytest.raises(
        ValueError, match=r"^mousse and sponge both fill the rest of a piece$"
    ):
        piece(two, KITCHEN)


def test_a_full_cavity_leaves_nothing() -> None:
    centre = MEADOW_DOMES.layers[1]
    full = replace(MEADOW_DOMES, layers=(layer("mousse"), *(centre,) * 6))
    with pytest.raises(ValueError, match=r"^nothing is left of a cavity for mousse$"):
        piece(full, KITCHEN)


def test_a_film_is_given_in_mm() -> None:
    spray = Spray(component="glaze", film=stated(1, "g"), lands=stated(50, "%"))
    with pytest.raises(
        ValueError, match=r"^a film of 1 g on a piece; it is given in mm$"
    ):
        piece(replace(MEADOW_DOMES, finish=(spray,)), KITCHEN)


def test_the_whole_unfolds_to_the_water_and_the_densities() -> None:
    whole = piece(RIVER_PEBBLE, KITCHEN).whole
    leaves = {part.name for _, part in unfold(whole) if isinstance(part.origin, Stated)}
    assert {
        "water in one pebble",
        "water in one oval insert",
        "density of base",
        "film of the dip",
        "small length",
    } <= leaves


@given(st.floats(0.3, 1.0))
def test_the_filler_weighs_as_it_is_whipped(density: float) -> None:
    ganache = replace(RIVER_PEBBLE.components[0], whipped=stated(density, "g/ml"))
    changed = replace(RIVER_PEBBLE, components=(ganache, *RIVER_PEBBLE.components[1:]))
    assert parts(changed)["ganache"] == pytest.approx(
        parts(RIVER_PEBBLE)["ganache"] * density / 0.62
    )
    assert parts(changed)["centre"] == parts(RIVER_PEBBLE)["centre"]
