"""A mould: so many trays of so many cavities of one shape."""

from dataclasses import dataclass

from demould.mise.figure import Figure, Line
from demould.mise.shape import Shape


@dataclass(frozen=True, slots=True, kw_only=True)
class Mould:
    """What a kitchen has of one mould.

    `water` is what one cavity was weighed to hold; where it is given it wins over the
    volume of `shape`. `wall` is the thickness of `material`. [mm] A piece of `halves`
    is joined from two cavities; `shape` is then the whole one and `water` what one half
    holds. `hole` is how wide the opening is that a closed one is filled through. [mm]
    """

    key: str
    trays: int
    cavities_each: int
    shape: Shape
    water: Figure | None = None
    material: str = "silicone"
    wall: Figure
    halves: bool = False
    hole: Figure | None = None
    remarks: tuple[str, ...] = ()
    line: Line | None = None

    @property
    def cavities(self) -> int:
        """All cavities of all trays."""
        return self.trays * self.cavities_each

    @property
    def at_once(self) -> int:
        """Pieces that all cavities give in one filling."""
        return self.cavities // self.cavities_a_piece

    @property
    def cavities_a_piece(self) -> int:
        """2 for a piece joined from halves."""
        return 2 if self.halves else 1
