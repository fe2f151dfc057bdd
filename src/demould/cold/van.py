"""What a box on the road holds: how warm on arrival, how much ice it needs.

The heat that comes in is taken as that at the start and held, which is careful: as the
goods warm, less comes in. Doors that open are not counted.
"""

from dataclasses import dataclass

ICE_J_KG = 334e3
"""Melting of ice at 0 °C. Cold plates of other fillings: as their maker says."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """Goods in a closed box.

    Attributes
    ----------
    kilograms, heat
        Of the goods [kg, J/(kg K)]; thawed dessert 3500.
    leak
        Through its walls. [W/K] A foam box of 30 l has about 0.5 to 1.
    inside_c, outside_c
        At the start.
    """

    kilograms: float
    heat: float
    leak: float
    inside_c: float
    outside_c: float

    def __post_init__(self) -> None:
        if min(self.kilograms, self.heat, self.leak) <= 0:
            raise ValueError("a box needs goods, their heat and a leak above 0")

    @property
    def watts(self) -> float:
        """What comes in at the start."""
        return self.leak * (self.outside_c - self.inside_c)


def arrival_c(box: Box, minutes: float, ice_kg: float = 0.0) -> float:
    """How warm the goods are after so many minutes; ice at 0 °C takes the heat first."""
    heat = box.watts * minutes * 60 - ice_kg * ICE_J_KG
    if box.watts > 0:
        heat = max(0.0, heat)
    warmed = heat / (box.kilograms * box.heat)
    return min(box.inside_c + warmed, max(box.outside_c, box.inside_c))


def minutes_dry(box: Box, limit_c: float) -> float | None:
    """Minutes until the goods are that warm without ice; None if they never are."""
    if box.watts <= 0 or box.outside_c <= limit_c:
        return None
    return max(0.0, limit_c - box.inside_c) * box.kilograms * box.heat / box.watts / 60


def ice_hours(box: Box, ice_kg: float) -> float | None:
    """Hours so much ice takes all that comes in; None if nothing does."""
    return ice_kg * ICE_J_KG / box.watts / 3600 if box.watts > 0 else None


def ice_needed_kg(box: Box, minutes: float, limit_c: float) -> float:
    """Kilograms of ice for the goods to arrive at or under the limit."""
    spare = max(0.0, limit_c - box.inside_c) * box.kilograms * box.heat
    return max(0.0, box.watts * minutes * 60 - spare) / ICE_J_KG
