"""A tray drawn with every cut inside it."""

from dataclasses import replace

import pytest

from demould.mise.dessert import Cut, component_of
from demould.sheets.drawing.picture import Disc, Said
from demould.sheets.drawing.svg import svg_of
from demould.sheets.drawing.trays import tray_drawing
from tests.demo_folder import demo_folder
from tests.sheets.drawing.test_section import dessert, inside_and_apart

CUT = [
    (component_of(one, layer.component), layer.fill.shape)
    for one in demo_folder().desserts
    for layer in one.layers
    if isinstance(layer.fill, Cut)
]
BAKED = [(made, shape) for made, shape in CUT if made.sheet is not None]


@pytest.mark.parametrize(("made", "shape"), BAKED, ids=[one[0].name for one in BAKED])
def test_every_cut_is_on_the_tray_and_the_tray_on_the_paper(
    made: object, shape: object
) -> None:
    picture = tray_drawing(made, shape)  # type: ignore[arg-type]
    inside_and_apart(picture)
    assert len(svg_of(picture)) < 10_000


def test_24_discs_are_drawn_and_30_offered() -> None:
    made = component_of(dessert("meadow-domes"), "sponge")
    shape = next(shape for one, shape in CUT if one == made)
    picture = tray_drawing(made, shape)
    assert sum(isinstance(one, Disc) for one in picture.marks) == 24
    assert "would give 30" in str(picture.told)
    assert made.sheet is not None
    moved = replace(made, sheet=replace(made.sheet, shifted=True))
    assert sum(isinstance(m, Disc) for m in tray_drawing(moved, shape).marks) == 30
    assert any(
        m.text == "30" for m in tray_drawing(moved, shape).marks if isinstance(m, Said)
    )


def test_what_has_no_tray_is_refused() -> None:
    made = component_of(dessert("meadow-domes"), "mousse")
    with pytest.raises(ValueError, match="not cut from a tray"):
        tray_drawing(made, CUT[0][1])
