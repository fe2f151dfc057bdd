"""The drawings of a week: what each piece looks like cut, its jug, its moulds."""

from collections.abc import Iterable, Iterator, Sequence

from demould.amounts.shape.volume import mould_of
from demould.mise.dessert import Cut, Dessert, component_of
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.sheets.drawing.cavity_map import Kind, cavity_map
from demould.sheets.drawing.jug import jug_drawing
from demould.sheets.drawing.picture import Picture
from demould.sheets.drawing.section import fits_upright, section
from demould.sheets.drawing.trays import tray_drawing
from demould.sheets.page import Drawing, Page
from demould.week.making import Amounts, Making


def drawing_pages(makings: Sequence[Making], kitchen: Kitchen) -> Iterator[Page]:
    """Give a page for each dessert ordered, and one for all moulds filled."""
    seen: dict[str, Making] = {}
    for making in makings:
        seen.setdefault(making.amounts.dessert.key, making)
    for making in seen.values():
        amounts = making.amounts
        yield drawing_page(amounts.dessert, drawings(amounts, kitchen))
    for picture in maps(makings, kitchen):
        yield Page(key=picture.key, title=picture.title, blocks=(_block(picture),))


def drawings(amounts: Amounts, kitchen: Kitchen) -> Iterator[Picture]:
    """Give the cut, each tray that is cut, and the jug where the piece is dipped."""
    dessert = amounts.dessert
    yield section(dessert, kitchen)
    for layer in dessert.layers:
        made = component_of(dessert, layer.component)
        if isinstance(layer.fill, Cut) and made.sheet is not None:
            yield tray_drawing(made, layer.fill.shape)
    if amounts.jug is not None and amounts.pieces:
        yield jug_drawing(dessert, kitchen, amounts.jug, amounts.pieces)


def maps(makings: Iterable[Making], kitchen: Kitchen) -> Iterator[Picture]:
    """Give each order's moulds with what every cavity holds."""
    for making in makings:
        amounts, order = making.amounts, making.order
        filled = sum(amounts.rounds.each)
        if not filled or len(amounts.rounds.each) * amounts.rounds.cavities < 2:
            continue
        ordered = min(order.pieces, filled)
        variant = order.variant or Words("as written")
        kinds = [Kind(name=variant, pieces=ordered)]
        if filled > ordered:
            spare = Words("spare, {variant}", variant=str(variant))
            kinds.append(Kind(name=spare, pieces=filled - ordered))
        yield cavity_map(
            mould_of(kitchen, amounts.dessert.mould),
            amounts.rounds.each,
            kinds,
            key=f"cavities {order.key}",
        )


def drawing_page(dessert: Dessert, pictures: Iterable[Picture]) -> Page:
    """Give one sheet with all of a dessert's drawings, each at its own size."""
    given = tuple(pictures)
    upright = all(fits_upright(picture) for picture in given)
    return Page(
        key=f"drawing {dessert.key}",
        title=Words("{name}, drawn to scale", name=dessert.name),
        note=Words("print at full size, 100 %"),
        blocks=tuple(_block(picture) for picture in given),
        paper="upright" if upright else "across",
    )


def _block(picture: Picture) -> Drawing:
    return Drawing(picture=picture)
