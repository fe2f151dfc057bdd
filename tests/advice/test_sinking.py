"""Whether the centre stays where it is laid."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.advice.sinking import sinkings
from demould.matter.sinking import needed_pa
from demould.mise.dessert import Dessert
from tests.demo_folder import demo_folder


def demo(key: str) -> Dessert:
    return next(one for one in demo_folder().desserts if one.key == key)


def test_a_ball_of_30_mm() -> None:
    # Common practice, no source: a sphere moves under 0.06 g d x difference of density;
    # 30 mm and 480 kg/m3: 8.5 Pa. Volume 14.137 ml, widest section 706.86 mm2.
    assert needed_pa(14.137, 706.86, 0.48) == pytest.approx(8.48, abs=0.01)


@given(mm=st.floats(5, 80), heavier=st.floats(0.01, 1))
def test_a_sphere_goes_by_its_diameter(mm: float, heavier: float) -> None:
    from math import pi

    needs = needed_pa(pi / 6 * mm**3 / 1000, pi / 4 * mm**2, heavier)
    assert needs == pytest.approx(0.06 * 9.81 * mm / 1000 * heavier * 1000)


def test_a_body_that_rests_on_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^a body resting on 0 mm2; it must be more"):
        needed_pa(1, 0, 1)


def test_soft_peaks_carry_the_pebble_s_centre() -> None:
    (one,) = sinkings(demo("river-pebble"), demo_folder().kitchen)
    # 18 ml over 45 x 30 mm of oval (1060 mm2), 1.10 in 0.62 g/ml: 7.2 Pa.
    assert one.needs_pa == pytest.approx(0.09 * 9.81 * 480 * 18e-3 / 1.060, rel=0.06)
    assert (one.stays, one.look, one.said) == ("holds", "soft peaks", True)
    assert one.do is None


def test_unwhipped_it_sinks_and_is_told_what_to_do() -> None:
    pebble = demo("river-pebble")
    poured = replace(
        pebble,
        method=tuple(
            replace(step, remarks=("poured in",)) if step.key == "whip" else step
            for step in pebble.method
        ),
    )
    (one,) = sinkings(poured, demo_folder().kitchen)
    assert one.stays == "sinks"
    assert "fill half and let it grip" in str(one.do)


def test_a_light_centre_may_rise_in_a_thin_mix() -> None:
    pebble = demo("river-pebble")
    light = replace(
        pebble,
        components=tuple(
            replace(one, density=replace(one.density, value=0.3))
            if one.key == "centre"
            else one
            for one in pebble.components
        ),
        method=tuple(
            replace(step, remarks=("poured",)) if step.key == "whip" else step
            for step in pebble.method
        ),
    )
    (one,) = sinkings(light, demo_folder().kitchen)
    assert one.stays == "may rise"


def test_where_nobody_says_how_stiff_it_is_the_usual_is_taken_and_said() -> None:
    (one,) = sinkings(demo("meadow-domes"), demo_folder().kitchen)
    assert (one.look, one.said) == ("ribbons", False)
    assert "by its look (ribbons; nobody says) it has 8 to 30" in str(one.says)


def test_nothing_is_laid_into_a_terrine() -> None:
    assert sinkings(demo("amber-terrine"), demo_folder().kitchen) == ()


def test_between_the_ends_of_a_look_it_may_sink() -> None:
    (one,) = sinkings(demo("ember-log"), demo_folder().kitchen)
    # A bar of 30 mm, 1.12 in 0.68 g/ml: 11.7 Pa, where ribbons have 8 to 30.
    assert one.needs_pa == pytest.approx(0.09 * 9.81 * 440 * 0.03, rel=1e-6)
    assert one.stays == "may sink"
