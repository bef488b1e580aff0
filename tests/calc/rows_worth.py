"""Payments, worth, payback and break-even in print."""

from __future__ import annotations

from typing import Final

from farmbook.calc import worth
from tests.calc import chains
from tests.calc.published import HowKnown, Published

EXCEL: Final = "numpy-financial 1.0.0, on Microsoft's example"
PAYBACK: Final = "worked examples in public library test files"
TEXTBOOK: Final = "Blank and Tarquin, Engineering Economy, section 6.2, a copy of the problem; sciemce.com"
EXAMINATION: Final = "civil engineers' board examination of 2016, engineering economy; ceboardexamgenerator.com"
ANNUAL: Final = "Equivalent annual cost, encyclopedia article, a copy; nationmaster.com"


def _flows(*amounts: int) -> tuple[str, ...]:
    return tuple(f"{amount} money" for amount in amounts)


_WITHOUT_RESALE: Final[tuple[tuple[str, str, HowKnown, str, str, str, str, str], ...]] = (
    (ANNUAL, "machine A", "copy", "50,000", "3", "5", "13,000", "31,360"),
    (ANNUAL, "machine B; the page misprints 30,780", "library", "150,000", "8", "5", "7,500", "30,708"),
    ("numpy-financial 1.0.0", "first of two", "library", "30,000", "5", "8", "3,000", "10,513.69"),
    ("numpy-financial 1.0.0", "second of two", "library", "22,000", "3", "8", "4,000", "12,536.74"),
)

_RECOVERED: Final[tuple[tuple[str, str, HowKnown, str, str, str, str, str], ...]] = (
    (TEXTBOOK, "the problem that gives both forms", "copy", "50,000", "5,000", "5", "10", "12,371"),
    (EXAMINATION, "problem 69", "seen", "100,000", "20,000", "15", "10", "12,517.90"),
)

ROWS: Final = (
    Published(
        worth.partial_budget,
        "Southeast Farm Press, Partial budget: simple, useful financial tool; southeastfarmpress.com, page 2",
        "100 acres of corn for dry beans: 97,500 and 55,000 saved, 69,000 and 88,000 given up",
        "seen",
        "-4,500 money/year",
        {
            "added": "97,500 money/year",
            "saved": "55,000 money/year",
            "spent": "69,000 money/year",
            "given_up": "88,000 money/year",
        },
    ),
    Published(
        chains.present_by_period,
        "Little and Graves, Little's Law, the wine rack, as quoted; funcall.blogspot.com and a copy of the chapter",
        "240 bottles, two thirds full; eight bought a month stay 20 months, 1.67 years",
        "copy",
        "160 run",
        {"entering": "8 run", "periods": "20"},
    ),
    Published(
        chains.break_even_without_fees,
        "Michigan State University Extension, Lessons learned from the 2019 season, part 3; canr.msu.edu",
        "corn: costs of 575 an acre, 180 bushels, nothing taken off the price",
        "seen",
        "3.19 money/kg",
        {"cost": "575 money", "quantity": "180 kg"},
    ),
    Published(
        worth.break_even_price,
        "the same, and a market's share of 6 % of takings divided through",
        "575 over 180 bushels and 94 cents kept of each 1.00",
        "arithmetic",
        "3.40 money/kg",
        {"cost": "575 money", "quantity": "180 kg", "share_kept": "94 percent"},
    ),
    Published(
        worth.straight_line,
        "Microsoft's examples, as listed in a public library's test file",
        "SLN(30000, 7500, 10)",
        "seen",
        "2,250 money/year",
        {"price": "30,000 money", "resale": "7,500 money", "life": "10 year"},
    ),
    Published(
        chains.monthly_payment,
        "Microsoft, PMT help",
        "first example",
        "seen",
        "1,037.03 money/month",
        {"principal": "10,000 money", "yearly_rate": "8 percent/year", "months": "10 month"},
    ),
    Published(
        chains.level_payment,
        "ExcelFinancialFunctions, spot tests checked against Excel",
        "PMT(0.005, 180, 200000)",
        "seen",
        "1,687.713656 money/month",
        {"principal": "200,000 money", "rate": "0.005 1/month", "months": "180 month"},
    ),
    Published(
        chains.monthly_payment,
        "MESCIUS, PMT function",
        "PMT(6%/12, 15, 5000)",
        "seen",
        "346.82 money/month",
        {"principal": "5,000 money", "yearly_rate": "6 percent/year", "months": "15 month"},
    ),
    Published(
        chains.worth_a_year_before,
        "MESCIUS, NPV function",
        "the first flow discounted",
        "seen",
        "2,055.38 money",
        {"flows": _flows(-10000, 3000, 3400, 7700), "rate": "6.5 percent/year"},
    ),
    Published(
        chains.worth_a_year_before,
        "ExcelFinancialFunctions, test data of Excel 2010",
        "NPV at 14 %",
        "seen",
        "44.94119298304 money",
        {"flows": _flows(-123, 12, 15, 50, 200), "rate": "14 percent/year"},
    ),
    Published(
        chains.worth_a_year_before,
        EXCEL,
        "NPV help, first example; the printed 1,188.44 is recalled",
        "library",
        "1,188.44 money",
        {"flows": _flows(-10000, 3000, 4200, 6800), "rate": "10 percent/year"},
    ),
    Published(
        chains.worth_of_flows,
        EXCEL,
        "the same flows, the first not discounted",
        "library",
        "1,307.29 money",
        {"flows": _flows(-10000, 3000, 4200, 6800), "rate": "10 percent/year"},
    ),
    Published(
        chains.worth_of_flows,
        EXCEL,
        "NPV help, second example; the printed figure is recalled",
        "library",
        "1,922.06 money",
        {"flows": _flows(-40000, 8000, 9200, 10000, 12000, 14500), "rate": "8 percent/year"},
    ),
    Published(
        chains.worth_of_flows,
        EXCEL,
        "NPV help, with a loss in the sixth year; the printed figure is recalled",
        "library",
        "-3,749.47 money",
        {"flows": _flows(-40000, 8000, 9200, 10000, 12000, 14500, -9000), "rate": "8 percent/year"},
    ),
    *(
        Published(
            chains.worth_of_one_flow,
            PAYBACK,
            "500 at 10 %",
            "seen",
            printed,
            {"flow": "500 money", "rate": "10 percent/year", "time": time},
        )
        for time, printed in (("1 year", "454.545 money"), ("2 year", "413.223 money"), ("3 year", "375.657 money"))
    ),
    Published(
        chains.simple_payback,
        PAYBACK,
        "simple",
        "seen",
        "2.6",
        {"flows": _flows(-1000, 300, 400, 500)},
        within="1e-9",
        because="exact",
    ),
    *(
        Published(
            calculation,
            "Brigham and Houston, Fundamentals of Financial Management, project S",
            "a flow that comes after all is paid back",
            "memory",
            printed,
            {"flows": _flows(-1000, 500, 400, 300, 100), **rate},
        )
        for calculation, printed, rate in (
            (chains.simple_payback, "2.33", {}),
            (chains.payback, "2.95", {"rate": "10 percent/year"}),
        )
    ),
    Published(
        chains.payback,
        "the same flows discounted, worked out with numpy",
        "at 10 %",
        "library",
        "2.352",
        {"flows": _flows(-1000, 500, 500, 500), "rate": "10 percent/year"},
    ),
    *(
        Published(
            chains.yearly_cost_without_resale,
            source,
            where,
            how,
            f"{printed} money/year",
            {
                "price": f"{price} money",
                "life": f"{life} year",
                "rate": f"{rate} percent/year",
                "running": f"{running} money/year",
            },
        )
        for source, where, how, price, life, rate, running, printed in _WITHOUT_RESALE
    ),
    *(
        Published(
            chains.recovery,
            source,
            where,
            how,
            f"{printed} money/year",
            {
                "price": f"{price} money",
                "resale": f"{resale} money",
                "life": f"{life} year",
                "rate": f"{rate} percent/year",
            },
        )
        for source, where, how, price, resale, life, rate, printed in _RECOVERED
    ),
    *(
        Published(
            chains.yearly_worth,
            "numpy-financial 1.0.0",
            f"worth of cost over {life} years",
            "library",
            f"{printed} money/year",
            {"price": f"{price} money", "life": f"{life} year", "rate": "15 percent/year"},
        )
        for price, life, printed in (("6,000", "5", "1,789.89"), ("8,000", "7", "1,922.88"))
    ),
    Published(
        chains.effective_rate,
        "ExcelFinancialFunctions, test data of Excel 2010",
        "EFFECT(5.25%, 4)",
        "seen",
        "0.05354266737076 1/year",
        {"yearly_rate": "5.25 percent/year", "times_a_year": "4 1/year"},
    ),
    *(
        Published(
            worth.break_even_quantity,
            "textbook problem, inputs at tutorsglobe.com 51291136",
            where,
            "library",
            printed,
            {"fixed_cost": fixed, "price": "26.90 money/kg", "variable_cost": "14.40 money/kg"},
            within="1e-6",
            because="exact",
        )
        for where, fixed, printed in (
            ("fixed cost alone", "1,200,000 money", "96,000 kg"),
            ("with a target of 48,000", "1,248,000 money", "99,840 kg"),
        )
    ),
)
