"""Twin of one bag and one kilogram more, of what limits the bags of a week, and of the busiest day."""

from __future__ import annotations

import math

from tests.twin.farm_twin_ground import Given, Results, over, same

__all__ = ["busiest", "floor_price", "limits", "one_more"]

MONTHS = range(12)
DAYS_IN_A_WEEK = 7
MINUTES = 60
STAGES = ("mixing", "steamer", "cooling", "bench", "incubation", "fruiting", "labour", "cold_room", "customer")
"""In the order in which a bag meets them; of two that are equally narrow the first counts."""
LAST_OF_ALL = -1e14
"""Where a stage stands of which nothing is known, less its place among the nine."""


def goods_of_a_bag(given: Given, out: Results) -> dict[str, float]:
    """Materials, spawn, and the energy and water of steaming, of one bag filled."""
    spawn = float(out["spawn.cost_per_bag_inoculated"])
    if out["spawn_source.made"]:
        week = float(out["own_spawn_work.materials_in_all"]) + float(out["own_spawn_work.cooking_cost"])
        spawn = over(week, out["spawn.bags_inoculated_a_week"])
    load = float(out["steamer_in_use.energy_cost_per_run"]) + float(out["steamer_in_use.water_cost_per_run"])
    loads = over(out["steamer_in_use.loads_a_week"], given["farm.bags_filled_a_week"])
    steaming = load * loads
    rooms = float(out["growing_cost.incubation_room_cost"]) * float(out["crop.inoculated_per_filled"])
    rooms += float(out["growing_cost.fruiting_room_cost"]) * float(out["crop.live_per_filled"])
    bag = float(out["bag.material_cost"]) + steaming + spawn * float(out["crop.inoculated_per_filled"]) + rooms
    own = float(out["own_spawn_work.materials_in_all"]) + float(out["own_spawn_work.cooking_cost"])
    return {
        "own_spawn_goods": over(own, out["spawn.bags_inoculated_a_week"]),
        "spawn_goods": spawn,
        "loads_for_a_bag": loads,
        "steam_goods": steaming,
        "room_goods": rooms,
        "bag_goods": bag,
    }


def hours_of_a_bag(given: Given, out: Results) -> dict[str, float]:
    """Minutes of one bag filled, from the mixer to the heap; handling is shelving, opening and clearing."""
    whole, alive = float(out["crop.inoculated_per_filled"]), float(out["crop.live_per_filled"])
    at_the_end = alive * float(out["crop.standing_at_end"])
    cleared = MINUTES * over(at_the_end, given["growing_cost.clearing_rate"])
    culled = MINUTES * over(1 - at_the_end, given["growing_cost.culling_rate"])
    handling = MINUTES * over(whole, given["growing_cost.shelving_rate"])
    handling += MINUTES * over(alive, given["growing_cost.opening_rate"]) + cleared + culled
    filled = float(given["farm.bags_filled_a_week"])
    steaming = over(
        float(out["steamer_in_use.labour_hours_per_run"]) * float(out["steamer_in_use.loads_a_week"]), filled
    )
    bench = over(whole, given["spawn.bags_per_hour"])
    start = MINUTES * (float(out["mixing.hours_per_bag"]) + steaming + bench)
    lab = float(out["own_spawn_work.hours_a_week"]) - float(given["own_spawn.weekly_hours"])
    spawn = MINUTES * over(max(0.0, lab), filled) if out["spawn_source.made"] else 0.0
    return {
        "steaming_hours": MINUTES * steaming,
        "bench_hours": MINUTES * bench,
        "shelving_hours": MINUTES * over(whole, given["growing_cost.shelving_rate"]),
        "opening_hours": MINUTES * over(alive, given["growing_cost.opening_rate"]),
        "lost": 1 - at_the_end,
        "spawn_hours_a_week": max(0.0, lab) if out["spawn_source.made"] else 0.0,
        "standing": at_the_end,
        "starting_hours": start,
        "clearing_hours": cleared,
        "culling_hours": culled,
        "handling_hours": handling,
        "spawn_hours": spawn,
        "bag_hours": start + handling + spawn,
    }


def work_of_a_kilogram(given: Given, out: Results) -> dict[str, float]:
    """Hours and piece money of one kilogram taken."""
    taken, picked = float(out["crop.taken_per_filled"]), float(out["crop.picked_per_filled"])
    by_piece = bool(out["picking.by_piece"])
    by_the_hour = over(over(picked, given["picking.pick_rate"]), taken)
    return {
        "picking_a_bag": 0.0 if by_piece else MINUTES * over(picked, given["picking.pick_rate"]),
        "packing_a_bag": MINUTES * over(out["crop.packed_per_filled"], given["picking.pack_rate"]),
        "picking_hours": 0.0 if by_piece else MINUTES * by_the_hour,
        "packing_hours": MINUTES * over(over(out["crop.packed_per_filled"], given["picking.pack_rate"]), taken),
        "piece": over(float(out["picking.pick_cost"]) * picked, taken) if by_piece else 0.0,
    }


def floor_of(given: Given, out: Results, row: int, grown: float, to_fill: float) -> dict[str, float]:
    """The price at one customer's, as typed, at which a kilogram pays for itself."""
    price, inside, fee, unsold, packing = (
        float(given[f"customer.{name}"][row]) for name in ("price", "tax_inside", "fee", "unsold", "packing")
    )
    without_tax = over(1, 1 + inside) if out["customers.registered"] else 1.0
    waiting = float(given["customer.days_to_pay"][row]) / 365 * float(out["steaming.yearly_rate"])
    of_price = without_tax - without_tax * waiting - fee
    share = of_price * (1 - min(unsold, 1.0))
    enough = (to_fill + packing) / share if share > 0 else 0.0
    leaves = price * share - packing
    used = given["customer.name"][row] != ""
    return {
        "waiting": waiting,
        "share_kept_of_price": of_price,
        "share_kept": share,
        "grown": (grown + packing) / share if share > 0 else 0.0,
        "to_fill": enough,
        "leaves": leaves,
        "pays": float(used and share > 0 and leaves >= to_fill),
    }


def one_more(given: Given, out: Results) -> Results:
    """What one bag more and one kilogram more cost and leave."""
    goods, bag, work = goods_of_a_bag(given, out), hours_of_a_bag(given, out), work_of_a_kilogram(given, out)
    taken = float(out["crop.taken_per_filled"])
    found: Results = {**goods, **bag, **work}
    for way in ("money", "full"):
        minute = float(out[f"hours.hour_in_{way}"]) / MINUTES
        filled = goods["bag_goods"] + bag["bag_hours"] * minute
        grown = work["piece"] + work["picking_hours"] * minute + work["packing_hours"] * minute
        found[f"bags_in_{way}"] = over(filled, taken)
        found |= {
            f"bag_in_{way}": filled,
            f"grown_in_{way}": grown,
            f"to_fill_in_{way}": grown + over(filled, taken),
        }
    sold_for = (float(out["customer_year.next_one"]) - found["grown_in_money"]) * taken
    found["bag_leaves"] = sold_for - found["bag_in_money"]
    return {f"one_more.{name}": value for name, value in found.items()}


def floor_price(given: Given, out: Results) -> Results:
    """Floor prices of all customers, and what is drawn of them."""
    grown, to_fill = float(out["one_more.grown_in_money"]), float(out["one_more.to_fill_in_money"])
    rows = [floor_of(given, out, row, grown, to_fill) for row in range(len(given["customer.name"]))]
    found: Results = {name: [row[name] for row in rows] for name in rows[0]}
    found["net_drawn"] = out["customer_year.net_per_taken"]
    found["cost_drawn"] = [to_fill for _ in given["customer.name"]]
    return {f"floor_price.{name}": value for name, value in found.items()}


def by_the_work(given: Given, out: Results) -> dict[str, tuple[bool, float, float]]:
    """Mixing, steaming, cooling, bench and hours: known, bags filled a week, and bags that one more makes room for."""
    bags = float(given["farm.bags_filled_a_week"])
    to_fruit = over(bags, out["to_steam.places"])
    days, at_the_bench = float(given["spawn.lab_days"]), float(given["spawn.bags_per_hour"])
    at_the_bench_filled = over(at_the_bench, out["crop.inoculated_per_filled"])
    mixed = float(given["mixing.bags_per_hour"])
    spare_hours = max(0.0, float(out["hours.had"]) - float(out["hours.fixed"]))
    for_a_bag = out["hours.growing_with_a_bag"]
    return {
        "mixing": (bool(given["limits.mixing_hours_given"]), float(given["limits.mixing_hours"]) * mixed, mixed),
        "steamer": (
            bool(same(given["steamer.kind"], "pressure vessel") or given["farm.bags_per_load_given"]),
            float(out["steamer_in_use.bags_possible"]) * to_fruit,
            float(out["steamer_in_use.bags_per_run"]) * to_fruit,
        ),
        "cooling": (
            bool(given["limits.cooling_places_given"]),
            float(given["limits.cooling_places"]) * days * to_fruit,
            days * to_fruit,
        ),
        "bench": (
            bool(given["limits.bench_hours_given"]),
            float(given["limits.bench_hours"]) * days * at_the_bench_filled,
            at_the_bench_filled,
        ),
        "labour": (
            same(given["hours.counted"], "hours paid") and for_a_bag > 0,
            over(spare_hours, for_a_bag),
            over(1, for_a_bag),
        ),
    }


def by_the_room(given: Given, out: Results, stock: float, saleable: float) -> dict[str, tuple[bool, float, float]]:
    """Both rooms, the cold room and the customers, in the same way."""
    bags, taken = float(given["farm.bags_filled_a_week"]), out["crop.taken_per_filled"]
    found = {}
    for room in ("incubation", "fruiting"):
        there, wanted = float(out[f"{room}_room.places"]), out[f"{room}_room.taken"]
        found[room] = (bool(out[f"{room}_room.known"]) and wanted > 0, over(there * bags, wanted), over(bags, wanted))
    held = float(given["limits.cold_room"])
    found["cold_room"] = (
        bool(given["limits.cold_room_given"]) and stock > 0,
        over(bags * held, stock),
        over(bags, stock),
    )
    anyone = any(name != "" for name in given["customer.name"])
    found["customer"] = (anyone and taken > 0, over(saleable, taken), over(1, taken))
    return found


def place_in_line(capacity: float, position: int) -> float:
    """A number that is larger the fewer bags a stage lets through, to a thousandth of a bag, and the earlier it comes."""
    thousandths = round(abs(capacity) * 1000, 9)
    whole = math.floor(thousandths)
    whole += 1 if thousandths - whole >= 0.5 else 0
    return -math.copysign(whole, capacity) * 9 - position


def stage_lines(ways: dict[str, tuple[bool, float, float]]) -> dict[str, dict[str, float]]:
    """Every stage: whether it is known, what it can do, what one more of it makes room for, its place in line."""
    found = {}
    for position, stage in enumerate(STAGES, start=1):
        known, capacity, frees = ways[stage]
        found[stage] = {
            "known": float(known),
            "capacity": capacity if known else 0.0,
            "frees": frees if known else 0.0,
            "size": -capacity * 1000 if known else 0.0,
            "rank_key": place_in_line(capacity, position) if known else LAST_OF_ALL - position,
        }
    return found


def narrowest(given: Given, out: Results, stages: dict[str, dict[str, float]], edge: float) -> dict[str, float]:
    """The narrowest stage and the next, and how far it may be widened."""
    known = sorted((line for line in stages.values() if line["known"]), key=lambda line: -line["rank_key"])
    first = known[0]["capacity"] if known else 0.0
    second = known[1]["capacity"] if len(known) >= 2 else 0.0
    bags = float(given["farm.bags_filled_a_week"])
    sold_at_one_price = bags + edge
    hold = min(second, sold_at_one_price) if len(known) >= 2 else sold_at_one_price
    buyers = stages["customer"]
    by_buyers = bool(buyers["known"] and buyers["capacity"] <= first)
    until = max(0.0, (second if by_buyers else hold) - first)
    leaves = max(0.0, float(out["one_more.bag_leaves"]))
    return {
        "known_making": sum(stages[stage]["known"] for stage in STAGES[:4]),
        "known_after": sum(stages[stage]["known"] for stage in STAGES[6:]),
        "many": float(len(known)),
        "first": first,
        "second": second,
        "first_name": 1.0 + list(stages.values()).index(known[0]) if known else 0.0,
        "second_name": 1.0 + list(stages.values()).index(known[1]) if len(known) >= 2 else 0.0,
        "customers_limit": float(by_buyers),
        "at_one_price": sold_at_one_price,
        "next_hold": hold,
        "until_next": until,
        "worth": leaves * until * float(given["farm.weeks_worked"]),
        "first_over_plan": over(first, bags),
        "spare": over(first, bags) - 1 if known else 0.0,
        "plan_fits": float(not known or bags <= first + 1e-9 * bags),
    }


BY_THE_YEAR = ("cooling", "incubation", "fruiting", "cold_room")
"""Stages of which one more is there all year; the others count by the hour, the load and the kilogram."""


def widened(given: Given, out: Results, stages: dict[str, dict[str, float]], whole: dict[str, float]) -> Results:
    """What one more of each stage is worth, and how many more before something else holds the farm back."""
    leaves, weeks = max(0.0, float(out["one_more.bag_leaves"])), float(given["farm.weeks_worked"])
    found: Results = {}
    for stage, line in stages.items():
        times = weeks if stage in BY_THE_YEAR else 1.0
        holds_back = line["known"] and line["capacity"] <= whole["first"]
        found[f"{stage}_widening.worth"] = leaves * line["frees"] * times
        found[f"{stage}_widening.up_to"] = over(whole["until_next"], line["frees"]) if holds_back else 0.0
    for_a_new_customer = float(out["customer_year.last_one"]) - float(out["one_more.to_fill_in_money"])
    found["customer_widening.worth"] = max(0.0, for_a_new_customer) * stages["customer"]["known"]
    return found


def by_customer(given: Given, out: Results, rows: int) -> dict[str, list[float]]:
    """Kilograms of a year that each customer takes at a price that pays, and that it would take next."""
    room, left = out["customer_months.room_a_week"], out["customer_months.still_takes"]
    pays, follows = out["floor_price.pays"], out["customer_months.takes_next"]
    used = [name != "" for name in given["customer.name"]]
    most = [sum(map(float, room[row])) / len(MONTHS) if used[row] else 0.0 for row in range(rows)]
    weeks = float(given["farm.weeks_worked"])
    return {
        "room_by_customer": most,
        "saleable_by_customer": [most[row] * weeks if pays[row] else 0.0 for row in range(rows)],
        "next_room": [sum(float(left[row][month]) for month in MONTHS if follows[row][month]) for row in range(rows)],
    }


def limits(given: Given, out: Results) -> Results:
    """What limits the bags filled in a week."""
    weeks, rows = given["farm.weeks_worked"], len(given["customer.name"])
    each = by_customer(given, out, rows)
    stock = float(out["harvest.packed_a_week"]) * float(given["limits.days_kept"]) / DAYS_IN_A_WEEK
    saleable = sum(most for most, pays in zip(each["room_by_customer"], out["floor_price.pays"], strict=True) if pays)
    stages = stage_lines(by_the_work(given, out) | by_the_room(given, out, stock, saleable))
    edge = over(sum(each["next_room"]), weeks * out["crop.taken_per_filled"])
    whole = narrowest(given, out, stages, edge)
    held: Results = {
        "share_to_fruit": over(given["farm.bags_filled_a_week"], out["to_steam.places"]),
        "stock": stock,
        "saleable": saleable,
        "customers": float(sum(name != "" for name in given["customer.name"])),
        "edge": edge,
        **each,
    }
    found: Results = {f"limits.{name}": value for name, value in whole.items()}
    found |= {f"capacities.{name}": value for name, value in held.items()}
    for stage, line in stages.items():
        found |= {f"{stage}_stage.{name}": value for name, value in line.items()}
    return found | widened(given, out, stages, whole)


def busiest(given: Given, out: Results) -> Results:
    """The busiest day: a lab day on which most is picked."""
    days, share = float(given["spawn.lab_days"]), float(given["picking.busiest_share"])
    bags = over(out["spawn.bags_inoculated_a_week"], days)
    bench = over(bags, given["spawn.bags_per_hour"])
    in_the_lab = bench + float(given["spawn.set_up_hours"]) if days > 0 else 0.0
    harvesting = share * float(out["picking.pick_hours"]) + share * float(out["picking.pack_hours"])
    day = in_the_lab + harvesting + float(given["hours.round_hours"]) / DAYS_IN_A_WEEK
    cold = float(out["harvest.packed_a_week"]) * share * float(given["limits.days_kept"])
    found = {
        "busiest_of_week": share,
        "lab_day_bags": bags,
        "lab_bench_hours": bench,
        "lab_day_hours": in_the_lab,
        "harvest_hours": harvesting,
        "hours": day,
        "cold": cold,
        "day_is_long_enough": float(not given["limits.day_hours_given"] or day <= given["limits.day_hours"]),
        "cold_room_holds": float(not given["limits.cold_room_given"] or cold <= given["limits.cold_room"]),
    }
    return {f"busiest_day.{name}": value for name, value in found.items()}
