"""The changes worth most, and those that want more than the farm has."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import named
from farmbook.expr.nodes import Constant, Expr, wrap
from farmbook.expr.ranking import nth_value
from farmbook.expr.sentences import either, figure, say
from farmbook.model.alternatives.changes import (
    BagsChange,
    Change,
    EnergyChange,
    LossesChange,
    OwnChangeYear,
    PayChange,
    PriceChange,
    SpawnChange,
    UnsoldChange,
    WeeksChange,
    WeightChange,
)
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = ["ChangeRanks"]

SECOND_OF_CHANGES: Final = Constant(
    2, "second_of_changes", label="Second of the changes", unit=unit("1"), source=ARITHMETIC.key
)
THIRD_OF_CHANGES: Final = Constant(
    3, "third_of_changes", label="Third of the changes", unit=unit("1"), source=ARITHMETIC.key
)
NONE: Final = "No other of these changes brings anything within what the farm has."


class ChangeRanks(Section):
    """Ten changes, each alone. One that passes a limit is not ranked: it stands with what it needs."""

    title = "What a change is worth"

    price = uses(PriceChange)
    weight = uses(WeightChange)
    losses = uses(LossesChange)
    bags = uses(BagsChange)
    pay = uses(PayChange)
    energy = uses(EnergyChange)
    spawn = uses(SpawnChange)
    unsold = uses(UnsoldChange)
    weeks = uses(WeeksChange)
    own = uses(OwnChangeYear)

    @property
    def all_changes(self) -> tuple[Change, ...]:
        """In the order in which they stand on the sheet."""
        selling = (self.price, self.weight, self.losses, self.bags, self.pay)
        return (*selling, self.energy, self.spawn, self.unsold, self.weeks, self.own)

    @line("Changes ranked: prices, weight, losses, bags, pay", unit="count")
    def ranked_first(self) -> Expr:
        """Of these five."""
        return self._count(self.all_changes[:5])

    @line("Changes ranked: energy, spawn, unsold, weeks, your own", unit="count")
    def ranked_last(self) -> Expr:
        """Of these five."""
        return self._count(self.all_changes[5:])

    @line("Changes ranked", unit="count")
    def ranked(self) -> Expr:
        """They bring something, and pass no limit."""
        return self.ranked_first + self.ranked_last

    @line("Changes that pass a limit: prices, weight, losses, bags, pay", unit="count")
    def passing_first(self) -> Expr:
        """Of these five."""
        return self._passing(self.all_changes[:5])

    @line("Changes that pass a limit: energy, spawn, unsold, weeks, your own", unit="count")
    def passing_last(self) -> Expr:
        """Of these five."""
        return self._passing(self.all_changes[5:])

    @line("Changes that pass a limit", unit="count")
    def passing(self) -> Expr:
        """Look beside them for what they need."""
        return self.passing_first + self.passing_last

    @line("The change worth most", unit="1")
    def first(self) -> Expr:
        """Of those that pass no limit."""
        return self._in_place(wrap(1))

    @line("The change worth second most", unit="1")
    def second(self) -> Expr:
        """Of those that pass no limit."""
        return self._in_place(named(SECOND_OF_CHANGES))

    @line("The change worth third most", unit="1")
    def third(self) -> Expr:
        """Of those that pass no limit."""
        return self._in_place(named(THIRD_OF_CHANGES))

    @line("Changes: the answer", unit="1")
    def answer(self) -> Expr:
        """The two worth most."""
        return say(
            "Worth most: ",
            self.first,
            " Next: ",
            self.second,
            either(self.passing > 0, " Of all ten, ", ""),
            either(self.passing > 0, self.passing_told, ""),
        )

    @line("Changes that pass a limit, in words", unit="1")
    def passing_told(self) -> Expr:
        """So many."""
        return say(figure(self.passing, 0, named=False), either(self.passing <= 1, " passes", " pass"), " a limit.")

    def _in_place(self, place: Expr) -> Expr:
        keys = tuple(change.rank_key for change in self.all_changes)
        return nth_value(keys, place, self.ranked, tuple(change.told for change in self.all_changes), NONE)

    def _count(self, changes: tuple[Change, ...]) -> Expr:
        first, *others = (change.ranked for change in changes)
        return sum(others, start=wrap(first))

    def _passing(self, changes: tuple[Change, ...]) -> Expr:
        first, *others = (change.passes for change in changes)
        return sum(others, start=wrap(first))
