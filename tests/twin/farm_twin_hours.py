"""Twin of the hours: bags and kilograms of a week are counted through every task, then held against the hours there."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, nothing_left, over, same

__all__ = ["hours", "picking", "tasks"]

MINUTES = 60
GROUPS = {
    "making": ("mixing", "steaming", "inoculating", "spawn", "shelving"),
    "fruiting": ("opening", "clearing", "culling", "round"),
    "harvesting": ("picking", "packing", "selling"),
    "running": ("upkeep", "office"),
}
"""What each task belongs to."""
STEADY = ("check", "washing", "round", "upkeep", "office")
"""Hours typed for the week, however many bags there are."""


def picking(given: Given, out: Results) -> Results:
    """Picking and packing: hours of a week, and what a picker is paid."""
    rate, by_piece = float(given["picking.pick_rate"]), same(given["picking.paid"], "by the piece")
    earned = float(given["picking.piece_rate"]) * rate
    added = max(0.0, float(given["picking.minimum_wage"]) - earned)
    paid = earned + added if by_piece else float(given["farm.wage"])
    cost = paid + paid * float(given["farm.payroll_extra"])
    of_a_kilogram = over(cost, rate)
    found = {
        "by_piece": float(by_piece),
        "piece_earned": earned,
        "top_up": added,
        "paid_an_hour": paid,
        "hour_cost": cost,
        "pick_cost": of_a_kilogram,
        "pick_hours": over(out["harvest.picked_a_week"], rate),
        "pack_hours": over(out["harvest.packed_a_week"], given["picking.pack_rate"]),
        "piece_cost": of_a_kilogram * float(out["harvest.picked_a_year"]) if by_piece else 0.0,
    }
    return {f"picking.{name}": value for name, value in found.items()}


def hours_with_bags(given: Given, out: Results) -> dict[str, float]:
    """Hours of a week in moving bags: onto the shelves, into fruiting, and out again as waste or as lost bags."""
    filled, alive = float(given["farm.bags_filled_a_week"]), float(out["harvest.live_a_week"])
    at_the_end = alive * float(out["crop.standing_at_end"])
    onto_shelves = over(out["spawn.bags_inoculated_a_week"], given["growing_cost.shelving_rate"])
    taken_out = over(at_the_end, given["growing_cost.clearing_rate"])
    return {
        "shelving": onto_shelves + float(given["hours.check_hours"]),
        "opening": over(alive, given["growing_cost.opening_rate"]),
        "clearing": taken_out + float(given["hours.washing_hours"]),
        # whatever was filled and is not there at the end was culled on the way
        "culling": over(filled - at_the_end, given["growing_cost.culling_rate"]),
    }


def hours_by_task(given: Given, out: Results) -> dict[str, float]:
    """Hours of a week in each of the fourteen tasks."""
    loads = float(out["steamer_in_use.loads_a_week"])
    return hours_with_bags(given, out) | {
        "mixing": float(out["mixing.hours_a_week"]),
        "steaming": loads * float(out["steamer_in_use.labour_hours_per_run"]),
        "inoculating": float(out["spawn.bench_hours_a_week"]) + float(out["spawn.set_up_hours_a_week"]),
        "spawn": float(out["spawn_supply.hours_a_week"]),
        "round": float(given["hours.round_hours"]),
        "picking": float(out["picking.pick_hours"]),
        "packing": float(out["picking.pack_hours"]),
        "selling": float(out["customer_year.hours_a_week"]),
        "upkeep": float(given["hours.upkeep_hours"]),
        "office": float(given["hours.office_hours"]),
    }


def tasks(given: Given, out: Results) -> Results:
    """Every task: hours a week, and for each bag, kilogram and load."""
    found: Results = {}
    for task, week in hours_by_task(given, out).items():
        found |= {
            f"{task}_work.hours_a_week": week,
            f"{task}_work.per_bag": MINUTES * over(week, given["farm.bags_filled_a_week"]),
            f"{task}_work.per_taken": MINUTES * over(week, out["harvest.taken_a_week"]),
            f"{task}_work.per_load": over(week, out["steamer_in_use.loads_a_week"]),
        }
    standing = float(out["harvest.live_a_week"]) * float(out["crop.standing_at_end"])
    found["culling_work.lost_a_week"] = float(given["farm.bags_filled_a_week"]) - standing
    return found


def hours_there(given: Given, worked: float) -> dict[str, float]:
    """Hours hired and had, as typed or as the tasks ask for them."""
    own = float(given["hours.own_hours"])
    hired = max(0.0, worked - own)
    if same(given["hours.counted"], "hours paid"):
        hired = float(given["hours.hired_hours"])
    had = hired + own
    return {
        "hired": hired,
        "had": had,
        "not_explained": had - worked,
        "missing": max(0.0, worked - had),
        "enough": float(worked <= had + 1e-9 * had),
    }


def hours_in_money(given: Given, out: Results, worked: float, there: dict[str, float]) -> dict[str, float]:
    """What an hour and a year of hours cost."""
    hired, had = there["hired"], there["had"]
    own, weeks = float(given["hours.own_hours"]), float(given["farm.weeks_worked"])
    rate, own_rate = float(out["farm.labour_rate"]), float(given["hours.own_rate"])
    money = hired * weeks * rate
    hires = worked >= had if same(given["hours.counted"], "hours paid") else worked > own
    return {
        "next_is_hired": float(hires),
        "hour_in_money": rate if hires else 0.0,
        "hour_in_full": rate if hires else own_rate,
        "hired_cost": money,
        "labour_cost": money + float(out["picking.piece_cost"]),
        "own_a_year": own * weeks,
        "own_value": own * weeks * own_rate,
    }


def hours_that_stay(given: Given, out: Results) -> float:
    """Hours of a week that are the same for few bags as for many."""
    steady = sum(float(given[f"hours.{name}_hours"]) for name in STEADY)
    in_the_lab = float(given["own_spawn.weekly_hours"]) if out["spawn_source.made"] else 0.0
    return steady + in_the_lab + float(out["spawn.set_up_hours_a_week"]) + float(out["customer_year.hours_a_week"])


BY_BAG = {
    "early_tasks": ("mixing", "steaming", "inoculating", "spawn", "shelving"),
    "room_tasks": ("opening", "clearing", "culling", "round"),
    "late_tasks": ("picking", "packing", "selling", "upkeep", "office"),
}


def by_the_bag(given: Given, out: Results, needed: float) -> dict[str, float]:
    """Minutes of a bag in three stretches of its life, and whether they make up the week."""
    found = {name: sum(float(out[f"{task}_work.per_bag"]) for task in tasks) for name, tasks in BY_BAG.items()}
    week = sum(found.values()) / MINUTES * float(given["farm.bags_filled_a_week"])
    return found | {"by_the_bag": week, "tasks_add_up": nothing_left(week - needed, week, needed)}


def hours(given: Given, out: Results) -> Results:
    """All hours of a week beside the hours there."""
    week = {group: sum(out[f"{task}_work.hours_a_week"] for task in members) for group, members in GROUPS.items()}
    needed = sum(week.values())
    by_the_piece = out["picking_work.hours_a_week"] if out["picking.by_piece"] else 0.0
    worked, fixed = needed - by_the_piece, hours_that_stay(given, out)
    there = hours_there(given, worked)
    found = {
        **week,
        "needed": needed,
        "by_the_piece": by_the_piece,
        "by_the_hour": worked,
        **there,
        **hours_in_money(given, out, worked, there),
        "fixed": fixed,
        "fixed_rounds": sum(float(given[f"hours.{name}_hours"]) for name in STEADY),
        **by_the_bag(given, out, needed),
        "growing_with_a_bag": over(worked - fixed, given["farm.bags_filled_a_week"]),
    }
    return {f"hours.{name}": value for name, value in found.items()}
