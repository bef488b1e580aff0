"""What a thing that wears out costs a year: in the books, and with the return that is wanted on the money in it."""

from __future__ import annotations

from farmbook.calc.worth import (
    LONGEST_LIFE,
    annuity_factor,
    capital_recovery,
    discount,
    equal_share,
    straight_line,
)
from farmbook.expr.functions import minimum, named
from farmbook.expr.nodes import Expr
from farmbook.model.heat.steaming import Steaming
from farmbook.sections.alike import Alike
from farmbook.sections.declare import NumberInput, line, uses
from farmbook.sources import ANNUITY, EQUIVALENT_ANNUAL_COST, FARM_MANAGEMENT

__all__ = ["Owned"]


class Owned(Alike):
    """A thing that is bought, lasts so long and fetches something at the end."""

    steaming = uses(Steaming)

    price: NumberInput
    life: NumberInput
    salvage: NumberInput

    @line("Worth now of 1 at the end of the life of the {}", unit="1", source=EQUIVALENT_ANNUAL_COST)
    def end_of_life(self) -> Expr:
        """At the yearly return you want."""
        return discount(self.steaming.yearly_rate, minimum(self.life, named(LONGEST_LIFE)))

    @line("Equal share of each year in the life of the {}", unit="1/year")
    def equal_share(self) -> Expr:
        """What counts if you want no return."""
        return equal_share(self.life)

    @line("Level yearly payment for each 1 put into the {}", unit="1/year", source=ANNUITY)
    def payment_factor(self) -> Expr:
        """Pays it back with the return you want by the end of its life."""
        return annuity_factor(self.steaming.yearly_rate, self.end_of_life, self.equal_share)

    @line("Owning the {}, cost a year", unit="money/year", source=EQUIVALENT_ANNUAL_COST)
    def owning_cost(self) -> Expr:
        """The fall in its value, with the return you want on the money in it."""
        return capital_recovery(self.price, self.salvage, self.payment_factor, self.steaming.yearly_rate)

    @line("The {} loses in value a year", unit="money/year", source=FARM_MANAGEMENT)
    def yearly_loss(self) -> Expr:
        """Every year alike: for the books, where no return on the money is counted."""
        return straight_line(self.price, self.salvage, self.life)
