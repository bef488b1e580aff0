"""The pressure vessel's own part in what a load takes and costs: the water that boils away, and bags lost."""

from __future__ import annotations

from farmbook.calc.heat import steam_made, steam_power
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, all_of, any_of, maximum, negation, where
from farmbook.expr.nodes import Expr
from farmbook.model.heat.vessel_heat import FALLS_BACK, VesselHeat
from farmbook.model.steam.steamer_cost import SteamerCost
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.sections.declare import check, line, number, uses
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Vessel"]


class Vessel(SteamerCost, words="pressure vessel"):
    """What one load in the pressure vessel takes and costs."""

    title = "Pressure vessel: what a load costs"

    heat = uses(VesselHeat)
    run = uses(VesselRun)

    watching_hours = number(
        "Work to watch a load of the pressure vessel",
        unit="person_hour/run",
        usual=(0.5, 8),
        hard=(0, 100),
        default=2,
        how="Clock venting, bringing to pressure, rounds, log, letting down. Some laws want somebody there all along.",
        source=COMMON_PRACTICE,
        note="The same for a full load and for half a load.",
    )

    @line("Heat that gets into the steam of the pressure vessel", unit="kWh/run")
    def heat_into_steam(self) -> Expr:
        """By your meter where you gave a reading."""
        return steam_power(self.energy_per_run, self.run.efficiency)

    @line("Heat that stays in load, walls and standing water of the pressure vessel", unit="kWh/run")
    def heat_kept(self) -> Expr:
        """What goes into the load and through the walls condenses steam, and that water can be boiled again."""
        walls = self.heat.wall_loss * self.run.hours_of_loss
        return self.heat.load_heat + walls + self.heat.standing_heat

    @line("Condensed steam of the pressure vessel falls back to the boil", unit="flag")
    def falls_back(self) -> Expr:
        """0 where it drains away."""
        return self.heat.chose(self.heat.condensate, FALLS_BACK)

    @line("Heat that the load does not take up, if condensed steam falls back", unit="kWh/run")
    def not_taken_up(self) -> Expr:
        """It boils water that leaves as steam: driving out the air, weight, bleeder, or simply too much fire."""
        over = self.heat_into_steam - self.heat_kept
        # what is left when all is taken up is rounding, and no water
        return where(all_of(self.falls_back, over > absolute(self.heat_into_steam) * SUM_TOLERANCE), over, 0)

    @line("Steam let out of the pressure vessel in a load", unit="kg_water/run", source=COMMON_PRACTICE)
    def vent_steam(self) -> Expr:
        """Through bleeder or weight all through the hold, half as much while heating up, and to drive out the air."""
        return self.heat.vent_flow * self.run.hours_of_loss + self.heat.purge_steam

    @line("Water boiled in a load of the pressure vessel, if condensed steam drains away", unit="kg_water/run")
    def water_boiled(self) -> Expr:
        """All steam made leaves, as steam or down the drain."""
        left_to_boil = maximum(self.heat_into_steam - self.heat.standing_heat, 0)
        return steam_made(left_to_boil, self.heat.in_steam, self.heat.in_feed)

    @line("Water boiled off in a load of the pressure vessel, if condensed steam falls back", unit="kg_water/run")
    def water_boiled_off(self) -> Expr:
        """By the heat that the load does not take up: some 1.6 kg for each kWh, or 3.6 lb."""
        return steam_made(self.not_taken_up, self.heat.in_steam, self.heat.in_feed)

    @line("Make-up water of a load of the pressure vessel, by weight", unit="kg_water/run")
    def make_up_water(self) -> Expr:
        """Where condensed steam falls back, only what is boiled off is made up."""
        return where(self.falls_back, self.water_boiled_off, self.water_boiled)

    @line("Water left in the pressure vessel at the end", unit="L/run", zero_is_none=True)
    def water_left(self) -> Expr:
        """Of what was put in; below zero it has boiled dry on the way. None where a valve or pump makes it up."""
        return (self.heat.water_put_in - self.water_per_run) * self.heat.by_hand

    @check(
        "Pressure vessel does not boil dry",
        kind="alert",
        says=(
            "The pressure vessel boils away all the water put in before the load is done, and would run dry on a hot "
            "element or fire: put in more, or turn the power down at hold. See the water left at the end."
        ),
    )
    def water_lasts(self) -> Expr:
        """Only where no valve or pump makes up the water. Leave a good part over: power and leaks vary."""
        return any_of(negation(self.heat.in_use), negation(self.heat.by_hand), self.water_left > 0)
