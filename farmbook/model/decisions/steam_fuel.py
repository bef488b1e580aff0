"""Electric, gas or propane steam: the heat of a load of the steamer in use, by each."""

from __future__ import annotations

from farmbook.expr.functions import minimum, sentence, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.place.energy import Energy
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["SteamFuel"]


class SteamFuel(Section):
    """At the usual share of each fuel that gets into the steam; burner, flue, tank and service are not in it."""

    title = "Electric, gas or propane steam"

    energy = uses(Energy)
    steamer = uses(SteamerInUse)

    @line("Heat in the steam of a load, steamer in use", unit="kWh/run")
    def heat(self) -> Expr:
        """Energy of a load, times the share that gets into the steam."""
        return self.steamer.energy_per_run * self.efficiency

    @line("Share of the energy that gets into the steam, steamer in use", unit="share")
    def efficiency(self) -> Expr:
        """Your own figure where there is one."""
        vessel = self.steamer.vessel_heat.in_use
        return where(vessel, self.steamer.vessel_run.efficiency, self.steamer.cabinet_run.efficiency)

    @line("Heat of a load with electricity", unit="money/run", source=ARITHMETIC)
    def electric(self) -> Expr:
        """With what a load bears of the charge for your highest kW, if electricity heats it now."""
        return self.heat * self.energy.electric_steam + self.steamer.demand_cost_per_run

    @line("Heat of a load with natural gas", unit="money/run", source=ARITHMETIC)
    def gas(self) -> Expr:
        """At the price on Inputs, whether or not there is a pipe."""
        return self.heat * self.energy.gas_steam

    @line("Heat of a load with propane", unit="money/run", source=ARITHMETIC)
    def propane(self) -> Expr:
        """At the price on Inputs."""
        return self.heat * self.energy.propane_steam

    @line("Heat of a load, cheapest of three", unit="money/run")
    def cheapest(self) -> Expr:
        """By the fuel alone."""
        return minimum(minimum(self.electric, self.gas), self.propane)

    @line("Fuel: which heats cheapest", unit="1")
    def verdict(self) -> Expr:
        """Burner, flue and service may turn it; steam, gas and electricity are work for those licensed for it."""
        gas, propane = self.gas <= self.cheapest, self.propane <= self.cheapest
        return sentence(
            1 + gas + (1 - gas) * (propane + propane),
            "Electricity heats cheapest.",
            "Natural gas heats cheapest, where there is a pipe.",
            "Propane heats cheapest.",
        )

    @line("Steam by fuel, in a sentence", unit="1")
    def told(self) -> Expr:
        """Energy alone, with the charge for your highest kW where electricity has one."""
        return say(
            "The heat of a load costs ",
            figure(self.electric, 2, named=False),
            " with electricity, ",
            figure(self.gas, 2, named=False),
            " with gas, ",
            figure(self.propane, 2, named=False),
            " with propane. ",
            self.verdict,
        )
