"""Straight lines of a PDF as they come out on paper."""

from collections.abc import Iterator
from typing import Any

import numpy as np
from pypdf import PdfReader
from pypdf.generic import ContentStream

MM = 25.4 / 72


def lines_mm(pdf: PdfReader) -> Iterator[float]:
    """Length of each straight line drawn, drawings within the leaf included [mm]."""
    for leaf in pdf.pages:
        yield from _lines(leaf, leaf.get_contents(), np.eye(3), pdf)


def _lines(holder: Any, stream: Any, start: Any, pdf: PdfReader) -> Iterator[float]:
    now, kept, at = start, [], np.zeros(3)
    for values, sign in ContentStream(stream, pdf).operations:
        match sign:
            case b"q":
                kept.append(now)
            case b"Q":
                now = kept.pop()
            case b"cm":
                a, b, c, d, e, f = map(float, values)
                now = np.array([[a, b, 0], [c, d, 0], [e, f, 1]]) @ now
            case b"m":
                at = np.array([*map(float, values), 1]) @ now
            case b"l":
                to = np.array([*map(float, values), 1]) @ now
                yield float(np.hypot(*(to - at)[:2])) * MM
                at = to
            case b"Do":
                inner = holder["/Resources"]["/XObject"][values[0]]
                if inner["/Subtype"] == "/Form":
                    matrix = [
                        float(v) for v in inner.get("/Matrix", (1, 0, 0, 1, 0, 0))
                    ]
                    a, b, c, d, e, f = matrix
                    own = np.array([[a, b, 0], [c, d, 0], [e, f, 1]]) @ now
                    yield from _lines(inner, inner, own, pdf)
            case _:
                pass
