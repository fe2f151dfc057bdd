"""Raw fruit that melts gelatin: in the same component, or where two touch."""

from collections.abc import Iterator

from demould.advice.clashes.clash import Clash, clash
from demould.advice.clashes.heat import is_raw
from demould.larder.enzymes import Enzyme
from demould.larder.read import enzyme_in
from demould.matter.grams import Find
from demould.matter.setting import doses
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.formula import FormulaLine
from demould.mise.words import Words

Raw = tuple[FormulaLine, Enzyme, bool]


def raw_fruit(dessert: Dessert, find: Find) -> Iterator[Clash]:
    """Every raw enzyme fruit with gelatin, or not said to be heated."""
    jellied = [one for one in dessert.components if _has_gelatin(one, dessert, find)]
    inside = {layer.component for layer in dessert.layers}
    for component in dessert.components:
        for line, enzyme, certain in _raw_in(component, find):
            do = _heat(enzyme)
            if component in jellied:
                yield clash(component, _fights(line, certain), do, certain=certain)
                continue
            beside = next(
                (one for one in jellied if {one.key, component.key} <= inside), None
            )
            if beside is not None:
                says = Words(
                    "{what} melts the gelatin of {beside} where they touch{unsaid}",
                    what=_called(line, certain),
                    beside=beside.name,
                    unsaid="",
                )
                yield clash(component, says, do, certain=certain)


def _has_gelatin(component: Component, dessert: Dessert, find: Find) -> bool:
    found = doses(component, find, dessert.components)
    return any(dose.agent == "gelatin" for dose in found)


def _raw_in(component: Component, find: Find) -> Iterator[Raw]:
    for line in component.formula:
        if line.ingredient is None or line.strained_out:
            continue
        enzyme = enzyme_in(find(line.ingredient))
        if enzyme is None:
            continue
        raw = is_raw(component, line, enzyme.heat_to.low)
        if raw is not False:
            yield line, enzyme, raw is True


def _called(line: FormulaLine, certain: bool) -> Words:  # noqa: FBT001  # one caller, one meaning
    if certain:
        return Words("raw {what}", what=line.what)
    return Words("{what}, if it stays raw (nobody says),", what=line.what)


def _fights(line: FormulaLine, certain: bool) -> Words:  # noqa: FBT001  # one caller, one meaning
    return Words("{what} melts gelatin: it never sets", what=_called(line, certain))


def _heat(enzyme: Enzyme) -> Words:
    return Words(
        "heat the fruit right through to {at:g} °C and hold it {minutes:g} min first,"
        " or buy it canned",
        at=enzyme.heat_to.value,
        minutes=enzyme.hold.value,
    )
