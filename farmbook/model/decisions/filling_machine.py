"""Mixer and bagger, or shovels: the hours a machine saves beside what it costs a year to own."""

from __future__ import annotations

from farmbook.calc.compare import INPUTS_KNOWN_TO
from farmbook.expr.functions import absolute, maximum, minimum, ratio, sentence
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.cost.mixing import Mixing
from farmbook.model.cost.owned import Owned
from farmbook.model.labour.hours import Hours
from farmbook.sections.declare import line, number, uses
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, PARTIAL_BUDGET

__all__ = ["FillingMachine"]


class FillingMachine(Owned, words="filling machine"):
    """Hours saved are hired ones first; what is saved beyond them is your own time. Nobody need own one to compare."""

    title = "Mixer and bagger, or shovels"

    mixing = uses(Mixing)
    hours = uses(Hours)

    price = number(
        "Mixer and bagger: cost",
        unit="money",
        usual=(2000, 60000),
        hard=(0, 1e7),
        default=12000,
        how="A quote, delivered and set up, with its wiring.",
        source=COMMON_PRACTICE,
        note="From memory; the same number in every currency.",
        tried=True,
    )
    life = number(
        "Mixer and bagger: years it lasts",
        unit="year",
        usual=(5, 15),
        hard=(0.5, 60),
        default=10,
        how="Until most of it has to be bought again.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    salvage = number(
        "Mixer and bagger: fetches at the end",
        unit="money",
        usual=(0, 20000),
        hard=(0, 1e7),
        default=2000,
        how="Second-hand price at that age.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    upkeep = number(
        "Mixer and bagger: upkeep and energy a year",
        unit="money/year",
        usual=(100, 5000),
        hard=(0, 1e6),
        default=500,
        how="Repairs, belts, power; about 4% of what it cost.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    bags_per_hour = number(
        "Bags mixed and filled in an hour of work with the machine",
        unit="bag_filled/person_hour",
        usual=(80, 400),
        hard=(1, 5000),
        default=180,
        how="Ask a farm that has one, all hands counted; the maker's figure is for one hour at its best.",
        source=COMMON_PRACTICE,
        tried=True,
    )

    @line("Mixing and filling with the machine, hours a week", unit="person_hour/week", source=ARITHMETIC)
    def hours_with(self) -> Expr:
        """For the bags filled now."""
        return ratio(self.hours.farm.bags_filled_a_week, self.bags_per_hour)

    @line("Hours that the machine saves a week", unit="person_hour/week")
    def saved(self) -> Expr:
        """Below zero: it is slower than you are."""
        return self.mixing.hours_a_week - self.hours_with

    @line("Of these, hired hours saved a week", unit="person_hour/week")
    def hired_saved(self) -> Expr:
        """As many as are hired at most; paid hours are saved only if you then pay for fewer."""
        return minimum(self.saved, self.hours.hired)

    @line("The machine saves in pay a year", unit="money/year", source=PARTIAL_BUDGET)
    def pay_saved(self) -> Expr:
        """With payroll tax and insurance."""
        return self.hired_saved * self.hours.farm.weeks_worked * self.hours.farm.labour_rate

    @line("The machine saves of your own hours, worth a year", unit="money/year")
    def own_saved(self) -> Expr:
        """At what an hour of yours is worth to you; no money leaves for it."""
        return (self.saved - self.hired_saved) * self.hours.farm.weeks_worked * self.hours.own_rate

    @line("The machine costs a year", unit="money/year")
    def yearly_cost(self) -> Expr:
        """Owning, upkeep and energy."""
        return self.owning_cost + self.upkeep

    @line("The machine leaves a year, in money", unit="money/year", source=PARTIAL_BUDGET)
    def leaves(self) -> Expr:
        """Below zero: it costs more than it saves in pay."""
        return self.pay_saved - self.yearly_cost

    @line("The machine leaves a year, own hours in it", unit="money/year", source=PARTIAL_BUDGET)
    def leaves_in_full(self) -> Expr:
        """With your own time at its worth."""
        return self.leaves + self.own_saved

    @line("Hours it must save a week to pay, at the price of hired ones", unit="person_hour/week", source=ARITHMETIC)
    def hours_to_pay(self) -> Expr:
        """Fewer than these, and shovels are cheaper."""
        return ratio(self.yearly_cost, self.hours.farm.weeks_worked * self.hours.farm.labour_rate)

    @line("Machine: close to even with your own hours counted", unit="flag")
    def close(self) -> Expr:
        """Within what the inputs are known to."""
        return absolute(self.leaves_in_full) <= self.larger * INPUTS_KNOWN_TO

    @line("Machine: the larger of what it saves and costs a year", unit="money/year")
    def larger(self) -> Expr:
        """The difference is judged against it."""
        return maximum(self.pay_saved + self.own_saved, self.yearly_cost)

    @line("Machine: does it pay", unit="1")
    def verdict(self) -> Expr:
        """If mixing limits the farm, what its bags leave comes on top: see Limits."""
        apart = 1 - self.close
        return sentence(
            1 + apart * (1 + (self.leaves_in_full > 0) + (self.leaves > 0)),
            "Too close to call: let backs and dust decide.",
            "Stay with what you have: the machine costs more than its hours are worth.",
            "It pays only if your own hours count: in money alone it does not.",
            "The machine pays in money alone.",
        )

    @line("Mixer and bagger, in a sentence", unit="1")
    def told(self) -> Expr:
        """Beside what it costs a year."""
        return say(
            "A machine would save ",
            figure(self.saved, 0),
            " and cost ",
            figure(self.yearly_cost, -2, named=False),
            " a year. ",
            self.verdict,
        )
