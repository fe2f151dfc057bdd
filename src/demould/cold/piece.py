"""What is put into the cold, and where: a piece of parts, and the place around it."""

from dataclasses import dataclass
from functools import lru_cache

from demould.cold.around.air import Air
from demould.cold.around.film import LYING
from demould.cold.around.load import Load
from demould.cold.body.mesh import Mesh, enlarged, mesh_of
from demould.cold.body.profile import Profile, volume
from demould.cold.body.skin import FlatFace, Wall
from demould.larder.ingredient import Composition
from demould.larder.read import film, material
from demould.matter.fat import setting_fat
from demould.matter.heat import Thermal, thermal
from demould.matter.water import wet_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One component in its place. `profile` in metres, in the piece's own heights.

    `air` is the share of its volume that is air: 1 - whipped / unwhipped density.
    """

    name: str
    profile: Profile
    made_of: Composition
    air: float = 0.0
    start_c: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FrozenPiece:
    """A piece as it lies in the cold.

    Attributes
    ----------
    body, inside
        The piece as a whole by its outer component, then what lies in it: the centre
        first (its middle is the core), then a base and others.
    wall, open_faces
        The mould around it, None once demoulded, and the flat faces it leaves open.
    surface_share, times
        How much more skin beside its flat faces the real piece has, for what it holds,
        than the turned body that stands for it, and how many of these hold what it
        holds (see `stand_in`). [-]
    start_unsure_k
        How far the start may be off either way. [K]
    fat_sets
        Whether cocoa butter and milk fat give off their melting heat as they set.
    """

    body: Part
    inside: tuple[Part, ...] = ()
    wall: Wall | None = None
    open_faces: tuple[FlatFace, ...] = ()
    surface_share: float = 1.0
    times: float = 1.0
    start_unsure_k: float = 2.0
    fat_sets: bool = False

    @property
    def parts(self) -> tuple[Part, ...]:
        """All parts, the outer first."""
        return (self.body, *self.inside)

    @property
    def volume_ml(self) -> float:
        """Of the whole piece, without its wall."""
        return volume(self.body.profile) * self.times * 1e6


@dataclass(frozen=True, slots=True, kw_only=True)
class Humid:
    """Water in a place's air, and how well it reaches the pieces: low, likely, high.

    Attributes
    ----------
    relative
        Humidity. [0 to 1]
    reach
        The film that lets in as much water: its convective part, or what a cover
        leaves of that. [W/(m2 K)] Low and high go with the place's low and high film.
    """

    relative: tuple[float, float, float]
    reach: tuple[float, float, float]

    def __post_init__(self) -> None:
        damp, reach = self.relative, self.reach
        if not 0 <= damp[0] <= damp[1] <= damp[2] <= 1:
            raise ValueError(f"relative humidities of {damp} are out of order")
        if not 0 <= reach[0] <= reach[1] <= reach[2]:
            raise ValueError(f"films for water of {reach} are out of order")


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Air of a temperature and how well it works: heat transfer, with radiation.

    Attributes
    ----------
    air_c
        [°C] or (seconds, °C) pairs. Under a `load` its machine has the word.
    film_low, film_likely, film_high
        Over a lone piece. [W/(m2 K)]
    lying
        What trays and moulds leave of the film: a key of `film.LYING`.
    air_unsure_k
        How far the air at the pieces may be from what the place shows. [K]
    load
        What goes in together and warms the air; None for steady air.
    humid
        Water in the air, where frost and dew matter; None leaves them out.
    """

    name: str
    air_c: Air
    film_low: float
    film_likely: float
    film_high: float
    lying: str = "alone"
    air_unsure_k: float = 0.0
    load: Load | None = None
    humid: Humid | None = None

    def __post_init__(self) -> None:
        if self.lying not in LYING:
            raise ValueError(
                f"pieces do not lie {self.lying!r}; known: {', '.join(LYING)}"
            )
        if not 0 < self.film_low <= self.film_likely <= self.film_high:
            raise ValueError(
                f"films of {self.film_low:g}, {self.film_likely:g},"
                f" {self.film_high:g} W/(m2 K) are out of order"
            )


def place_of(kind: str, air_c: Air) -> Place:
    """A place of a kind the larder knows: ``blast_chiller``, ``upright_freezer`` ...

    Raises
    ------
    KeyError
        If no such kind of place is known.
    """
    known = film(kind)
    return Place(
        name=known.kind,
        air_c=air_c,
        film_low=known.total.low,
        film_likely=known.total.value,
        film_high=known.total.high,
    )


def wall_of(kind: str, thickness: float) -> Wall:
    """A wall of a material the larder knows, so thick [m].

    Raises
    ------
    KeyError
        If the material is not known.
    """
    known = material(kind)
    return Wall(
        thickness=thickness,
        conductivity=known.conductivity.value,
        density=known.density.value,
        heat_capacity=known.heat_capacity.value,
    )


@lru_cache(maxsize=512)
def thermal_of(made_of: Composition, air: float, *, fat_sets: bool = False) -> Thermal:
    """Table of one component, kept: a week asks for the same few over and over."""
    setting = setting_fat(made_of) if fat_sets else ()
    return thermal(wet_of(made_of, air), setting=setting)


def mesh_for(piece: FrozenPiece, times_cell: float = 1.0) -> Mesh:
    """Cells of a piece as large as the real one, kept by its shape.

    `times_cell` makes the cells so many times as wide as usual.
    """
    outlines = tuple(part.profile for part in piece.parts)
    return _mesh(outlines, piece.wall, piece.open_faces, piece.times, times_cell)


@lru_cache(maxsize=64)
def _mesh(
    outlines: tuple[Profile, ...],
    wall: Wall | None,
    open_faces: tuple[FlatFace, ...],
    times: float,
    times_cell: float,
) -> Mesh:
    cell = None
    if times_cell != 1:
        usual = _mesh(outlines, wall, open_faces, times, 1.0).cell
        cell = times_cell * usual
    mesh = mesh_of(outlines, wall=wall, open_faces=open_faces, cell=cell)
    return enlarged(mesh, times)
