"""``larder.yaml``: what a kitchen buys and has, each by its own name."""

import re
from dataclasses import replace
from datetime import date
from functools import partial

from demould.larder.ingredient import Ingredient
from demould.larder.names import plain
from demould.larder.read import find_ingredient, ingredient, near_ingredients
from demould.mise.check_larder import check_larder
from demould.mise.clock import read_day
from demould.mise.faults import Faults
from demould.mise.figure import Figure, Line
from demould.mise.keys import Keys, keys_of
from demould.mise.own_larder import Larder, MadeFrom, Stocked
from demould.mise.parts import at_column, name_and_rest, parts_of
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_figure
from demould.mise.read_bank import FREEZER, PARS
from demould.mise.read_moved import read_moved, read_season
from demould.mise.read_price import price_and_packs
from demould.mise.read_sheet import composition_from, read_sheet, read_sugars
from demould.mise.tree import Branch, Leaf
from demould.mise.unit import Kind
from demould.mise.words import Words

KEYS = (
    "like",
    "per 100 g",
    "of the sugars",
    "allergens",
    "may contain",
    "animal",
    "read by",
    "ingredients",
    "ask",
    "price",
    "pack",
    "supplier",
    "lead",
    "stock",
    "counted",
    "trim",
    "keeps",
    "use by",
    "since",
    "season",
    "made from",
    "remarks",
)
COUNTED = "counted"
NO_ENTRIES = (COUNTED, FREEZER, PARS)
"""What stands at the top of a larder and is nothing to buy."""
_COMES_OUT = re.compile(r"(.*\S)\s+comes out")


def read_larder(branch: Branch, faults: Faults) -> Larder:
    """Every entry of the larder; what cannot be read is noted and left out."""
    top = Branch(
        tuple(item for item in branch.items if item[0].line.text == COUNTED),
        branch.line,
    )
    keys = keys_of(top, faults, known=(COUNTED,), required={})
    counted = keys.read(COUNTED, _day)
    found: dict[str, Stocked] = {}
    for leaf, node in branch.items:
        if leaf.line.text in NO_ENTRIES:
            continue
        if not isinstance(node, Branch):
            faults.tell(
                leaf.line,
                Words("nothing is said of {name!r}", name=leaf.line.text),
                Words(
                    "Write below it what it is like, or what its sheet says per 100 g"
                ),
            )
        elif twin := found.get(plain(leaf.line.text)):
            _tell_twin(leaf, twin, faults)
        else:
            found[plain(leaf.line.text)] = _stocked(leaf, node, counted, faults)
    larder = tuple(found.values())
    check_larder(larder, faults)
    return larder


def _tell_twin(leaf: Leaf, twin: Stocked, faults: Faults) -> None:
    first = twin.line.number if twin.line else 0
    faults.tell(
        leaf.line,
        Words(
            "{key!r} is here twice, first on line {first}",
            key=leaf.line.text,
            first=first,
        ),
        Words("Keep one of the two"),
    )


def _stocked(
    leaf: Leaf, branch: Branch, counted: date | None, faults: Faults
) -> Stocked:
    keys = keys_of(branch, faults, known=KEYS, required={})
    if "like" not in keys and "per 100 g" not in keys:
        faults.tell(
            leaf.line,
            Words("nobody says what {key!r} is made of", key=leaf.line.text),
            Words("Write per 100 g: from its sheet, or like: and a name of the table"),
        )
    like = keys.read("like", _like)
    sheet = keys.read("per 100 g", lambda line: read_sheet(line.text)) or ()
    sugars = (
        keys.read("of the sugars", lambda line: read_sugars(line.text, sheet)) or ()
    )
    allergens = keys.read("allergens", _allergens)
    price, packs, money = price_and_packs(keys)
    stocked = Stocked(
        key=leaf.line.text,
        ingredient=Ingredient(
            id="", name="", per_100g=composition_from((), (), None), source=""
        ),
        like=like,
        sheet=sheet,
        sugars=sugars,
        price=price.amount if price else None,
        priced=price.priced if price else "",
        money=money,
        packs=packs,
        supplier=keys.text("supplier"),
        lead=_figure(keys, "lead", "time", zero=True),
        stock=_figure(keys, "stock", "mass", zero=True),
        counted_on=keys.read(COUNTED, _day) or counted,
        allergens=allergens,
        may_contain=keys.text("may contain"),
        animal=keys.text("animal"),
        pack_list=keys.text("ingredients"),
        read_by=keys.text("read by"),
        trim=_figure(keys, "trim", "share", zero=True),
        keeps=_figure(keys, "keeps", "time"),
        use_by=keys.read("use by", _day),
        since=keys.each("since", read_moved),
        season=keys.read("season", read_season),
        made_from=keys.read("made from", _made_from),
        ask=keys.text("ask"),
        remarks=tuple(line.line.text for line in keys.lines("remarks")),
        line=leaf.line,
    )
    return replace(stocked, ingredient=own_ingredient(stocked))


def _figure(keys: Keys, key: str, kind: Kind, *, zero: bool = False) -> Figure | None:
    def read(line: Line) -> Figure:
        return read_figure(line.text, name=key, kinds=(kind,), line=line, zero=zero)

    return keys.read(key, read)


def own_ingredient(stocked: Stocked) -> Ingredient:
    """The ingredient of an entry: its sheet, filled from the row it is like.

    Its id and name are the entry's own name, its source the place it was written at.
    """
    like = ingredient(stocked.like) if stocked.like else None
    made_of = composition_from(
        stocked.sheet, stocked.sugars, like.per_100g if like else None
    )
    line = stocked.line
    own = partial(
        replace,
        like or Ingredient(id="", name="", per_100g=made_of, source=""),
        id=stocked.key,
        name=stocked.key,
        names=(),
        per_100g=made_of,
        source=f"{line.file}:{line.number}" if line else "",
        page="",
        note="",
        energy_kcal_source=None,
    )
    if stocked.allergens is None:
        return own()
    elsewhere = like.allergens_elsewhere if like else ()
    only_elsewhere = ("buckwheat",)
    return own(
        allergens_eu=tuple(a for a in stocked.allergens if a not in only_elsewhere),
        allergens_elsewhere=tuple(
            dict.fromkeys(
                (*(a for a in stocked.allergens if a in only_elsewhere), *elsewhere)
            )
        ),
    )


def _like(line: Line) -> str:
    found = find_ingredient(line.text)
    if found:
        return found.id
    near = near_ingredients(line.text.replace("_", " "), 1)
    raise UnreadableError(
        Words("the table has no {found!r}", found=line.text),
        Words("Perhaps you meant {near!r}", near=near[0].id)
        if near
        else Words("Take the line away, and write its sheet per 100 g"),
    )


def _day(line: Line) -> date:
    return read_day(line.text)


def _allergens(line: Line) -> tuple[str, ...]:
    words = tuple(part.text for part in parts_of(line.text, ","))
    return () if words == ("none",) else words


def _made_from(line: Line) -> MadeFrom:
    """``butter 82 %; 80 % comes out``."""
    what, rest = name_and_rest(line.text)
    found = _COMES_OUT.fullmatch(rest[0].text) if len(rest) == 1 else None
    if not found:
        raise UnreadableError(
            Words("{found!r} does not say how much comes out", found=line.text),
            Words("Write it like butter 82 %; 80 % comes out"),
        )
    with at_column(rest[0].column):
        out = read_figure(found[1], name="what comes out", kinds=("share",), line=line)
    return MadeFrom(what=what.text, out=out, line=line)
