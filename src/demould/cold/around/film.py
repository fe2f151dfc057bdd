"""How well air takes heat from a surface: published correlations, and how pieces lie.

SI, °C; films in W/(m2 K). A film "over a lone piece" is that of a surface free to the
air on all sides, radiation included; the ways of lying tell what trays, moulds and
boxes leave of it.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from demould.cold.around.air import Film, even_film

KELVIN = 273.15
STEFAN_BOLTZMANN = 5.670374e-8
GRAVITY = 9.80665
EMISSIVITY = 0.9
TOUCHING_GAP = 0.3e-3
"""Air left under a mould or a cake that stands on a tray, on the mean [m]."""
POCKET = 0.010
"""Air between the cups of a mould sheet and its tray, on the mean [m]."""
DRAUGHT_UNDER_THE_SHEET = 0.25
"""Share of the moving air's film that gets in under a sheet of cups. An estimate."""
STILL = 5.5
"""Convection of still air on a lone piece, 13 K colder: `natural_sphere`."""
ALONG_A_SHEET = 0.43
"""What moving air does to a sheet of 300 mm, over what it does to a lone ball of 59 mm:
`fan_flat` over `fan_sphere`, from 0.5 to 5 m/s."""
BOX_WALL = 2e-3 / 0.2
"""A plastic box: 2 mm of polypropylene [m2 K/W]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Near:
    """A surface and the air by it: size along the air [m], speed [m/s], °C."""

    size: float
    surface_c: float
    air_c: float
    speed: float = 0.0


def air_conductivity(at_c: float) -> float:
    """Dry air at 1 atm [W/(m K)], straight between 250 and 300 K.

    Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, Table A.4 (from
    memory): 22.3e-3 and 26.3e-3.
    """
    return 22.3e-3 + (26.3e-3 - 22.3e-3) * (at_c + KELVIN - 250) / 50


def air_viscosity(at_c: float) -> float:
    """Kinematic, dry air at 1 atm [m2/s], straight between 250 and 300 K.

    Table A.4 as above: 11.44e-6 and 15.89e-6.
    """
    return 11.44e-6 + (15.89e-6 - 11.44e-6) * (at_c + KELVIN - 250) / 50


PRANDTL = 0.714
"""Of air between 250 and 300 K: 0.720 to 0.707."""


def rayleigh(near: Near) -> float:
    """Gr Pr of a surface in still air, properties at the mean of both [-]."""
    mean = (near.surface_c + near.air_c) / 2
    lift = GRAVITY * abs(near.surface_c - near.air_c) / (mean + KELVIN)
    return lift * near.size**3 * PRANDTL / air_viscosity(mean) ** 2


def natural_sphere(near: Near) -> float:
    """A lone sphere of that diameter in still air, without radiation.

    Nu = 2 + 0.589 Ra^1/4 / (1 + (0.469/Pr)^9/16)^4/9, for Ra up to 1e11.

    References
    ----------
    .. [1] S. W. Churchill, Free convection around immersed bodies, Heat Exchanger
       Design Handbook, section 2.5.7, 1983, from memory; Incropera eq. 9.35.
    """
    bend = (1 + (0.469 / PRANDTL) ** (9 / 16)) ** (4 / 9)
    return _film_of(2 + 0.589 * rayleigh(near) ** 0.25 / bend, near)


def natural_flat(near: Near) -> float:
    """A level face whose air rises off it (warm upwards, cold downwards).

    Nu = 0.54 Ra^1/4, for Ra from 1e4 to 1e7; `size` is area over edge.

    References
    ----------
    .. [1] J. R. Lloyd and W. R. Moran, ASME 74-WA/HT-66, 1974, from memory; Incropera
       eq. 9.30.
    """
    return _film_of(0.54 * rayleigh(near) ** 0.25, near)


def fan_sphere(near: Near) -> float:
    """A lone sphere of that diameter in moving air, without radiation.

    Nu = 2 + (0.4 Re^1/2 + 0.06 Re^2/3) Pr^0.4, for Re from 3.5 to 7.6e4; the change
    of viscosity at the wall is left out.

    References
    ----------
    .. [1] S. Whitaker, Forced convection heat transfer correlations, AIChE J. 18
       (1972) 361-371.
    """
    re = near.speed * near.size / air_viscosity(near.air_c)
    return _film_of(2 + (0.4 * re**0.5 + 0.06 * re ** (2 / 3)) * PRANDTL**0.4, near)


def fan_flat(near: Near) -> float:
    """A tray along the air, laminar: Nu = 0.664 Re^1/2 Pr^1/3, for Re under 5e5.

    References
    ----------
    .. [1] E. Pohlhausen 1921; Incropera eq. 7.30.
    """
    re = near.speed * near.size / air_viscosity(near.air_c)
    return _film_of(0.664 * re**0.5 * PRANDTL ** (1 / 3), near)


def radiation(near: Near) -> float:
    """To walls as cold as the air: h_r = 4 eps sigma T_m^3 with eps 0.9."""
    mean = (near.surface_c + near.air_c) / 2 + KELVIN
    return 4 * EMISSIVITY * STEFAN_BOLTZMANN * mean**3


CORRELATIONS: Mapping[str, Callable[[Near], float]] = {
    "natural sphere": natural_sphere,
    "natural flat": natural_flat,
    "fan sphere": fan_sphere,
    "fan flat": fan_flat,
    "radiation": radiation,
}


def lone_film(near: Near) -> float:
    """A lone round piece: still and moving air together, and radiation.

    Both convections join as Nu^3 = Nu_natural^3 + Nu_forced^3 (Incropera section 9.9).
    """
    names = ("natural sphere", *(("fan sphere",) if near.speed else ()))
    convective = sum(CORRELATIONS[name](near) ** 3 for name in names) ** (1 / 3)
    return float(convective + CORRELATIONS["radiation"](near))


def in_series(*films: float) -> float:
    """Films (or walls, k over thickness) that heat crosses one after the other."""
    return 1 / sum(1 / film for film in films)


def along_a_sheet(lone: float, at_c: float) -> float:
    """Film on a full sheet or a large flat piece where a lone small one has `lone`.

    Radiation and still air do the same, what the air's movement adds does 0.43 of it.
    """
    moving = max(0.0, lone - _glow(at_c) - STILL)
    return lone - (1 - ALONG_A_SHEET) * moving


def in_moulds(lone: float, at_c: float) -> Film:
    """Cups of a mould sheet on a tray: open above, still air between cups and tray.

    The tops lie level in the sheet. The cups give their heat across the pocket under
    it (conduction over 10 mm, radiation to a dull tray, a quarter of what the moving
    air would do), and then through as much tray on to the air beneath.
    """
    flat = along_a_sheet(lone, at_c)
    glow = _glow(at_c)
    pocket = (
        air_conductivity(at_c) / POCKET
        + glow / 2
        + DRAUGHT_UNDER_THE_SHEET * max(0.0, lone - glow)
    )
    return Film(bottom=standing(flat, at_c), top=flat, other=in_series(pocket, flat))


def standing(under: float, at_c: float) -> float:
    """A flat bottom on a tray: 0.3 mm of air, then the film under the tray."""
    return in_series(air_conductivity(at_c) / TOUCHING_GAP, under)


def on_a_tray(lone: float, at_c: float) -> Film:
    """A small bare piece standing on a tray."""
    return Film(bottom=standing(lone, at_c), top=lone, other=lone)


def on_its_top(lone: float, at_c: float) -> Film:
    """A small piece that was filled upside down, turned out on a tray."""
    return Film(bottom=lone, top=standing(lone, at_c), other=lone)


def large(lone: float, at_c: float) -> Film:
    """A cake or log, bare or in its ring, standing on a tray."""
    return on_a_tray(along_a_sheet(lone, at_c), at_c)


def large_on_its_top(lone: float, at_c: float) -> Film:
    """The same, turned out after it was filled upside down."""
    return on_its_top(along_a_sheet(lone, at_c), at_c)


def wrapped(film: float, gap: float, at_c: float) -> float:
    """Under foil that leaves so much air behind it [m]."""
    return in_series(film, air_conductivity(at_c) / gap)


def closed_box(inside: float, outside: float, more_outside: float = 1.0) -> float:
    """Through the box's still air, its wall and the air around.

    `more_outside` is the box's outside over the pieces' own surface.
    """
    return in_series(inside, more_outside / BOX_WALL, more_outside * outside)


def alone(lone: float, at_c: float) -> Film:
    """On a wire, with air on all sides."""
    del at_c
    return even_film(lone)


LYING: Mapping[str, Callable[[float, float], Film]] = {
    "alone": alone,
    "in moulds": in_moulds,
    "on a tray": on_a_tray,
    "on its top": on_its_top,
    "large": large,
    "large on its top": large_on_its_top,
}
"""From how pieces lie to what the lone film [W/(m2 K)] at a temperature leaves them."""

STANDS_ON: Mapping[str, str] = {
    "in moulds": "bottom",
    "on a tray": "bottom",
    "on its top": "top",
    "large": "bottom",
    "large on its top": "top",
}
"""The flat end that no air reaches, and no water with it."""


def _film_of(nusselt: float, near: Near) -> float:
    mean = (near.surface_c + near.air_c) / 2
    return nusselt * air_conductivity(mean) / near.size


def _glow(at_c: float) -> float:
    return radiation(Near(size=1.0, surface_c=at_c, air_c=at_c))
