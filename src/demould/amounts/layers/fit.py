"""Whether a dessert's parts go into its mould at all."""

from collections.abc import Iterator
from typing import assert_never

from demould.amounts.layers.closed import passes, slimmest_mm
from demould.amounts.layers.inside import sticks_out_mm
from demould.amounts.layers.place import placed
from demould.amounts.shape.lining import lining_ml
from demould.amounts.shape.section import box_mm
from demould.amounts.shape.volume import cavity, mould_of, volume_ml
from demould.amounts.tools.sheet import cuts_of_a_tray
from demould.mise.dessert import (
    Cut,
    Dessert,
    FromMould,
    Laid,
    Layer,
    Lining,
    Rest,
    component_of,
)
from demould.mise.figure import Line
from demould.mise.kitchen import Kitchen
from demould.mise.mould import Mould
from demould.mise.problem import Problem
from demould.mise.shape import Shape
from demould.mise.words import Words

SPECK_MM = 0.05
SPECK_ML = 0.05
DROP_ML = 0.1
"""Under this it is no piece: half a ball of 7 mm."""
BATH_ML = 60_000.0
"""Over this it is no mould: a frame of 600 x 400 mm, 250 mm high."""


def does_it_fit(dessert: Dessert, kitchen: Kitchen) -> tuple[Problem, ...]:
    """Say what cannot be: a part larger than the cavity, or no cavity or tray for it.

    Sizes within 0.05 mm and 0.05 ml are taken as fitting: they are what a rule and a
    scale can tell.
    """
    mould = mould_of(kitchen, dessert.mould)
    found = [
        *_no_cavity(dessert, kitchen),
        *_odd_sizes(dessert, kitchen),
        *_too_long(dessert, kitchen, mould),
        *_too_much(dessert, kitchen, mould),
        *_two_fillers(dessert),
        *_no_cut(dessert),
        *_coats_meet(dessert, mould),
        *_nothing_cut(dessert),
        *_through_the_hole(dessert, kitchen, mould),
    ]
    return tuple(found or _through_the_wall(dessert, kitchen, mould))


def _at(line: Line | None, wrong: Words, remedy: Words) -> Problem:
    if line is None:
        return Problem("", 0, 0, wrong, remedy)
    return Problem(line.file, line.number, line.column, wrong, remedy)


def _no_cavity(dessert: Dessert, kitchen: Kitchen) -> Iterator[Problem]:
    keys = [dessert.mould]
    keys += [
        one.fill.mould for one in dessert.layers if isinstance(one.fill, FromMould)
    ]
    for key in dict.fromkeys(keys):
        mould = mould_of(kitchen, key)
        if mould.cavities <= 0:
            yield _at(
                mould.line,
                Words("the {mould} mould has 0 cavities", mould=key),
                Words("Write how many trays there are, and of how many cavities"),
            )


def _odd_sizes(dessert: Dessert, kitchen: Kitchen) -> Iterator[Problem]:
    """Ask about sizes that look like cm written as mm, or the other way round."""
    keys = [dessert.mould]
    keys += [
        one.fill.mould for one in dessert.layers if isinstance(one.fill, FromMould)
    ]
    for key in dict.fromkeys(keys):
        mould = mould_of(kitchen, key)
        if mould.water is None:
            yield from _odd_size(mould.shape, mould.key, mould.line)
    for layer in dessert.layers:
        if isinstance(layer.fill, Cut):
            name = component_of(dessert, layer.component).name
            yield from _odd_size(layer.fill.shape, name, layer.line)


def _odd_size(shape: Shape, name: str, line: Line | None) -> Iterator[Problem]:
    held = volume_ml(shape)
    long, wide, high = (round(size, 2) for size in box_mm(shape))
    if held < DROP_ML:
        yield _at(
            line,
            Words(
                "{name} is {long:g} x {wide:g} x {high:g} mm and holds {held:.2g} ml, a"
                " drop, as if the sizes were cm",
                name=name,
                long=long,
                wide=wide,
                high=high,
                held=held,
            ),
            Words(
                "Are they? Then write {long:g} x {wide:g} x {high:g} mm; if not, weigh the"
                " water it holds and write that too",
                long=10 * long,
                wide=10 * wide,
                high=10 * high,
            ),
        )
    if held > BATH_ML:
        yield _at(
            line,
            Words(
                "{name} is {long:g} x {wide:g} x {high:g} mm and holds {held:.0f} l, as"
                " if the sizes were mm",
                name=name,
                long=long,
                wide=wide,
                high=high,
                held=held / 1000,
            ),
            Words(
                "Are they? Then write {long:g} x {wide:g} x {high:g} mm; if not, weigh the"
                " water it holds and write that too",
                long=long / 10,
                wide=wide / 10,
                high=high / 10,
            ),
        )


def _through_the_hole(
    dessert: Dessert, kitchen: Kitchen, mould: Mould
) -> Iterator[Problem]:
    """A part that must pass the filling hole of a closed mould and does not."""
    if mould.hole is None:
        return
    for layer in dessert.layers:
        sized = _sized(layer, kitchen)
        if sized is not None and not passes(sized[0], mould.hole.value):
            yield _at(
                layer.line,
                Words(
                    "{part} is {needs:.0f} mm across at its slimmest, but the filling"
                    " hole of the {mould} mould only {hole:g} mm",
                    part=component_of(dessert, layer.component).name,
                    needs=slimmest_mm(sized[0]),
                    mould=mould.key,
                    hole=mould.hole.value,
                ),
                Words(
                    "Take an insert under {hole:g} mm, or a mould of two halves",
                    hole=mould.hole.value,
                ),
            )


def _sized(layer: Layer, kitchen: Kitchen) -> tuple[Shape, float] | None:
    match layer.fill:
        case Cut(shape=shape):
            return shape, volume_ml(shape)
        case FromMould(mould=key):
            own = mould_of(kitchen, key)
            return own.shape, cavity(own).value
        case Rest() | Lining():
            return None
        case _:
            assert_never(layer.fill)


def _too_long(dessert: Dessert, kitchen: Kitchen, mould: Mould) -> Iterator[Problem]:
    hollow = box_mm(mould.shape)
    for layer in dessert.layers:
        sized = _sized(layer, kitchen)
        if sized is None:
            continue
        part = box_mm(sized[0])
        names = ("long", "wide", "high")
        for name, has, room in zip(names, part, hollow, strict=True):
            if has > room + SPECK_MM:
                yield _at(
                    layer.line,
                    Words(
                        "{part} is {has:g} mm {name}, but the {mould} mould only"
                        " {room:g} mm inside",
                        part=component_of(dessert, layer.component).name,
                        has=round(has, 1),
                        name=name,
                        mould=mould.key,
                        room=round(room, 1),
                    ),
                    Words(
                        "Make it at most {room:g} mm {name}, or take a larger mould",
                        room=round(room, 1),
                        name=name,
                    ),
                )


def _too_much(dessert: Dessert, kitchen: Kitchen, mould: Mould) -> Iterator[Problem]:
    sized = [(layer, _sized(layer, kitchen)) for layer in dessert.layers]
    inside = [(layer, own[1]) for layer, own in sized if own is not None]
    hollow = cavity(mould).value
    together = sum(ml for _, ml in inside)
    together += sum(
        lining_ml(mould.shape, layer.fill.film.value)
        for layer in dessert.layers
        if isinstance(layer.fill, Lining) and not _fills(mould.shape, layer.fill)
    )
    fills = any(isinstance(layer.fill, Rest) for layer in dessert.layers)
    if not inside or together < hollow - SPECK_ML:
        return
    if not fills and together <= hollow + SPECK_ML:
        return
    largest = max(inside, key=lambda pair: pair[1])[0]
    yield _at(
        largest.line,
        Words(
            "what goes into a piece takes {together:.1f} ml, but the {mould} mould"
            " holds {hollow:.1f} ml",
            together=together,
            mould=mould.key,
            hollow=hollow,
        ),
        Words(
            "Take {over:.1f} ml less in all, or a larger mould",
            over=max(together - hollow, SPECK_ML),
        ),
    )


def _through_the_wall(
    dessert: Dessert, kitchen: Kitchen, mould: Mould
) -> Iterator[Problem]:
    for part in placed(dessert, kitchen):
        out = sticks_out_mm(part, mould.shape)
        if out > SPECK_MM:
            yield _at(
                part.layer.line,
                Words(
                    "{part}, {at:g} mm over the bottom of the {mould} mould, goes"
                    " {out:.1f} mm through its wall",
                    part=component_of(dessert, part.layer.component).name,
                    at=round(part.at, 1),
                    mould=mould.key,
                    out=out,
                ),
                Words("Let it stand elsewhere, turn it over, or make it smaller"),
            )


def _fills(shape: Shape, coat: Lining) -> bool:
    """Whether the coats of two sides meet."""
    _, wide, high = box_mm(shape)
    return 2 * coat.film.value >= wide or coat.film.value >= high


def _coats_meet(dessert: Dessert, mould: Mould) -> Iterator[Problem]:
    for layer in dessert.layers:
        if isinstance(layer.fill, Lining) and _fills(mould.shape, layer.fill):
            yield _at(
                layer.line,
                Words(
                    "a coat of {film:g} mm fills the {mould} mould, {wide:g} mm wide",
                    film=layer.fill.film.value,
                    mould=mould.key,
                    wide=round(box_mm(mould.shape)[1], 1),
                ),
                Words("Write the thickness of the coat in mm, usually 1 to 3 mm"),
            )


def _nothing_cut(dessert: Dessert) -> Iterator[Problem]:
    """A finish on cut edges of a piece that nobody cuts."""
    for finish in dessert.finish:
        if (
            isinstance(finish, Laid)
            and finish.on == "cut edges"
            and not (dessert.portions)
        ):
            yield _at(
                finish.line,
                Words(
                    "{name} goes on cut edges, but {dessert} is not cut",
                    name=component_of(dessert, finish.component).name,
                    dessert=dessert.name,
                ),
                Words("Write in how many portions a piece is cut, or another face"),
            )


def _two_fillers(dessert: Dessert) -> Iterator[Problem]:
    first: str | None = None
    for layer in dessert.layers:
        if not isinstance(layer.fill, Rest):
            continue
        if first is not None and layer.component != first:
            yield _at(
                layer.line,
                Words(
                    "{one} and {other} both fill the rest",
                    one=component_of(dessert, first).name,
                    other=component_of(dessert, layer.component).name,
                ),
                Words("Give one of them a size"),
            )
        first = first or layer.component


def _no_cut(dessert: Dessert) -> Iterator[Problem]:
    for layer in dessert.layers:
        made = component_of(dessert, layer.component)
        if made.sheet is None or not isinstance(layer.fill, Cut):
            continue
        if cuts_of_a_tray(made.sheet, layer.fill.shape) == 0:
            long, wide, _ = box_mm(layer.fill.shape)
            yield _at(
                layer.line,
                Words(
                    "{part} is {long:g} x {wide:g} mm, but its tray only"
                    " {tray_long:g} x {tray_wide:g} mm",
                    part=made.name,
                    long=long,
                    wide=wide,
                    tray_long=made.sheet.tray.length_mm,
                    tray_wide=made.sheet.tray.width_mm,
                ),
                Words("Bake it on a larger tray, or join two"),
            )
