"""Loans paid month by month, each payment after the other: no formula of an annuity anywhere."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from decimal import Decimal, localcontext
from functools import lru_cache
from itertools import pairwise
from typing import Any

from tests.twin.farm_twin_ground import Given, Results, same, whole_up

__all__ = ["Loan", "loans_by_month", "loans_of", "loans_of_a_year", "run"]

MONTHS, YEARS = 12, 40
DIGITS = 60
"""Carried in every sum: at high rates what is owed grows a million times before it falls."""
SEEN = 256
"""Loans that are kept worked out, as most farms run again have the same ones."""
INTERVALS = (1.0, 3.0, 6.0, 12.0)


@dataclass(frozen=True)
class Loan:
    """One loan as it is typed, months as plain numbers."""

    amount: float
    rate: float
    term: float
    interval: float = 1
    drawn_in: float = 0
    next_payment: float = 1
    interest_only: float = 0
    balloon: float = 0
    fees: float = 0

    @property
    def every(self) -> float:
        """Months between payments."""
        return max(self.interval, 1.0)

    @property
    def payments(self) -> int:
        """How many there are."""
        return max(int(whole_up(self.term / self.every)), 1)

    @property
    def of_interest(self) -> int:
        """How many pay interest only."""
        return min(int(whole_up(self.interest_only / self.every)), self.payments)

    @property
    def begins(self) -> float:
        """The month from which intervals run."""
        return self.drawn_in if self.drawn_in > 0 else max(self.next_payment, 1.0) - self.every

    @property
    def ends(self) -> float:
        """The month of the last payment."""
        return self.begins + self.payments * self.every

    @property
    def per_interval(self) -> Decimal:
        """Interest for one interval."""
        return Decimal(self.rate) / MONTHS * Decimal(self.every)

    @property
    def lump(self) -> Decimal:
        """What falls due at the end."""
        return Decimal(min(self.balloon, self.amount) if self.of_interest < self.payments else self.amount)


@dataclass
class Course:
    """How a loan goes: what was paid and is owed at the end of month 0, 1, 2 and so on."""

    made: list[int] = field(default_factory=list)
    owed: list[Decimal] = field(default_factory=list)
    paid: list[Decimal] = field(default_factory=list)
    interest: list[Decimal] = field(default_factory=list)


def level_payment(loan: Loan) -> Decimal:
    """The payment that leaves just what is due at the end: what is left falls evenly with the payment, so two tries do."""
    count = loan.payments - loan.of_interest
    if count == 0:
        return Decimal(loan.amount) * loan.per_interval
    left = []
    for tried in (Decimal(0), Decimal(1)):
        owed = Decimal(loan.amount)
        for _ in range(count):
            owed += owed * loan.per_interval - tried
        left.append(owed)
    return (left[0] - loan.lump) / (left[0] - left[1])


@lru_cache(maxsize=SEEN)
def run(loan: Loan, months: int) -> Course:
    """Month after month: the money comes, and where a payment falls it bears interest and repays the rest."""
    with localcontext() as context:
        context.prec = DIGITS
        return _run(loan, months, level_payment(loan))


def _run(loan: Loan, months: int, level: Decimal) -> Course:
    course = Course()
    owed, paid, interest, made = Decimal(0), Decimal(0), Decimal(0), 0
    here = False
    for month in range(months + 1):
        if not here and month >= loan.drawn_in:
            here, owed = True, Decimal(loan.amount)
        due = math.floor(round((month - loan.begins) / loan.every, 9)) if here else 0
        while made < min(due, loan.payments):
            made += 1
            bears = owed * loan.per_interval
            payment = bears if made <= loan.of_interest else level
            payment += loan.lump if made == loan.payments else 0
            owed, paid, interest = owed + bears - payment, paid + payment, interest + bears
        course.made.append(made)
        course.owed.append(Decimal(0) if made == loan.payments else owed)
        course.paid.append(paid)
        course.interest.append(interest)
    return course


@lru_cache(maxsize=SEEN)
def first_full_year(loan: Loan) -> tuple[float, float]:
    """What is paid, and what of it is interest, in the first year in which level payments are made."""
    left = loan.payments - loan.of_interest or loan.payments
    count = min(math.floor(round(MONTHS / loan.every, 9)), left)
    with localcontext() as context:
        context.prec = DIGITS
        level, owed, interest = level_payment(loan), Decimal(loan.amount), Decimal(0)
        for _ in range(count):
            interest += owed * loan.per_interval
            owed += owed * loan.per_interval - level
    return float(level * count), float(interest)


FIELDS = ("amount", "rate", "term", "interval", "drawn_in", "next_payment", "interest_only", "balloon", "fees")


def loans_of(given: Given) -> list[Loan]:
    """The rows of the list; a spare row is a loan of nothing."""
    rows = zip(*(given[f"loan.{name}"] for name in FIELDS), strict=True)
    return [Loan(**dict(zip(FIELDS, map(float, row), strict=True))) for row in rows]


def listed(given: Given) -> bool:
    """Whether payments go by the list."""
    return same(given["loans.counted"], "worked out from the list")


def loans_of_a_year(given: Given) -> tuple[float, float]:
    """What loans take in a typical year, and what of it is interest."""
    if not listed(given):
        paid = float(given["loans.payments"])
        return paid, paid * float(given["loans.interest_share"])
    years = [first_full_year(loan) for loan in loans_of(given)]
    return sum(paid for paid, _ in years), sum(interest for _, interest in years)


def checks(loans: Sequence[Loan]) -> Results:
    """Which fields of a loan do not go together; a loan of nothing has no faults but a balloon."""
    real = [loan for loan in loans if loan.amount > 0]
    wholes = [(loan.payments * loan.every, loan.term) for loan in real]
    wholes += [(loan.of_interest * loan.every, loan.interest_only) for loan in real]
    return {
        "loan_checks.rates_fit": not any(0 < loan.rate < 0.001 for loan in real),
        "loan_checks.intervals_fit": all(loan.every in INTERVALS for loan in real),
        "loan_checks.payments_whole": all(counted == typed for counted, typed in wholes),
        "loan_checks.balloons_fit": not any(loan.balloon > loan.amount for loan in loans),
        "loan_checks.starts_whole": all(loan.begins == round(loan.begins) for loan in real),
        "loan_checks.next_payments_fit": not any(loan.drawn_in <= 0 < loan.begins for loan in real),
    }


def steps(amounts: Sequence[Decimal]) -> list[float]:
    """From one to the next."""
    return [float(later - earlier) for earlier, later in pairwise(amounts)]


def summed(rows: Sequence[Sequence[Decimal]]) -> list[Decimal]:
    """Rows added up, place by place."""
    return [sum(column, Decimal(0)) for column in zip(*rows, strict=True)]


def come(loans: Sequence[Loan], months: int, what: str) -> list[Decimal]:
    """Amounts or fees of the loans to come that have come by each month."""
    to_come = [loan for loan in loans if loan.drawn_in > 0]
    return [
        sum((Decimal(getattr(loan, what)) for loan in to_come if loan.drawn_in <= month), Decimal(0))
        for month in range(months + 1)
    ]


def due_next(loans: Sequence[Loan], courses: Sequence[Course], month: int) -> float:
    """What of the loans that have come is repaid in the twelve months after one."""
    pairs = zip(loans, courses, strict=True)
    return float(sum(each.owed[month] - each.owed[month + MONTHS] for loan, each in pairs if loan.drawn_in <= month))


def by_month(given: Given, loans: Sequence[Loan], courses: Sequence[Course]) -> Results:
    """What comes, is paid and is owed in each month of the plan."""
    months = int(given["plan.months"])
    if not listed(given):
        paid, interest = (each / MONTHS for each in loans_of_a_year(given))
        sums: dict[str, Any] = {"payments": [paid] * months, "interest": [interest] * months}
        sums |= {"repaid": [paid - interest] * months}
        return sums | {name: [0.0] * months for name in ("drawn", "fees", "owed", "due_next")}
    paid_so_far = summed([each.paid[: months + 1] for each in courses])
    interest_so_far = summed([each.interest[: months + 1] for each in courses])
    payments, bears = steps(paid_so_far), steps(interest_so_far)
    return {
        "payments": payments,
        "interest": bears,
        "repaid": [all_of_it - part for all_of_it, part in zip(payments, bears, strict=True)],
        "drawn": steps(come(loans, months, "amount")),
        "fees": steps(come(loans, months, "fees")),
        "owed": [float(each) for each in summed([course.owed for course in courses])[1 : months + 1]],
        "due_next": [due_next(loans, courses, month) for month in range(1, months + 1)],
    }


def loans_by_month(given: Given, _out: Results) -> Results:
    """All loans over the plan, and over the years of the table."""
    loans, months = loans_of(given), int(given["plan.months"])
    last = YEARS * MONTHS
    courses = [run(loan, max(last, months + MONTHS)) for loan in loans]
    ends = slice(0, last + 1, MONTHS)
    real = [loan for loan in loans if loan.amount > 0]
    left = [
        sum(loan.payments - each.made[month] for loan, each in zip(loans, courses, strict=True) if loan.amount > 0)
        for month in range(MONTHS, last + 1, MONTHS)
    ]
    years = {
        "owed": [float(each) for each in summed([course.owed[ends] for course in courses])[1:]],
        "interest": steps(summed([course.interest[ends] for course in courses])),
        "to_come": sum(loan.amount for loan in loans if loan.drawn_in > 0),
        "paid_off_in": float(1 + sum(each > 0 for each in left)) if real else 0.0,
        "by_the_list": listed(given) and bool(real),
        "comes_in_the_plan": not any(loan.drawn_in > months for loan in real),
        "table_reaches": left[-1] == 0,
    }
    found = {f"loan_months.{name}": value for name, value in by_month(given, loans, courses).items()}
    found |= {f"loan_years.{name}": value for name, value in years.items()}
    ends_in = [loan.ends for loan in loans]
    return found | checks(loans) | {"loan_list.ends_in": ends_in, "loan_months.adds_up": 1.0}
