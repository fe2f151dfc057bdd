"""Causes of a sign, ranked by this batch's own numbers and what was read off it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from demould.advice.troubles.own_numbers import Batch, own_numbers
from demould.larder.names import nearest, plain
from demould.larder.read import bands, find_sign, near_signs, reading_kinds
from demould.larder.troubles import Cause, ReadingKind, Sign
from demould.matter.grams import Find
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.kitchen import Kitchen
from demould.mise.problem import UnreadableError
from demould.mise.words import Words

By = Literal["your reading", "the card", ""]
Weighed = Literal["speaks for it", "speaks against it", "not known"]
READ, FORMULA, MEANT_FOR, MEANT_AGAINST = 10.0, 5.0, 3.0, 1.0
"""What counts beside how often a cause is the one (1 to 5): a reading, what the formula
gives, and what the card only means to be done (for it, against it)."""
MEANT = (
    "mix",
    "whip",
    "fold",
    "rest",
    "bake loss",
    "density",
    "coat",
    "overrun",
)
OF_GELATIN = ("bloom below", "bloom above", "boiled gelatin")
"""Readings that mean nothing where there is no gelatin."""
BY_BAND: dict[str, tuple[str, str]] = {
    "dose short": ("{value:.2f} % under its band", "within its band"),
    "dose over": ("{value:.2f} % over its band", "within its band"),
    "ph short": ("pH {value:.1f} under its window", "pH within its window"),
    "bloom below": ("{value:.0f} bloom weaker than the card", "as strong as the card"),
    "bloom above": (
        "{value:.0f} bloom stronger than the card",
        "no stronger than the card",
    ),
    "solids short": ("{value:.0f} % under its band", "within its band"),
    "dew over piece": (
        "dew point {value:.0f} °C over the piece",
        "dew point under the piece",
    ),
    "stiffness short": (
        "needs {value:.1f} times what the softest of that look has",
        "stiff enough to carry it",
    ),
}
"""How what is worked out reads: where it is the cause, and where it is not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspect:
    """One cause with what speaks for or against it, the likeliest with the highest score."""

    cause: Cause
    value: float | None
    by: By
    weighed: Weighed
    score: float

    @property
    def meant(self) -> bool:
        """Whether the card only says that it is to be so."""
        return self.by == "the card" and self.cause.reading in MEANT

    @property
    def says(self) -> Words:
        """What is known of it: ``piece -9 °C, fine to -15 (your reading)``."""
        if self.value is None:
            return Words("not read yet")
        if self.cause.reading in BY_BAND:
            wrong, fine = BY_BAND[self.cause.reading]
            said = wrong if self.weighed == "speaks for it" else fine
            return Words(said + " ({by})", value=self.value, by=self.by)
        unit = "" if self.cause.unit in ("times", "") else self.cause.unit
        if self.cause.unit == "times":
            return Words(
                "{how} {by}",
                how="yes, by" if self.weighed == "speaks for it" else "not by",
                by=self.by,
            )
        return Words(
            "{reading} {value:.3g}{unit}, {fine} is fine ({by})",
            reading=self.cause.reading,
            value=self.value,
            unit=f" {unit}" if unit else "",
            fine=_fine(self.cause),
            by=self.by,
        )


def _fine(cause: Cause) -> Words:
    if cause.fine_from is None:
        return Words("{to:g} or less", to=cause.fine_to)
    if cause.fine_to is None:
        return Words("{low:g} or more", low=cause.fine_from)
    return Words("{low:g} to {to:g}", low=cause.fine_from, to=cause.fine_to)


@dataclass(frozen=True, slots=True, kw_only=True)
class Trouble:
    """A sign on a component of a dessert: its suspects, the likeliest first.

    `named` where the cook said which component.
    """

    sign: Sign
    component: Component | None
    suspects: tuple[Suspect, ...]
    named: bool = False


def troubles(
    sign: Sign,
    dessert: Dessert,
    kitchen: Kitchen,
    find: Find,
    read: Mapping[str, float],
    part: Component | None = None,
) -> Trouble:
    """Rank the causes of a sign; `part` is where it is seen, or the one it speaks of most.

    A reading of the cook's decides most, then what the card and its formula say, then
    how often a cause is the one.
    """
    where = [part] if part is not None else _seen_on(sign, dessert)
    ranked = [
        Trouble(
            sign=sign,
            component=one,
            suspects=_suspects(sign, one, dessert, kitchen, find, read),
            named=part is not None,
        )
        for one in where
    ]
    if not ranked:
        suspects = _suspects(sign, None, dessert, kitchen, find, read)
        return Trouble(sign=sign, component=None, suspects=suspects)
    return max(ranked, key=lambda one: one.suspects[0].score)


def _seen_on(sign: Sign, dessert: Dessert) -> list[Component]:
    if not sign.of:
        inside = {layer.component for layer in dessert.layers}
        return [one for one in dessert.components if one.key in inside]
    return [
        one
        for one in dessert.components
        if (band := bands(one.kind) if one.kind else None) is not None
        and band.kind in sign.of
    ]


def _suspects(
    sign: Sign,
    component: Component | None,
    dessert: Dessert,
    kitchen: Kitchen,
    find: Find,
    read: Mapping[str, float],
) -> tuple[Suspect, ...]:
    own: Mapping[str, float] = {}
    if component is not None:
        own = own_numbers(
            Batch(
                component=component,
                dessert=dessert,
                kitchen=kitchen,
                find=find,
                read=read,
            ),
            {cause.reading for cause in sign.causes},
        )
    found = [
        _suspect(cause, own, read)
        for cause in sign.causes
        if component is None or _can_be(cause, own)
    ]
    return tuple(sorted(found, key=lambda one: -one.score))


def _can_be(cause: Cause, own: Mapping[str, float]) -> bool:
    """Whether a cause means anything here: no gelatin, no weak gelatin.

    What only a formula can tell and this one does not is not of this component.
    """
    if cause.reading in OF_GELATIN:
        return "bloom" in own
    readable = {kind.name for kind in reading_kinds().values()}
    if not cause.reading or cause.reading in readable | set(_FROM_READINGS):
        return True
    return cause.reading in own or not own


_FROM_READINGS = {
    "dew over piece": ("room", "humidity", "piece"),
    "ph short": ("ph",),
    "bloom below": ("bloom",),
    "bloom above": ("bloom",),
    "overrun": ("density",),
}


def _suspect(
    cause: Cause, own: Mapping[str, float], read: Mapping[str, float]
) -> Suspect:
    value = read.get(cause.reading, own.get(cause.reading))
    if value is None or not cause.reading:
        return Suspect(
            cause=cause, value=None, by="", weighed="not known", score=cause.weight
        )
    from_read = cause.reading in read or any(
        name in read for name in _FROM_READINGS.get(cause.reading, ())
    )
    wrong = _outside(cause, value)
    counts = READ if from_read else FORMULA
    if not from_read and cause.reading in MEANT:
        counts = MEANT_FOR if wrong else MEANT_AGAINST
    return Suspect(
        cause=cause,
        value=value,
        by="your reading" if from_read else "the card",
        weighed="speaks for it" if wrong else "speaks against it",
        score=cause.weight + (counts if wrong else -counts),
    )


def _outside(cause: Cause, value: float) -> bool:
    under = cause.fine_from is not None and value < cause.fine_from - 1e-9
    over = cause.fine_to is not None and value > cause.fine_to + 1e-9
    return under or over


def spoken_of(text: str, dessert: Dessert) -> Component | None:
    """The one component a text names by its key or a word of its name, or None."""
    said = set(plain(text).split())
    named = [
        one
        for one in dessert.components
        if said & {*plain(one.key).split(), *plain(one.name).split()[-1:]}
    ]
    return named[0] if len(named) == 1 else None


def sign_called(text: str) -> Sign:
    """The sign a cook speaks of.

    Raises
    ------
    UnreadableError
        If nothing is called that; the nearest are named.
    """
    found = find_sign(text)
    if found is not None:
        return found
    near = near_signs(text) or tuple(sign for sign in ("set too loose", "sweating"))
    raise UnreadableError(
        Words("{text!r} is no sign known here", text=text),
        Words("Say one of these, or like it: {near}", near=", ".join(near)),
    )


def reading_called(name: str) -> ReadingKind:
    """What a cook read off, by any word for it.

    Raises
    ------
    UnreadableError
        If nothing is called that.
    """
    kinds = reading_kinds()
    if plain(name) in kinds:
        return kinds[plain(name)]
    near = ", ".join(nearest(plain(name), kinds, 3)) or "piece, glaze, rest"
    raise UnreadableError(
        Words("{name!r} is nothing that is read off here", name=name),
        Words("Perhaps {near}; write it like 'piece -9 °C'", near=near),
    )
