"""Whether what is laid into the filling stays where it is put."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from demould.amounts.layers.piece import fillers_of, in_the_mould
from demould.amounts.layers.place import Placed, placed
from demould.amounts.shape.section import section_mm2
from demould.amounts.shape.volume import volume_ml
from demould.larder.read import bands, look_in, stiffness
from demould.matter.sinking import needed_pa
from demould.mise.component import Component
from demould.mise.dessert import Dessert, component_of
from demould.mise.kitchen import Kitchen
from demould.mise.shape import WaterOnly
from demould.mise.words import Words

Stays = Literal["holds", "may sink", "sinks", "may rise"]
BY_KIND = {"whipped ganache": "soft peaks", "parfait": "soft peaks"}
USUAL = "ribbons"


@dataclass(frozen=True, slots=True, kw_only=True)
class Sinking:
    """One part in the filling: how stiff that must be, and how stiff it is by its look."""

    part: str
    filling: str
    needs_pa: float
    look: str
    said: bool
    stays: Stays

    @property
    def says(self) -> Words:
        """The sentence: how stiff the filling must be, and how stiff it is."""
        has = stiffness()[self.look]
        return Words(
            "{part} {stays} in {filling}: it takes {needs:.0f} Pa to carry it, and by"
            " its look ({look}{guess}) it has {low:g} to {high:g}",
            part=self.part,
            filling=self.filling,
            stays=self.stays,
            needs=self.needs_pa,
            look=self.look,
            low=has.low,
            high=has.high,
            guess="" if self.said else "; nobody says",
        )

    @property
    def do(self) -> Words | None:
        """What helps where it does not hold."""
        if self.stays == "holds":
            return None
        return Words("whip or chill it further, or fill half and let it grip first")


def sinkings(dessert: Dessert, kitchen: Kitchen) -> tuple[Sinking, ...]:
    """Every part laid onto a filling, with whether that carries it."""
    fillers = fillers_of(dessert)
    if not fillers:
        return ()
    filler = component_of(dessert, fillers[0])
    look, said = _look(filler, dessert)
    return tuple(_each(dessert, kitchen, filler, look, said=said))


def _each(
    dessert: Dessert, kitchen: Kitchen, filler: Component, look: str, *, said: bool
) -> Iterator[Sinking]:
    for part in placed(dessert, kitchen):
        if part.flush or part.at <= 0 or isinstance(part.shape, WaterOnly):
            continue
        laid = component_of(dessert, part.layer.component)
        heavier = laid.density.value - in_the_mould(filler).value
        needs = needed_pa(volume_ml(part.shape), _rests_on(part), heavier)
        yield Sinking(
            part=laid.name,
            filling=filler.name,
            needs_pa=needs,
            look=look,
            said=said,
            stays=_stays(needs, look, heavier),
        )


def _rests_on(part: Placed) -> float:
    """The widest level of a body, which the filling feels [mm2]."""
    height = part.top - part.at
    return max(section_mm2(part.shape, height * n / 20) for n in range(1, 20))


def _stays(needs: float, look: str, heavier: float) -> Stays:
    has = stiffness()[look]
    if needs < has.low:
        return "holds"
    if heavier < 0:
        return "may rise"
    return "may sink" if needs < has.high else "sinks"


def _look(filler: Component, dessert: Dessert) -> tuple[str, bool]:
    """The stiffest look that the method speaks of, or the usual one of the kind."""
    steps = (
        *(step for step in filler.method if step.key in ("whip", "fold")),
        *(
            step
            for step in dessert.method
            if any(need.component == filler.key for need in step.needs)
        ),
    )
    said = [
        look
        for step in steps
        for remark in step.remarks
        if (look := look_in(remark)) is not None
    ]
    order = list(stiffness())
    if said:
        return max(said, key=order.index), True
    band = bands(filler.kind) if filler.kind else None
    return BY_KIND.get(band.kind if band else "", USUAL), False
