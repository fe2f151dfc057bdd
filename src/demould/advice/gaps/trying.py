"""A dessert tried out at the ends of what is not said."""

from dataclasses import dataclass, replace
from functools import cached_property

from demould.advice.gaps.gap import Moved
from demould.advice.gaps.moves import moved, outcome_of
from demould.advice.gaps.worked import Ends, Outcome, Worked
from demould.amounts.counts.doubt import Doubt, put_at
from demould.matter.grams import Find
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.formula import FormulaLine
from demould.mise.kitchen import Kitchen
from demould.mise.own_larder import Larder, Stocked


@dataclass(frozen=True, kw_only=True)
class Trying:
    """A dessert in its kitchen, to be changed at one place and worked out again."""

    dessert: Dessert
    kitchen: Kitchen
    find: Find
    larder: Larder = ()

    @cached_property
    def likely(self) -> Outcome:
        """What comes out with all that is taken now."""
        return outcome_of(self.dessert, self.kitchen, self.find, own=self._own)

    @cached_property
    def _own(self) -> dict[str, Stocked]:
        return {one.key: one for one in self.larder}

    @cached_property
    def as_taken(self) -> Worked:
        """The dessert with all that is taken now."""
        return Worked(dessert=self.dessert, kitchen=self.kitchen, outcome=self.likely)

    def changed(self, dessert: Dessert, kitchen: Kitchen | None = None) -> Worked:
        """What comes out with something in the dessert or the kitchen changed."""
        there = kitchen or self.kitchen
        outcome = outcome_of(dessert, there, self.find, self.as_taken, self._own)
        return Worked(dessert=dessert, kitchen=there, outcome=outcome)

    def with_component(self, component: Component) -> Worked:
        """What comes out with one component changed."""
        components = tuple(
            component if one.key == component.key else one
            for one in self.dessert.components
        )
        return self.changed(replace(self.dessert, components=components))

    def with_line(
        self, component: Component, old: FormulaLine, new: FormulaLine
    ) -> Worked:
        """What comes out with one line of a formula changed."""
        lines = tuple(
            new if line.ordinal == old.ordinal else line for line in component.formula
        )
        return self.with_component(replace(component, formula=lines))

    def at_ends(self, doubt: Doubt) -> Ends:
        """What comes out with an assumed figure at its low and at its high."""
        low, high = (
            self.changed(*put_at(self.dessert, self.kitchen, doubt, bound))
            for bound in (doubt.low, doubt.high)
        )
        return low, high

    def between(self, low: Worked, high: Worked) -> tuple[Moved, ...]:
        """What moves between two ends, the most first."""
        return moved(self.dessert, self.likely, low.outcome, high.outcome)
