"""Twin of the farm with its spawn got the other way, and of bags bought in ready-made."""

from __future__ import annotations

from collections.abc import Callable

from tests.twin.farm_twin_ground import Given, Results, over
from tests.twin.farm_twin_trials import two_sides

__all__ = ["other_spawn"]

Work = Callable[[Given], Results]

MINUTES = 60


def bag_to_fruiting(given: Given, out: Results) -> dict[str, float]:
    """A bag until it stands in the fruiting room: goods and minutes, and what those that live have cost."""
    made, bags = bool(out["spawn_source.made"]), float(given["farm.bags_filled_a_week"])
    lab = float(given["own_spawn.weekly_hours"]) if made else 0.0
    bills = float(given["own_spawn.culture_cost"]) + float(given["own_spawn.consumables"]) if made else 0.0
    alive = float(out["crop.live_per_filled"])
    own_bills = over(bills, bags * float(given["farm.weeks_worked"]))
    goods = float(out["one_more.bag_goods"]) + own_bills - float(out["growing_cost.fruiting_room_cost"]) * alive
    setting_up = float(given["spawn.set_up_hours"]) * float(given["spawn.lab_days"]) + lab
    minutes = MINUTES * over(setting_up, bags)
    culling = MINUTES * over(1 - alive, given["growing_cost.culling_rate"])
    steps = ("starting_hours", "shelving_hours", "spawn_hours")
    work = sum(float(out[f"one_more.{step}"]) for step in steps) + minutes + culling
    week = work / MINUTES * bags
    hired = over(min(week, float(out["hours.hired"])), week)
    money = hired * float(out["farm.labour_rate"])
    full = money + (1 - hired) * float(given["hours.own_rate"])
    return {
        "own_bills": own_bills,
        "goods": goods,
        "setting_up": minutes,
        "culling": culling,
        "work": work,
        "work_a_week": week,
        "hired": hired,
        "hour_in_money": money,
        "hour_in_full": full,
        "in_money": over(goods + work / MINUTES * money, alive),
        "in_full": over(goods + work / MINUTES * full, alive),
    }


def spawn_years(weeks: float, out: Results, made: Results, bought: Results) -> dict[str, float]:
    """The year with spawn made and with spawn bought, and how it parts from the comparison."""
    advantage = float(made["year.profit"]) - float(bought["year.profit"])
    hired = float(made["hours.labour_cost"]) - float(bought["hours.labour_cost"])
    worn = float(made["capital.loss"]) - float(bought["capital.loss"])
    said = float(out["make_or_buy.advantage"])
    unpaid = float(out["own_spawn_work.work_cost"]) * weeks - hired
    interest = float(out["make_or_buy.owning"]) - worn
    apart = (advantage > 0) != (said > 0)
    return {
        "bought": float(bought["year.profit"]),
        "made": float(made["year.profit"]),
        "advantage": advantage,
        "hired": hired,
        "lab_loss": worn,
        "advantage_sunk": advantage + worn,
        "unpaid_hours": unpaid,
        "interest": interest,
        "rest": advantage - (said + unpaid + interest),
        "apart": float(apart),
        "why": 1.0 if not apart else 3.0 if said > 0 else 2.0,
    }


def buy_in(given: Given, out: Results, now: dict[str, float], ways: dict[str, dict[str, float]]) -> dict[str, float]:
    """Bags bought in, against those of now; both ways of getting spawn beside them."""
    price, reach = float(given["trials.ready_price"]), 1 - float(given["trials.ready_lost"])
    bags = float(out["harvest.live_a_week"]) * float(given["farm.weeks_worked"])
    ready, ends = over(price, reach), float(given["trials.ready_ends"])
    sides = two_sides(now["in_money"] * bags + ends, ready * bags)
    in_full = now["in_full"] * bags + ends
    hours_only = bool(sides["clear"]) and sides["change"] <= 0 < in_full - sides["spent"]
    compared = price > 0 and bags > 0
    verdict = 5.0 if hours_only else 2 + sides["outcome"]
    return {
        **sides,
        **{f"{way}_{kind}": cost[kind] for way, cost in ways.items() for kind in ("in_money", "in_full")},
        "ready": ready,
        "change_in_full": in_full - sides["spent"],
        "ties_in_money": over(sides["gained"], bags) * reach,
        "ties_in_full": over(in_full, bags) * reach,
        "compared": float(compared),
        "with_hours_only": float(hours_only),
        "verdict": verdict if compared else 1.0,
    }


def other_spawn(given: Given, out: Results, work: Work) -> Results:
    """The farm once more, bought spawn made and made spawn bought, and what hangs on that."""
    made = bool(out["spawn_source.made"])
    other = work({**given, "spawn.supply": "bought" if made else "made on the farm"})
    ways = {"made": out, "bought": other} if made else {"made": other, "bought": out}
    costs = {way: bag_to_fruiting(given, found) for way, found in ways.items()}
    now = costs["made" if made else "bought"]
    parts = {
        "bag_to_fruiting": now,
        "spawn_years": spawn_years(float(given["farm.weeks_worked"]), out, ways["made"], ways["bought"]),
        "buy_in": buy_in(given, out, now, costs),
    }
    return {f"{part}.{name}": value for part, lines in parts.items() for name, value in lines.items()}
