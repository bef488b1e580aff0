"""Worth, interest and loss in value in the tests of finance libraries, which copy what spreadsheets print."""

from __future__ import annotations

from typing import Final

from farmbook.calc import worth
from tests.calc import chains, loan_chains
from tests.calc.published import Published

TRUTH: Final = "ExcelFinancialFunctions, test data of Excel 2010"
SPOT: Final = "ExcelFinancialFunctions, spot tests checked against Excel"
HELP: Final = "Microsoft's examples, as listed in a public library's test file"
VISUAL_BASIC: Final = "Microsoft, Excel VBA reference, WorksheetFunction.Xnpv"
SHEETS: Final = "results of Google Sheets in the test suite of numpy-financial"

# flows, and their worth a year before the first at an interest of 60 % and at a loss of 10 % a year
_WORTH: Final = (
    (("-100", "10", "10", "100"), "-40.8935546875", "67.36777930194"),
    (("-100", "-10", "10", "100"), "-48.7060546875", "42.67642127724"),
    (("-200", "0", "10", "-10", "300"), "-95.47424316406", "284.3062541279"),
)


def _flows(*amounts: str) -> tuple[str, ...]:
    return tuple(f"{amount} money" for amount in amounts)


ROWS: Final = (
    *(
        Published(
            chains.worth_a_year_before,
            TRUTH,
            f"NPV at {rate}",
            "seen",
            f"{printed} money",
            {"flows": _flows(*flows), "rate": f"{rate} 1/year"},
        )
        for flows, dear, shrinking in _WORTH
        for rate, printed in (("0.6", dear), ("-0.1", shrinking))
    ),
    Published(
        chains.worth_of_dated_flows,
        VISUAL_BASIC,
        "XNPV at 9 %, from 1 January 2008: 1 March, 30 October, 15 February and 1 April of 2009",
        "seen",
        "2,086.6476 money",
        {
            "flows": _flows("-10000", "2750", "4250", "3250", "2750"),
            "days": ("0 day", "60 day", "303 day", "411 day", "456 day"),
            "rate": "9 percent/year",
        },
    ),
    Published(
        chains.worth_of_dated_flows,
        SPOT,
        "XNPV at 14 %, 2 March 1970, 3 February 1988 and 5 March 1999",
        "seen",
        "1.375214 money",
        {
            "flows": _flows("1", "3", "4"),
            "days": ("0 day", "6547 day", "10595 day"),
            "rate": "14 percent/year",
        },
    ),
    *(
        Published(
            chains.effective_rate,
            TRUTH,
            f"EFFECT({rate}, {times})",
            "seen",
            f"{printed} 1/year",
            {"yearly_rate": f"{rate} 1/year", "times_a_year": f"{times} 1/year"},
        )
        for rate, times, printed in (
            ("0.6", "10", "0.7908476965429"),
            ("0.6", "13", "0.7978035299639"),
            ("1.5", "2", "2.0625"),
            ("1.5", "10", "3.045557735708"),
        )
    ),
    *(
        Published(
            worth.straight_line,
            TRUTH,
            f"SLN({price}, {resale}, {life})",
            "seen",
            f"{printed} money/year",
            {"price": f"{price} money", "resale": f"{resale} money", "life": f"{life} year"},
        )
        for price, resale, life, printed in (
            ("100", "10", "13", "6.923076923077"),
            ("200", "50", "12.7", "11.81102362205"),
            ("200", "10", "40", "4.75"),
            ("200", "50", "13", "11.53846153846"),
        )
    ),
    *(
        Published(
            loan_chains.interest_by_months,
            SHEETS,
            f"IPMT(0.1/12, {number}, 24, 2000)",
            "seen",
            f"{printed} money",
            {"amount": "2,000 money", "rate": "10 percent", "payments": "24", "number": number},
        )
        for number, printed in (("2", "16.03647345"), ("3", "15.40102862"), ("4", "14.76028842"))
    ),
    *(
        Published(
            loan_chains.first_interest,
            source,
            where,
            "seen",
            f"{printed} money",
            {"amount": f"{amount} money", "rate": "10 percent", "interval": "1"},
        )
        for source, where, amount, printed in (
            (HELP, "IPMT(10%/12, 1, 36, 8000)", "8,000", "66.67"),
            (SHEETS, "IPMT(0.1/12, 1, 24, 2000)", "2,000", "16.666667"),
        )
    ),
)
