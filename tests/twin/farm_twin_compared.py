"""Twin of four comparisons: a filling machine, another bag, three fuels, two buildings."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, over
from tests.twin.farm_twin_year import owned

__all__ = ["compared"]

KNOWN_TO = 0.10
"""Of the larger of two; nearer is too close to call."""
DAYS = 365


def thing(given: Given, out: Results, table: str) -> dict[str, float]:
    """What a thing of this table costs a year to own."""
    price, left, life = (float(given[f"{table}.{name}"]) for name in ("price", "salvage", "life"))
    return owned(price, left, life, float(out["steaming.yearly_rate"]))


def near(difference: float, *sides: float) -> bool:
    """Whether two sides differ by less than they are known to."""
    return abs(difference) <= max(sides) * KNOWN_TO


def machine(given: Given, out: Results) -> dict[str, float]:
    """Hours saved, hired ones first, beside a year's cost."""
    bags, weeks = float(given["farm.bags_filled_a_week"]), float(given["farm.weeks_worked"])
    found = thing(given, out, "filling_machine")
    with_it = over(bags, given["filling_machine.bags_per_hour"])
    saved = over(bags, given["mixing.bags_per_hour"]) - with_it
    hired = min(saved, float(out["hours.hired"]))
    pay = hired * weeks * float(out["farm.labour_rate"])
    own = (saved - hired) * weeks * float(given["hours.own_rate"])
    cost = found["owning_cost"] + float(given["filling_machine.upkeep"])
    close = near(pay + own - cost, pay + own, cost)
    verdict = 1 if close else 4 if pay > cost and pay + own > cost else 3 if pay > cost or pay + own > cost else 2
    return found | {
        "hours_with": with_it,
        "saved": saved,
        "hired_saved": hired,
        "pay_saved": pay,
        "own_saved": own,
        "yearly_cost": cost,
        "leaves": pay - cost,
        "leaves_in_full": pay + own - cost,
        "hours_to_pay": over(cost, weeks * float(out["farm.labour_rate"])),
        "larger": max(pay + own, cost),
        "close": float(close),
        "verdict": float(verdict),
    }


def other_bag(given: Given, out: Results) -> dict[str, float]:
    """Money saved on bags, and lost again with them."""
    bags = float(given["farm.bags_filled_a_week"]) * float(given["farm.weeks_worked"])
    price, now = float(given["cheaper_bag.price"]), float(given["bag.bag_price"])
    early, late = float(given["cheaper_bag.more_at_steaming"]), float(given["cheaper_bag.more_in_spawn_run"])
    whole, alive = 1 - float(out["crop.loss_steamed"]), 1 - float(out["crop.chosen_loss_in_spawn_run"])
    saved, at_steaming = (now - price) * bags, early * bags * float(out["crop_forgone.at_steaming"])
    a_point = bags * whole * float(out["crop_forgone.in_spawn_run"])
    lost = at_steaming + late * a_point
    close = near(saved - lost, abs(saved), abs(lost))
    left, then = max(0.0, whole - early), max(0.0, alive - late)
    return {
        "saved": saved,
        "steaming_cost": at_steaming,
        "spawn_run_cost": late * a_point,
        "losses_cost": lost,
        "leaves": saved - lost,
        "price_per_live": over(now, whole * alive),
        "left_after_steaming": left,
        "left_after_spawn_run": then,
        "other_per_live": over(price, left * then),
        "left_in_all": left * then,
        "all_lost_in_spawn_run": a_point,
        "larger": max(abs(saved), abs(lost)),
        "loss_to_turn": over(saved - at_steaming, a_point),
        "close": float(close),
        "verdict": 1.0 if close else 3.0 if saved > lost else 2.0,
    }


def fuels(out: Results) -> dict[str, float]:
    """The heat of a load by each."""
    used = "vessel" if out["vessel_heat.in_use"] else "cabinet"
    share = float(out[f"{used}_run.efficiency"])
    heat = float(out[f"{used}.energy_per_run"]) * share
    electric = heat * float(out["energy.electric_steam"]) + float(out[f"{used}.demand_cost_per_run"])
    gas, propane = heat * float(out["energy.gas_steam"]), heat * float(out["energy.propane_steam"])
    cheapest = min(electric, gas, propane)
    return {
        "efficiency": share,
        "heat": heat,
        "electric": electric,
        "gas": gas,
        "propane": propane,
        "cheapest": cheapest,
        "verdict": 2.0 if gas == cheapest else 3.0 if propane == cheapest else 1.0,
    }


def a_building(given: Given, out: Results, table: str) -> dict[str, float]:
    """Places on its floor, and what one costs a day."""
    found = thing(given, out, table)
    shelved = float(given["fruiting_room.racked"]) * float(given["fruiting_room.shelves"])
    places = float(given[f"{table}.floor"]) * shelved * float(given["fruiting_room.density"])
    yearly = float(given[f"{table}.rent"]) + found["owning_cost"]
    return found | {"places": places, "yearly": yearly, "place_day": over(yearly, places * DAYS)}


def compared(given: Given, out: Results) -> Results:
    """All four."""
    tables = {"filling_machine": machine(given, out), "cheaper_bag": other_bag(given, out), "steam_fuel": fuels(out)}
    tables |= {table: a_building(given, out, table) for table in ("first_building", "second_building")}
    first, second = tables["first_building"]["place_day"], tables["second_building"]["place_day"]
    both = first > 0 and second > 0
    apart = second - first if both else 0.0
    close = near(apart, first, second)
    verdict = 1 if not both else 2 if close else 4 if apart > 0 else 3
    tables["building"] = {
        "both_given": float(both),
        "difference": apart,
        "dearer": max(first, second),
        "close": float(close),
        "verdict": float(verdict),
    }
    return {f"{table}.{name}": value for table, found in tables.items() for name, value in found.items()}
