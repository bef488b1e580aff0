"""Twin of how far things could fall: what a typical year can give to loans, tried at one fall after the other by halves."""

from __future__ import annotations

from collections.abc import Callable

from tests.twin.farm_twin_customers import customers
from tests.twin.farm_twin_ground import Given, Results, over, same, taken_of_a_profit
from tests.twin.farm_twin_loans import loans_of_a_year

__all__ = ["FALLS", "falls_of", "to_lose"]

STEPS = 200
FALLS = ("price_to_asked", "price_to_one", "weight_to_asked", "weight_to_one")
Capacity = Callable[[float], float]


def capacity(given: Given, out: Results, lost: float) -> float:
    """What can go to loans, the household paid, when so much income is lost."""
    pay = float(given["household.owner_pay"]) * same(given["household.form"], "corporation")
    on_top = pay * (1 + float(given["farm.payroll_extra"]))
    income = float(out["year.profit"]) - on_top - lost
    tax = max(income, 0.0) * taken_of_a_profit(given)
    comes = float(given["household.other_income"]) + pay
    goes = float(given["household.needs"]) + float(given["household.debts"])
    _, interest = loans_of_a_year(given)
    return income - tax + float(out["capital.loss"]) + interest + comes - goes


def with_lower_prices(given: Given, out: Results) -> Capacity:
    """All prices lower by the same share."""
    takings, fees = (float(out[f"customer_year.{name}_in_all"]) for name in ("takings", "fees"))
    return lambda share: capacity(given, out, share * (takings - fees))


def with_less_weight(given: Given, out: Results) -> Capacity:
    """Less to sell in every month: customers are served once more. Stalls and driving stay, piece work goes with the weight."""

    def kept(less: Results) -> float:
        takings, fees, packing = (less[f"customer_year.{name}_in_all"] for name in ("takings", "fees", "packing"))
        return float(takings) - float(fees) - float(packing)

    def with_share_gone(share: float) -> float:
        crop = {name: float(out[name]) * (1 - share) for name in ("harvest.taken_a_week", "harvest.taken_a_year")}
        saved = float(out["picking.piece_cost"]) * share
        return capacity(given, out, kept(out) - kept(customers(given, {**out, **crop})) - saved)

    return with_share_gone


def fall_to(capacity_at: Capacity, needed: float) -> float:
    """The fall at which no more than what is needed is left: by halves; 0 where there is none."""
    if capacity_at(0.0) < needed or capacity_at(1.0) > needed:
        return 0.0
    low, high = 0.0, 1.0
    for _ in range(STEPS):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        low, high = (middle, high) if capacity_at(middle) > needed else (low, middle)
    return high


def to_lose(given: Given, out: Results) -> Results:
    """What may be lost of a typical year's income, and what is lost with all of the weight."""
    paid, _ = loans_of_a_year(given)
    now, taken = capacity(given, out, 0.0), taken_of_a_profit(given)
    takings, fees, packing = (float(out[f"customer_year.{name}_in_all"]) for name in ("takings", "fees", "packing"))
    found: Results = {
        "weight_lost.last_width": 0.5**30,
        "weight_lost.lost_with_all": takings - fees - packing - float(out["picking.piece_cost"]),
    }
    pay = float(given["household.owner_pay"]) * same(given["household.form"], "corporation")
    income = float(out["year.profit"]) - pay * (1 + float(given["farm.payroll_extra"]))
    untaxed = now - income + max(income, 0.0) * taken
    for name, wanted in (("asked", float(given["stress.covenant"])), ("one", 1.0)):
        left = paid * wanted - untaxed
        needed = left if left <= 0 else over(left, 1 - taken)
        found[f"to_lose_of_{name}.room"] = income - needed
        found[f"to_lose_of_{name}.now"] = float(paid > 0 and now >= paid * wanted)
    return found


def falls_of(given: Given, out: Results) -> dict[str, float]:
    """Each fall, and the coverage then, by the dotted names of the book."""
    paid, _ = loans_of_a_year(given)
    found: dict[str, float] = {}
    for what, at_fall in (("price", with_lower_prices(given, out)), ("weight", with_less_weight(given, out))):
        for to, wanted in (("asked", float(given["stress.covenant"])), ("one", 1.0)):
            name, fall = f"{what}_to_{to}", fall_to(at_fall, paid * wanted) if paid > 0 else 0.0
            found[f"{name}.fall"] = fall
            found[f"{name}.again"] = over(at_fall(fall), paid) if fall > 0 else 0.0
    then = {"price": ("price_then", "customer_year.average_price"), "weight": ("weight_then", "crop.picked_per_filled")}
    for what, (name, of) in then.items():
        for to in ("asked", "one"):
            fall = found[f"{what}_to_{to}.fall"]
            found[f"{what}_to_{to}.{name}"] = float(out[of]) * (1 - fall) if fall > 0 else 0.0
    return found
