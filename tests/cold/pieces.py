"""Pieces that several checks of the cold put into it."""

from demould.cold.body.profile import raised, sphere
from demould.cold.piece import FrozenPiece, Part
from demould.larder.ingredient import Composition

MOUSSE = Composition(
    water=50, fat=27, sucrose=15, lactose=4, protein=3, ash=0.7, sodium_mg=50
)
CENTRE = Composition(water=68, sucrose=18, fructose=5, glucose=5, fibre=3, acid=1)


def ball(start_c: float, *, air: float = 0.35) -> FrozenPiece:
    """A mousse of 56 mm with a centre of 30 mm in its middle."""
    return FrozenPiece(
        body=Part(
            name="mousse",
            profile=sphere(0.056),
            made_of=MOUSSE,
            air=air,
            start_c=start_c,
        ),
        inside=(
            Part(
                name="centre",
                profile=raised(sphere(0.03), 0.013),
                made_of=CENTRE,
                start_c=start_c,
            ),
        ),
    )
