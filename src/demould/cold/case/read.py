"""One case of freezing or thawing as machines write it, ``demould-cold-case/1``."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from demould.cold.around.air import Air, Film, even_film
from demould.cold.body.skin import FlatFace, Wall
from demould.cold.case.material import MODELS, read_material
from demould.cold.case.outline import Bodies, read_bodies
from demould.cold.run.solve import Damp
from demould.matter.water import Wet
from demould.mise.json_keys import (
    Bounds,
    Keys,
    as_keys,
    as_number,
    inner,
    number,
    numbers,
    only,
    pairs,
    shown,
    text,
)

SCHEMA = "demould-cold-case/1"
KEYS = (
    "schema",
    "id",
    "model",
    "shape",
    "insert",
    "materials",
    "wall",
    "open",
    "start_c",
    "air",
    "h",
    "humidity",
    "ask",
    "accuracy",
)
ASK_KEYS = ("core_c", "warmest_c", "heat_j_at_s", "curve_every_s", "until_s")
UNTIL_S = 90_000.0
COLD = Bounds(least=-60, most=60, unit="°C")
OVER = Bounds(above=0)
NOT_UNDER = Bounds(least=0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """What is to be told: targets [°C], moments [s], rows of the curve [s]."""

    core_c: tuple[float, ...]
    warmest_c: tuple[float, ...]
    heat_at: tuple[float, ...]
    curve_every: float | None
    until: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A sound case. Materials and starts in the order of the bodies; SI, °C."""

    id: str
    model: str
    bodies: Bodies
    materials: tuple[Wet, ...]
    wall: Wall | None
    open_faces: tuple[FlatFace, ...]
    start_c: tuple[float, ...]
    air: Air
    film: Film
    damp: Damp | None
    ask: Ask
    cell: float | None
    step: float | None


def read_case(raw: Mapping[str, object]) -> tuple[Case | None, list[str]]:
    """Read a case; give it, or None and every fault found, one sentence each."""
    keys = Keys(said=raw, place="", faults=[])
    only(keys, KEYS)
    text(keys, "schema", (SCHEMA,))
    name = text(keys, "id") if "id" in raw else ""
    model = text(keys, "model", MODELS)
    bodies = _bodies(keys)
    inserted = raw.get("insert") is not None
    names = ("body", "insert") if inserted else ("body",)
    materials = _materials(keys, names, model)
    wall = _wall(keys)
    open_faces = _open(keys, bodies)
    start = _start(keys, names)
    air = _air(keys)
    film = _film(keys)
    damp = _damp(keys)
    ask = _ask(keys)
    cell, step = _accuracy(keys)
    if keys.faults or bodies is None:
        return None, keys.faults
    return Case(
        id=name,
        model=model,
        bodies=bodies,
        materials=materials,
        wall=wall,
        open_faces=open_faces,
        start_c=start,
        air=air,
        film=film,
        damp=damp,
        ask=ask,
        cell=cell,
        step=step,
    ), []


def _bodies(keys: Keys) -> Bodies | None:
    shape = inner(keys, "shape")
    said = keys.said.get("insert")
    insert = None if said is None else as_keys(keys, "insert", said)
    if shape is None or (said is not None and insert is None):
        return None
    return read_bodies(shape, insert)


def _materials(keys: Keys, names: Sequence[str], model: str) -> tuple[Wet, ...]:
    said = inner(keys, "materials")
    if said is None:
        return ()
    # A material for an insert that is not there does no harm.
    only(said, ("body", "insert"))
    found = [read_material(said, name, model) for name in names]
    return tuple(wet for wet in found if wet is not None)


def _wall(keys: Keys) -> Wall | None:
    said = keys.said.get("wall")
    if said is None:
        return None
    wall = as_keys(keys, "wall", said)
    if wall is None:
        return None
    only(wall, ("thickness_mm", "k", "density", "cp"))
    before = len(keys.faults)
    thickness = number(wall, "thickness_mm", Bounds(above=0, most=100, unit="mm"))
    k = number(wall, "k", OVER)
    density, cp = number(wall, "density", NOT_UNDER), number(wall, "cp", NOT_UNDER)
    if len(keys.faults) > before:
        return None
    return Wall(
        thickness=thickness / 1000, conductivity=k, density=density, heat_capacity=cp
    )


def _open(keys: Keys, bodies: Bodies | None) -> tuple[FlatFace, ...]:
    said = keys.said.get("open", [])
    faces: tuple[FlatFace, ...] = ("bottom", "top")
    if not isinstance(said, Sequence) or isinstance(said, str):
        keys.wrong("open", f'{shown(said)} is no list; write [], or "bottom", "top"')
        return ()
    for n, face in enumerate(said):
        if face not in faces:
            keys.wrong(f"open[{n}]", f"{shown(face)} is no face; write bottom or top")
    found = tuple(face for face in faces if face in said)
    if bodies is not None:
        for face in found:
            if face not in bodies.flat_faces:
                keys.wrong(
                    "open", f"this shape has no flat {face} to leave open; leave it out"
                )
    return found


def _start(keys: Keys, names: Sequence[str]) -> tuple[float, ...]:
    said = keys.said.get("start_c")
    if isinstance(said, Mapping):
        parts = Keys(said=said, place="start_c.", faults=keys.faults)
        only(parts, ("body", "insert"))
        return tuple(number(parts, name, COLD) for name in names)
    return (number(keys, "start_c", COLD),) * len(names)


def _air(keys: Keys) -> Air:
    said = keys.said.get("air")
    if not isinstance(said, Sequence) or isinstance(said, str):
        return number(keys, "air", COLD)
    before = len(keys.faults)
    steps = pairs(keys, "air", "[seconds, °C]")
    for n, (_, at_c) in enumerate(steps):
        if at_c == at_c:
            as_number(keys, f"air[{n}][1]", at_c, COLD)
    times = [since for since, _ in steps]
    if len(keys.faults) == before and (
        not times or times[0] != 0 or sorted(set(times)) != times
    ):
        keys.wrong("air", "the list must begin at 0 seconds and go forward")
    return tuple(steps)


def _film(keys: Keys) -> Film:
    said = keys.said.get("h")
    if not isinstance(said, Mapping):
        return _even(number(keys, "h", OVER))
    parts = Keys(said=said, place="h.", faults=keys.faults)
    only(parts, ("bottom", "top", "other"))
    other = number(parts, "other", OVER)
    bottom = number(parts, "bottom", OVER, other)
    top = number(parts, "top", OVER, other)
    if not min(bottom, top, other) > 0:
        return even_film(1.0)
    return Film(bottom=bottom, top=top, other=other)


def _even(h: float) -> Film:
    return even_film(h) if h > 0 else even_film(1.0)


def _damp(keys: Keys) -> Damp | None:
    said = keys.said.get("humidity")
    if said is None:
        return None
    parts = as_keys(keys, "humidity", said)
    if parts is None:
        return None
    only(parts, ("relative", "h_convective"))
    relative = number(parts, "relative", Bounds(least=0, most=1))
    h = number(parts, "h_convective", NOT_UNDER)
    if not (relative >= 0 and h >= 0):
        return None
    return Damp(relative=relative, h_convective=h)


def _ask(keys: Keys) -> Ask:
    said = keys.said.get("ask", {})
    parts = as_keys(keys, "ask", said)
    if parts is None:
        parts = Keys(said={}, place="ask.", faults=keys.faults)
    only(parts, ASK_KEYS)
    heat = numbers(parts, "heat_j_at_s", NOT_UNDER)
    every = Bounds(above=0, unit="s")
    until = number(parts, "until_s", every, max([UNTIL_S, *heat]))
    late = [at for at in heat if at > until]
    if late:
        parts.wrong(
            "heat_j_at_s",
            f"{late[0]:g} s is after until_s, {until:g} s; ask earlier or go on longer",
        )
    curve = None
    if parts.said.get("curve_every_s") is not None:
        curve = number(parts, "curve_every_s", every)
    if curve is not None and until / curve > 100_000:
        parts.wrong(
            "curve_every_s", f"{curve:g} s makes over 100000 rows; ask for fewer"
        )
    return Ask(
        core_c=tuple(numbers(parts, "core_c")),
        warmest_c=tuple(numbers(parts, "warmest_c")),
        heat_at=tuple(heat),
        curve_every=curve,
        until=until,
    )


def _accuracy(keys: Keys) -> tuple[float | None, float | None]:
    said = keys.said.get("accuracy", "default")
    if said == "default":
        return None, None
    if not isinstance(said, Mapping):
        keys.wrong(
            "accuracy",
            f"{shown(said)} is none; write 'default', or cell_mm and step_s in braces",
        )
        return None, None
    parts = Keys(said=said, place="accuracy.", faults=keys.faults)
    only(parts, ("cell_mm", "step_s"))
    cell = step = None
    if "cell_mm" in said:
        cell = number(parts, "cell_mm", Bounds(least=0.02, unit="mm")) / 1000
    if "step_s" in said:
        step = number(parts, "step_s", Bounds(least=0.01, unit="s"))
    return cell, step
