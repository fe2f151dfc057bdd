"""A label as a page: a draft says so at the head, and what keeps it one."""

from collections.abc import Iterator

from demould.care.label import Label
from demould.mise.words import Words
from demould.sheets.page import Blanks, Block, Cell, Column, Head, Lines, Page, Table

STEP_BACK = Words(
    "The tool drafts, a responsible person signs. Label, nutrition and claims are terms"
    " of the law and often need analysis."
)


def label_page(label: Label) -> Page:
    """Lay a label out, with its energy table and what is open."""
    name = f"{label.name}, {label.variant}" if label.variant else label.name
    return Page(
        key=f"label-{name}-{label.rules.name}",
        title=Words("{name}: label", name=name.upper()),
        note=label.rules.says,
        blocks=tuple(_blocks(label)),
        foot=(
            STEP_BACK,
            *(
                Words("from memory, read it again: {what}", what=one)
                for one in label.from_memory
            ),
        ),
    )


def _blocks(label: Label) -> Iterator[Block]:
    said = label.said
    if label.is_draft:
        yield Lines(
            lines=(
                Words("DRAFT: not for a pack"),
                *(Words("open: {what}", what=one) for one in label.open),
            ),
            loud=True,
        )
    yield Lines(
        lines=(
            Words(
                "{food}{defrosted}",
                food=said.sold_as or Words("(name of the food)"),
                defrosted=Words(", defrosted") if label.defrosted else "",
            ),
            Words("ingredients: {all}", all=list_text(label)),
            *(
                [Words("contains: {all}", all=", ".join(label.contains))]
                if label.contains
                else []
            ),
        )
    )
    yield Table(
        columns=(Column(share=1), Column(share=3)),
        rows=tuple(
            (Cell(text=Words(name)), Cell(text=value or "________"))
            for name, value in (
                ("net weight", f"{label.net_g} g"),
                ("keep at", said.keep),
                ("made", str(said.made or "")),
                ("use by", str(said.use_by or "")),
                ("lot", said.lot),
                ("maker", said.maker),
            )
        ),
    )
    yield Head(
        text=Words("energy table"),
        note="" if label.rules.nutrition else Words("not asked for by this rule set"),
    )
    yield Table(
        columns=(
            Column(share=2),
            Column(head=Words("in 100 g"), share=2),
            Column(head=Words("a piece, {g} g", g=label.net_g), share=2),
        ),
        rows=tuple(
            (Cell(text=row.name), Cell(text=row.per_100g), Cell(text=row.a_piece))
            for row in label.panel
        ),
    )
    if label.is_draft:
        yield Blanks(labels=(Words("read by"), Words("day"), Words("signed")))
    else:
        yield Lines(lines=(Words("read and signed: {who}", who=said.signed),))


def list_text(label: Label) -> str:
    """Give the list as it is printed, small ones behind where the rule set says so."""
    quantities = dict(label.quantities)
    texts = [
        (
            one.share,
            f"{one.text} ({quantities[one.name]})"
            if one.name in quantities
            else one.text,
        )
        for one in label.listed
    ]
    if label.rules.panel != "us":
        return ", ".join(text for _, text in texts)
    small = label.rules.small_share
    most = ", ".join(text for share, text in texts if share > small)
    least = ", ".join(text for share, text in texts if share <= small)
    return f"{most}, contains {small:g} % or less of: {least}" if least else most
