"""A mould: so many trays of so many cavities of one shape."""

from dataclasses import dataclass

from demould.mise.figure import Figure, Line
from demould.mise.shape import Shape


@dataclass(frozen=True, slots=True, kw_only=True)
class Mould:
    """What a kitchen has of one mould.

    `water` is what one cavity was weighed to hold; where it is given it wins over the
    volume of `shape`. `wall` is the thickness of `material`. [mm]
    """

    key: str
    trays: int
    cavities_each: int
    shape: Shape
    water: Figure | None = None
    material: str = "silicone"
    wall: Figure
    remarks: tuple[str, ...] = ()
    line: Line | None = None

    @property
    def cavities(self) -> int:
        """All cavities of all trays."""
        return self.trays * self.cavities_each
