"""What energy, fuel and water cost, and what the electric service can carry."""

from __future__ import annotations

from typing import Final

from farmbook.calc.fuel import BURNER_EFFICIENCY, ELECTRIC_EFFICIENCY, PROPANE_HEAT, price_of_heat
from farmbook.calc.heat import energy_price
from farmbook.expr.functions import joined, named
from farmbook.expr.nodes import Expr
from farmbook.sections.declare import Option, choice, line, number
from farmbook.sections.section import Section
from farmbook.sources import (
    COMMON_PRACTICE,
    DEMAND_CHARGE_SURVEY,
    EIA_ELECTRIC_POWER_MONTHLY,
    EIA_PROPANE,
    EIA_UNITS,
)

__all__ = ["ELECTRICITY", "NATURAL_GAS", "PROPANE", "SINGLE_PHASE", "THREE_PHASE", "Energy"]

ELECTRICITY: Final = Option("electricity", "electricity")
NATURAL_GAS: Final = Option("natural gas", "natural gas")
PROPANE: Final = Option("propane", "propane")
SINGLE_PHASE: Final = Option("single-phase", "single-phase")
THREE_PHASE: Final = Option("three-phase", "three-phase")


class Energy(Section):
    """Prices of energy and water, and the electric service of the site."""

    title = "Energy and water"
    most_give = ("electricity_price", "demand_charge")

    electricity_price = number(
        "Price of electricity",
        unit="money/kWh",
        usual=(0.08, 0.28),
        hard=(0, 5),
        default=0.13,
        how=(
            "Add the lines of a power bill that grow with the kWh and divide by the kWh; leave out fixed fees and the "
            "charge for your highest kW."
        ),
        source=EIA_ELECTRIC_POWER_MONTHLY,
        note=(
            "The charge for your highest kW is counted apart. Spread over the kWh it would make each further load look "
            "dearer than it is."
        ),
    )
    demand_charge = number(
        "Charge for your highest kW",
        unit="money/kW/month",
        usual=(0, 25),
        hard=(0, 200),
        default=0,
        how=(
            "On the power bill: the line charged by the kW, divided by those kW; zero if there is none. Add lines of "
            "this sort together."
        ),
        source=DEMAND_CHARGE_SURVEY,
        note=(
            "0 until you give it, as many small farms pay none; the usual range is within the survey. Where there is one "
            "it can cost more than the energy: look at a bill. Charged once a month, however many loads are steamed."
        ),
    )
    own_added_peak = number(
        "Your own figure: kW that steaming adds to your highest",
        unit="kW",
        usual=(0, 120),
        hard=(0, 2000),
        optional=True,
        how=(
            "Highest kW on the bill of a month with steaming, less that of a month without; or less what runs when you "
            "steam off-peak."
        ),
        note="Of the steamer in use, if electricity heats it. Left blank, its whole power is taken.",
    )
    gas_price = number(
        "Price of natural gas",
        unit="money/kWh_fuel",
        usual=(0.02, 0.12),
        hard=(0, 5),
        default=0.0375,
        how="Add the lines of a gas bill that grow with the use and divide by the use; leave out fixed fees.",
        source=COMMON_PRACTICE,
        note="From memory. A therm is 29.3 kWh of heat; a bill in cubic metres or feet states the heat in each.",
    )
    propane_price = number(
        "Price of propane",
        unit="money/L",
        usual=(0.4, 1.25),
        hard=(0, 20),
        default=0.634,
        how="Invoice with delivery and tank rent, over the volume delivered.",
        source=EIA_PROPANE,
        note="The default is near the mean for US homes in November 2025; farms that fill a large tank pay less.",
    )
    water_price = number(
        "Price of water",
        unit="money/m3",
        usual=(0.2, 6),
        hard=(0, 100),
        default=2,
        how=(
            "Water bill with the sewer charge; a price for 1,000 gallons divided by 134 is the price for a cubic foot. "
            "Zero for a well, if you like."
        ),
        source=COMMON_PRACTICE,
    )
    voltage = number(
        "Voltage at the steam generator",
        unit="V",
        usual=(200, 480),
        hard=(100, 1000),
        default=240,
        how="Nameplate, or ask an electrician; with three phases, the voltage between lines.",
        source=COMMON_PRACTICE,
    )
    phases = choice(
        "Electric supply",
        SINGLE_PHASE,
        THREE_PHASE,
        default=SINGLE_PHASE,
        how="Three hot wires in the panel mean three-phase; ask the power company if in doubt.",
        source=COMMON_PRACTICE,
    )
    service_amps = number(
        "Amps of your electric service free for steaming",
        unit="A",
        usual=(60, 800),
        hard=(0, 10000),
        default=200,
        how="Main breaker, less what runs at the same time (rooms, cooler, lights); an electrician can measure it.",
        source=COMMON_PRACTICE,
    )

    @line("Price of the heat in propane", unit="money/kWh_fuel", source=EIA_UNITS)
    def propane_heat(self) -> Expr:
        """To set beside natural gas; the burner's loss is not in it yet."""
        return energy_price(self.propane_price, named(PROPANE_HEAT))

    @line("Price of heat in the steam, with electricity", unit="money/kWh", source=COMMON_PRACTICE)
    def electric_steam(self) -> Expr:
        """At the usual share that gets into the steam. The charge for your highest kW comes on top."""
        return price_of_heat(self.electricity_price, named(ELECTRIC_EFFICIENCY))

    @line("Price of heat in the steam, with natural gas", unit="money/kWh", source=COMMON_PRACTICE)
    def gas_steam(self) -> Expr:
        """At the usual share that gets into the steam; burner, flue and their upkeep are not in it."""
        return price_of_heat(joined(self.gas_price, "money/kWh"), named(BURNER_EFFICIENCY))

    @line("Price of heat in the steam, with propane", unit="money/kWh", source=COMMON_PRACTICE)
    def propane_steam(self) -> Expr:
        """At the usual share that gets into the steam; burner, flue and their upkeep are not in it."""
        return price_of_heat(joined(self.propane_heat, "money/kWh"), named(BURNER_EFFICIENCY))
