"""What one piece holds of each component."""

from dataclasses import dataclass
from typing import Literal, assert_never

from demould.amounts.shape.area import Faces, area, area_cm2, side_cm2
from demould.amounts.shape.lining import lining_ml
from demould.amounts.shape.section import height_mm
from demould.amounts.shape.volume import cavity, mould_of, volume, volume_ml
from demould.amounts.tools.portion import cut_faces_cm2
from demould.matter.grams import share
from demould.mise.component import Component
from demould.mise.dessert import (
    Cut,
    Dessert,
    Dip,
    Finish,
    FromMould,
    Glaze,
    Laid,
    Lining,
    Rest,
    Spray,
    component_of,
)
from demould.mise.figure import Figure, worked
from demould.mise.kitchen import Kitchen
from demould.mise.mould import Mould
from demould.mise.words import Words

How = Literal["rest", "cut", "mould", "coat", "dip", "glaze", "spray", "laid"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """What one piece holds of one component in one way. `volume` in ml, `grams` in g."""

    component: str
    how: How
    volume: Figure
    grams: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One whole piece, without what goes beside it on the plate. `whole` in g."""

    parts: tuple[Part, ...]
    whole: Figure


def piece(dessert: Dessert, kitchen: Kitchen) -> Piece:
    """Work out what one piece of a dessert holds.

    Layers with a size or a mould of their own take their volume, the rest of the cavity
    is the filler's; the finish is area by film.

    Raises
    ------
    ValueError
        If nothing is left of the cavity, or two components both fill the rest.
        `does_it_fit` says so in a cook's words.
    """
    parts = (*_inside(dessert, kitchen), *_outside(dessert, kitchen))
    whole = worked(
        f"one piece of {dessert.name}",
        sum(part.grams.value for part in parts),
        "g",
        "everything in it and on it",
        *(part.grams for part in parts),
    )
    return Piece(parts=parts, whole=whole)


def in_the_mould(component: Component) -> Figure:
    """Density as it goes into the piece: whipped, where it is whipped [g/ml]."""
    return component.whipped or component.density


def _inside(dessert: Dessert, kitchen: Kitchen) -> tuple[Part, ...]:
    sized = _sized(dessert, kitchen)
    fillers = fillers_of(dessert)
    if not fillers:
        return sized
    if len(fillers) > 1:
        raise ValueError(f"{' and '.join(fillers)} both fill the rest of a piece")
    filler = component_of(dessert, fillers[0])
    hollow = cavity(mould_of(kitchen, dessert.mould))
    left = hollow.value - sum(part.volume.value for part in sized)
    if left <= 0:
        raise ValueError(f"nothing is left of a cavity for {filler.name}")
    rest = worked(
        f"{filler.name} in a piece",
        left,
        "ml",
        "the cavity less everything else in it",
        hollow,
        *(part.volume for part in sized),
    )
    return (_part(filler, "rest", rest), *sized)


def fillers_of(dessert: Dessert) -> tuple[str, ...]:
    """Components that fill the rest, each once. More than one cannot be reckoned."""
    filling = (one.component for one in dessert.layers if isinstance(one.fill, Rest))
    return tuple(dict.fromkeys(filling))


def _sized(dessert: Dessert, kitchen: Kitchen) -> tuple[Part, ...]:
    parts = []
    for layer in dessert.layers:
        made = component_of(dessert, layer.component)
        match layer.fill:
            case Cut(shape=shape):
                name = f"{made.name} in a piece"
                parts.append(_part(made, "cut", volume(shape, name, layer.line)))
            case FromMould(mould=key):
                parts.append(_part(made, "mould", cavity(mould_of(kitchen, key))))
            case Lining(film=film):
                parts.append(_part(made, "coat", _lined(dessert, kitchen, made, film)))
            case Rest():
                pass
            case _:
                assert_never(layer.fill)
    return tuple(parts)


def _lined(dessert: Dessert, kitchen: Kitchen, made: Component, film: Figure) -> Figure:
    """What a coat on the cavity's face takes of it [ml]."""
    mould = mould_of(kitchen, dessert.mould)
    whole = cavity(mould)
    share = lining_ml(mould.shape, film.value) / volume_ml(mould.shape)
    rule = "the cavity less the same one smaller by the coat all round"
    return worked(
        f"{made.name} in a piece", whole.value * share, "ml", rule, whole, film
    )


def _part(component: Component, how: How, ml: Figure) -> Part:
    density = in_the_mould(component)
    grams = worked(
        f"{component.name} in a piece",
        ml.value * density.value,
        "g",
        "ml x density as it goes in",
        ml,
        density,
    )
    return Part(component=component.key, how=how, volume=ml, grams=grams)


def _outside(dessert: Dessert, kitchen: Kitchen) -> tuple[Part, ...]:
    mould = mould_of(kitchen, dessert.mould)
    return tuple(coat(dessert, finish, mould) for finish in dessert.finish)


def coated(dessert: Dessert, finish: Finish, mould: Mould) -> Figure:
    """Area a finish covers on one piece [cm2].

    A dip goes all round, or up the face as far as it is written to go in. A glaze runs over the
    face, and the ends where asked. A spray goes where a dip went before it, else on all
    but the side the piece stands on.
    """
    faces: Faces
    match finish:
        case Dip(depth=depth):
            if depth is not None and depth.value < height_mm(mould.shape):
                return _up_to(depth, mould)
            faces = "all round"
        case Glaze(faces=asked):
            faces = asked
        case Spray():
            dipped = any(isinstance(other, Dip) for other in dessert.finish)
            faces = "all round" if dipped else "face and ends"
        case Laid():
            return _laid_on(dessert, finish, mould)
        case _:
            assert_never(finish)
    return area(mould.shape, faces, f"area of a {mould.key} to coat", mould.line)


def _laid_on(dessert: Dessert, laid: Laid, mould: Mould) -> Figure:
    """Area that something brushed, rolled or spattered lies on [cm2]."""
    name = f"area of a {mould.key} to coat"
    if laid.on == "cut edges":
        if dessert.portions is None:
            raise ValueError(f"{dessert.name} is not cut, and has no cut edges")
        rule = "two faces a cut, over all portions"
        bare = cut_faces_cm2(mould.shape, int(dessert.portions.value))
        whole = worked(name, bare, "cm2", rule, dessert.portions)
    elif laid.on == "sides":
        sides = side_cm2(mould.shape)
        whole = worked(name, sides, "cm2", "what stands upright of its face")
    else:
        faces: Faces = "all round" if laid.on == "all round" else "face and ends"
        whole = area(mould.shape, faces, name, mould.line)
    if laid.covers is None:
        return whole
    value = whole.value * share(laid.covers)
    return worked(name, value, "cm2", "the share it covers", whole, laid.covers)


def _up_to(depth: Figure, mould: Mould) -> Figure:
    name = f"area of a {mould.key} to coat"
    face = area(mould.shape, "face and ends", name, mould.line)
    wet = area_cm2(mould.shape, "face and ends", depth.value)
    value = face.value * wet / area_cm2(mould.shape, "face and ends")
    rule = "what the mould shaped, as far up as it goes in"
    return worked(name, value, "cm2", rule, face, depth)


def coat(dessert: Dessert, finish: Finish, mould: Mould) -> Part:
    """What of a finish stays on one piece: area x film x density."""
    made = component_of(dessert, finish.component)
    surface = coated(dessert, finish, mould)
    film = finish.film
    if film.unit != "mm":
        raise ValueError(f"a film of {film} on a piece; it is given in mm")
    ml = worked(
        f"{made.name} that stays on a piece",
        surface.value * film.value / 10,
        "ml",
        Words("{area:.4g} cm2 x {film:g} mm", area=surface.value, film=film.value),
        surface,
        film,
    )
    grams = worked(
        f"{made.name} that stays on a piece",
        ml.value * made.density.value,
        "g",
        "ml x density",
        ml,
        made.density,
    )
    return Part(component=made.key, how=_HOW[type(finish)], volume=ml, grams=grams)


_HOW: dict[type[Finish], How] = {
    Dip: "dip",
    Glaze: "glaze",
    Spray: "spray",
    Laid: "laid",
}
