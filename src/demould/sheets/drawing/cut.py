"""What a drawing of a piece asks of it, in true millimetres."""

from dataclasses import dataclass

from demould.amounts.layers.piece import Part, piece
from demould.amounts.layers.place import placed
from demould.amounts.layers.wall import Wall, walls
from demould.amounts.shape.curve import Floats
from demould.amounts.shape.skin import hole_of, skin_of
from demould.amounts.shape.volume import mould_of
from demould.mise.dessert import Dessert, Dip, Rest
from demould.mise.kitchen import Kitchen
from demould.mise.mould import Mould
from demould.sheets.drawing.plane import (
    Gap,
    Way,
    face,
    gap,
    part_face,
    part_hole,
    way_of,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A dessert in its mould, cut through the middle.

    Attributes
    ----------
    way
        Along its longer side, or across.
    cavity, faces
        The right half of the mould's face and of each part's, `(n, 2)`.
    hole, holes
        The same of a ring's hole, and of each part's, None where there is none.
    gaps
        Of each part that is not flush, how near it comes to the cavity in the plane.
    walls
        Of each part, in the order of `faces`.
    parts
        What a piece holds of each component.
    coat_mm
        All coats together.
    """

    dessert: Dessert
    mould: Mould
    way: Way
    cavity: Floats
    faces: tuple[Floats, ...]
    hole: Floats | None
    holes: tuple[Floats | None, ...]
    gaps: tuple[Gap | None, ...]
    walls: tuple[Wall, ...]
    parts: tuple[Part, ...]
    coat_mm: float

    @property
    def high(self) -> float:
        """From the bottom of the cavity to its open side."""
        return float(self.cavity[:, 1].max())

    @property
    def half(self) -> float:
        """Half its greatest width in the plane."""
        return float(self.cavity[:, 0].max())

    @property
    def all_round(self) -> bool:
        """Whether a coat goes over the open side too."""
        return any(isinstance(one, Dip) for one in self.dessert.finish)

    @property
    def has_filler(self) -> bool:
        """Whether something fills what the parts leave."""
        return any(isinstance(one.fill, Rest) for one in self.dessert.layers)


def cut_of(dessert: Dessert, kitchen: Kitchen) -> Cut:
    """Cut a dessert through its middle.

    Raises
    ------
    ValueError
        Where there is no such piece; `does_it_fit` says so in a cook's words.
    """
    mould = mould_of(kitchen, dessert.mould)
    cavity = skin_of(mould.shape)
    way = way_of(cavity)
    parts = placed(dessert, kitchen)
    hollow = hole_of(mould.shape)
    outer = face(cavity, way)
    faces = tuple(part_face(part, way) for part in parts)
    return Cut(
        dessert=dessert,
        mould=mould,
        way=way,
        cavity=outer,
        faces=faces,
        gaps=tuple(
            None if part.flush else gap(inner, outer)
            for part, inner in zip(parts, faces, strict=True)
        ),
        hole=None if hollow is None else face(hollow, way),
        holes=tuple(part_hole(part, way) for part in parts),
        walls=walls(dessert, kitchen),
        parts=piece(dessert, kitchen).parts,
        coat_mm=sum(finish.film.value for finish in dessert.finish),
    )
