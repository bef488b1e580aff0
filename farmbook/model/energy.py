"""What energy and water cost, and what the electric service can carry."""

from __future__ import annotations

from farmbook.model.declare import choice, number
from farmbook.model.section import Section
from farmbook.sources import COMMON_PRACTICE, DEMAND_CHARGE_SURVEY, EIA_ELECTRIC_POWER_MONTHLY

__all__ = ["SINGLE_PHASE", "THREE_PHASE", "Energy"]

SINGLE_PHASE = "single-phase"
THREE_PHASE = "three-phase"


class Energy(Section):
    """Prices of electricity and water, and the electric service of the site."""

    title = "Energy and water"

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
        default=10,
        how=(
            "On the power bill: the line charged by the kW, divided by those kW; zero if there is none. Add lines of "
            "this sort together."
        ),
        source=DEMAND_CHARGE_SURVEY,
        note=(
            "The default is common practice within the range of the survey. Charged once a month, however many loads "
            "are steamed."
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
        note="Left blank, the whole power of the steam generator is taken.",
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
