"""Text to types for tests: what a file says, and what is wrong with it."""

from collections.abc import Callable
from typing import Any

import pytest

from demould.counter.text.read_tree import read_tree
from demould.mise.faults import Faults

Read = Callable[..., tuple[Any, list[str]]]


@pytest.fixture
def read() -> Read:
    """Read text with a reader of branches; give the thing and all messages."""

    def of(reader: Callable[..., Any], text: str, *more: Any) -> tuple[Any, list[str]]:
        tree, problems = read_tree(text, "x.yaml")
        assert problems == ()
        faults = Faults()
        thing = reader(tree, *more, faults)
        return thing, [str(fault) for fault in faults.found]

    return of
