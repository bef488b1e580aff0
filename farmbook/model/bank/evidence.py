"""What stands behind the sales of the plan: what each customer has signed or paid."""

from __future__ import annotations

from farmbook.expr.nodes import Expr, Label
from farmbook.model.axes import CUSTOMER
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.sections.declare import line, text, uses
from farmbook.sections.section import Section

__all__ = ["Evidence"]


class Evidence(Section):
    """Sales without orders or receipts behind them are hopes."""

    title = "Customers and what they have said"

    customers = uses(CustomerYear)

    evidence = text(
        "Customer: evidence",
        default="",
        axes=(CUSTOMER,),
        how="In a word or two: contract, orders, receipts, letter, none.",
    )

    @line("Customer: evidence, as typed", unit="1", axes=(CUSTOMER,))
    def evidence_told(self) -> Expr:
        """In words."""
        return Label(self.evidence, "none")
