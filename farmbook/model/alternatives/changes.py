"""What a change is worth: the whole year with one thing other than it is, and what limits the farm then."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable, Mapping
from typing import Any, ClassVar, Final

from farmbook.expr.functions import absolute, all_of, maximum, named, whole_near
from farmbook.expr.nodes import Constant, Expr
from farmbook.expr.ranking import ranking_key
from farmbook.expr.sentences import either, figure, say
from farmbook.model.alternatives.change_sizes import ChangeSizes, OwnChange
from farmbook.model.alternatives.changed import Changed, Changes
from farmbook.model.limits.limits import Limits
from farmbook.model.place.farm_plan import Farm
from farmbook.model.year.year import Year
from farmbook.sections.declare import LineOf, NumberInput, line, uses
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, PARTIAL_BUDGET
from farmbook.units import unit

__all__ = [
    "MANY",
    "BagsChange",
    "Change",
    "EnergyChange",
    "LossesChange",
    "OwnChangeYear",
    "PayChange",
    "PriceChange",
    "SpawnChange",
    "UnsoldChange",
    "WeeksChange",
    "WeightChange",
]

MANY: Final = Constant(10, "changes_ranked", label="Changes that are ranked", unit=unit("1"), source=ARITHMETIC.key)
POSITIONS: Final = tuple(
    Constant(number, f"change_{number}", label=f"Place of change {number}", unit=unit("1"), source=ARITHMETIC.key)
    for number in range(1, 11)
)
CENTS: Final = Constant(
    100, "cents_of_change", label="Parts of money by which changes are ranked", unit=unit("year/money"),
    source=ARITHMETIC.key,
)  # fmt: skip
HARDLY: Final = Constant(
    0.005,
    "hardly_over",
    label="Bags over a limit that are none, of the bags filled",
    unit=unit("share"),
    source=COMMON_PRACTICE.key,
    note="Half a bag in a hundred is within what anybody counts.",
)


class Change(Changed):
    """The year as it is but for the change. The bags stay as typed; what would be more than a limit allows is said."""

    wanted = (Year.profit, Limits.first, Limits.first_name, Limits.many)

    position: ClassVar[int]

    year = uses(Year)
    limits = uses(Limits)

    @property
    def behind(self) -> str:
        """What stands behind the labels of lines made again."""
        return f"{self.words} changed"

    @property
    @abstractmethod
    def size(self) -> Expr:
        """How much it is changed."""

    @line("Worth a year: {} changed", unit="money/year", source=PARTIAL_BUDGET)
    def gain(self) -> Expr:
        """Profit with the change, less profit as it is."""
        return self.of(Year.profit) - self.year.profit

    @line("Bags over what limits, {} changed", unit="bag_filled/week")
    def over(self) -> Expr:
        """More than the smallest stage can do then."""
        return maximum(self.of(Farm.bags_filled_a_week) - self.of(Limits.first), 0) * (self.of(Limits.many) > 0)

    @line("Bags over what limits as it is, for {}", unit="bag_filled/week")
    def over_now(self) -> Expr:
        """A plan that is over already is not held against the change."""
        return maximum(self.farm.bags_filled_a_week - self.limits.first, 0) * (self.limits.many > 0)

    @line("Passes a limit: {} changed", unit="flag")
    def passes(self) -> Expr:
        """Then it is not ranked: what it needs comes first."""
        return self.over > self.over_now + self.farm.bags_filled_a_week * HARDLY

    @line("Limits then: {} changed", unit="1")
    def limit(self) -> Expr:
        """The smallest of the stages with the change."""
        return self.of(Limits.first_name)

    @line("Is ranked: {} changed", unit="flag")
    def ranked(self) -> Expr:
        """It brings a cent at least, and passes no limit."""
        return all_of(whole_near(self.cents) > 0, self.passes <= 0)

    @line("Rank of the change, {}, as a key", unit="1", source=ARITHMETIC)
    def rank_key(self) -> Expr:
        """What brings most has the largest; what is not ranked comes last."""
        return ranking_key(self.cents, named(POSITIONS[self.position - 1]), MANY, self.ranked)

    @line("What the change is ranked by: {}", unit="1")
    def cents(self) -> Expr:
        """Its worth in hundredths of money."""
        return self.gain * CENTS

    @property
    @abstractmethod
    def size_told(self) -> Expr:
        """Its size in words: a line."""

    @line("In words: {} changed", unit="1")
    def told(self) -> Expr:
        """The change and what it brings."""
        return say(
            self.words[:1].upper() + self.words[1:] + " ",
            self.size_told,
            either(self.gain < 0, ": costs ", ": brings "),
            figure(absolute(self.gain), -2, named=False),
            " a year.",
        )

    @line("What it needs: {} changed", unit="1")
    def needs(self) -> Expr:
        """Where it passes a limit."""
        return say(either(self.passes, "more than there is of: ", ""), either(self.passes, self.limit, "\u00b7"))


class SizedChange(Change):
    """One thing changed by a size typed."""

    way: ClassVar[Callable[[Any, Expr], Changes]]
    digits: ClassVar[int] = 0
    named: ClassVar[bool] = True

    sizes = uses(ChangeSizes)

    @line("Size of the change: {}", unit="1")
    def size_told(self) -> Expr:
        """As it stands on Inputs."""
        return say(either(self.size > 0, "+", ""), figure(self.size, self.digits, named=self.named))

    def tries(self) -> Mapping[LineOf | NumberInput, Expr]:
        """By that size."""
        return type(self).way(self, self.size)


class PriceChange(SizedChange, words="prices"):
    """All customers pay more."""

    title = "Prices changed"
    position = 1
    way = Changed.with_price

    @property
    def size(self) -> Expr:
        """As it stands on Inputs."""
        return self.sizes.price


class WeightChange(SizedChange, words="weight picked"):
    """A bag gives more."""

    title = "Weight changed"
    position = 2
    digits = 2
    way = Changed.with_weight

    @property
    def size(self) -> Expr:
        """As it stands on Inputs."""
        return self.sizes.weight


class LossesChange(SizedChange, words="bags lost"):
    """Fewer bags are lost."""

    title = "Losses changed"
    position = 3
    way = Changed.with_losses

    @property
    def size(self) -> Expr:
        """As it stands on Inputs."""
        return self.sizes.losses


class BagsChange(SizedChange, words="bags filled a week"):
    """More bags."""

    title = "Bags changed"
    position = 4
    way = Changed.with_bags

    @property
    def size(self) -> Expr:
        """As it stands on Inputs."""
        return self.sizes.bags


class PayChange(SizedChange, words="pay"):
    """Hired work costs less."""

    title = "Pay changed"
    position = 5
    way = Changed.with_pay

    @property
    def size(self) -> Expr:
        """As it stands on Inputs."""
        return self.sizes.pay


class EnergyChange(SizedChange, words="energy prices"):
    """Energy costs less."""

    title = "Energy prices changed"
    position = 6
    way = Changed.with_energy

    @property
    def size(self) -> Expr:
        """As it stands on Inputs."""
        return self.sizes.energy


class SpawnChange(SizedChange, words="price of spawn"):
    """Spawn costs less."""

    title = "Price of spawn changed"
    position = 7
    way = Changed.with_spawn

    @property
    def size(self) -> Expr:
        """As it stands on Inputs."""
        return self.sizes.spawn


class UnsoldChange(SizedChange, words="unsold"):
    """Less comes home."""

    title = "Unsold changed"
    position = 8
    way = Changed.with_unsold

    @property
    def size(self) -> Expr:
        """As it stands on Inputs."""
        return self.sizes.unsold


class WeeksChange(SizedChange, words="weeks worked a year"):
    """Fewer weeks shut."""

    title = "Weeks changed"
    position = 9
    named = False
    way = Changed.with_weeks

    @property
    def size(self) -> Expr:
        """As it stands on Inputs."""
        return self.sizes.weeks


class OwnChangeYear(Change, words="your own change, all that it has"):
    """Several at once."""

    title = "A change of your own: the year"
    position = 10

    own = uses(OwnChange)

    @property
    def size(self) -> Expr:
        """How many of its sizes are not 0."""
        return self.typed

    @line("Sizes typed in your own change", unit="count")
    def typed(self) -> Expr:
        """Not 0."""
        return self.typed_selling + self.typed_costs + self.typed_growing

    @line("Sizes typed in your own change: prices, unsold, weeks", unit="count")
    def typed_selling(self) -> Expr:
        """Not 0."""
        return _not_zero(self.own.price) + _not_zero(self.own.unsold) + _not_zero(self.own.weeks)

    @line("Sizes typed in your own change: pay, energy, spawn", unit="count")
    def typed_costs(self) -> Expr:
        """Not 0."""
        return _not_zero(self.own.pay) + _not_zero(self.own.energy) + _not_zero(self.own.spawn)

    @line("Sizes typed in your own change: weight, losses, bags", unit="count")
    def typed_growing(self) -> Expr:
        """Not 0."""
        return _not_zero(self.own.weight) + _not_zero(self.own.losses) + _not_zero(self.own.bags)

    @line("Size of the change: {}", unit="1")
    def size_told(self) -> Expr:
        """Sizes that are not 0."""
        return say("sizes typed: ", figure(self.typed, 0, named=False))

    def tries(self) -> Mapping[LineOf | NumberInput, Expr]:
        """All together."""
        own = self.own
        made = self.with_losses(own.losses) | self.with_weight(own.weight) | self.with_price(own.price)
        made |= self.with_bags(own.bags) | self.with_weeks(own.weeks) | self.with_unsold(own.unsold)
        return made | self.with_pay(own.pay) | self.with_energy(own.energy) | self.with_spawn(own.spawn)


def _not_zero(size: Expr) -> Expr:
    return absolute(size) > 0
