"""What a label must say where: rule sets with their dates, names, numbers, rounding."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from functools import cache

from demould.larder.table import rows, several


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleSet:
    """One law's way of a label.

    `small_share` and `water_left_out` are in % of the finished food. `read_again_by` is
    the day by which a person reads the law again: after it the set is past its date.
    """

    name: str
    says: str
    since: date
    read_again_by: date
    small_share: float
    water_left_out: float
    quantity: bool
    panel: str
    contains_line: bool
    nutrition: bool
    source: str
    page: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelName:
    """How a label calls an ingredient; `compound` ones bring a list of their own."""

    name: str
    says: str
    category: str
    number: str
    compound: bool
    source: str
    note: str


@cache
def rule_sets() -> Mapping[str, RuleSet]:
    """Every rule set, by its short name."""
    return {
        row["name"]: RuleSet(
            name=row["name"],
            says=row["says"],
            since=date.fromisoformat(row["since"]),
            read_again_by=date.fromisoformat(row["read_again_by"]),
            small_share=float(row["small_share"]),
            water_left_out=float(row["water_left_out"]),
            quantity=row["quantity"] == "yes",
            panel=row["panel"],
            contains_line=row["contains"] == "yes",
            nutrition=row["nutrition"] == "yes",
            source=row["source"],
            page=row["page"],
            note=row["note"],
        )
        for row in rows("label_rules")
    }


@cache
def label_names() -> Mapping[str, LabelName]:
    """How labels call the rows of the ingredient table, by the row's id."""
    return {
        id_: LabelName(
            name=row["name"],
            says=row["says"],
            category=row["category"],
            number=row["number"],
            compound=row["compound"] == "yes",
            source=row["source"],
            note=row["note"],
        )
        for row in rows("label_names")
        for id_ in several(row["ingredients"])
    }


def printed(panel: str, name: str, value: float) -> str:
    """A value as a panel prints it, with its unit, rounded once and half up.

    >>> printed("eu", "fat", 10.4), printed("eu", "salt", 0.013), printed("us", "energy", 52)
    ('10 g', '0.01 g', '50 kcal')
    """
    exact = Decimal(str(value))
    for row in rows("panel_rounding"):
        if (row["panel"], row["name"]) != (panel, name):
            continue
        if row["below"] and not exact < Decimal(row["below"]):
            continue
        if row["up_to"] and not exact <= Decimal(row["up_to"]):
            continue
        if row["says"]:
            return row["says"]
        step = Decimal(row["step"])
        times = (exact / step).quantize(Decimal(1), rounding=ROUND_HALF_UP)
        return f"{(times * step).normalize():f} {row['unit']}"
    raise KeyError(f"the {panel} panel has no rounding for {name}")
