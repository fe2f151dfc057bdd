"""One quantity of a component against its band."""

import math
from dataclasses import dataclass
from typing import Literal

from demould.mise.figure import Figure
from demould.mise.words import Words

Verdict = Literal["under", "inside", "over", "not said"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A figure against its band; `figure` is None where nobody said.

    `change` says what to do by how much to come inside, `remark` what else is known;
    `plainly` is the sentence where there is no trade band to name.
    """

    component: str
    name: str
    what: str
    figure: Figure | None
    low: float
    high: float
    unit: str
    verdict: Verdict
    change: Words | None = None
    remark: Words | None = None
    plainly: Words | None = None

    @property
    def outside(self) -> float:
        """How far outside, in widths of the band; 0 inside."""
        if self.figure is None:
            return 1.0 if self.verdict == "not said" else 0.0
        span = self.low if math.isinf(self.high) else self.high - self.low
        width = max(span, 1e-9)
        value = self.figure.value
        return max(self.low - value, value - self.high, 0) / width

    @property
    def band(self) -> Words:
        """What is usual, in words."""
        unit = f" {self.unit}" if self.unit else ""
        if math.isinf(self.high):
            return Words("{low:.3g}{unit} or more", low=self.low, unit=unit)
        return Words(
            "{low:.3g} to {high:.3g}{unit}", low=self.low, high=self.high, unit=unit
        )

    @property
    def says(self) -> Words:
        """The sentence: what it is, what is usual."""
        if self.plainly is not None:
            return self.plainly
        band = self.band
        if self.figure is None:
            return Words(
                "{name}: no {what}; {band} is usual",
                name=self.name,
                what=self.what,
                band=band,
            )
        return Words(
            "{name}: {what} {value}, {verdict} {band}",
            name=self.name,
            what=self.what,
            value=rounded(self.figure.value, self.unit),
            verdict="within" if self.verdict == "inside" else self.verdict,
            band=band,
        )


def rounded(value: float, unit: str) -> str:
    """A value as a cook reads it, not finer than it is known.

    >>> rounded(0.4033, "%"), rounded(34.13, "%"), rounded(1.0312, "g/ml")
    ('0.4', '34.1', '1.03')
    """
    if unit == "g/ml":
        return f"{value:.2f}"
    if unit == "":
        return f"{value:.1f}"
    if abs(value) < 2:
        return f"{value:.2f}".rstrip("0").rstrip(".") or "0"
    return f"{value:.1f}".rstrip("0").rstrip(".")


def verdict_of(value: float, low: float, high: float, slack: float = 0.0) -> Verdict:
    """Where a value lies; `slack` is how much is no news."""
    if value < low - slack:
        return "under"
    return "over" if value > high + slack else "inside"
