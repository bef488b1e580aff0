"""Twin of the crop, the spawn and the harvest: bags are counted from the filling table to the last pick."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, chosen_rows, nothing_left, over, same, spread, whole_up

__all__ = ["crop", "harvest", "spawn"]

FLUSHES = 4


def kept(given: Given) -> list[int]:
    """The flushes, from 0, that are picked before the bag is dumped."""
    return [flush for flush in range(FLUSHES) if flush + 1 <= given["crop.flushes_kept"]]


def standing(given: Given, opened: float) -> list[float]:
    """Of the bags opened, those still there at each flush."""
    left = opened - opened * given["crop.loss_before_first_pick"]
    found = []
    for flush in range(FLUSHES):
        left = left - left * float(given["crop.loss_between_flushes"][flush])
        found.append(left)
    return found


def steamed_loss(given: Given) -> float:
    """Share of the bags that the steamer in use loses."""
    vessel = same(given["steamer.kind"], "pressure vessel")
    return min(1.0, float(given["vessel.loss_at_steaming" if vessel else "crop.loss_at_steaming"]))


def survivals(given: Given, extra: float) -> Results:
    """What is left of the bags at each step; own spawn loses some more in the spawn run."""
    each = [min(1.0, float(lost) + extra) for lost in given["recipe.loss_in_spawn_run"]]
    by_recipe = sum(each[mix] for mix in chosen_rows(given))
    whole = 1 - steamed_loss(given)
    # of a hundred bags so many bear fruit; the run loses whatever the other two steps do not
    kept_by_others = whole * (1 - given["crop.loss_before_first_pick"])
    from_share = max(0.0, 1 - over(1 - given["crop.never_fruits"], kept_by_others))
    one_share = same(given["crop.losses_given"], "in one share")
    lost = from_share if one_share else by_recipe
    enough = not one_share and same(given["crop.losses_given"], "step by step")
    alive = whole - whole * lost
    first = 1 - given["crop.loss_before_first_pick"]
    still, left = [], 1.0
    for flush in range(FLUSHES):
        left *= 1 - float(given["crop.loss_between_flushes"][flush])
        still.append(left)
    reaching = standing(given, 1.0)
    return {
        "loss_steamed": steamed_loss(given),
        "loss_by_recipe": by_recipe,
        "loss_of_each_recipe": each,
        "left_by_others": kept_by_others,
        "loss_from_share": from_share,
        "chosen_loss_in_spawn_run": lost,
        "share_is_enough": float(enough or 1 - given["crop.never_fruits"] <= kept_by_others),
        "inoculated_per_filled": whole,
        "live_per_inoculated": 1 - lost,
        "live_per_filled": alive,
        "first_pick_per_live": first,
        "flush_number": [1.0, 2.0, 3.0, 4.0],
        "flush_kept": [float(flush in kept(given)) for flush in range(FLUSHES)],
        "flushes_counted": float(len(kept(given))),
        "still_standing": still,
        "reaching": reaching,
        "filled_reaching": standing(given, alive),
        "standing_at_end": reaching[kept(given)[-1]] if kept(given) else reaching[0],
    }


def by_records(given: Given) -> bool:
    """Whether the yield is typed as weight over the bags filled."""
    return bool(given["crop.yield_given"].lower() == "weight picked per bag filled")


def weights_of_one_bag(given: Given) -> list[float]:
    """Kilograms of each flush from a bag that stands there: the first, and the rest in even parts."""
    picked = kept(given)
    later = over(float(given["crop.later_weight"]), len(picked) - 1)
    each = [float(given["crop.first_weight"]), later, later, later]
    return [each[flush] if flush in picked else 0.0 for flush in range(FLUSHES)]


def efficiencies(given: Given, out: Results, steps: Results) -> Results:
    """Fresh weight over dry mix of a bag that is there to be picked."""
    dry, chosen = out["bag.dry_mass"], chosen_rows(given)
    recorded = [over(float(weight), dry) for weight in given["crop.weight_given"]]
    true = [over(recorded[flush], steps["filled_reaching"][flush]) for flush in range(FLUSHES)]
    typed = given["recipe.efficiency_given"]
    weighed = weights_of_one_bag(given)
    by_bag = same(given["crop.yield_given"], "weight picked from a bag")
    by_weight = [over(each, dry) for each in weighed] if by_bag else true
    as_typed = same(given["crop.yield_given"], "biological efficiency")
    table = [
        [by_weight[flush] if not as_typed and mix in chosen else float(typed[mix][flush]) for flush in range(FLUSHES)]
        for mix in range(len(given["recipe.name"]))
    ]
    of_chosen = [sum(table[mix][flush] for mix in chosen) for flush in range(FLUSHES)]
    return {
        "recorded_efficiency": recorded,
        "recorded_efficiency_of_survivors": true,
        "weight_from_a_bag": weighed,
        "each_later_weight": over(float(given["crop.later_weight"]), len(kept(given)) - 1),
        "efficiency_by_bag": [over(each, dry) for each in weighed],
        "efficiency_by_weight": by_weight,
        "efficiency_by_recipe": spread(table),
        "efficiency": of_chosen,
        "efficiency_in_all": sum(of_chosen[flush] for flush in kept(given)),
        "dry_mix_per_live": dry,
    }


def picks(given: Given, dry: float, efficiency: list[float], opened: float) -> list[float]:
    """Kilograms picked in each flush from so many bags opened."""
    there = standing(given, opened)
    return [there[flush] * dry * efficiency[flush] if flush in kept(given) else 0.0 for flush in range(FLUSHES)]


def weights(given: Given, found: Results) -> Results:
    """Kilograms by flush from a bag there, opened, inoculated, filled; then what becomes of them."""
    dry, efficiency = found["dry_mix_per_live"], found["efficiency"]
    from_one = [dry * efficiency[flush] if flush in kept(given) else 0.0 for flush in range(FLUSHES)]
    opened = picks(given, dry, efficiency, 1.0)
    inoculated = picks(given, dry, efficiency, 1 - found["chosen_loss_in_spawn_run"])
    filled = picks(given, dry, efficiency, found["live_per_filled"])
    trimmed = sum(filled) * given["crop.trim"]
    packed = sum(filled) - trimmed
    dried = packed * given["crop.shrink"]
    return {
        "fresh_from_bag_there": from_one,
        "fresh_per_live": opened,
        "fresh_per_inoculated": inoculated,
        "fresh_per_filled": filled,
        "fresh_in_all_flushes": sum(from_one),
        "picked_per_live": sum(opened),
        "picked_per_inoculated": sum(inoculated),
        "picked_per_filled": sum(filled),
        "trimmed_per_filled": trimmed,
        "packed_per_filled": packed,
        "shrunk_per_filled": dried,
        "taken_per_filled": packed - dried,
    }


def crop_verdicts(given: Given, found: Results) -> Results:
    """The checks of the crop."""
    typed = float(given["crop.flushes_kept"])
    known = [bool(each) for each in given["crop.weight_given_given"]]
    missing = [float(flush in kept(given) and not known[flush]) for flush in range(FLUSHES)]
    survive = all(found["filled_reaching"][flush] > 0 for flush in kept(given))
    return {
        "weight_missing": missing,
        "flushes_whole": float(typed in (1.0, 2.0, 3.0, 4.0)),
        "bags_survive": float(survive),
        "some_is_left": float(found["taken_per_filled"] > 0),
        "first_loss_once": float(given["crop.loss_between_flushes"][0] == 0),
        "weights_typed": float(not (by_records(given) and any(missing))),
    }


def crop(given: Given, out: Results) -> Results:
    """Bags lost and weight picked."""
    found = survivals(given, out["spawn_source.extra_loss_counted"])
    found |= efficiencies(given, out, found)
    found |= weights(given, found)
    found |= crop_verdicts(given, found)
    return {f"crop.{name}": value for name, value in found.items()}


def spawn_in_a_bag(given: Given, out: Results) -> Results:
    """Kilograms of spawn in a bag, wet and dry."""
    usual = {"grain spawn": 0.48, "sawdust spawn": 0.6}.get(given["spawn.kind"].lower(), 0.0)
    moisture = float(given["spawn.own_moisture"]) if given["spawn.own_moisture_given"] else usual
    kilograms = given["spawn.spawn_rate"] * given["bag.wet_fill"]
    return {
        "usual_moisture": usual,
        "moisture": moisture,
        "spawn_per_bag": kilograms,
        "spawn_per_dry_mix": over(kilograms, out["bag.dry_mass"]),
        "dry_spawn_per_bag": kilograms - kilograms * moisture,
        "spawn_rate_believable": float(0.01 <= given["spawn.spawn_rate"] <= 0.2),
    }


def spawn_of_a_week(given: Given, out: Results, kilograms: float) -> Results:
    """What is used, what is ordered, and what it costs."""
    paid, good = given["spawn.price"] + given["spawn.freight"], 1 - given["spawn.bad_on_arrival"]
    bags = given["farm.bags_filled_a_week"] * (1 - steamed_loss(given))
    order = over(bags * kilograms, good)
    by_hand = same(given["spawn.counted"], "one figure")
    return {
        "landed_price": paid,
        "usable_price": over(paid, good),
        "worked_cost": kilograms * over(paid, good),
        "cost_per_bag_inoculated": float(given["spawn.own_cost"]) if by_hand else kilograms * over(paid, good),
        "bags_inoculated_a_week": bags,
        "spawn_a_week": bags * kilograms,
        "order_a_week": order,
        "packs_a_week": whole_up(over(order, given["spawn.pack_weight"])),
        "spawn_on_order": order * given["spawn.lead_time"],
    }


def lab_hours(given: Given, out: Results, bags: float) -> Results:
    """Hours in the lab a week."""
    bench = over(bags, given["spawn.bags_per_hour"])
    set_up = given["spawn.set_up_hours"] * given["spawn.lab_days"]
    return {
        "bench_hours_a_week": bench,
        "set_up_hours_a_week": set_up,
        "hours_per_bag": over(bench + set_up, bags),
        "inoculation_cost": over((bench + set_up) * out["farm.labour_rate"], bags),
    }


def spawn(given: Given, out: Results) -> Results:
    """Spawn bought in, and inoculating."""
    found = spawn_in_a_bag(given, out)
    found |= spawn_of_a_week(given, out, found["spawn_per_bag"])
    found |= lab_hours(given, out, found["bags_inoculated_a_week"])
    return {f"spawn.{name}": value for name, value in found.items()}


def days(given: Given) -> Results:
    """A calendar from the day of inoculation."""
    first = given["crop.spawn_run_days"] + given["crop.days_to_first_pick"]
    added, so_far = 0.0, []
    for flush in range(FLUSHES):
        added += float(given["crop.added_days"][flush])
        so_far.append(added)
    last = so_far[kept(given)[-1]] if kept(given) else 0.0
    by_flush = given["crop.days_to_first_pick"] + last
    left_for_fruiting = max(0.0, given["crop.own_days_until_dumped"] - given["crop.spawn_run_days"])
    fruiting = left_for_fruiting if same(given["crop.days_given"], "in one number") else by_flush
    return {
        "added_so_far": so_far,
        "days_to_first_harvest": first,
        "day_of_flush": [first + each for each in so_far],
        "days_by_flush": by_flush,
        "days_in_fruiting": fruiting,
        "days_until_dumped": given["crop.spawn_run_days"] + fruiting,
        "days_place_taken": fruiting + given["crop.turn_round_days"],
        "first_days_once": float(given["crop.added_days"][0] == 0),
    }


def weeks_and_years(given: Given, out: Results) -> Results:
    """Kilograms of a week, and of a year of weeks worked."""
    bags = given["farm.bags_filled_a_week"]
    found = {"live_a_week": bags * out["crop.live_per_filled"]}
    for what in ("picked", "packed", "taken"):
        week = bags * out[f"crop.{what}_per_filled"]
        found |= {f"{what}_a_week": week, f"{what}_a_year": week * given["farm.weeks_worked"]}
    return found


def harvest(given: Given, out: Results) -> Results:
    """Days, and weight a week and a year, and the other ways of quoting a yield."""
    one = out["crop.fresh_in_all_flushes"]
    picked, dry = out["crop.picked_per_filled"], out["bag.dry_mass"]
    spawn_in_bag = out["spawn_supply.dry_spawn_per_bag"]
    gone = out["crop.trimmed_per_filled"] + out["crop.shrunk_per_filled"] + out["crop.taken_per_filled"]
    found = {
        **days(given),
        **weeks_and_years(given, out),
        "share_of_crop": [over(weight, picked) for weight in out["crop.fresh_per_filled"]],
        "efficiency_with_spawn": over(one, dry + spawn_in_bag),
        "share_of_wet_weight": over(one, given["bag.wet_fill"]),
        "efficiency_of_all_bags": over(picked, dry),
        "picked_unaccounted": picked - gone,
        "picked_adds_up": nothing_left(picked - gone, picked, gone),
        "efficiency_believable": float(0.2 <= out["crop.efficiency_in_all"] <= 2),
    }
    return {f"harvest.{name}": value for name, value in found.items()}
