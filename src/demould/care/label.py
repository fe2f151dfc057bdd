"""A label, drafted: it stays a draft until a person has read it and signed."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from demould.amounts.layers.piece import Piece
from demould.care.allergens import Allergens, allergens_of
from demould.care.decoration import OnFood, decorations_of
from demould.care.ingredient_list import (
    Listed,
    emphasised,
    ingredient_list,
    on_list,
    quantity,
)
from demould.care.nutrition import Row, eu_panel, made_of, us_panel
from demould.larder.labels import RuleSet
from demould.larder.table import sources
from demould.matter.grams import Find
from demould.mise.dessert import Dessert
from demould.mise.own_larder import Larder
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """What only people can say of a label; "" and None are left blank on it.

    `sold_as` is the name of the food that describes it: River Pebble is none.
    """

    sold_as: str = ""
    made: date | None = None
    use_by: date | None = None
    keep: str = ""
    lot: str = ""
    maker: str = ""
    signed: str = ""

    def __post_init__(self) -> None:
        if self.made and self.use_by and self.use_by < self.made:
            raise ValueError(
                f"the use-by date {self.use_by} is before the day it was made,"
                f" {self.made}. Write a day after it"
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """Everything a label says; `open` is what keeps it a draft.

    `quantities` are said of what the name of the food names, `contains` is the line
    some rule sets want below the list, () where not. `from_memory` are the sources
    that nobody has read again.
    """

    name: str
    variant: str | None
    rules: RuleSet
    said: Said
    defrosted: bool
    net_g: int
    listed: tuple[Listed, ...]
    quantities: tuple[tuple[str, str], ...]
    contains: tuple[str, ...]
    panel: tuple[Row, ...]
    open: tuple[Words, ...]
    from_memory: tuple[str, ...]

    @property
    def is_draft(self) -> bool:
        """Whether anything is open, or nobody has signed."""
        return bool(self.open) or not self.said.signed


def label_of(
    dessert: Dessert,
    variant: str | None,
    piece: Piece,
    larder: Larder,
    find: Find,
    rules: RuleSet,
    said: Said,
    today: date,
) -> Label:
    """Draft the label of one piece, its variant already in place.

    What goes beside it on the plate is not on the label.
    """
    listed = ingredient_list(dessert, piece, larder, find, rules)
    told = allergens_of(dessert, larder)
    on_it = decorations_of(dessert, larder, rules.name)
    of = made_of(dessert, piece, find)
    panel = eu_panel if rules.panel == "eu" else us_panel
    named = emphasised(listed, said.sold_as) if rules.quantity else ()
    return Label(
        name=dessert.name,
        variant=variant,
        rules=rules,
        said=said,
        defrosted=any(step.key == "thaw" for step in dessert.method),
        net_g=int(piece.whole.value),
        listed=listed,
        quantities=tuple((one.name, quantity(one)) for one in named),
        contains=_contains(told, rules) if rules.contains_line else (),
        panel=panel(of, piece.whole.value),
        open=tuple(_open(told, listed, rules, said, today, on_it)),
        from_memory=_from_memory(rules),
    )


def _contains(told: Allergens, rules: RuleSet) -> tuple[str, ...]:
    return tuple(
        one.allergen.us for one in told.present if on_list(one.allergen, rules)
    )


def _open(
    told: Allergens,
    listed: tuple[Listed, ...],
    rules: RuleSet,
    said: Said,
    today: date,
    on_it: tuple[OnFood, ...],
) -> Iterator[Words]:
    if today > rules.read_again_by:
        yield Words(
            "the rule set {rules} was to be read again by {day}: read the law, then"
            " change its date",
            rules=rules.name,
            day=rules.read_again_by,
        )
    if not said.sold_as:
        yield Words("no name of the food that describes it: write it with --sold-as")
    for one in listed:
        if one.missing:
            yield Words(
                "{what} is a mixture: write its pack's list in larder.yaml, ingredients:",
                what=one.name,
            )
    for unknown in told.unknown:
        yield Words("{what}: {asks}", what=unknown.what, asks=unknown.asks)
    for odd in told.contradictions:
        if not odd.read_by:
            yield odd.says
    for one_on in on_it:
        if one_on.permit != "yes":
            yield one_on.says
    blank = [
        name
        for name, value in (
            ("use by", said.use_by),
            ("keep at", said.keep),
            ("lot", said.lot),
            ("maker", said.maker),
        )
        if not value
    ]
    if blank:
        yield Words("not said: {what}", what=", ".join(blank))


def _from_memory(rules: RuleSet) -> tuple[str, ...]:
    rounding = "memory_eu_rounding" if rules.panel == "eu" else "memory_us_label"
    keys = dict.fromkeys((rules.source, rounding, "memory_label", "memory_additives"))
    return tuple(
        sources()[key].reference for key in keys if sources()[key].known == "memory"
    )
