"""A part of a mix as a cook says it."""

import pytest

from demould.mise.problem import UnreadableError
from demould.mise.read_mix import read_mix_part


def test_amount_ingredient_and_temperature() -> None:
    part = read_mix_part("190 g white couverture 35 % at 20 °C, unmelted")
    assert part.line.ingredient == "white_couv_35"
    assert (part.at_c, part.unmelted) == (20, True)
    assert not read_mix_part("2,5 dl cream 35 % at 4 °C").unmelted
    assert not read_mix_part("1 kg butter 82 % at 30 °C; melted").unmelted


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("280 g cream 35 %", "'280 g cream 35 %' does not say how warm it is"),
        (
            "280 g cream at 4 to 6 °C",
            "'280 g cream at 4 to 6 °C' does not say how warm it is",
        ),
        ("cream 35 % at 4 °C", "'cream 35 % at 4 °C' does not say how much"),
        ("280 g cream 35 % at 4 °C, wet", "'wet' after the temperature is not known"),
        ("280 g moondust at 4 °C", "no ingredient is called 'moondust'"),
    ],
)
def test_what_is_missing_is_said(text: str, wrong: str) -> None:
    with pytest.raises(UnreadableError) as fault:
        read_mix_part(text)
    assert str(fault.value.wrong) == wrong
