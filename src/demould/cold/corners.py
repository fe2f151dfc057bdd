"""What is unsure about a piece in the cold, and how far: each cause has two ends."""

from dataclasses import replace

from demould.cold.follow import Corner
from demould.cold.piece import FrozenPiece, Place
from demould.mise.words import Words

CAPACITY = (0.5, 1.5)
"""A machine may do half as much or half as much again as assumed."""
HEAVIER = (0.9, 1.1)
"""Whipped parts may weigh a tenth less or more: by density, and fat that sets in the
cold (6 to 15 % more heat from a mousse) is not counted unless asked for."""
WETTER = (0.97, 1.03)
"""Purées, creams and what boils off leave that much more or less water. An estimate."""

FIELDS = {
    "film": ("film", "reach"),
    "start": ("start_off_k",),
    "air": ("air_off_k",),
    "heavier": ("heavier",),
    "wetter": ("wetter",),
    "capacity": ("capacity",),
    "damp": ("relative",),
}
"""From each cause to what of a corner it moves: the air's film moves water with it."""


def likely_corner(place: Place) -> Corner:
    """Everything as it most likely is."""
    if place.humid is None:
        return Corner(film=place.film_likely)
    return Corner(
        film=place.film_likely,
        relative=place.humid.relative[1],
        reach=place.humid.reach[1],
    )


def corners(
    piece: FrozenPiece, place: Place, *, cooling: bool
) -> tuple[Corner, Corner]:
    """Everything unsure at its quick end, and at its slow end.

    Damp air is quick where a piece warms: water that settles brings its heat.
    """
    to_warm = 1.0 if cooling else -1.0
    humid = place.humid
    whipped = any(part.air for part in piece.parts)
    ends = (
        (place.film_high, -1.0, HEAVIER[0], WETTER[0], CAPACITY[1], 2),
        (place.film_low, 1.0, HEAVIER[1], WETTER[1], CAPACITY[0], 0),
    )
    quick, slow = (
        Corner(
            film=film,
            start_off_k=side * to_warm * piece.start_unsure_k,
            air_off_k=side * to_warm * place.air_unsure_k,
            heavier=heavier if whipped else 1.0,
            wetter=wetter,
            capacity=capacity if place.load else 1.0,
            relative=humid.relative[n] if humid else 0.0,
            reach=humid.reach[n] if humid else 0.0,
        )
        for film, side, heavier, wetter, capacity, n in ends
    )
    return quick, slow


def one_by_one(middle: Corner, end: Corner) -> dict[str, Corner]:
    """From each cause to the middle corner with only that one at its end."""
    ways = {
        cause: replace(middle, **{name: getattr(end, name) for name in names})
        for cause, names in FIELDS.items()
    }
    return {cause: corner for cause, corner in ways.items() if corner != middle}


def in_words(cause: str, piece: FrozenPiece, place: Place) -> Words:
    """Say what is unsure, and between what."""
    match cause:
        case "film":
            return Words(
                "how much air moves over the pieces"
                " (between {low:g} and {high:g} W/m2K in this place)",
                low=place.film_low,
                high=place.film_high,
            )
        case "air":
            return Words(
                "how warm the air is at the pieces ({off:g} °C either way)",
                off=place.air_unsure_k,
            )
        case "heavier":
            return Words("how light it was whipped (a tenth heavier or lighter)")
        case "wetter":
            return Words("how much water is in it (3 in 100 of it more or less)")
        case "capacity":
            return Words("how much cold the machine makes (half as much either way)")
        case "damp":
            low, high = _percent(place)
            return Words(
                "how damp the air is (between {low:.0f} and {high:.0f} %)",
                low=low,
                high=high,
            )
        case _:
            return Words(
                "how warm the pieces go in ({off:g} °C either way)",
                off=piece.start_unsure_k,
            )


def slow_in_words(
    cause: str, piece: FrozenPiece, place: Place, corner: Corner
) -> Words:
    """Say a cause at its slow end, as what would have to be so."""
    match cause:
        case "film":
            return Words(
                "so little air moves over the pieces ({film:g} W/m2K)",
                film=corner.film,
            )
        case "air":
            return Words(
                "the air at the pieces is {off:g} °C {way} than said",
                off=abs(corner.air_off_k),
                way="warmer" if corner.air_off_k > 0 else "colder",
            )
        case "capacity":
            return Words("the machine makes only half the cold assumed")
        case _:
            return Words("that is: {what}", what=in_words(cause, piece, place))


def _percent(place: Place) -> tuple[float, float]:
    if place.humid is None:
        return 0.0, 0.0
    return 100 * place.humid.relative[0], 100 * place.humid.relative[2]
