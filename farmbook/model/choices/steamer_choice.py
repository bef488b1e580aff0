"""Cabinet or pressure vessel: what both cost for the same bags, and what would turn the choice."""

from __future__ import annotations

from farmbook.calc.compare import INPUTS_KNOWN_TO, difference_over_larger
from farmbook.calc.loss import break_even_loss_gap
from farmbook.expr.functions import all_of, maximum, sentence, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.cost.lost_bags import LostBags
from farmbook.model.cost.steamer_year import CabinetYear, VesselYear
from farmbook.model.crop.crop import Crop
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.place.farm_plan import Farm
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["SteamerChoice"]


class SteamerChoice(Section):
    """Both steamers side by side, each for all bags that the farm fills."""

    title = "Cabinet or pressure vessel"

    farm = uses(Farm)
    cabinet_run = uses(CabinetRun)
    vessel_run = uses(VesselRun)
    cabinet = uses(CabinetYear)
    vessel = uses(VesselYear)
    vessel_heat = uses(VesselHeat)
    crop = uses(Crop)
    lost_bags = uses(LostBags)

    @line("Pressure vessel above the cabinet, cost a year", unit="money/year")
    def extra_cost(self) -> Expr:
        """Owning, running and upkeep; below zero where the pressure vessel is the cheaper one."""
        return self.vessel.yearly_cost - self.cabinet.yearly_cost

    @line("Bags the pressure vessel saves at steaming, as typed", unit="share")
    def typed_gap(self) -> Expr:
        """Loss in the cabinet less loss in the pressure vessel, of the bags filled."""
        return self.cabinet.lost - self.vessel.lost

    @line("Bags the pressure vessel saves at steaming, worth a year", unit="money/year", source=ARITHMETIC)
    def saved_at_steaming(self) -> Expr:
        """Each at what it has cost by then in the steamer in use, and taking it out. Below zero where it loses more."""
        return self.typed_gap * self.farm.bags_filled_a_year * self.lost_bags.cost_at_steaming

    @line("Left for the pressure vessel to save in the spawn run, a year", unit="money/year")
    def left_to_save(self) -> Expr:
        """What it costs more, less what it saves at steaming. Below zero, it need not save any bag later."""
        return self.extra_cost - self.saved_at_steaming

    @line(
        "Bags the pressure vessel must save in the spawn run to pay for what it costs more",
        unit="share",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def break_even_gap(self) -> Expr:
        """Of the bags inoculated: how many fewer must spoil. Below zero, so many more could.

        A bag that was cooked too little is found in the spawn run, so all that was spent on it by then is counted, and
        taking it out. The crop it would have given is left out: where its place cannot be filled again, fewer will do.
        """
        return break_even_loss_gap(self.left_to_save, self.vessel.good_bags, self.lost_bags.cost_in_spawn_run)

    @line("Most that better cooking could save in the spawn run, a year", unit="money/year", source=ARITHMETIC)
    def most_to_save(self) -> Expr:
        """If not one bag were lost there any more, of as many as are lost now."""
        return self.vessel.good_bags * self.crop.chosen_loss_in_spawn_run * self.lost_bags.cost_in_spawn_run

    @line("Can better cooking pay for the pressure vessel?", unit="1")
    def saving_in_words(self) -> Expr:
        """By bags alone, the crop of a bag saved left out."""
        beyond = self.left_to_save > self.most_to_save
        in_use = self.vessel_heat.in_use
        return sentence(
            1 + (self.left_to_save > 0) * (1 + maximum(beyond, in_use + in_use)),
            "It pays as it stands: it need not save any bag in the spawn run.",
            "It can: it must save no more bags than are lost in the spawn run now.",
            "It cannot by saving bags alone: it would have to save more of them than are lost in the spawn run now.",
            "It does if the cabinet would lose so many more bags in the spawn run than are lost there now.",
        )

    @line("Pressure vessel above the cabinet, cost for each good bag", unit="money/bag_inoculated")
    def good_bag_difference(self) -> Expr:
        """Bags lost at steaming counted on both sides. 0 where either leaves no good bag: nothing can be compared."""
        apart = self.vessel.cost_per_good_bag - self.cabinet.cost_per_good_bag
        return where(self.good_either_way, apart, 0)

    @line("The dearer of the two, cost for each good bag", unit="money/bag_inoculated")
    def dearer(self) -> Expr:
        """The difference is judged against it."""
        return maximum(self.cabinet.cost_per_good_bag, self.vessel.cost_per_good_bag)

    @line("Difference for each good bag, over the dearer one", unit="share")
    def apart(self) -> Expr:
        """Less than the inputs are known to is no difference."""
        return difference_over_larger(self.good_bag_difference, self.dearer)

    @line("The difference is larger than the inputs are known to", unit="flag")
    def clear(self) -> Expr:
        """0 where it is too close to call."""
        return self.apart > INPUTS_KNOWN_TO

    @line("The pressure vessel costs less for each good bag", unit="flag")
    def vessel_cheaper(self) -> Expr:
        """1 even where the difference is small."""
        return self.good_bag_difference < 0

    @check(
        "Both steamers leave good bags",
        kind="alert",
        says="One of the two steamers, as typed, loses every bag, so no cost for each good bag can be worked out.",
    )
    def good_either_way(self) -> Expr:
        """Without a good bag there is nothing to divide its cost by."""
        return all_of(self.cabinet.good_bags > 0, self.vessel.good_bags > 0)

    @line("Both can steam the bags of a week", unit="flag")
    def both_fit(self) -> Expr:
        """And leave good ones. Only then is the comparison fair."""
        return all_of(self.cabinet_run.fits, self.vessel_run.fits, self.good_either_way)

    @line("Number of the answer", unit="count")
    def answer(self) -> Expr:
        """1 where one of them cannot do the work, 2 where it is too close, 3 for the cabinet, 4 for the vessel."""
        return 1 + self.both_fit * (1 + self.clear * (1 + self.vessel_cheaper))

    @line("Steamer: which costs less for a good bag?", unit="1")
    def verdict(self) -> Expr:
        """By money alone. How hard the bags are cooked is not ranked here, and neither are room, nerves and danger."""
        return sentence(
            self.answer,
            "Not compared: one of them, as typed, cannot steam the bags of a week, or loses them all. See loads and losses.",
            "Too close to call: they differ by less than the inputs are known to. Judge by hours, room and danger.",
            "The cabinet costs less for each good bag.",
            "The pressure vessel costs less for each good bag.",
        )

    @line("Steamer: what a good bag costs in either, in a sentence", unit="1")
    def costs(self) -> Expr:
        """With owning, upkeep and the bags lost in it."""
        return say(
            "Steaming a good bag, with the steamer owned: ",
            figure(self.cabinet.cost_per_good_bag, 2, named=False),
            " in the cabinet, ",
            figure(self.vessel.cost_per_good_bag, 2, named=False),
            " in the pressure vessel.",
        )

    @line("Steamer: which costs less, in a sentence", unit="1")
    def told(self) -> Expr:
        """By money alone."""
        return say(self.costs, " ", self.verdict)
