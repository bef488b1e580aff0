"""Payments, interest and balances of loans in print."""

from __future__ import annotations

from typing import Final

from tests.calc import loan_chains
from tests.calc.published import HowKnown, Published

EXCEL: Final = "ExcelFinancialFunctions, test data of Excel 2010"
HELP: Final = "Microsoft's examples, as listed in a public library's test file"
CALCULATOR: Final = "a page of steps for a financial calculator; realtycalc.com"
SOLVED: Final = "a solved problem; qammunity.org 14053461"

# amount, balloon, rate for each payment, payments, printed
_BALLOONS: Final = (
    ("100", "5.4", "0.6", "10", "60.52096736329"),
    ("150.5", "100", "0.6", "10", "90.5781062563"),
    ("150.5", "5.4", "0.6", "10", "91.0990736196"),
    ("150.5", "100", "1.5", "2", "240.1785714286"),
    ("100", "5.4", "1.5", "2", "177.0285714286"),
)
# amount, rate for each payment, payments, first and last payment of the span, repaid, interest
_SPANS: Final = (
    ("100", "0.6", "10", "1", "3", "2.841640163419", "178.8104762107"),
    ("100", "0.6", "10", "2", "7", "23.16959723645", "340.1346355117"),
    ("150.5", "0.6", "10", "5", "7", "28.02757432735", "245.3588608156"),
    ("100", "1.5", "10", "1", "7", "6.390184299389", "1043.719927727"),
    ("150.5", "1.5", "10", "2", "5", "1.501824805745", "901.5928715367"),
    ("100", "0.2", "10", "2", "5", "24.81481907366", "70.59428367948"),
)


def _row(calculation: object, source: str, where: str, how: HowKnown, printed: str, given: dict[str, str]) -> Published:
    return Published(calculation, source, where, how, printed, given)  # type: ignore[arg-type]  # any calculation


ROWS: Final = (
    *(
        _row(
            loan_chains.balloon_payment,
            EXCEL,
            f"PMT({rate}, {payments}, {amount}, -{balloon})",
            "seen",
            f"{printed} money",
            {"amount": f"{amount} money", "balloon": f"{balloon} money", "rate": rate, "payments": payments},
        )
        for amount, balloon, rate, payments, printed in _BALLOONS
    ),
    *(
        _row(
            loan_chains.repaid_with_balloon,
            EXCEL,
            f"PPMT(0.6, 2, 2, {amount}, -{balloon})",
            "seen",
            f"{printed} money",
            {
                "amount": f"{amount} money",
                "balloon": f"{balloon} money",
                "rate": "0.6",
                "payments": "2",
                "number": "2",
            },
        )
        for amount, balloon, printed in (("150.5", "100", "31.07692307692"), ("100", "5.4", "58.21538461538"))
    ),
    *(
        _row(
            calculation,
            EXCEL,
            f"{function}({rate}, {payments}, {amount}, {first}, {last}, 0)",
            "seen",
            f"{printed} money",
            {"amount": f"{amount} money", "rate": rate, "payments": payments, "first": first, "last": last},
        )
        for amount, rate, payments, first, last, repaid, interest in _SPANS
        for calculation, function, printed in (
            (loan_chains.repaid_in_span, "CUMPRINC", repaid),
            (loan_chains.interest_in_span, "CUMIPMT", interest),
        )
    ),
    *(
        _row(
            calculation,
            HELP,
            f"{function}(9%/12, 360, 125000, 13, 24, 0)",
            "seen",
            printed,
            {"amount": "125,000 money", "rate": "0.0075", "payments": "360", "first": "13", "last": "24"},
        )
        for calculation, function, printed in (
            (loan_chains.interest_in_span, "CUMIPMT", "11,135.23 money"),
            (loan_chains.repaid_in_span, "CUMPRINC", "934.1071 money"),
        )
    ),
    _row(
        loan_chains.repaid_in_span,
        HELP,
        "CUMPRINC(9%/12, 360, 125000, 1, 1, 0)",
        "seen",
        "68.27827 money",
        {"amount": "125,000 money", "rate": "0.0075", "payments": "360", "first": "1", "last": "1"},
    ),
    _row(
        loan_chains.interest_in_span,
        "ExcelFinancialFunctions, spot tests checked against Excel",
        "IPMT(0.005, 53, 180, 200000)",
        "seen",
        "796.374758 money",
        {"amount": "200,000 money", "rate": "0.005", "payments": "180", "first": "53", "last": "53"},
    ),
    _row(
        loan_chains.interest_in_span,
        "Microsoft's examples, as listed in a public library's test file",
        "IPMT(10%, 3, 3, 8000)",
        "seen",
        "292.45 money",
        {"amount": "8,000 money", "rate": "0.1", "payments": "3", "first": "3", "last": "3"},
    ),
    _row(
        loan_chains.first_interest,
        HELP,
        "first month of CUMIPMT(9%/12, 360, 125000, 1, 1, 0)",
        "seen",
        "937.50 money",
        {"amount": "125,000 money", "rate": "9 percent", "interval": "1"},
    ),
    _row(
        loan_chains.payment_by_months,
        CALCULATOR,
        "80,000 at 8 % over 30 years",
        "seen",
        "587.01 money",
        {"amount": "80,000 money", "rate": "8 percent", "interval": "1", "payments": "360"},
    ),
    _row(
        loan_chains.payment_by_months,
        "Pamela Peterson Drake, Loan amortization; educ.jmu.edu/~drakepp",
        "20,000 at 10 %, six payments by the half-year",
        "seen",
        "3,940.35 money",
        {"amount": "20,000 money", "rate": "10 percent", "interval": "6", "payments": "6"},
    ),
    _row(
        loan_chains.payment_by_months,
        "a textbook problem solved; justaaa.com, finance 357116",
        "8,000 at 13 %, four payments by the quarter",
        "seen",
        "2,165.10 money",
        {"amount": "8,000 money", "rate": "13 percent", "interval": "3", "payments": "4"},
    ),
    *(
        _row(
            loan_chains.balance_by_months,
            source,
            where,
            "seen",
            printed,
            {
                "amount": amount,
                "rate": "8 percent",
                "interval": "1",
                "payments": "360",
                "made": made,
            },
        )
        for source, where, amount, made, printed in (
            (CALCULATOR, "what is owed after five years", "80,000 money", "60", "76,055.89 money"),
            (SOLVED, "what is owed after eight years", "320,000 money", "96", "291,256.63 money"),
        )
    ),
)
