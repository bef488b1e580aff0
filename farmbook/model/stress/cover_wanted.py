"""The coverage that a lender wants, as far as there are loans to cover: what each bad case is held against."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.model.statements.coverage import Coverage
from farmbook.model.stress.stress_sizes import StressSizes
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["CoverWanted"]


class CoverWanted(Section):
    """Nothing where no loan is paid, so that no case falls below it."""

    title = "Coverage wanted"

    sizes = uses(StressSizes)
    coverage = uses(Coverage)

    @line("Coverage wanted in the first full year", unit="1")
    def full(self) -> Expr:
        """As typed with the sizes; nothing where the plan has no such year."""
        return self.sizes.covenant * (self.coverage.first_full_year > 0)

    @line("Coverage wanted in a typical year", unit="1")
    def typical(self) -> Expr:
        """As typed with the sizes; nothing where no loan is paid in it."""
        return self.sizes.covenant * (self.coverage.typical_payments > 0)
