"""The small farm in time once more, in plain loops: bags are pushed forward one by one, weeks are split day by day."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

__all__ = ["Plan", "twin"]

Numbers = list[float]


@dataclass
class Plan:
    """What is typed in, in metric units."""

    before: int
    rows: int
    lead: float = 17
    spawn_run: float = 18
    first_pick: float = 6.5
    added: Sequence[float] = (0, 9, 11.5)
    filled_a_week: float = 120
    weeks_planned: float = 18
    filled_before: Sequence[float] = (70, 0, 95, 110)
    spawn_per_bag: float = 0.15
    loss: Sequence[float] = (0.06, 0.03, 0.1)
    fresh: Sequence[float] = (0.62, 0.3, 0.11)
    days: Sequence[int] = (31, 28, 31, 30)
    hours: Sequence[float] = (1.6, 1.6)
    rate: Sequence[float] = (16, 16)
    price: float = 3.3
    opening_cash: float = 400
    opening_credit: float = 250
    credit_limit: float = 600
    least: float = 100
    earned: float = 0.002
    charged: float = 0.009


@dataclass
class _Bank:
    cash: float
    credit: float
    rows: dict[str, Numbers] = field(default_factory=dict)

    def note(self, **amounts: float) -> None:
        for name, amount in amounts.items():
            self.rows.setdefault(f"cash.{name}", []).append(amount)


def twin(plan: Plan) -> dict[str, Any]:
    """Results by the names that the lines have; lists in the order of the axes."""
    filled = _filled(plan)
    lags = [(plan.spawn_run + plan.first_pick + sum(plan.added[: each + 1])) / 7 for each in range(len(plan.added))]
    at_flush = [_pushed(filled, lag) for lag in lags]
    alive, share = [], 1.0
    for loss in plan.loss:
        share *= 1 - loss
        alive.append(share)
    picked_at = [[bags * alive[each] * plan.fresh[each] for bags in at_flush[each]] for each in range(len(at_flush))]
    picked = [sum(column) for column in zip(*picked_at, strict=True)]
    started = _pushed(filled, -plan.lead / 7)
    months = _by_month(plan, picked)
    return {
        "weeks.filled": filled,
        "weeks.started": started,
        "weeks.spawn": [bags * plan.spawn_per_bag for bags in started],
        "weeks.at_flush": at_flush,
        "weeks.alive": alive,
        "weeks.picked_at_flush": picked_at,
        "weeks.picked": picked,
        "weeks.in_process": [sum(filled[: row + 1]) - sum(at_flush[-1][: row + 1]) for row in range(plan.rows)],
        "months.picked": months,
        "months.flush_to_end": [_to_month_ends(plan, one) for one in picked_at],
        "tasks.cost": [
            [hours * rate * days for days in plan.days] for hours, rate in zip(plan.hours, plan.rate, strict=True)
        ],
        **_cash(plan, months),
    }


def _filled(plan: Plan) -> Numbers:
    filled = [0.0] * plan.rows
    for ago, bags in enumerate(reversed(plan.filled_before)):
        filled[plan.before - 1 - ago] = bags
    for week in range(1, math.floor(plan.weeks_planned) + 1):
        filled[plan.before - 1 + week] = plan.filled_a_week
    return filled


def _pushed(filled: Sequence[float], lag: float) -> Numbers:
    """Each week's bags moved by `lag` weeks, shared between the two weeks that it falls between."""
    landed = [0.0] * len(filled)
    whole = math.floor(lag)
    for row, bags in enumerate(filled):
        if bags:
            landed[row + whole] += bags * (1 - (lag - whole))
            landed[row + whole + 1] += bags * (lag - whole)
    return landed


def _by_month(plan: Plan, weekly: Sequence[float]) -> Numbers:
    """Each day a seventh of its week."""
    months, day = [], 0
    for days in plan.days:
        months.append(sum(weekly[plan.before + (day + each) // 7] / 7 for each in range(days)))
        day += days
    return months


def _to_month_ends(plan: Plan, weekly: Sequence[float]) -> Numbers:
    before = sum(weekly[: plan.before])
    months = _by_month(plan, weekly)
    return [before + sum(months[: each + 1]) for each in range(len(months))]


def _cash(plan: Plan, picked: Sequence[float]) -> Mapping[str, Numbers]:
    bank = _Bank(plan.opening_cash, plan.opening_credit)
    for month, weight in enumerate(picked):
        cost = sum(hours * rate for hours, rate in zip(plan.hours, plan.rate, strict=True)) * plan.days[month]
        interest = max(bank.cash, 0) * plan.earned - bank.credit * plan.charged
        net = weight * plan.price + interest - cost
        missing = plan.least - bank.cash - net
        drawn = min(missing, plan.credit_limit - bank.credit) if missing > 0 else -min(-missing, bank.credit)
        bank.cash += net + drawn
        bank.credit += drawn
        bank.note(closing=bank.cash, credit=bank.credit, drawn=drawn, net=net, interest=interest, missing=missing)
    return bank.rows
