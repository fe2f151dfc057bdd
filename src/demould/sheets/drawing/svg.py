"""A drawing as SVG: true to size, black on white, no script, no outside files."""

from typing import assert_never
from xml.sax.saxutils import escape, quoteattr

from demould.sheets.drawing.lettering import width_mm
from demould.sheets.drawing.picture import Disc, Mark, Path, Pattern, Picture, Said

FONT = "Atkinson Hyperlegible,Verdana,sans-serif"
HEAD_MM = 1.8

# Each pattern reads apart from the others in black and white, and where it is worn.
_PATTERNS: dict[Pattern, str] = {
    "dots": '<pattern id="dots" width="2.4" height="2.4" patternUnits="userSpaceOnUse">'
    '<path d="M0 0H2.4V2.4H0Z" fill="#fff"/><circle cx="1.2" cy="1.2" r=".3"/>'
    "</pattern>",
    "strokes": '<pattern id="strokes" width="2" height="2"'
    ' patternUnits="userSpaceOnUse" patternTransform="rotate(45)">'
    '<path d="M0 0H2V2H0Z" fill="#fff"/><path d="M1 0V2" stroke="#000"'
    ' stroke-width=".2"/></pattern>',
    "back strokes": '<pattern id="back" width="1.4" height="1.4"'
    ' patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">'
    '<path d="M0 0H1.4V1.4H0Z" fill="#fff"/><path d="M.7 0V1.4" stroke="#000"'
    ' stroke-width=".35"/></pattern>',
    "cross": '<pattern id="cross" width="1.8" height="1.8"'
    ' patternUnits="userSpaceOnUse" patternTransform="rotate(45)">'
    '<path d="M0 0H1.8V1.8H0Z" fill="#fff"/><path d="M.9 0V1.8M0 .9H1.8" stroke="#000"'
    ' stroke-width=".18"/></pattern>',
    "level": '<pattern id="level" width="4" height="1.6"'
    ' patternUnits="userSpaceOnUse"><path d="M0 0H4V1.6H0Z" fill="#fff"/>'
    '<path d="M0 .8H4" stroke="#000" stroke-width=".2"/></pattern>',
    "upright": '<pattern id="upright" width="1.6" height="4"'
    ' patternUnits="userSpaceOnUse"><path d="M0 0H1.6V4H0Z" fill="#fff"/>'
    '<path d="M.8 0V4" stroke="#000" stroke-width=".2"/></pattern>',
}
_PAINT: dict[Pattern, str] = {
    "none": "none",
    "white": "#fff",
    "dots": "url(#dots)",
    "strokes": "url(#strokes)",
    "back strokes": "url(#back)",
    "cross": "url(#cross)",
    "level": "url(#level)",
    "upright": "url(#upright)",
}


def svg_of(picture: Picture) -> str:
    """Give the drawing as SVG; a millimetre in it is a millimetre on paper."""
    wide, high = _mm(picture.width), _mm(picture.height)
    used = {mark.fill for mark in picture.marks if not isinstance(mark, Said)}
    defs = "".join(_PATTERNS[name] for name in _PATTERNS if name in used)
    if any(isinstance(mark, Path) and mark.arrows for mark in picture.marks):
        defs += _HEAD
    return "".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}mm"'
            f' height="{high}mm" viewBox="0 0 {wide} {high}" role="img"'
            f" aria-label={quoteattr(str(picture.told))}>",
            f"<title>{escape(str(picture.title))}</title>",
            f"<defs>{defs}</defs>" if defs else "",
            f'<path d="M0 0H{wide}V{high}H0Z" fill="#fff"/>',
            f'<g font-family="{FONT}" stroke-linejoin="round">',
            *(_mark(mark) for mark in picture.marks),
            "</g></svg>",
        )
    )


_HEAD = (
    f'<marker id="head" viewBox="0 0 6 6" refX="6" refY="3" markerWidth="{HEAD_MM}"'
    f' markerHeight="{HEAD_MM}" markerUnits="userSpaceOnUse"'
    ' orient="auto-start-reverse"><path d="M0 1 6 3 0 5Z"/></marker>'
)


def _mark(mark: Mark) -> str:
    match mark:
        case Path():
            return _path(mark)
        case Disc():
            return _disc(mark)
        case Said():
            return _said(mark)
        case _:
            assert_never(mark)


def _path(mark: Path) -> str:
    way = "M" + " ".join(f"{_mm(x)} {_mm(y)}" for x, y in mark.points)
    heads = ' marker-start="url(#head)" marker-end="url(#head)"' if mark.arrows else ""
    dash = ' stroke-dasharray="1.5 1"' if mark.dashed else ""
    end = "Z" if mark.closed else ""
    return f'<path d="{way}{end}"{_fill(mark.fill)}{_pen(mark.width)}{dash}{heads}/>'


def _disc(mark: Disc) -> str:
    (x, y), r = mark.at, _mm(mark.radius)
    fill = "" if mark.solid else _fill(mark.fill)
    return f'<circle cx="{_mm(x)}" cy="{_mm(y)}" r="{r}"{fill}{_pen(mark.width)}/>'


def _said(mark: Said) -> str:
    x, y = mark.at
    wide = width_mm(mark.text, mark.size, bold=mark.bold)
    anchor = "" if mark.anchor == "start" else f' text-anchor="{mark.anchor}"'
    bold = ' font-weight="700"' if mark.bold else ""
    return (
        f'<text x="{_mm(x)}" y="{_mm(y)}" font-size="{_mm(mark.size)}"{anchor}{bold}'
        f' textLength="{_mm(wide)}">{escape(mark.text)}</text>'
    )


def _fill(pattern: Pattern) -> str:
    return f' fill="{_PAINT[pattern]}"'


def _pen(width: float) -> str:
    return f' stroke="#000" stroke-width="{_mm(width)}"' if width else ""


def _mm(value: float) -> str:
    """Write to a hundredth of a millimetre, as short as may be.

    >>> _mm(12.5), _mm(-0.001), _mm(7.0)
    ('12.5', '0', '7')
    """
    short = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if short == "-0" else short
