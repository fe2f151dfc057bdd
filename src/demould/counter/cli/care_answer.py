"""What is told to guests, as plain JSON."""

from demould.care.guest import ForGuests
from demould.care.requests import Answered, Fit
from demould.counter.cli.answer import Answer


def of_guests(guests: ForGuests) -> Answer:
    """Give what is in it, what may be, what nobody said, and what it is made without."""
    return {
        "dessert": guests.dessert.key,
        "variant": guests.variant,
        "present": [
            {
                "allergen": one.allergen.name,
                "eu": one.allergen.eu or None,
                "us": one.allergen.us or None,
                "elsewhere": list(one.allergen.elsewhere),
                "within": [list(place) for place in one.within],
                "by_table": one.by_table,
            }
            for one in guests.inside.present
        ],
        "may_be": [
            {"allergen": one.allergen.name, "why": str(one.why)} for one in guests.may
        ],
        "unknown": [
            {"what": one.what, "asks": str(one.asks)} for one in guests.inside.unknown
        ],
        "contradictions": [
            {"says": str(one.says), "read_by": one.read_by or None}
            for one in guests.inside.contradictions
        ],
        "made_without": [
            {"allergen": one.allergen.name, "why": str(one.why)}
            for one in guests.without
        ],
        "handled": [one.name for one in guests.handled],
        "exempt": [str(one.says) for one in guests.inside.exempt],
        "decorations": [
            {"what": one.what, "permit": one.permit, "says": str(one.says)}
            for one in guests.decorations
        ],
        "cautions": [one.says for one in guests.cautions],
    }


def of_answered(found: Answered) -> Answer:
    """Give the answer to a request, with what stands in the way and what is offered."""
    return {
        "request": found.request.name,
        "verdict": found.verdict,
        "as_written": _of_fit(found.written),
        "taken": _of_fit(found.taken) if found.taken else None,
        "offers": [_of_fit(one) for one in found.offers],
        "never": str(found.never) if found.never else None,
    }


def _of_fit(fit: Fit) -> Answer:
    return {
        "dessert": fit.dessert.key,
        "variant": fit.variant,
        "verdict": fit.verdict,
        "against": [str(one) for one in fit.against],
        "open": [str(one) for one in fit.open],
        "handled": list(fit.handled),
        "holds": list(fit.holds),
    }
