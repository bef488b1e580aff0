"""Whether a law on fresh produce covers the farm, by two tests of its sales. The limits are cells: they change each year."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import all_of, any_of, negation, where
from farmbook.expr.nodes import Expr
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.sections.declare import Option, check, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE, PRODUCE_LIMITS

__all__ = ["SalesTests"]

NO_TEST: Final = Option("none", "none")
PRODUCE_RULE: Final = Option("produce rule", "two limits, as typed")


class SalesTests(Section):
    """A first look. Whoever enforces the law decides."""

    title = "Food safety: tests of sales"
    table = "safety"

    customers = uses(CustomerYear)

    tests = choice(
        "Tests of sales for the law on fresh produce",
        NO_TEST,
        PRODUCE_RULE,
        default=NO_TEST,
        how="Turn them on where that law holds. Elsewhere ask which law of food covers you.",
        source=COMMON_PRACTICE,
    )
    covered_above = number(
        "Test one: produce sales a year up to which a farm is not covered",
        unit="money/year",
        usual=(25000, 40000),
        hard=(0, 10000000),
        default=29245,
        how="The limit of this year, from the extension office. It is raised each spring.",
        source=PRODUCE_LIMITS,
        decided=True,
        note="Of 2019 to 2021. Read only where the tests are turned on.",
    )
    exempt_below = number(
        "Test two: food sales a year below which a farm may be exempt",
        unit="money/year",
        usual=(500000, 800000),
        hard=(0, 100000000),
        default=584900,
        how="The limit of this year, from the extension office. It is raised each spring.",
        source=PRODUCE_LIMITS,
        decided=True,
        note="Of 2019 to 2021. Read only where the tests are turned on.",
    )
    least_direct = number(
        "Test two: more than this share must go straight to end users",
        unit="share",
        usual=(0.4, 0.6),
        hard=(0, 1),
        default=0.5,
        how="As the law says; restaurants and shops near you may count as end users.",
        source=PRODUCE_LIMITS,
        decided=True,
    )
    produce = number(
        "Produce sales a year, mean of the last three years",
        unit="money/year",
        usual=(0, 500000),
        hard=(0, 100000000),
        optional=True,
        how="All produce you sold, mushrooms among it. Left empty, the takings of a typical year count.",
    )
    food = number(
        "All food sales a year, mean of the last three years",
        unit="money/year",
        usual=(0, 1000000),
        hard=(0, 100000000),
        optional=True,
        how="Meat, milk, grain and feed too. Left empty, the produce sales count.",
    )
    direct = number(
        "Food sold straight to end users, share of all food sales",
        unit="share",
        usual=(0, 1),
        hard=(0, 1),
        default=0,
        how="Market, farm gate, and restaurants and shops that the law counts as such.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    @line("Tests of sales are turned on", unit="flag")
    def turned_on(self) -> Expr:
        """As chosen."""
        return self.chose(self.tests, PRODUCE_RULE)

    @line("Produce sales a year, tested", unit="money/year")
    def produce_tested(self) -> Expr:
        """As typed, or the takings of a typical year."""
        return where(self.given(self.produce), self.produce, self.customers.takings_in_all)

    @line("Food sales a year, tested", unit="money/year")
    def food_tested(self) -> Expr:
        """As typed, or the produce sales."""
        return where(self.given(self.food), self.food, self.produce_tested)

    @line("Test one: produce sales are above the limit", unit="flag")
    def covered(self) -> Expr:
        """Then the law covers the farm, in full or in part. 0 where the tests are not turned on."""
        return all_of(self.turned_on, self.produce_tested > self.covered_above)

    @line("Test two: sales are those of an exempt farm", unit="flag")
    def exempt(self) -> Expr:
        """Small enough, and most of it straight to end users."""
        return all_of(self.turned_on, self.food_tested < self.exempt_below, self.direct > self.least_direct)

    @check(
        "Produce sales are within test one, where it is turned on",
        kind="alert",
        says=(
            "Produce sales are above the limit up to which a farm is not covered: ask your extension office or inspector "
            "what the law on produce wants of you."
        ),
    )
    def below_the_limit(self) -> Expr:
        """By the limit typed."""
        return negation(self.covered)

    @check(
        "A farm that is covered passes test two, where it is turned on",
        kind="alert",
        says=(
            "By its sales the farm is covered and not exempt: count training, water tests and records, and ask your "
            "extension office or inspector."
        ),
    )
    def within_the_exemption(self) -> Expr:
        """An exempt farm still has papers to keep and a label to show."""
        return any_of(negation(self.covered), self.exempt)
