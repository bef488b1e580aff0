"""The farm with its spawn got the other way: bought where it is made, made where it is bought; its bags as now."""

from __future__ import annotations

from collections.abc import Mapping

from farmbook.expr.functions import absolute, sentence, where
from farmbook.expr.nodes import Expr, Line
from farmbook.expr.sentences import either, figure, say
from farmbook.model.choices.make_or_buy import MakeOrBuy
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.labour.hours import Hours
from farmbook.model.owning.capital import Capital
from farmbook.model.trials.bag_to_fruiting import BagToFruiting
from farmbook.model.year.year import Year
from farmbook.sections.alternative import Alternative
from farmbook.sections.declare import LineOf, NumberInput, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["OtherSpawn", "SpawnYears"]


class OtherSpawn(Alternative, words="spawn got the other way"):
    """All that hangs on where the spawn comes from: bags lost, places, hours, energy, bills, loss in value, sales."""

    title = "Spawn got the other way"

    source = uses(SpawnSource)
    year = uses(Year)
    bag = uses(BagToFruiting)
    wanted = (
        *(Year.profit, Hours.labour_cost, Capital.loss),
        *(BagToFruiting.in_money, BagToFruiting.in_full),
    )

    def changes(self) -> Mapping[LineOf | NumberInput, Expr]:
        """Made where it is bought now, and the other way round."""
        return {SpawnSource.made: 1 - self.source.made}

    def made(self, declared: LineOf) -> Expr:
        """A line with spawn made."""
        return where(self.source.made, self._now(declared), self.of(declared))

    def bought(self, declared: LineOf) -> Expr:
        """A line with spawn bought."""
        return where(self.source.made, self.of(declared), self._now(declared))

    def _now(self, declared: LineOf) -> Line:
        return self.model.line(declared)


class SpawnYears(Section):
    """The year both ways, and why it may not say what the comparison says."""

    title = "The year with spawn bought and with spawn made"

    source = uses(SpawnSource)
    other = uses(OtherSpawn)
    choice = uses(MakeOrBuy)

    @line("Profit of the year, spawn bought, bags as now", unit="money/year")
    def bought(self) -> Expr:
        """The whole farm, after loss in value and interest."""
        return self.other.bought(Year.profit)

    @line("Profit of the year, spawn made, bags as now", unit="money/year")
    def made(self) -> Expr:
        """The whole farm, after loss in value and interest; more bags are lost."""
        return self.other.made(Year.profit)

    @line("Making leaves more in the year", unit="money/year")
    def advantage(self) -> Expr:
        """Below zero: buying does."""
        return self.made - self.bought

    @line("Making costs more of hired work, a year", unit="money/year")
    def hired(self) -> Expr:
        """Nothing where your own hours, or hours paid already, cover it."""
        return self.other.made(Hours.labour_cost) - self.other.bought(Hours.labour_cost)

    @line("Making costs more of loss in value, a year", unit="money/year")
    def lab_loss(self) -> Expr:
        """That of the lab; nothing where one sum stands for all you own."""
        return self.other.made(Capital.loss) - self.other.bought(Capital.loss)

    @line("Making leaves more in the year, the lab bought already", unit="money/year", source=ARITHMETIC)
    def advantage_sunk(self) -> Expr:
        """A lab that stands loses its value whichever way you go on, so it is no reason for or against."""
        return self.advantage + self.lab_loss

    @line("Lab hours priced in the comparison, not paid in the year", unit="money/year")
    def unpaid_hours(self) -> Expr:
        """Your own hours, and hours that are paid anyway."""
        return self.choice.work.work_cost * self.choice.farm.weeks_worked - self.hired

    @line("Interest and trials of the lab in the comparison, not in the year", unit="money/year")
    def interest(self) -> Expr:
        """The year has only its loss in value."""
        return self.choice.owning - self.lab_loss

    @line("Lost bags, sales and power, counted otherwise in the year", unit="money/year")
    def rest(self) -> Expr:
        """The year loses the crop of lost bags at what it would have sold for; a bill typed for energy does not move."""
        return self.advantage - self.choice.advantage - self.unpaid_hours - self.interest

    @line("Year and comparison point apart", unit="flag")
    def apart(self) -> Expr:
        """One says make, the other buy."""
        return absolute((self.advantage > 0) - (self.choice.advantage > 0)) > 0

    @line("Year and comparison of spawn, in words", unit="1")
    def why(self) -> Expr:
        """How far each part counts stands below what is printed."""
        return sentence(
            1 + self.apart * (1 + (self.choice.advantage > 0)),
            "Both point the same way.",
            "They point apart: the year pays no wage for your own hours in the lab, and no interest on the lab.",
            "They point apart: the year counts the crop of bags lost on own spawn, at what your customers pay.",
        )

    @line("Buy spawn or make it, with the year", unit="1")
    def told(self) -> Expr:
        """The comparison, and the profit of the year both ways."""
        return say(
            self.choice.told,
            " Your year, bags as now: ",
            either(self.bought < 0, "-", ""),
            figure(absolute(self.bought), -2, named=False),
            " bought, ",
            either(self.made < 0, "-", ""),
            figure(absolute(self.made), -2, named=False),
            " made.",
        )
