"""Twin of what is tried: another spawn rate, bag or spawn run, more rooms, hours or loads."""

from __future__ import annotations

from tests.twin.farm_twin_decisions import holds_back, stands_full
from tests.twin.farm_twin_ground import ROUNDING, Given, Results, over, whole_up

__all__ = ["trials", "two_sides"]

TENTH = 0.10
"""A difference of no more than this share of the larger side is none."""
MINUTES = 60
WEEK = 7


def two_sides(gained: float, spent: float) -> dict[str, float]:
    """What comes in and what goes out of a change, and whether one is clearly the larger."""
    larger = max(abs(gained), abs(spent))
    apart = over(abs(gained - spent), larger)
    clear = apart > TENTH
    return {
        "gained": gained,
        "spent": spent,
        "change": gained - spent,
        "larger": larger,
        "apart": apart,
        "clear": float(clear),
        "outcome": (2.0 if gained > spent else 1.0) if clear else 0.0,
    }


def differs(one: float, other: float) -> bool:
    """Whether two figures are not the same but for rounding."""
    return abs(one - other) > ROUNDING * other


def kept_less(out: Results) -> float:
    """What a bag taken out of the plan would have left: its crop went to whoever was served last."""
    crop = (float(out["customer_year.last_one"]) - float(out["one_more.grown_in_money"])) * float(
        out["crop.taken_per_filled"]
    )
    return crop - float(out["one_more.bag_in_money"])


def incubation(given: Given, out: Results, days: float) -> dict[str, float]:
    """The incubation room with bags that stay so long."""
    bags, weeks = float(given["farm.bags_filled_a_week"]), float(given["farm.weeks_worked"])
    places = float(out["spawn.bags_inoculated_a_week"]) * days / WEEK + float(out["incubation_room.spawn_places"])
    known = bool(out["incubation_stage.known"])
    ceiling = over(float(out["incubation_room.places"]) * bags, places) if known else 0.0
    rise = max(0.0, ceiling - float(out["incubation_stage.capacity"]))
    usable = known and stands_full(out) and holds_back(out, "incubation")
    more = min(rise, float(out["limits.until_next"])) if usable else 0.0
    fewer = max(0.0, min(bags, float(out["limits.first"])) - ceiling) if known else 0.0
    return {
        "places": places,
        "freed": float(out["incubation_room.taken"]) - places,
        "ceiling": ceiling,
        "bags_more": more,
        "bags_fewer": fewer,
        "more_worth": more * weeks * max(0.0, float(out["one_more.bag_leaves"])),
        "fewer_cost": fewer * weeks * max(0.0, kept_less(out)),
    }


def price_of_spawn(given: Given, out: Results) -> dict[str, float]:
    """A kilogram of spawn, bought and made; where none is used, at the price of bought spawn."""
    used = float(out["spawn.spawn_a_week"])
    usable = over(float(given["spawn.price"]) + float(given["spawn.freight"]), 1 - float(given["spawn.bad_on_arrival"]))
    hours = float(out["one_more.spawn_hours_a_week"]) * float(out["hours.hour_in_money"])
    in_a_bag = float(out["spawn.spawn_per_bag"])
    own = over(float(out["own_spawn_work.goods_cost"]) + hours, used) if used else usable
    bought = over(out["spawn.cost_per_bag_inoculated"], in_a_bag) if in_a_bag else usable
    return {
        "own_weight": own,
        "bought_weight": bought,
        "weight_costs": own if out["spawn_source.made"] else bought,
    }


def spawn_rate(given: Given, out: Results) -> dict[str, float]:
    """More or less spawn in every bag."""
    now, wanted = float(given["spawn.spawn_rate"]), float(given["trials.spawn_rate"])
    a_year = float(out["spawn.bags_inoculated_a_week"]) * float(given["farm.weeks_worked"])
    tried = differs(wanted, now) and wanted > 0 and a_year > 0
    rate = wanted if tried else now
    days = max(1.0, float(given["crop.spawn_run_days"]) - (float(given["trials.days_saved"]) if tried else 0.0))
    room, price = incubation(given, out, days), price_of_spawn(given, out)
    in_a_bag = float(given["bag.wet_fill"]) * rate
    before, after = float(out["spawn.spawn_per_bag"]) * price["weight_costs"], in_a_bag * price["weight_costs"]
    whole = float(out["crop.inoculated_per_filled"])
    bags = a_year + (room["bags_more"] - room["bags_fewer"]) * float(given["farm.weeks_worked"]) * whole
    dearer = (after - before) * bags
    loss_now = float(out["crop.chosen_loss_in_spawn_run"])
    loss = min(1.0, max(0.0, loss_now - (float(given["trials.loss_saved"]) if tried else 0.0)))
    saved = (loss_now - loss) * a_year
    worth = saved * float(out["crop_forgone.in_spawn_run"])
    gained = room["more_worth"] + max(0.0, worth) + max(0.0, -dearer)
    sides = two_sides(gained, room["fewer_cost"] + max(0.0, -worth) + max(0.0, dearer))
    return {
        **room,
        **price,
        **sides,
        "tried": float(tried),
        "rate": rate,
        "days": days,
        "spawn_per_bag": in_a_bag,
        "cost_now": before,
        "cost_tried": after,
        "bags": bags,
        "spawn_more": dearer,
        "loss": loss,
        "bags_saved": saved,
        "saved_worth": worth,
        "verdict": 2 + sides["outcome"] if tried else 1.0,
    }


def run_days(given: Given, out: Results) -> dict[str, float]:
    """Bags that are ready on another day."""
    now, wanted = float(given["crop.spawn_run_days"]), float(given["trials.run_days"])
    tried = differs(wanted, now) and wanted > 0
    days = wanted if tried else now
    room = incubation(given, out, days)
    known = bool(out["incubation_stage.known"])
    loads = whole_up(float(out["incubation_room.loads"]) * whole_up(days) / WEEK)
    peak = loads * float(out["incubation_room.per_load"]) + float(out["incubation_room.spawn_places"])
    bags = room["bags_more"] - room["bags_fewer"]
    apart = over(abs(bags), float(given["farm.bags_filled_a_week"]) + room["bags_more"])
    others = float(out["limits.second"] if holds_back(out, "incubation") else out["limits.first"])
    alone = out["limits.many"] <= (1 if known else 0)
    change = room["more_worth"] - room["fewer_cost"]
    outcome = 0.0 if apart <= ROUNDING else 2.0 if apart > TENTH else 1.0
    return {
        **room,
        "tried": float(tried),
        "days": days,
        "whole_days": whole_up(days),
        "peak_loads": loads,
        "at_peak": peak,
        "short": max(0.0, peak - float(out["incubation_room.places"])) if known else 0.0,
        "others": others,
        "limits_then": float(known and (alone or room["ceiling"] <= others)),
        "bags": bags,
        "change": change,
        "a_day": over(change, now - days),
        "apart": apart,
        "outcome": outcome,
        "verdict": 1.0 if not tried else 2.0 if not known else 3 + outcome,
    }


def bag_tried(given: Given, out: Results) -> dict[str, float]:
    """A bag of another weight, bag by bag."""
    now, wanted = float(given["bag.wet_fill"]), float(given["trials.wet_fill"])
    fill = wanted if wanted > 0 else now
    bigger = fill / now if now else 1.0
    empty = float(given["bag.bag_price"])
    price = float(given["trials.bag_price"]) if given["trials.bag_price_given"] else empty * bigger
    places = float(given["trials.bag_places"]) if given["trials.bag_places_given"] else bigger
    better = float(given["trials.efficiency"])
    other = abs(bigger - 1) > ROUNDING or abs(places - 1) > ROUNDING
    materials = float(out["bag.material_cost"])
    mix = max(0.0, materials - empty - float(given["bag.tie_price"]))
    room = float(out["one_more.steam_goods"]) + float(out["one_more.room_goods"])
    spawn = float(out["one_more.spawn_goods"]) * float(out["crop.inoculated_per_filled"]) * bigger
    filling = over(MINUTES, given["mixing.bags_per_hour"])
    minutes_by_weight = (filling + float(out["one_more.spawn_hours"])) * bigger
    carried = float(out["one_more.bench_hours"]) + float(out["one_more.handling_hours"])
    minutes = minutes_by_weight + float(out["one_more.steaming_hours"]) * places + carried
    dearer_mix = materials + mix * (bigger - 1) + price - empty
    cost = dearer_mix + room * places + spawn + minutes / MINUTES * float(out["hours.hour_in_money"])
    crop = bigger * (1 + better)
    taken = float(out["crop.taken_per_filled"]) * crop
    return {
        "fill": fill,
        "bigger": bigger,
        "price": price,
        "places": places,
        "crop_of_it": crop,
        "dearer": abs(price - empty),
        "other_size": float(other),
        "tried": float(other or abs(price - empty) > ROUNDING * price or better != 0),
        "mix_cost": mix,
        "material_cost": dearer_mix,
        "place_goods": room * places,
        "spawn_goods": spawn,
        "hours_by_weight": minutes_by_weight,
        "bag_hours": minutes,
        "in_money": cost,
        "taken": taken,
        "has_crop": float(taken > 0),
        "weight_costs": float(out["one_more.grown_in_money"]) + over(cost, taken) if taken > 0 else 0.0,
    }


def bag(given: Given, out: Results, tried: dict[str, float]) -> dict[str, float]:
    """That bag for a year, in the same places or for the same kilograms."""
    a_year = float(given["farm.bags_filled_a_week"]) * float(given["farm.weeks_worked"])
    in_places = stands_full(out) and holds_back(out, "steamer", "cooling", "incubation", "fruiting")
    less = tried["crop_of_it"] < tried["places"]
    brings = float(out["customer_year.last_one" if less else "customer_year.next_one"])
    weight, grown = float(out["crop.taken_per_filled"]), float(out["one_more.grown_in_money"])
    left_now = (brings - grown) * weight - float(out["one_more.bag_in_money"])
    left = (brings - grown) * tried["taken"] - tried["in_money"]
    place_days = float(out["crop.live_per_filled"]) * float(out["harvest.days_place_taken"])
    counts = tried["places"] if in_places else tried["crop_of_it"]
    for_one = over(1, counts)
    if in_places:
        sides = two_sides(left * for_one * a_year, left_now * a_year)
    else:
        sides = two_sides(float(out["one_more.bag_in_money"]) * a_year, tried["in_money"] * for_one * a_year)
    compared = bool(tried["has_crop"]) and a_year > 0
    return {
        **sides,
        "by_place": float(in_places),
        "less_to_sell": float(less),
        "brings": brings,
        "left_now": left_now,
        "left_tried": left,
        "place_days": place_days,
        "a_day_now": over(left_now, place_days),
        "a_day_tried": over(left, place_days * tried["places"]),
        "counts": counts,
        "for_one": for_one,
        "bags": float(given["farm.bags_filled_a_week"]) * for_one,
        "compared": float(compared),
        "rule": 2.0 if in_places else 1.0,
        "verdict": 1.0 if not tried["tried"] else 2.0 if not compared else 3 + sides["outcome"],
    }


def widened(out: Results, stage: str, more: float, one: float, cost: float) -> dict[str, float]:
    """So much more of a stage, where one of it brings so much a year."""
    known, full = bool(out[f"{stage}_stage.known"]), stands_full(out)
    limits, up_to = full and holds_back(out, stage), float(out[f"{stage}_widening.up_to"])
    counts = min(more, up_to) if full else 0.0
    sides = two_sides(counts * one, cost if known else 0.0)
    rest = 4.0 if not limits else 5 + sides["outcome"]
    state = 1.0 if more <= 0 else 2.0 if not known else 3.0 if not full else rest
    return {
        **sides,
        "counts": counts,
        "limiting": float(limits),
        "beyond": float(limits and more > up_to * (1 + ROUNDING)),
        "state": state,
        "verdict": state,
    }


def widenings(given: Given, out: Results) -> dict[str, dict[str, float]]:
    """Fruiting places, hours and loads."""
    weeks = float(given["farm.weeks_worked"])
    places, hours, loads = (float(given[f"trials.{what}_more"]) for what in ("places", "hours", "loads"))
    hour = max(0.0, float(out["missing_hour.brings"]))
    own = float(given["trials.hour_cost"]) if given["trials.hour_cost_given"] else float(out["farm.labour_rate"])
    a_load = float(out["steamer_widening.worth"]) * weeks
    room = float(given["trials.places_cost"]) if places > 0 else 0.0
    return {
        "places_trial": widened(out, "fruiting", places, float(out["fruiting_widening.worth"]), room),
        "hours_trial": widened(out, "labour", hours, hour * weeks, hours * own * weeks)
        | {"hour_costs": own, "brought": hour},
        "loads_trial": widened(out, "steamer", loads, a_load, loads * float(given["trials.load_cost"]) * weeks),
    }


def trials(given: Given, out: Results) -> Results:
    """All that can be tried on a farm as it is."""
    other_bag = bag_tried(given, out)
    parts = {
        "one_fewer": {"takes_away": kept_less(out)},
        "spawn_rate_trial": spawn_rate(given, out),
        "run_days_trial": run_days(given, out),
        "bag_tried": other_bag,
        "bag_trial": bag(given, out, other_bag),
        **widenings(given, out),
    }
    return {f"{part}.{name}": value for part, found in parts.items() for name, value in found.items()}
