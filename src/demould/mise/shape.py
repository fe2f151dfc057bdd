"""Bodies that moulds and parts of a piece have. Lengths are inside ones, in mm."""

from dataclasses import dataclass, fields

from demould.mise.shape_points import Outlined, Turned


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
class TaperedBox:
    """A loaf, a bar whose sides lean: the larger face is the open side."""

    length_mm: float
    width_mm: float
    small_length_mm: float
    small_width_mm: float
    height_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sphere:
    """A whole ball: two halves joined, or filled through a hole."""

    diameter_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class Dome:
    """Round side first, as wide as its open side and so high.

    Lower than half a ball it is the cap of a larger one; higher, half a ball on
    straight sides.
    """

    diameter_mm: float
    height_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cone:
    """Round and leaning, point or small face down, open on the larger one.

    `small_mm` is 0 for a point.
    """

    diameter_mm: float
    small_mm: float
    height_mm: float

    def __post_init__(self) -> None:
        if min(self.diameter_mm, self.height_mm) <= 0 or self.small_mm < 0:
            raise ValueError("a cone is more than 0 mm wide and high")
        if self.small_mm > self.diameter_mm:
            raise ValueError(
                f"a cone {self.diameter_mm:g} mm wide at its open side cannot be"
                f" {self.small_mm:g} mm at its small one"
            )


def _hole_inside(diameter_mm: float, hole_mm: float) -> None:
    if not 0 < hole_mm < diameter_mm:
        raise ValueError(
            f"a hole of {hole_mm:g} mm does not go into a ring of {diameter_mm:g} mm"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class HollowRing:
    """A ring with an upright hole right through it."""

    diameter_mm: float
    hole_mm: float
    height_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)
        _hole_inside(self.diameter_mm, self.hole_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class Savarin:
    """A ring round below, half an ellipse turned about the hole; open on the flat side."""

    diameter_mm: float
    hole_mm: float
    height_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)
        _hole_inside(self.diameter_mm, self.hole_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class Egg:
    """A whole egg, lying: two halves joined lengthwise."""

    length_mm: float
    width_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class HalfEgg:
    """Half an egg cut lengthwise, open on the cut."""

    length_mm: float
    width_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterOnly:
    """A free form of which only the water it holds is known."""

    water_ml: float

    def __post_init__(self) -> None:
        _all_positive(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class FreeForm:
    """A free form of which the water it holds and three outside sizes are known.

    The sizes are those of the hollow: what a piece out of it is long, wide and high.
    """

    water_ml: float
    length_mm: float
    width_mm: float
    height_mm: float

    def __post_init__(self) -> None:
        _all_positive(self)
        room = self.length_mm * self.width_mm * self.height_mm / 1000
        if self.water_ml > room:
            raise ValueError(
                f"a form {self.length_mm:g} x {self.width_mm:g} x {self.height_mm:g} mm"
                f" holds at most {room:.4g} ml, not {self.water_ml:g} ml"
            )
        if self.water_ml < LEAST_FILL * room:
            raise ValueError(
                f"a form {self.length_mm:g} x {self.width_mm:g} x {self.height_mm:g} mm"
                f" that holds only {self.water_ml:g} ml of {room:.4g} ml is no piece"
            )


LEAST_FILL = 0.1
"""Of the box round it a cone fills 0.26; a tenth is no body one can fill and unmould."""

Shape = (
    HalfSphere
    | Cylinder
    | Oval
    | CutEllipsoid
    | Box
    | Trough
    | TaperedBox
    | Sphere
    | Dome
    | Cone
    | HollowRing
    | Savarin
    | Egg
    | HalfEgg
    | Turned
    | Outlined
    | FreeForm
    | WaterOnly
)
