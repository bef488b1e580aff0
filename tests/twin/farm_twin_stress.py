"""Twin of what things going badly adds to the plan: what the best customer leaves, and how many cases run short of cash."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results
from tests.twin.farm_twin_loans import loans_of_a_year
from tests.twin.farm_twin_month_steps import MONTHS_IN_A_YEAR
from tests.twin.farm_twin_statements import first_full

__all__ = ["CASES", "best_customer", "cases_short", "cases_uncovered", "when_enough"]

MARKETS = ("prices_fall", "customer_lost", "late_payers")
GROWING = ("less_picked", "more_lost", "plant_stops")
COSTS = ("rates_rise", "costs_rise", "late_opening", "bad_year")
CASES = (*MARKETS, *GROWING, *COSTS)
"""The ten, by what goes badly."""


def best_customer(given: Given, out: Results) -> Results:
    """Of the largest customer only what finds another buyer stays, at the lowest price that anybody pays."""
    there = [float(name != "") for name in given["customer.name"]]
    prices, best = (
        [float(each) for each in given["customer.price"]],
        [float(e) for e in out["customer_year.is_largest"]],
    )
    lowest = min((price for price, used in zip(prices, there, strict=True) if used), default=0.0)
    kept, dearer = float(given["stress.moved"]), []
    for used, price, is_best in zip(there, prices, best, strict=True):
        dearer.append((lowest / price if price else 1.0) if is_best else used)
    return {
        "best_customer.lowest_price": lowest,
        "best_customer.weight_kept": [kept if is_best else used for used, is_best in zip(there, best, strict=True)],
        "best_customer.share_of_price": dearer,
    }


def cases_short(given: Given, out: Results) -> Results:
    """Cases with a month that has less than the least cash to keep."""
    del given
    short = {
        name: sum(float(out[f"{case}.below"]) > 0 for case in cases)
        for name, cases in (("of_markets", MARKETS), ("of_growing", GROWING), ("of_costs", COSTS))
    }
    found = {f"if_badly.{name}": float(many) for name, many in short.items()}
    return {**found, "if_badly.in_all": float(sum(short.values()))}


def cases_uncovered(given: Given, out: Results) -> Results:
    """Cases whose coverage, the household paid, is below that wanted in the first full year or in a typical one."""
    wanted = float(given["stress.covenant"])
    full = first_full(given, out, len(out["loan_months.payments"]) // MONTHS_IN_A_YEAR) > 0
    pays = loans_of_a_year(given)[0] > 0

    def falls(case: str) -> bool:
        in_full, in_typical = (float(out[f"{case}.{name}"]) < wanted for name in ("full_year", "typical"))
        return (full and in_full) or (pays and in_typical)

    many = {
        name: sum(falls(case) for case in cases)
        for name, cases in (("of_markets", MARKETS), ("of_growing", GROWING), ("of_costs", COSTS))
    }
    found = {f"if_badly.uncovered_{name}": float(each) for name, each in many.items()}
    return {
        **found,
        "if_badly.uncovered_in_all": float(sum(many.values())),
        "cover_wanted.full": wanted * full,
        "cover_wanted.typical": wanted * pays,
    }


def when_enough(given: Given, out: Results) -> Results:
    """The month after the last one with too little cash."""
    del given
    left = {"if_badly.left_over": float(out["household.left_over"])}
    short = [month for month, each in enumerate(out["month_cash.missing"], 1) if each > out["month_cash.rounding"]]
    return {**left, "if_badly.enough_from": 1.0 + max(short, default=0)}
