"""What may go wrong, as lines that leave the plan as it is: a case puts its own figure in the place of some of them."""

from __future__ import annotations

from farmbook.sections.declare import shock
from farmbook.sections.section import Section

__all__ = ["Shocks"]


class Shocks(Section):
    """Each stands in the lines that it moves, in the months and in a typical year alike; in the plan itself all are neutral."""

    title = "What cases change"

    @shock("Prices, of those typed", unit="1", neutral=1)
    def price_kept(self) -> None:
        """All customers alike."""

    @shock("Weight to sell, of that planned", unit="1", neutral=1)
    def weight_kept(self) -> None:
        """Hours stay as planned; picking by the piece follows what is picked."""

    @shock("Energy, of what it is planned to cost", unit="1", neutral=1)
    def energy(self) -> None:
        """Power, gas and propane alike."""

    @shock("Mix, bags and ties, of what they are planned to cost", unit="1", neutral=1)
    def materials(self) -> None:
        """From the first day of the plan; what lies in stock then is paid."""

    @shock("Hired work, of what it is planned to cost", unit="1", neutral=1)
    def wages(self) -> None:
        """By the hour and by the piece."""

    @shock("Rate of loans that float, and of the credit line, more", unit="1", neutral=0)
    def rate_more(self) -> None:
        """From the first day of the plan."""

    @shock("Days until customers pay, more", unit="day", neutral=0)
    def days_later(self) -> None:
        """Of what is sold in the plan; what is owed at its start is paid as before."""

    @shock("What is still to be bought, of what it is planned to cost", unit="1", neutral=1)
    def building(self) -> None:
        """Things, steamer and lab that are bought in the plan."""

    @shock("Weeks by which openings and changes of the plan are late", unit="count", neutral=0)
    def weeks_late(self) -> None:
        """What is bought, and loans, stay in their months."""

    @shock("First week of the plan in which the plant stands still", unit="count", neutral=0)
    def stopped_from(self) -> None:
        """No bags are filled."""

    @shock("Weeks in which the plant stands still", unit="count", neutral=0)
    def stopped_for(self) -> None:
        """None as planned."""
