"""What goes in instead."""

import pytest

from demould.mise.problem import UnreadableError
from demould.mise.read_other import Other, read_other


@pytest.mark.parametrize(
    ("text", "other"),
    [
        ("cream 30 %", Other(ingredient="cream_30")),
        (
            "raspberry + 10 % sugar",
            Other(ingredient="raspberry", share=10, sugar="sucrose"),
        ),
        ("frozen rhubarb", Other(ingredient="rhubarb", frozen=True)),
        ("our butter", Other(ingredient="our butter")),
    ],
)
def test_it_is_read(text: str, other: Other) -> None:
    assert read_other(text, ("our butter",)) == other


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("creem 30 %", "no ingredient is called 'creem 30 %'"),
        ("raspberry + 100 % sugar", "100 % of it cannot be sugar"),
        ("frozen moon", "no ingredient is called 'moon'"),
    ],
)
def test_what_nobody_knows_is_said(text: str, wrong: str) -> None:
    with pytest.raises(UnreadableError) as fault:
        read_other(text, ())
    assert str(fault.value.wrong) == wrong
