"""Densities: in the mould against the band, without air against the composition."""

from collections.abc import Iterator, Sequence

from demould.advice.bands.judged import Judged, verdict_of
from demould.larder.fact import Band
from demould.matter.composition import composition
from demould.matter.density import mix_density, overrun
from demould.matter.grams import Find
from demould.mise.component import Component
from demould.mise.words import Words

BAKED = ("sponge", "crisp base")
DENSITY_APART = 0.06
"""Stated and worked-out density further apart than this ask for a cup to be weighed."""
SLACK_G_ML = 0.005


def dense(
    component: Component, band: Band, find: Find, parts: Sequence[Component]
) -> Iterator[Judged]:
    """Judge the density in the mould; of what is not baked the one without air too."""
    filled = component.whipped or component.density
    if band.density is not None:
        low, high = band.density.low, band.density.high
        verdict = verdict_of(filled.value, low, high, SLACK_G_ML)
        airy = component.whipped is not None
        yield Judged(
            component=component.key,
            name=component.name,
            what="density, whipped" if airy else "density",
            figure=filled,
            low=low,
            high=high,
            unit="g/ml",
            verdict=verdict,
            change=None if verdict == "inside" else Words("weigh a known cup of it"),
            remark=_overrun(component),
        )
    if band.kind in BAKED:
        return
    worked_out = mix_density(composition(component, find, parts))
    stated = component.density.value
    if abs(stated / worked_out - 1) > DENSITY_APART:
        yield _apart(component, stated, worked_out)


def _overrun(component: Component) -> Words | None:
    if component.whipped is None:
        return None
    return Words(
        "{n:.0f} % overrun", n=overrun(component.density, component.whipped).value
    )


def _apart(component: Component, stated: float, worked_out: float) -> Judged:
    return Judged(
        component=component.key,
        name=component.name,
        what="density without air",
        figure=component.density,
        low=worked_out * (1 - DENSITY_APART),
        high=worked_out * (1 + DENSITY_APART),
        unit="g/ml",
        verdict="under" if stated < worked_out else "over",
        plainly=Words(
            "{name}: {stated:.2f} g/ml stated without air, {worked:.2f} by composition",
            name=component.name,
            stated=stated,
            worked=worked_out,
        ),
        change=Words("weigh a cup of it before it is whipped")
        if component.whipped is not None
        else Words("weigh a cup of it"),
    )
