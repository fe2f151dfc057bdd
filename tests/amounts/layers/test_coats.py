"""Coats inside a cavity; what is brushed, rolled and spattered on."""

import math
from dataclasses import replace

import numpy as np
import pytest
import trimesh

from demould.amounts.counts.demand import demand
from demould.amounts.layers.fit import does_it_fit
from demould.amounts.layers.piece import piece
from demould.amounts.layers.place import placed
from demould.amounts.shape.area import side_cm2
from demould.amounts.shape.lining import lining_ml
from demould.mise.dessert import Dessert, Laid, Layer, Lining
from demould.mise.figure import Line
from demould.mise.known import Known
from demould.mise.read_finish import read_finish
from demould.mise.read_layer import read_layer
from tests.desserts.build import layer, stated
from tests.desserts.kitchen import DOME, KITCHEN, PEBBLE, RING, TERRINE
from tests.desserts.others import EMBER_LOG
from tests.desserts.pebble import RIVER_PEBBLE

SHELL = Layer(component="dip", fill=Lining(film=stated(2, "mm")))
DOMES = replace(
    RIVER_PEBBLE, mould="dome", layers=(SHELL, layer("ganache")), finish=(), plate=()
)


def test_a_coat_in_a_half_ball_is_the_smaller_half_ball_less() -> None:
    # pi / 12 x (70^3 - 66^3) mm3 = 14.53 ml.
    assert lining_ml(DOME, 2) == pytest.approx(math.pi / 12 * (70**3 - 66**3) / 1000)
    inside = math.pi / 4 * 176**2 * 43 / 1000
    assert lining_ml(RING, 2) == pytest.approx(
        math.pi / 4 * 180**2 * 45 / 1000 - inside
    )
    assert lining_ml(TERRINE, 2) == pytest.approx(1680 - 296 * 76 * 68 / 1000)


def test_a_coat_in_a_pebble_is_that_of_its_mesh_within_5_per_cent() -> None:
    # Every point of the curved face moved 2 mm inwards; what lies under the cut stays.
    ball = trimesh.creation.icosphere(subdivisions=5)
    ball.apply_scale(
        [PEBBLE.half_length_mm, PEBBLE.half_width_mm, PEBBLE.half_height_mm]
    )
    inner = ball.copy()
    inner.vertices = ball.vertices - 2 * ball.vertex_normals

    def under_the_cut(mesh: object) -> float:
        half = mesh.slice_plane([0, 0, PEBBLE.cut_mm], [0, 0, -1])  # type: ignore[attr-defined]  # a mesh
        corners = half.triangles - np.array([0, 0, PEBBLE.cut_mm])
        return float(np.linalg.det(corners).sum() / 6)

    coat = (under_the_cut(ball) - under_the_cut(inner)) / 1000
    assert lining_ml(PEBBLE, 2) == pytest.approx(coat, rel=0.05)


def test_the_filler_takes_what_the_coat_leaves() -> None:
    one = piece(DOMES, KITCHEN)
    coat = next(part for part in one.parts if part.how == "coat")
    rest = next(part for part in one.parts if part.how == "rest")
    assert coat.volume.value == pytest.approx(14.53, abs=0.01)
    assert rest.volume.value == pytest.approx(89.80 - 14.53, abs=0.01)
    assert does_it_fit(DOMES, KITCHEN) == ()


def test_what_goes_in_first_lies_on_the_coat() -> None:
    parts = (SHELL, layer("centre", "small dome"), layer("ganache"))
    (centre,) = placed(replace(DOMES, layers=parts), KITCHEN)
    assert centre.at == 2


def test_coats_that_meet_are_refused() -> None:
    thick = replace(SHELL, fill=Lining(film=stated(40, "mm")))
    wrong = replace(DOMES, layers=(thick, layer("ganache")))
    assert [str(one) for one in does_it_fit(wrong, KITCHEN)] == [
        ": a coat of 40 mm fills the dome mould, 70 mm wide. Write the thickness of the"
        " coat in mm, usually 1 to 3 mm."
    ]
    with pytest.raises(
        ValueError, match=r"^a coat of 40 mm fills a cavity 70 mm wide$"
    ):
        lining_ml(DOME, 40)


def _with(finish: Laid, dessert: Dessert = DOMES) -> Dessert:
    return replace(dessert, finish=(finish,))


def test_what_is_rolled_on_the_sides_of_a_ring() -> None:
    # pi x 18 x 4.5 cm = 254.5 cm2, 60 % of it 1.5 mm thick at 0.95 g/ml: 21.8 g.
    assert side_cm2(RING) == pytest.approx(math.pi * 18 * 4.5)
    rolled = Laid(
        component="base",
        how="rolled",
        film=stated(1.5, "mm"),
        covers=stated(60, "%"),
        on="sides",
    )
    ring = replace(DOMES, mould="ring", layers=(layer("ganache"),))
    part = piece(_with(rolled, ring), KITCHEN).parts[-1]
    assert (part.component, part.how) == ("base", "laid")
    assert part.grams.value == pytest.approx(254.47 * 0.6 * 0.15 * 0.95, abs=0.01)
    asked = demand(
        _with(rolled, ring),
        KITCHEN,
        piece(_with(rolled, ring), KITCHEN),
        next(one for one in ring.components if one.key == "base"),
        1,
    )
    assert asked is not None
    assert asked.each.value == pytest.approx(part.grams.value)


def test_what_is_brushed_on_cut_edges() -> None:
    # 20 slices: 19 cuts, two faces of 49.1 cm2 each; 0.3 mm.
    key = EMBER_LOG.components[0].key
    brushed = Laid(component=key, how="brushed", film=stated(0.3, "mm"), on="cut edges")
    log = replace(EMBER_LOG, portions=stated(20, "portions"))
    part = piece(_with(brushed, log), KITCHEN).parts[-1]
    assert part.volume.value == pytest.approx(2 * 19 * 49.13 * 0.03, rel=1e-3)
    uncut = replace(_with(brushed, log), portions=None)
    assert [str(one) for one in does_it_fit(uncut, KITCHEN)][-1].endswith(
        "Write in how many portions a piece is cut, or another face."
    )


def test_coats_are_read() -> None:
    line = Line("x.yaml", 1, "shell; coat 2 mm")
    read = read_layer(line, ("shell",), Known(moulds=(), own=None))
    assert isinstance(read.fill, Lining)
    assert read.fill.film.value == 2
    text = "crumbs; rolled; film 1.5 mm; covers 60 %; on the sides"
    laid = read_finish(Line("x.yaml", 1, text), ("crumbs",))
    assert isinstance(laid, Laid)
    assert (laid.how, laid.on) == ("rolled", "sides")
    assert laid.covers is not None
    assert laid.covers.value == 60
