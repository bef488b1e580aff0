"""Which steamer, with the whole farm: the one in use or the other, each with the bags that it allows."""

from __future__ import annotations

from farmbook.expr.functions import absolute, all_of, negation, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.alternatives.flush_choice import CLOSE
from farmbook.model.alternatives.other_steamer import OtherSteamerRoom, OtherSteamerYear
from farmbook.model.alternatives.two_years import TwoYears
from farmbook.model.choices.steamer_choice import SteamerChoice
from farmbook.model.cost.steamer_year import SteamerInUseYear
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.sections.declare import line, uses

__all__ = ["SteamerWhole"]


class SteamerWhole(TwoYears, words="The other steamer"):
    """A year's profit, less the return that you want on the money in the steamer."""

    title = "Which steamer, with the whole farm"

    vessel_heat = uses(VesselHeat)
    cabinet_run = uses(CabinetRun)
    vessel_run = uses(VesselRun)
    in_use_year = uses(SteamerInUseYear)
    choice = uses(SteamerChoice)
    room = uses(OtherSteamerRoom)
    other = uses(OtherSteamerYear)

    @property
    def left_now(self) -> Expr:
        """Less the return wanted."""
        return self.now_leaves

    @property
    def left_other(self) -> Expr:
        """Less the return wanted."""
        return self.other_leaves

    @line("Return wanted on the money in the steamer in use", unit="money/year")
    def return_now(self) -> Expr:
        """What owning it costs a year beyond its loss in value."""
        return self.in_use_year.owning_cost - self.in_use_year.yearly_loss

    @line("Left a year with the steamer in use, that return taken off", unit="money/year")
    def now_leaves(self) -> Expr:
        """With the bags that the farm as it is can fill."""
        return self.now.profit - self.return_now

    @line("Left a year with the other steamer, that return taken off", unit="money/year")
    def other_leaves(self) -> Expr:
        """With the bags that can be filled then."""
        return self.other.profit - self.other.return_wanted

    @line("Both steamers can do a load, and leave good bags", unit="flag")
    def both_work(self) -> Expr:
        """Only then is there anything to compare."""
        return all_of(self.cabinet_run.does_a_load, self.vessel_run.does_a_load, self.choice.good_either_way)

    @line("The pressure vessel leaves more, with the whole farm", unit="flag")
    def vessel_better(self) -> Expr:
        """1 even where the difference is small."""
        return where(self.vessel_heat.in_use, negation(self.better), self.better)

    @line("Number of the answer, with the whole farm", unit="count")
    def answer_number(self) -> Expr:
        """1 where one of them cannot do the work, 2 where it is too close, 3 for the cabinet, 4 for the vessel."""
        return 1 + self.both_work * (1 + self.clear * (1 + self.vessel_better))

    @line("The cost of a good bag says another answer than the whole farm", unit="flag")
    def says_otherwise(self) -> Expr:
        """1 where both can be compared, and one is clear and the other is not, or another is better."""
        apart = absolute(self.answer_number - self.choice.answer)
        return all_of(self.both_work, self.choice.both_fit, apart > 0)

    @line("The other steamer allows clearly more or fewer bags", unit="flag")
    def other_bags(self) -> Expr:
        """Then the cost of a good bag leaves out what counts most."""
        return absolute(self.other.bags - self.now.bags) > self.now.bags * CLOSE

    # In words

    @line("The other steamer, in a word", unit="1")
    def other_word(self) -> Expr:
        """The one not in use."""
        return say(either(self.vessel_heat.in_use, "cabinet", "vessel"))

    @line("Whole farm with either steamer, in a sentence", unit="1")
    def told(self) -> Expr:
        """The return wanted on the money in each taken off."""
        return say(
            "Filling all it can, ",
            figure(self.now.bags, 0, named=False),
            " a week, the farm leaves ",
            either(self.now_leaves < 0, "-", ""),
            figure(absolute(self.now_leaves), -2, named=False),
            " a year, ",
            either(self.other_leaves < 0, "-", ""),
            figure(absolute(self.other_leaves), -2, named=False),
            " with the ",
            self.other_word,
            either(self.clear, ".", ": too close to call."),
        )

    @line("Why a good bag says another answer, where it does", unit="1")
    def reason(self) -> Expr:
        """What the cost of a good bag leaves out."""
        return say(
            "It says otherwise: it ",
            either(
                self.other_bags,
                "leaves out how many bags each can steam.",
                "counts all work as hired, and is a small part of the takings.",
            ),
        )

    @line("Why a good bag says the same, or nothing", unit="1")
    def agreement(self) -> Expr:
        """Where it does not say otherwise."""
        compared = all_of(self.both_work, self.choice.both_fit)
        return say(
            either(
                compared,
                "It says the same as the whole farm.",
                "It cannot be compared: one of the two cannot steam the bags of a week as typed.",
            )
        )

    @line("The cost of a good bag, beside the whole farm", unit="1")
    def why(self) -> Expr:
        """And why, if the two disagree."""
        return say(either(self.says_otherwise, self.reason, self.agreement))

    @line("Steamer: the answer", unit="1")
    def answer(self) -> Expr:
        """The whole farm first, then a good bag."""
        return say(
            either(self.both_work, self.told, "Not compared as whole farms: one of them cannot do a load."),
            " A good bag: ",
            figure(self.choice.cabinet.cost_per_good_bag, 2, named=False),
            " in the cabinet, ",
            figure(self.choice.vessel.cost_per_good_bag, 2, named=False),
            either(self.says_otherwise, " in the vessel; see why below.", " in the vessel."),
        )
