"""Twin of what the months cost: supplies and who is owed, wages and bills, things bought and replaced."""

from __future__ import annotations

import math

from tests.twin.farm_twin_ground import ROUNDING, Given, Results, over, same
from tests.twin.farm_twin_month_steps import (
    MONTHS_IN_A_YEAR,
    Monthly,
    Months,
    alike,
    changes,
    months_of,
    paid_later,
    running,
)
from tests.twin.farm_twin_year import safety_paid, steamer_used

__all__ = ["bills_by_month", "capital_by_month", "supplies"]

LONG_AGO = 1000.0
"""Months since the last load of a farm that has never steamed."""


def stock_kept(given: Given, out: Results, when: Months) -> Results:
    """Mix, bags and ties are bought so that stock lasts some weeks."""
    a_bag, weeks = float(out["bag.material_cost"]), float(given["opening.supply_weeks"])
    used_up = [bags * a_bag for bags in out["month_totals.filled"]]
    full_week = [float(out["filling.full_bags"][math.floor(end) - 1]) * a_bag for end in when.ends]
    full_week = [float(each) for each in out.get("month_supplies.full_week", full_week)]
    opening = 0.0 if out["farm.is_new"] else float(given["farm.bags_filled_a_week"]) * a_bag * weeks
    bought, stock, there = [], [], opening
    for used, week in zip(used_up, full_week, strict=True):
        bought.append(max(used + week * weeks - there, 0.0))
        there += bought[-1] - used
        stock.append(there)
    return {"used_up": used_up, "full_week": full_week, "opening_stock": opening, "bought": bought, "stock": stock}


def supplies(given: Given, out: Results, when: Months) -> Results:
    """What suppliers bring, and when they are paid."""
    found = stock_kept(given, out, when)
    days, typical = float(given["opening.supplier_days"]), float(out["year.goods"]) / MONTHS_IN_A_YEAR
    lag, whole, part = months_of(days)
    found["purchases"] = [goods + spawn for goods, spawn in zip(found["bought"], out["month_spawn.cost"], strict=True)]
    so_far = running(found["purchases"])
    paid_so_far = paid_later(so_far, days)
    worked = 0.0 if out["farm.is_new"] else typical * lag
    opening = float(given["opening.owed_to_suppliers"]) if given["opening.owed_to_suppliers_given"] else worked
    left = [max(opening - month * typical, 0.0) for month in range(1, len(so_far) + 1)]
    fallen = [-each for each in changes(left, opening)]
    paid = [new + old for new, old in zip(changes(paid_so_far), fallen, strict=True)]
    owed, still = [], opening
    for brought, gone in zip(found["purchases"], paid, strict=True):
        still += brought - gone
        owed.append(still)
    found |= {
        "purchases_so_far": so_far,
        "lag": lag,
        "lag_whole": float(whole),
        "lag_part": part,
        "paid_so_far": paid_so_far,
        "typical": typical,
        "opening_owed": opening,
        "opening_left": left,
        "paid": paid,
        "owed": owed,
    }
    unpaid = [each - gone + rest for each, gone, rest in zip(so_far, paid_so_far, left, strict=True)]
    found["rounding"] = ROUNDING * (abs(sum(found["purchases"])) + abs(opening))
    found["supplies_add_up"] = alike(owed, unpaid, found["rounding"])
    return {f"month_supplies.{name}": value for name, value in found.items()}


def highest_kilowatts(given: Given, out: Results) -> tuple[Monthly, Monthly]:
    """Months since the last load, and how much of the charge for the highest kW is paid."""
    since, peak = [], []
    ago = LONG_AGO if out["farm.is_new"] else 0.0
    for loads in out["month_totals.loads"]:
        ago = 0.0 if loads > 0 else ago + 1
        since.append(ago)
        still = float(given["bills.ratchet_share"]) if ago <= float(given["bills.ratchet_months"]) else 0.0
        peak.append(1.0 if loads > 0 else still)
    return since, peak


def bills_by_month(given: Given, out: Results, when: Months) -> Results:
    """Wages, energy and bills, each in its month."""
    loads, filled = out["month_totals.loads"], out["month_totals.filled"]
    since, peak = highest_kilowatts(given, out)
    a_load, a_month = (
        float(out[f"steamer_in_use.{name}"]) for name in ("energy_cost_per_run", "demand_cost_per_month")
    )
    steaming = [count * a_load + share * a_month for count, share in zip(loads, peak, strict=True)]
    lab = over(out["bills.lab_energy"], out["farm.bags_filled_a_year"])
    rooms = float(out["bills.energy_of_rooms"]) / MONTHS_IN_A_YEAR
    season = when.by_calendar(given["bills.energy_season"])
    energy = [each + bags * lab + rooms * share for each, bags, share in zip(steaming, filled, season, strict=True)]
    piece = float(out["picking.pick_cost"]) * float(out["picking.by_piece"])
    found: Results = {
        "wages": [hours * float(out["farm.labour_rate"]) for hours in out["month_totals.hired"]],
        "piece": [weight * piece for weight in out["month_totals.picked"]],
        "since": since,
        "peak": peak,
        "steaming": steaming,
        "lab_for_a_bag": lab,
        "rooms_a_month": rooms,
        "energy": energy,
        **bills_paid(given, out, when),
    }
    return {f"month_bills.{name}": value for name, value in found.items()}


def bills_paid(given: Given, out: Results, when: Months) -> Results:
    """Bills but energy: in one sum, or those of the list when they are due."""
    one_sum, loads = same(given["bills.counted"], "one sum"), out["month_totals.loads"]
    rows = list(zip(given["bill.amount"], given["bill.due_in"], strict=True))
    always = sum(float(amount) for amount, due_in in rows if due_in == 0)
    always += float(out["year.rooms_by_the_week"]) + float(out["bills.upkeep"]) + float(out["room_energy.water_cost"])
    always += safety_paid(given)
    in_one = float(out["bills.other"]) + float(out["year.rooms_by_the_week"])
    every_month = (in_one if one_sum else always) / MONTHS_IN_A_YEAR
    water, due = [0.0] * len(loads), [0.0] * len(loads)
    if not one_sum:
        water = [count * float(out["steamer_in_use.water_cost_per_run"]) for count in loads]
        due = [
            sum(float(amount) for amount, due_in in rows if month - 1 < due_in <= month) for month in when.month_of_year
        ]
    return {
        "every_month": every_month,
        "listed_every_month": always / MONTHS_IN_A_YEAR,
        "water": water,
        "due": due,
        "bills_paid": [every_month + once + wet for once, wet in zip(due, water, strict=True)],
    }


def items_over_time(given: Given, count: int) -> Results:
    """Items of the list: how old, how often replaced, and what that costs."""
    rows = list(zip(*(given[f"item.{name}"] for name in ("price", "life", "salvage", "bought_in", "age")), strict=True))
    old, replaced = [], []
    for _price, life, _salvage, bought_in, age in rows:
        old.append(min(float(age), float(life)) * MONTHS_IN_A_YEAR if bought_in == 0 else 0.0)
        months = [max(month - float(bought_in) + old[-1], 0.0) for month in range(1, count + 1)]
        replaced.append([float(math.floor(round(over(each, float(life) * MONTHS_IN_A_YEAR), 9))) for each in months])
    net = [float(price) - float(salvage) for price, _, salvage, _, _ in rows]
    so_far = [sum(times[month] * each for times, each in zip(replaced, net, strict=True)) for month in range(count)]
    return {
        "months_old": old,
        "worn_a_month": [over(1, float(life) * MONTHS_IN_A_YEAR) for _, life, _, _, _ in rows],
        "times_replaced": replaced,
        "items_bought": [
            sum(float(row[0]) for row in rows if month - 1 < row[3] <= month) for month in range(1, count + 1)
        ],
        "net_price": net,
        "replaced_so_far": so_far,
        "replacing": changes(so_far),
    }


def worth_at_start(given: Given, out: Results) -> Monthly:
    """What each item is worth in the books when the plan starts."""
    found = []
    losses = out["owned_items.yearly_loss"]
    for row, loss in enumerate(losses):
        price, age, life, left = (float(given[f"item.{name}"][row]) for name in ("price", "age", "life", "salvage"))
        here = given["item.bought_in"][row] == 0
        found.append(max(price - min(age, life) * float(loss), left) if here else 0.0)
    return found


def plant(given: Given, out: Results, count: int) -> Results:
    """Steamer and lab: bought in some month, or owned already."""
    made = float(out["spawn_source.made"])
    bought_in = float(given["capital.steamer_bought_in"]), float(given["capital.lab_bought_in"])
    prices = float(given[f"{steamer_used(given)}.price"]), float(given["make_or_buy.lab_price"]) * made
    lives = float(given[f"{steamer_used(given)}.life"]), float(given["make_or_buy.life"])
    losses = float(out["steamer_in_use_year.yearly_loss"]), float(out["capital.lab_loss"])
    worn_in = [when + life * MONTHS_IN_A_YEAR - (when > 0) for when, life in zip(bought_in, lives, strict=True)]
    span, both = range(1, count + 1), list(zip(prices, bought_in, strict=True))
    bought = [sum(price for price, when in both if when > 0 and month - 1 < when <= month) for month in span]
    steamer, lab = (
        [loss / MONTHS_IN_A_YEAR if first <= month <= last else 0.0 for month in span]
        for loss, first, last in zip(losses, bought_in, worn_in, strict=True)
    )
    return {
        "steamer_worn_in": worn_in[0],
        "lab_worn_in": worn_in[1],
        "steamer_loss": steamer,
        "lab_loss": lab,
        "steamer_price": prices[0],
        "lab_price": prices[1],
        "plant_bought": bought,
        "plant_at_start": sum(price for price, when in zip(prices, bought_in, strict=True) if when == 0),
    }


def capital_by_month(given: Given, out: Results, when: Months) -> Results:
    """What is bought and replaced, what it loses in value, and what is in the books."""
    count = len(when.days)
    found = items_over_time(given, count) | plant(given, out, count)
    owned_from = list(zip(out["owned_items.yearly_loss"], given["item.bought_in"], strict=True))
    found["items_loss"] = [
        sum(float(loss) for loss, first in owned_from if first <= month) / MONTHS_IN_A_YEAR
        for month in range(1, count + 1)
    ]
    found["one_sum"] = float(out["capital.in_one_sum"]) / MONTHS_IN_A_YEAR
    by_list = [sum(each) for each in zip(*(found[f"{what}_loss"] for what in ("items", "steamer", "lab")), strict=True)]
    one_sum = same(given["capital.counted"], "one sum")
    found["loss"] = [found["one_sum"]] * count if one_sum else by_list
    found["bought"] = [one + other for one, other in zip(found["items_bought"], found.pop("plant_bought"), strict=True)]
    found["item_book_value"] = worth_at_start(given, out)
    found["opening_value"] = sum(found["item_book_value"]) + found.pop("plant_at_start")
    value, worth = [], found["opening_value"]
    for new, again, less in zip(found["bought"], found["replacing"], found["loss"], strict=True):
        worth += new + again - less
        value.append(worth)
    found["value"] = value
    return {f"month_capital.{name}": each for name, each in found.items()}
