"""How far something could fall before a typical year covers its loans no better than wanted: what all such falls share."""

from __future__ import annotations

from abc import abstractmethod

from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, all_of, any_of, joined, maximum
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.statements.coverage import Coverage
from farmbook.model.stress.to_lose import ToLose
from farmbook.model.year.year import Year
from farmbook.sections.alternative import Alternative
from farmbook.sections.declare import check, line, uses
from farmbook.sources import ARITHMETIC

__all__ = ["Fall"]


class Fall(Alternative):
    """Found first, then proved: the typical year once more with a fall of this size."""

    wanted = (Coverage.typical_coverage, Coverage.typical_capacity)

    coverage = uses(Coverage)
    year = uses(Year)
    to_lose: ToLose

    @abstractmethod
    def found(self) -> Expr:
        """The fall that takes the income that may be lost."""

    @abstractmethod
    def is_enough(self) -> Expr:
        """Whether there is one: if all of it is gone, so is that income."""

    @line("There is a fall so far: {}", unit="flag")
    def is_there(self) -> Expr:
        """Coverage is as wanted now, and would be lost some time."""
        return all_of(self.to_lose.now, self.is_enough())

    @line("Could fall so far: {}", unit="share", zero_is_none=True)
    def fall(self) -> Expr:
        """Of what is planned."""
        return maximum(self.found(), 0) * self.is_there

    @line("Coverage worked out again: {}", unit="1", source=ARITHMETIC, zero_is_none=True)
    def again(self) -> Expr:
        """Of a typical year in which that has happened."""
        return self.of(Coverage.typical_coverage) * self.is_there

    @line("In words, a fall: {}", unit="1")
    def fall_told(self) -> Expr:
        """Of what is planned."""
        return say("by ", figure(self.fall, 1, named=False))

    @line("In words, where coverage is enough as planned: {}", unit="1")
    def enough_told(self) -> Expr:
        """Some farms would live without."""
        return say(either(self.is_there, self.fall_told, "to nothing"))

    @line("In words, where loans are paid: {}", unit="1")
    def paying_told(self) -> Expr:
        """Before anything falls."""
        return say(either(self.to_lose.now, self.enough_told, "it is less already"))

    @line("In words: {}", unit="1")
    def told(self) -> Expr:
        """Or why there is no figure."""
        return say(either(self.coverage.typical_payments > 0, self.paying_told, "no loan is paid"))

    @check(
        "Coverage is as wanted: {}",
        kind="error",
        says="Coverage worked out again is not as wanted ({}): a formula of the sheet BadYears was changed.",
    )
    def proves(self) -> Expr:
        """Through takings, fees, costs and tax; to nine digits of what moves."""
        apart = self.of(Coverage.typical_capacity) - self.to_lose.needed
        takings = joined(self.year.customers.takings_in_all, "money")
        return any_of(self.is_there <= 0, absolute(apart) <= (takings + self.to_lose.needed) * SUM_TOLERANCE)
