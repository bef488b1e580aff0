"""What each change is a change of: numbers typed in, all of one sort moved alike."""

from __future__ import annotations

from farmbook.expr.functions import ratio
from farmbook.expr.nodes import Expr, wrap
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.labour.picking import Picking
from farmbook.model.owning.bills import Bills
from farmbook.model.place.energy import Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.selling.customers import Customers
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.alternative import Alternative
from farmbook.sections.declare import LineOf, NumberInput, uses

__all__ = ["Changed", "Changes"]

Changes = dict[LineOf | NumberInput, Expr]


class Changed(Alternative):
    """A farm on which some numbers are other than typed; each method says which, for so much `more`."""

    farm = uses(Farm)
    crop = uses(Crop)
    spawn_source = uses(SpawnSource)
    vessel = uses(VesselHeat)
    customers = uses(Customers)
    picking = uses(Picking)
    energy = uses(Energy)
    bills = uses(Bills)
    spawn = uses(Spawn)

    def with_price(self, more: Expr) -> Changes:
        """Of all customers."""
        return {Customers.price: self.customers.price * (1 + more)}

    def with_weight(self, more: Expr) -> Changes:
        """All flushes by the same share."""
        return {Crop.efficiency: self.crop.efficiency * (1 + ratio(more, self.crop.picked_per_filled))}

    def with_losses(self, more: Expr) -> Changes:
        """Every loss typed; a bag that lives gives what it gave before."""
        own = 1 + more
        return {
            Crop.efficiency: wrap(self.crop.efficiency),
            Crop.loss_at_steaming: self.crop.loss_at_steaming * own,
            Crop.loss_in_spawn_run: self.crop.loss_in_spawn_run * own,
            Crop.loss_before_first_pick: self.crop.loss_before_first_pick * own,
            Crop.loss_between_flushes: self.crop.loss_between_flushes * own,
            Crop.never_fruits: self.crop.never_fruits * own,
            SpawnSource.extra_loss: self.spawn_source.extra_loss * own,
            VesselHeat.loss_at_steaming: self.vessel.loss_at_steaming * own,
        }

    def with_bags(self, more: Expr) -> Changes:
        """Filled in each week worked."""
        return {Farm.bags_filled_a_week: self.farm.bags_filled_a_week * (1 + more)}

    def with_pay(self, more: Expr) -> Changes:
        """By the hour and by the piece."""
        return {Farm.wage: self.farm.wage * (1 + more), Picking.piece_rate: self.picking.piece_rate * (1 + more)}

    def with_energy(self, more: Expr) -> Changes:
        """Prices, or the bill where one is given; a sum of all bills has it inside."""
        own = 1 + more
        return {
            Energy.electricity_price: self.energy.electricity_price * own,
            Energy.demand_charge: self.energy.demand_charge * own,
            Energy.gas_price: self.energy.gas_price * own,
            Energy.propane_price: self.energy.propane_price * own,
            Bills.energy: self.bills.energy * own,
            Bills.in_all: self.bills.in_all + self.bills.energy_cost * more,
        }

    def with_spawn(self, more: Expr) -> Changes:
        """Bought, by weight or for a bag."""
        return {Spawn.price: self.spawn.price * (1 + more), Spawn.own_cost: self.spawn.own_cost * (1 + more)}

    def with_unsold(self, more: Expr) -> Changes:
        """At every customer."""
        return {Customers.unsold: self.customers.unsold * (1 + more)}

    def with_weeks(self, more: Expr) -> Changes:
        """Of the year."""
        return {Farm.weeks_worked: self.farm.weeks_worked + more}
