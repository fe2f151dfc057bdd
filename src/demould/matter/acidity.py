r"""How sour a mix is: a band of pH with its reason, never one number.

What keeps its amount when things are mixed is not pH but the surplus of strong ions
(potassium, sodium, lime) over the charge of the acids and proteins they are tied to.
Each ingredient's surplus is told by its own pH, its acid and its protein; the mix has
the sum, and its pH is the one at which all charges cancel:

.. math:: S + [H^+] - K_w/[H^+] = C\,\alpha(pH) + \beta P\,(pH - 7)

with `C` mol of citric acid, its charge :math:`\alpha` from its three constants, and
`P` g of protein that takes up :math:`\beta` mol a gram and unit of pH (milk's with its
phosphates is the strongest buffer of a pastry). Malic and tartaric acid count as citric.
"""

from dataclasses import dataclass
from itertools import product

from demould.matter.inside import Inside
from demould.mise.words import Words

CITRIC_G_MOL = 192.12
# Citric acid at 25 °C: CRC Handbook of Chemistry and Physics (from memory).
CITRIC_PK = (3.13, 4.76, 6.40)
PROTEIN_BUFFER = (0.3e-3, 0.7e-3, 1.0e-3)
"""Low, likely, high [mol a gram and unit of pH]: titration curves of milk and egg, from memory."""
ACID_UNSURE = (0.85, 1.15)
PH_UNSURE = 0.1
NO_PH_SAID = 6.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Acidity:
    """pH between `low` and `high`, `likely` inside; `reason` names what makes it sour."""

    low: float
    likely: float
    high: float
    reason: Words

    def __str__(self) -> str:
        return f"{self.low:.1f} to {self.high:.1f}"


def acidity(inside: Inside) -> Acidity | None:
    """Band the pH of a mix of these ingredients; None where nothing in it has a pH.

    Ingredients with protein and no pH of their own are taken at 6.5, acids without one
    as pure acid. Salts of acids (citrates) are not known to the table: None with one.
    """
    if not any(what.ph is not None or what.per_100g.acid for what, _ in inside):
        return None
    if any(_is_citrate(what.id, what.name) for what, _ in inside):
        return None
    mix = _mixed(inside)
    likely = _ph(mix, 1.0, PROTEIN_BUFFER[1], 0.0)
    corners = [
        _ph(mix, acid, buffer, shift)
        for acid, buffer, shift in product(
            ACID_UNSURE, (PROTEIN_BUFFER[0], PROTEIN_BUFFER[2]), (-PH_UNSURE, PH_UNSURE)
        )
    ]
    return Acidity(
        low=min(likely, *corners),
        likely=likely,
        high=max(likely, *corners),
        reason=_reason(inside),
    )


def _is_citrate(*names: str) -> bool:
    return any("citrate" in name for name in names)


def _reason(inside: Inside) -> Words:
    sour = max(inside, key=lambda one: one[0].per_100g.acid * one[1])
    total = sum(grams for _, grams in inside)
    acid = sum(what.per_100g.acid * grams / 100 for what, grams in inside)
    if acid <= 0:
        return Words("by what it is made of, with no acid to speak of")
    return Words(
        "{acid:.1f} % acid, most of it from {what}, against what protein takes up",
        acid=100 * acid / total,
        what=sour[0].name,
    )


def citrate_charge(ph: float) -> float:
    """Negative charges on one citric acid at a pH, from 0 to 3."""
    h: float = 10.0**-ph
    first, second, third = (10.0**-pk for pk in CITRIC_PK)
    one = first * h * h
    two = first * second * h
    three = first * second * third
    return float((one + 2 * two + 3 * three) / (h**3 + one + two + three))


@dataclass(frozen=True, slots=True)
class _Sums:
    """What the ingredients add up to, each at its own pH moved by one shift.

    `charge` is of their acids [mol], `protein` its grams times (pH - 7), `free` hydrogen
    ions less hydroxide [mol].
    """

    charge: float
    protein: float
    free: float


@dataclass(frozen=True, slots=True)
class _Mix:
    citric: float
    protein: float
    water: float
    by_shift: dict[float, _Sums]


def _mixed(inside: Inside) -> _Mix:
    rows = [
        (
            what.per_100g.acid * grams / 100 / CITRIC_G_MOL,
            what.per_100g.protein * grams / 100,
            what.per_100g.water * grams / 100_000,
            NO_PH_SAID if what.ph is None and what.per_100g.protein > 0 else what.ph,
        )
        for what, grams in inside
    ]
    known = [(mol, held, kilos, ph) for mol, held, kilos, ph in rows if ph is not None]
    return _Mix(
        citric=sum(row[0] for row in rows),
        protein=sum(row[1] for row in rows),
        water=sum(row[2] for row in rows),
        by_shift={
            shift: _Sums(
                charge=sum(mol * citrate_charge(ph + shift) for mol, _, _, ph in known),
                protein=sum(held * (ph + shift - 7) for _, held, _, ph in known),
                free=sum(kilos * _free(ph + shift) for _, _, kilos, ph in known),
            )
            for shift in (-PH_UNSURE, 0.0, PH_UNSURE)
        },
    )


def _ph(mix: _Mix, acid: float, buffer: float, shift: float) -> float:
    sums = mix.by_shift[shift]
    surplus = acid * sums.charge + buffer * sums.protein - sums.free
    citric, protein = acid * mix.citric, buffer * mix.protein
    low, high = 0.5, 12.0
    for _ in range(34):
        middle = (low + high) / 2
        held_back = citric * citrate_charge(middle) + protein * (middle - 7)
        too_sour = surplus + _free(middle) * mix.water > held_back
        low, high = (middle, high) if too_sour else (low, middle)
    return (low + high) / 2


def _free(ph: float) -> float:
    """Hydrogen ions less hydroxide [mol/kg]."""
    return float(10.0**-ph - 10.0 ** (ph - 14))
