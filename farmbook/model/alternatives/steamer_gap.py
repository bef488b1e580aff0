"""How many bags the pressure vessel must save to pay, each with the crop it gives where no other can take its place."""

from __future__ import annotations

from farmbook.calc.loss import break_even_loss_gap
from farmbook.expr.functions import all_of, negation
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.choices.steamer_choice import SteamerChoice
from farmbook.model.cost.steamer_year import VesselYear
from farmbook.model.crop.crop import Crop
from farmbook.model.decisions.crop_forgone import CropForgone
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.place.farm_plan import Farm
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["SteamerGap"]


class SteamerGap(Section):
    """Bags are valued at the step at which they are lost. Both steamers are taken to steam the bags of the plan."""

    title = "Bags that the pressure vessel must save, their crop counted"

    farm = uses(Farm)
    crop = uses(Crop)
    heat = uses(VesselHeat)
    vessel = uses(VesselYear)
    choice = uses(SteamerChoice)
    forgone = uses(CropForgone)

    @line(
        "Bags the pressure vessel saves at steaming, crop counted, worth a year", unit="money/year", source=ARITHMETIC
    )
    def saved_at_steaming(self) -> Expr:
        """Below zero where it loses more. The crop counts where the place cannot be filled again."""
        return self.choice.typed_gap * self.farm.bags_filled_a_year * self.forgone.at_steaming

    @line("Left for it to save in the spawn run, crop counted, a year", unit="money/year")
    def left_to_save(self) -> Expr:
        """What it costs more, less what it saves at steaming."""
        return self.choice.extra_cost - self.saved_at_steaming

    @line(
        "Bags the pressure vessel must save in the spawn run, crop counted",
        unit="share",
        source=ARITHMETIC,
        zero_is_none=True,
    )
    def gap(self) -> Expr:
        """Of the bags inoculated. Below zero, it could lose so many more and still pay."""
        return break_even_loss_gap(self.left_to_save, self.vessel.good_bags, self.forgone.in_spawn_run)

    @line("Most that better cooking could save in the spawn run, crop counted, a year", unit="money/year")
    def most_to_save(self) -> Expr:
        """If not one bag were lost there any more, of as many as are lost now."""
        return self.vessel.good_bags * self.crop.chosen_loss_in_spawn_run * self.forgone.in_spawn_run

    @line("The pressure vessel would have to save more bags than spoil now", unit="flag")
    def beyond(self) -> Expr:
        """Known only while the cabinet is the one in use."""
        return all_of(negation(self.heat.in_use), self.left_to_save > self.most_to_save)

    @line("Bags that the pressure vessel must save, in a sentence", unit="1")
    def told(self) -> Expr:
        """By bags alone, with the crop of a bag where it counts."""
        return say(either(self.left_to_save > 0, self.must_save, "The pressure vessel need not save any bag to pay."))

    @line("Bags that the pressure vessel must save, where it must", unit="1")
    def must_save(self) -> Expr:
        """Beside what is lost in the spawn run now."""
        return say(
            "The pressure vessel pays by bags alone once it saves ",
            figure(self.gap, 1, named=False),
            " of those in the spawn run, ",
            either(self.forgone.until_incubation, "their crop counted", "crop left out, as others are filled"),
            "; lost there now: ",
            figure(self.crop.chosen_loss_in_spawn_run, 1, named=False),
            either(self.beyond, ", so it cannot.", "."),
        )
