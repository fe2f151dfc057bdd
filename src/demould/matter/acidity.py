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
    likely = _ph(inside, 1.0, PROTEIN_BUFFER[1], 0.0)
    corners = [
        _ph(inside, acid, buffer, shift)
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


def _ph(inside: Inside, acid: float, buffer: float, shift: float) -> float:
    citric = surplus = protein = water = 0.0
    for what, grams in inside:
        made_of = what.per_100g
        mol = acid * made_of.acid * grams / 100 / CITRIC_G_MOL
        held = buffer * made_of.protein * grams / 100
        kilos = made_of.water * grams / 100_000
        own = NO_PH_SAID if what.ph is None and held > 0 else what.ph
        citric, protein, water = citric + mol, protein + held, water + kilos
        if own is not None:
            at = own + shift
            surplus += mol * citrate_charge(at) + held * (at - 7) - _free(at) * kilos
    low, high = 0.5, 12.0
    for _ in range(50):
        middle = (low + high) / 2
        held_back = citric * citrate_charge(middle) + protein * (middle - 7)
        too_sour = surplus + _free(middle) * water > held_back
        low, high = (middle, high) if too_sour else (low, middle)
    return (low + high) / 2


def _free(ph: float) -> float:
    """Hydrogen ions less hydroxide [mol/kg]."""
    return float(10.0**-ph - 10.0 ** (ph - 14))
