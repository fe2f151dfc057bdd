"""Bodies that moulds and parts of a piece have. Lengths are inside ones, in mm."""

from dataclasses import dataclass, fields


def _all_positive(shape: object) -> None:
    for part in fields(shape):  # type: ignore[arg-type]  # every shape is a dataclass
        value = getattr(shape, part.name)
        if isinstance(value, float | int) and value <= 0:
            what = part.name.removesuffix("_mm").removesuffix("_ml").replace("_", " ")
            raise ValueError(f"a {what} of {value:g} mm; it must be more than 0")


@dataclass(frozen=True, slots=True, kw_only=True)
class HalfSphere:
    """Round side first, open on the flat one."""

    diameter_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cylinder:
    """A disc, a ring cake, a round frame."""

    diameter_mm: float
    height_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class Oval:
    """An upright body on an ellipse, straight or tapering to a smaller ellipse.

    The larger face is the open side of a mould. A straight one has equal faces.
    """

    length_mm: float
    width_mm: float
    small_length_mm: float
    small_width_mm: float
    height_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class CutEllipsoid:
    """An ellipsoid cut flat above its widest section, open on the cut.

    `cut_mm` is the height of the cut over the widest section: 0 halves it.
    """

    half_length_mm: float
    half_width_mm: float
    half_height_mm: float
    cut_mm: float

    def __post_init__(self) -> None:
        if min(self.half_length_mm, self.half_width_mm, self.half_height_mm) <= 0:
            raise ValueError("an ellipsoid needs three half-axes of more than 0 mm")
        if not -self.half_height_mm < self.cut_mm <= self.half_height_mm:
            raise ValueError(
                f"a cut {self.cut_mm:g} mm above the widest section misses an ellipsoid"
                f" {self.half_height_mm:g} mm to its top"
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A terrine, a bar, a strip, a frame."""

    length_mm: float
    width_mm: float
    height_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class Trough:
    """A log mould: a half-round below straight sides, open on top."""

    length_mm: float
    width_mm: float
    height_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)
        if self.height_mm < self.width_mm / 2:
            raise ValueError(
                f"a trough {self.width_mm:g} mm wide has a half-round {self.width_mm / 2:g} mm"
                f" high; it cannot be {self.height_mm:g} mm high in all"
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterOnly:
    """A free form of which only the water it holds is known."""

    water_ml: float

    def __post_init__(self) -> None:
        _all_positive(self)


Shape = HalfSphere | Cylinder | Oval | CutEllipsoid | Box | Trough | WaterOnly
