"""Signs, causes and readings: each has what it needs, each is found by a cook's words."""

import pytest

from demould.larder.names import plain
from demould.larder.read import (
    bands,
    component_kinds,
    find_sign,
    near_signs,
    reading_kinds,
    signs,
)


@pytest.mark.parametrize("name", signs())
def test_a_sign_has_a_rescue_and_causes_with_tests_and_cures(name: str) -> None:
    sign = signs()[name]
    assert sign.rescue
    assert len(sign.causes) >= 1
    for cause in sign.causes:
        assert cause.test
        assert cause.prevent
        assert 1 <= cause.weight <= 5
        bounded = cause.fine_from is not None or cause.fine_to is not None
        assert bounded is bool(cause.reading), cause
        if cause.fine_from is not None and cause.fine_to is not None:
            assert cause.fine_from < cause.fine_to
    for kind in sign.of:
        assert kind in component_kinds()
        assert bands(kind) is not None


def test_names_of_causes_are_unique_within_a_sign() -> None:
    for sign in signs().values():
        names = [cause.name for cause in sign.causes]
        assert len(names) == len(set(names)), sign.name


def test_no_word_means_two_signs() -> None:
    words = [
        plain(word) for sign in signs().values() for word in (sign.name, *sign.names)
    ]
    assert len(words) == len(set(words))


def test_a_reading_a_cause_hangs_on_has_one_unit() -> None:
    kinds = reading_kinds()
    for sign in signs().values():
        for cause in sign.causes:
            kind = kinds.get(plain(cause.reading)) if cause.reading else None
            if kind is not None:
                assert kind.unit == cause.unit, (sign.name, cause)


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("glaze slid off", "glaze slides"),
        ("The glaze slid off", "glaze slides"),
        ("my ganache is grainy", "ganache grainy"),
        ("it sweats", "sweating"),
        ("centre sank", "centre sank"),
        ("the dip cracked", "dip cracks"),
        ("gelatin did not set", "set too loose"),
        ("rubbery", "set too firm"),
    ],
)
def test_a_sign_is_found_by_a_cook_s_words(said: str, name: str) -> None:
    found = find_sign(said)
    assert found is not None
    assert found.name == name


def test_what_is_no_sign_is_none_and_the_nearest_are_named() -> None:
    assert find_sign("it exploded") is None
    assert find_sign("") is None
    assert "glaze slides" in near_signs("glaze problem")
