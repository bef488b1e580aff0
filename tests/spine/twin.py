"""The large test farm as plain loops, from the same inputs and with none of the package's parts."""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise

__all__ = ["Farm", "months"]

CHANNELS = ((2, 300, 11.0), (1, 420, 9.4), (3, 260, 10.2), (3, 90, 12.0), (5, 800, 5.5), (4, 60, 10.0))
"""Turn, weight taken in a month, price."""
BEFORE, AFTER, LEFT_EMPTY = 26, 20, 12


@dataclass
class Farm:
    """What a case may change."""

    price_kept: float = 1
    weight_kept: float = 1
    loss_added: float = 0
    pay_kept: float = 1
    materials_kept: float = 1
    rate_added: float = 0
    paid_later: float = 0
    customer_kept: float = 1
    stopped: float = 0
    slower: float = 0
    filled: list[float] = field(default_factory=list)


def weekly(farm: Farm, weeks: int) -> dict[str, list[float]]:
    """Bags filled, weight handed over and pay, week by week, margins included."""
    filled = []
    for row in range(1, weeks + 1):
        week = row - BEFORE
        if week <= 0:
            filled.append(210.0 if row > LEFT_EMPTY else 0.0)
        else:
            full = 640 * min(week / 9, 1)
            filled.append(full if week > farm.stopped and row <= weeks - AFTER else 0.0)
    days = [18 * (1 + farm.slower) + 6.5 + added for added in (0, 9, 20.5)]
    alive, weights = 1.0, [each * farm.weight_kept for each in (0.62, 0.3, 0.11)]
    picked = [0.0] * weeks
    for lag, lost, weight in zip(days, (0.06, 0.03, 0.1), weights, strict=True):
        alive *= 1 - lost - farm.loss_added
        whole, part = int(lag // 7), lag / 7 - lag // 7
        for row in range(weeks):
            late = filled[row - whole - 1] if row - whole - 1 >= 0 else 0.0
            now = filled[row - whole] if row - whole >= 0 else 0.0
            picked[row] += (now * (1 - part) + late * part) * alive * weight
    handed_over, kept = [], 0.0
    for row in range(weeks):
        there = kept + picked[row]
        over = min(there, 520 if row + 1 > BEFORE else 0)
        handed_over.append(over)
        kept = (there - over) * 0.6
    pay = [each * 6 * 1.4 / 60 * 17 * farm.pay_kept for each in filled]
    return {"filled": filled, "handed over": handed_over, "pay": pay}


def by_month(series: list[float], number: int) -> list[float]:
    """Weeks to months of 30.4 days: the total at the end of each, less the one before."""

    def so_far(rows: float) -> float:
        whole = int(rows + 1e-9)
        return sum(series[:whole]) + series[whole] * (rows - whole)

    ends = [BEFORE + month * 30.4 / 7 for month in range(number + 1)]
    totals = [so_far(end) for end in ends]
    return [after - before for before, after in pairwise(totals)]


def sold_to(supply: float, farm: Farm) -> list[float]:
    """What each channel gets of a month's weight, in turn; of equal turns the first row first."""
    takes = [channel[1] * (farm.customer_kept if row == 0 else 1) for row, channel in enumerate(CHANNELS)]
    sold = [0.0] * len(CHANNELS)
    for row in sorted(range(len(CHANNELS)), key=lambda row: (CHANNELS[row][0], row)):
        sold[row] = min(takes[row], supply)
        supply -= sold[row]
    return sold


def months(farm: Farm, number: int, weeks: int) -> dict[str, list[float]]:
    """Cash, credit and profit at the end of each month."""
    week = weekly(farm, weeks)
    filled, over, pay = (by_month(week[name], number) for name in ("filled", "handed over", "pay"))
    cash, credit, profit_before, owed_before, bill_before, stock = 4000.0, 0.0, 0.0, 0.0, 0.0, 0.0
    loan = 9000.0
    found: dict[str, list[float]] = {"closing": [], "credit": [], "profit": []}
    for month in range(number):
        sales = sum(s * c[2] for s, c in zip(sold_to(over[month], farm), CHANNELS, strict=True)) * farm.price_kept
        owed = sales * min(0.4 + farm.paid_later, 1)
        collected, owed_before = sales + owed_before - owed, owed
        used = 0.11 * filled[month] + 12
        price = 0.55 * 1.002 ** (month + 1) * farm.materials_kept
        bought, stock = max(used + used * 0.5 - stock, 0), used * 0.5
        paid, bill_before = bill_before, bought * price
        interest, back = loan * (0.006 + farm.rate_added), min(9000 / 30, loan)
        loan -= back
        credit_interest = credit * 0.009
        net = collected - pay[month] - 20 * paid - 4 * (interest + back)
        net -= credit_interest + max(profit_before, 0) * 0.2 + 1500
        drawn = max(min(700 - (cash + net), 6000 - credit), -credit)
        profit_before = sales - pay[month] - 20 * used * price - 4 * interest - credit_interest
        cash, credit = cash + net + drawn, credit + drawn
        for name, value in (("closing", cash), ("credit", credit), ("profit", profit_before)):
            found[name].append(value)
    return found
