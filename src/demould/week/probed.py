"""What a probe's log tells of one place with one dessert in it."""

from dataclasses import dataclass, replace
from datetime import date

from demould.cold.freeze import freeze
from demould.cold.from_dessert import as_demoulded, as_filled
from demould.cold.from_kitchen import air_unsure_k, to_freeze, to_thaw
from demould.cold.probe import Fit, Readings, air_log, fit_film
from demould.cold.thaw import thaw
from demould.log.came_true import CameTrue, Record, record_of
from demould.matter.grams import Find
from demould.mise.dessert import Dessert
from demould.mise.figure import Figure, Measured
from demould.mise.kitchen import ColdPlace, Kitchen
from demould.mise.read_probe import ProbeLog

TO_C = -18.0
THAWED_C = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Learned:
    """A fit, the place as written, and the place with it.

    `logged` says whether the air was in the log; `came_h` when the log came to the
    target, None if it did not; `record` how the estimate with the old film did.
    """

    fit: Fit
    place: ColdPlace
    measured: ColdPlace
    logged: bool
    came_h: float | None
    record: Record


def learned_from(
    log: ProbeLog,
    dessert: Dessert,
    kitchen: Kitchen,
    place: ColdPlace,
    find: Find,
    today: date,
) -> Learned:
    """Fit the place's film to a log of a piece put in at its first reading.

    A place under 0 °C is taken to freeze filled moulds, a warmer one to thaw open trays.

    Raises
    ------
    ValueError
        If the log tells too little, or nothing follows it.
    """
    freezing = place.air.value < 0
    piece = (as_filled if freezing else as_demoulded)(dessert, kitchen, find)
    there = (
        to_freeze(dessert, kitchen, place)
        if freezing
        else to_thaw(dessert, kitchen, place, "open")
    )
    logged = log.air_c is not None
    readings = Readings(
        seconds=log.seconds,
        at_c=log.at_c,
        air_c=air_log(log.seconds, log.air_c)
        if log.air_c is not None
        else place.air.value,
        air_unsure_k=0.0 if logged else air_unsure_k(place),
    )
    fit = fit_film(piece, there, readings)
    film = Figure(
        name=f"film of the {place.key}",
        value=round(fit.film, 1),
        unit="W/m2K",
        origin=Measured(on=today),
    )
    came = _came_h(log, freezing=freezing)
    until = freeze if freezing else thaw
    wait = until(piece, there, in_full=False)
    done = (
        [CameTrue(estimate=wait.hours, came=came)]
        if came is not None and wait.hours is not None
        else []
    )
    return Learned(
        fit=fit,
        place=place,
        measured=replace(place, film=film),
        logged=logged,
        came_h=came,
        record=record_of(done),
    )


def _came_h(log: ProbeLog, *, freezing: bool) -> float | None:
    """When the log came to what is waited for and stayed, if it began short of it."""
    short = [at_c > TO_C if freezing else at_c < THAWED_C for at_c in log.at_c]
    if short[-1] or True not in short:
        return None
    last = max(n for n, is_short in enumerate(short) if is_short)
    return log.seconds[last + 1] / 3600
