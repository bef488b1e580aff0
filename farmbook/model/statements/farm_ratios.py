"""Ratios by which lenders compare farms: when the plan starts, at the end of each year, and in a typical one."""

from __future__ import annotations

from farmbook.calc.ratios import return_earned, share_owed
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, joined, mean, previous, ratio, starting, total
from farmbook.expr.nodes import Expr
from farmbook.model.axes import PLAN_YEAR
from farmbook.model.months.month_household import MonthHousehold
from farmbook.model.statements.year_statements import YearStatements
from farmbook.model.year.year import Year
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import FARM_RATIOS

__all__ = ["FarmRatios"]

BY_YEAR = (PLAN_YEAR,)


class FarmRatios(Section):
    """A rented farm whose crop turns over quickly shows a high turnover and a high share of costs. No ratio is a decision."""

    title = "Ratios"

    statements = uses(YearStatements)
    home = uses(MonthHousehold)
    year = uses(Year)

    # At an end

    @line("Due within a year, counted", unit="money", axes=BY_YEAR)
    def due(self) -> Expr:
        """Nothing where it is only a rounding of all that is owned."""
        start, sheet = self.statements.balance.start, self.statements.balance
        opening = start.due * (start.due > absolute(start.assets) * SUM_TOLERANCE)
        return starting(opening, sheet.current_liabilities * (sheet.current_liabilities > self.rounding))

    @line("Due that is a rounding of all that is owned", unit="money", axes=BY_YEAR)
    def rounding(self) -> Expr:
        """By so much sums of months may differ from nothing."""
        return absolute(self.statements.balance.total_assets) * SUM_TOLERANCE

    @line("Current ratio", unit="1", axes=BY_YEAR, source=FARM_RATIOS, zero_is_none=True)
    def current(self) -> Expr:
        """Current assets over current liabilities."""
        start, sheet = self.statements.balance.start, self.statements.balance
        opening = ratio(start.liquid + start.stock, start.due)
        return starting(opening, ratio(sheet.current_assets, self.due))

    @line("Current ratio without bags in process", unit="1", axes=BY_YEAR, source=FARM_RATIOS, zero_is_none=True)
    def current_without_bags(self) -> Expr:
        """A bank lends little on them."""
        start, sheet = self.statements.balance.start, self.statements.balance
        opening = ratio(start.liquid + start.stock - start.bags.value_at_start, start.due)
        return starting(opening, ratio(sheet.current_assets - sheet.bags_in_process, self.due))

    @line("Working capital", unit="money", axes=BY_YEAR, source=FARM_RATIOS)
    def working_capital(self) -> Expr:
        """Current assets less current liabilities."""
        start, sheet = self.statements.balance.start, self.statements.balance
        return starting(start.liquid + start.stock - start.due, sheet.current_assets - sheet.current_liabilities)

    @line("Working capital, of sales", unit="share", axes=BY_YEAR, source=FARM_RATIOS)
    def working_capital_share(self) -> Expr:
        """Of the year that ends."""
        return ratio(self.working_capital, self.statements.sales)

    @line("Debt over assets when the plan starts", unit="share", source=FARM_RATIOS)
    def debt_at_start(self) -> Expr:
        """At cost."""
        start = self.statements.balance.start
        return share_owed(start.liabilities, start.equity)

    @line("Debt over assets", unit="share", axes=BY_YEAR, source=FARM_RATIOS)
    def debt_to_assets(self) -> Expr:
        """At cost."""
        sheet = self.statements.balance
        return starting(self.debt_at_start, share_owed(sheet.total_liabilities, sheet.equity))

    @line("Equity over assets", unit="share", axes=BY_YEAR, source=FARM_RATIOS)
    def equity_to_assets(self) -> Expr:
        """At cost."""
        start, sheet = self.statements.balance.start, self.statements.balance
        return starting(share_owed(start.equity, start.liabilities), share_owed(sheet.equity, sheet.total_liabilities))

    @line("Debt over equity", unit="share", axes=BY_YEAR, source=FARM_RATIOS)
    def debt_to_equity(self) -> Expr:
        """At cost. Below zero, more is owed than owned."""
        start, sheet = self.statements.balance.start, self.statements.balance
        return starting(ratio(start.liabilities, start.equity), ratio(sheet.total_liabilities, sheet.equity))

    # Over a year

    @line("Own and family hours that no wage pays, worth a year", unit="money")
    def unpaid_work(self) -> Expr:
        """At what an hour is worth to you. In a corporation the owner's pay is a cost already."""
        return joined(self.year.hours.own_value, "money") * (1 - self.home.household.incorporated)

    @line("Earned for all that is owned", unit="money", axes=BY_YEAR, source=FARM_RATIOS)
    def earned(self) -> Expr:
        """Income from operations with interest put back, less unpaid work."""
        return return_earned(self.statements.before_tax, self.statements.interest, self.unpaid_work)

    @line("Assets of the year", unit="money", axes=BY_YEAR)
    def mean_assets(self) -> Expr:
        """The mean of its start and end."""
        return mean(previous(self.statements.balance.total_assets, PLAN_YEAR), self.statements.balance.total_assets)

    @line("Equity of the year", unit="money", axes=BY_YEAR)
    def mean_equity(self) -> Expr:
        """The mean of its start and end."""
        return mean(previous(self.statements.balance.equity, PLAN_YEAR), self.statements.balance.equity)

    @line("Return on assets", unit="share", axes=BY_YEAR, source=FARM_RATIOS)
    def return_on_assets(self) -> Expr:
        """What all that is owned earned, after unpaid work."""
        return ratio(self.earned, self.mean_assets)

    @line("Return on equity", unit="share", axes=BY_YEAR, source=FARM_RATIOS)
    def return_on_equity(self) -> Expr:
        """What your own money earned, after interest and unpaid work."""
        return ratio(self.statements.before_tax - self.unpaid_work, self.mean_equity)

    @line("Operating profit margin", unit="share", axes=BY_YEAR, source=FARM_RATIOS)
    def profit_margin(self) -> Expr:
        """Earned for all that is owned, of sales."""
        return ratio(self.earned, self.statements.sales)

    @line("Asset turnover", unit="1", axes=BY_YEAR, source=FARM_RATIOS)
    def turnover(self) -> Expr:
        """Sales for each 1.00 of assets."""
        return ratio(self.statements.sales, self.mean_assets)

    @line("Operating expense ratio", unit="share", axes=BY_YEAR, source=FARM_RATIOS)
    def expense(self) -> Expr:
        """Costs of running, of sales."""
        return ratio(self.statements.costs, self.statements.sales)

    @line("Depreciation ratio", unit="share", axes=BY_YEAR, source=FARM_RATIOS)
    def depreciation(self) -> Expr:
        """Loss in value, of sales."""
        return ratio(self.statements.loss, self.statements.sales)

    @line("Interest ratio", unit="share", axes=BY_YEAR, source=FARM_RATIOS)
    def interest(self) -> Expr:
        """With loan fees, of sales."""
        return ratio(self.statements.interest, self.statements.sales)

    @line("Income ratio", unit="share", axes=BY_YEAR, source=FARM_RATIOS)
    def income(self) -> Expr:
        """Income from operations, of sales."""
        return ratio(self.statements.before_tax, self.statements.sales)

    # Whether they agree

    @line("The four ratios of sales, added up", unit="share", axes=BY_YEAR)
    def of_sales(self) -> Expr:
        """100% where anything is sold."""
        return self.expense + self.depreciation + self.interest + self.income

    @check(
        "Costs, loss in value, interest and income make up sales, in every year",
        kind="error",
        says="In some year the four shares of sales are not 100% together: a formula was changed.",
    )
    def shares_agree(self) -> Expr:
        """To nine digits of the largest of them."""
        return total(self.shares_apart, PLAN_YEAR) <= self.largest_share * SUM_TOLERANCE

    @line("The four ratios of sales, apart from 100%", unit="share", axes=BY_YEAR)
    def shares_apart(self) -> Expr:
        """Nothing but rounding, whatever its sign; nothing where nothing is sold."""
        return absolute(self.of_sales - 1) * (self.statements.sales > 0)

    @line("Shares of sales, squares added up", unit="1")
    def largest_share(self) -> Expr:
        """What nine digits are counted of; costs may be many times sales."""
        return total(self.expense * self.expense + self.income * self.income + 1, PLAN_YEAR)

    @check(
        "Return on assets is margin times turnover, in every year",
        kind="error",
        says="In some year return on assets is not margin times turnover: a formula was changed.",
    )
    def returns_agree(self) -> Expr:
        """To nine digits."""
        size = total(self.return_on_assets * self.return_on_assets + 1, PLAN_YEAR)
        return total(self.returns_apart, PLAN_YEAR) <= size * SUM_TOLERANCE

    @line("Return on assets, apart from margin times turnover", unit="share", axes=BY_YEAR)
    def returns_apart(self) -> Expr:
        """Nothing but rounding, whatever its sign; nothing where nothing is sold."""
        apart = absolute(self.return_on_assets - self.profit_margin * self.turnover)
        return apart * (self.statements.sales > 0)

    # A typical year

    @line("Typical year: operating expense ratio", unit="share", source=FARM_RATIOS)
    def typical_expense(self) -> Expr:
        """Costs paid in money, of takings."""
        return ratio(self.year.cash_cost, self.year.customers.takings_in_all)

    @line("Typical year: depreciation ratio", unit="share", source=FARM_RATIOS)
    def typical_depreciation(self) -> Expr:
        """Loss in value, of takings."""
        return ratio(self.year.capital.loss, self.year.customers.takings_in_all)

    @line("Typical year: interest ratio", unit="share", source=FARM_RATIOS)
    def typical_interest(self) -> Expr:
        """Of takings."""
        return ratio(self.year.loans.interest, self.year.customers.takings_in_all)

    @line("Typical year: income ratio", unit="share", source=FARM_RATIOS)
    def typical_income(self) -> Expr:
        """Profit, of takings. A corporation's owner's pay is not taken off."""
        return ratio(self.year.profit, self.year.customers.takings_in_all)
