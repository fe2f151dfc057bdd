"""A sentence as a template with its values, so that doors can translate what rooms say."""

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, init=False)
class Words:
    """An English template and what goes into it.

    >>> str(Words("{n} pebbles in {cavities} cavities", n=27, cavities=24))
    '27 pebbles in 24 cavities'
    """

    template: str
    values: tuple[tuple[str, object], ...]

    def __init__(self, template: str, /, **values: object) -> None:
        object.__setattr__(self, "template", template)
        object.__setattr__(self, "values", tuple(values.items()))

    def __str__(self) -> str:
        return self.in_language({})

    def in_language(self, catalogue: Mapping[str, str]) -> str:
        """Fill the template's translation; a template without one stays English."""
        shown = {
            name: value.in_language(catalogue) if isinstance(value, Words) else value
            for name, value in self.values
        }
        return catalogue.get(self.template, self.template).format_map(shown)
