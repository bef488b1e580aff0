"""Twin of own spawn: from the bags back to the plate, what is started, how long it takes and what it costs."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, agree, chosen_rows, over, same, whole_up

__all__ = ["own_spawn", "own_spawn_way", "own_spawn_work", "spawn_source", "spawn_supply", "to_steam"]

SAWDUST, SECOND_GRAIN, GRAIN, PLATE = range(4)
GENERATIONS = (SAWDUST, SECOND_GRAIN, GRAIN, PLATE)
"""Counted back from the bags, as the rows stand."""
DAYS_IN_A_WEEK = 7


def is_made(given: Given) -> bool:
    """Whether the farm makes its spawn."""
    return same(given["spawn.supply"], "made on the farm")


def spawn_source(given: Given, out: Results) -> Results:
    """Bought or made, and the bags that own spawn loses more."""
    made = is_made(given)
    return {
        "spawn_source.made": float(made),
        "spawn_source.extra_loss_counted": float(given["spawn.extra_loss"]) if made else 0.0,
    }


def ways(given: Given) -> list[bool]:
    """Which of the four generations there are on the route chosen."""
    route = given["own_spawn.route"].lower()
    return [route.endswith("then sawdust spawn"), route.startswith("two grains"), True, True]


def ages(given: Given) -> Results:
    """The generations counted back from the bags and forth from the plate."""
    used = ways(given)
    back = [float(sum(used[: row + 1])) for row in GENERATIONS]
    forth = [float(sum(used) - sum(used[: row + 1])) for row in GENERATIONS]
    return {
        "has_sawdust": float(used[SAWDUST]),
        "has_second_grain": float(used[SECOND_GRAIN]),
        "step": [1.0, 2.0, 3.0, 4.0],
        "is_sawdust": [1.0, 0.0, 0.0, 0.0],
        "is_second_grain": [0.0, 1.0, 0.0, 0.0],
        "is_grain": [0.0, 0.0, 1.0, 0.0],
        "used_here": [float(each) for each in used],
        "used_so_far": back,
        "generation_number": forth,
        "generations": float(sum(used[:PLATE])),
        "few_generations": float(not is_made(given) or sum(used[:PLATE]) <= given["own_spawn.generation_limit"]),
    }


def own_spawn_way(given: Given, out: Results) -> Results:
    """The way from plate to bags, and how far one of each goes."""
    used = ways(given)
    grain = given["own_spawn.grain_bag_mass"] * given["own_spawn.usable_share"]
    sawdust = given["own_spawn.sawdust_bag_mass"] * given["own_spawn.usable_share"]
    last = sawdust if used[SAWDUST] else grain
    usual = 0.6 if used[SAWDUST] else 0.48
    water = float(given["own_spawn.own_moisture"]) if given["own_spawn.own_moisture_given"] else usual
    in_a_sawdust_bag = given["own_spawn.grain_share"] * given["own_spawn.sawdust_bag_mass"]
    inoculating = over(grain, in_a_sawdust_bag)
    found = {
        **ages(given),
        "grain_in_sawdust": in_a_sawdust_bag,
        "mix_in_sawdust": given["own_spawn.sawdust_bag_mass"] * (1 - given["own_spawn.grain_share"]),
        "grain_from_one": [
            0.0,
            float(given["own_spawn.grain_from_grain"]),
            float(given["own_spawn.grain_from_plate"]),
            0.0,
        ],
        "usable_in_grain": grain,
        "usable_in_sawdust": sawdust,
        "usable_in_last": last,
        "bags_from_one": over(last, out["spawn.spawn_per_bag"]),
        "sawdust_from_grain": inoculating,
        "started_from_one": [
            inoculating,
            float(given["own_spawn.grain_from_grain"]),
            float(given["own_spawn.grain_from_plate"]),
            0.0,
        ],
        "usual_moisture": usual,
        "moisture": water,
        "dry_spawn_per_bag": out["spawn.spawn_per_bag"] * (1 - water),
    }
    return {f"own_spawn_way.{name}": value for name, value in found.items()}


def one_generation(given: Given, row: int, wanted: float) -> dict[str, float]:
    """What has to be started of one generation for so many good ones a week."""
    weeks = float(given["own_spawn.batch_weeks"][row])
    needed = over(wanted, 1 - given["own_spawn.failure"][row])
    batch = whole_up(needed * weeks)
    lasting = over(batch, needed)
    keeping = given["own_spawn.shelf_life"][row] / DAYS_IN_A_WEEK
    keeps = lasting <= keeping or agree(lasting, keeping)
    in_use = lasting if keeps else keeping
    started = over(batch, in_use)
    return {
        "wanted": wanted,
        "needed": needed,
        "needed_for_batch": needed * weeks,
        "started_in_batch": batch,
        "left_over": batch - needed * weeks,
        "weeks_lasting": lasting,
        "keeps": float(keeps),
        "weeks_keeping": keeping,
        "weeks_used": in_use,
        "started": started,
        "thrown_out": over(batch - needed * in_use, in_use) if in_use < lasting else 0.0,
        "batches": over(started, batch),
    }


def chain(given: Given, out: Results) -> dict[str, list[float]]:
    """From the bags of a week back to the plates, one generation after the other."""
    used, from_one = ways(given), out["own_spawn_way.started_from_one"]
    asked = over(out["spawn.bags_inoculated_a_week"], out["own_spawn_way.bags_from_one"])
    found: dict[str, list[float]] = {}
    for row in GENERATIONS:
        line = one_generation(given, row, asked if used[row] else 0.0)
        line["taken_from_before"] = over(line["started"], from_one[row])
        asked = line["taken_from_before"] if used[row] else asked
        line["wanted_before"] = asked
        for name, value in line.items():
            found.setdefault(name, []).append(value)
    return found


def calendar(given: Given) -> Results:
    """Days from starting each generation to the day the bags are inoculated."""
    used, before = ways(given), 0.0
    taken, back = [], []
    for row in GENERATIONS:
        taken.append(given["own_spawn.run_days"][row] + given["own_spawn.buffer_days"] if used[row] else 0.0)
        before += taken[-1]
        back.append(before)
    return {"days_taken": taken, "days_before": back, "lead_days": before, "lead_weeks": before / DAYS_IN_A_WEEK}


def own_spawn(given: Given, out: Results) -> Results:
    """What to start in a week, and the places it takes in the steamer."""
    found: Results = {**chain(given, out), **calendar(given)}
    bags_of_sawdust = found["started"][SAWDUST]
    in_steamer = ways(given)[SAWDUST] and same(given["own_spawn.sawdust_cooked_in"], "steamer")
    steamed = bags_of_sawdust if in_steamer else 0.0
    beside_each = over(steamed, given["farm.bags_filled_a_week"])
    used = ways(given)
    too_old = sum(used[row] and not found["keeps"][row] for row in GENERATIONS)
    found |= {
        "sawdust_started": bags_of_sawdust,
        "mix_a_week": bags_of_sawdust * out["own_spawn_way.mix_in_sawdust"],
        "steamed": steamed,
        "places_per_bag": beside_each,
        "too_old": float(too_old),
        "young_enough": float(not is_made(given) or too_old == 0),
    }
    return {f"own_spawn.{name}": value for name, value in found.items()}


def to_steam(given: Given, out: Results) -> Results:
    """What a week brings to the steamer: bags, and spawn that stands between them."""
    spawn = out["own_spawn.steamed"] if is_made(given) else 0.0
    return {"to_steam.spawn": spawn, "to_steam.places": given["farm.bags_filled_a_week"] + spawn}


def lab_hours(given: Given, out: Results) -> Results:
    """Hours of the lab in a week and a year."""
    started, batches = out["own_spawn.started"], out["own_spawn.batches"]
    making = [over(started[row], given["own_spawn.rate"][row]) for row in GENERATIONS]
    setting_up = [batches[row] * given["own_spawn.set_up_hours"][row] for row in GENERATIONS]
    worked = sum(making) + sum(setting_up) + given["own_spawn.weekly_hours"]
    own = given["own_spawn.own_hours_given"]
    hours = float(given["own_spawn.own_hours"]) if own else worked
    return {
        "hours_of_one": [over(1.0, given["own_spawn.rate"][row]) for row in GENERATIONS],
        "making_hours": making,
        "setting_up_hours": setting_up,
        "making_hours_in_all": sum(making),
        "worked_hours": worked,
        "hours_a_week": hours,
        "hours_a_year": hours * given["farm.weeks_worked"],
        "growing_share_of_hours": over(sum(making), worked),
    }


def cooking(given: Given, out: Results) -> Results:
    """Runs of the pressure cooker."""
    cooked = [same(given["own_spawn.sawdust_cooked_in"], "pressure cooker"), True, True, True]
    runs = []
    for row in GENERATIONS:
        batch = out["own_spawn.started_in_batch"][row]
        runs.append(whole_up(over(batch, given["own_spawn.in_cooker"][row])) if cooked[row] else 0.0)
    weekly = [runs[row] * out["own_spawn.batches"][row] for row in GENERATIONS]
    return {
        "pressure_cooked": [float(each) for each in cooked],
        "runs_for_batch": runs,
        "cooker_runs": weekly,
        "cooker_runs_in_all": sum(weekly),
        "cooking_cost": sum(weekly) * given["own_spawn.cooker_cost"],
    }


def materials(given: Given, out: Results) -> Results:
    """What one of each is made of costs: as typed, or for sawdust spawn the farm's own mix in the farm's own bag."""
    mix = sum(float(out["recipe.mix_cost_per_wet"][row]) for row in chosen_rows(given))
    empty_bag = given["bag.bag_price"] + given["bag.tie_price"]
    own_mix = out["own_spawn_way.mix_in_sawdust"] * mix + empty_bag
    typed, known = given["own_spawn.unit_cost"], given["own_spawn.unit_cost_given"]
    each = [float(typed[row]) if known[row] else own_mix if row == SAWDUST else 0.0 for row in GENERATIONS]
    missing = [float(row != SAWDUST and ways(given)[row] and not known[row]) for row in GENERATIONS]
    week = [out["own_spawn.started"][row] * each[row] for row in GENERATIONS]
    return {
        "mix_and_bag": own_mix,
        "cost_of_one": each,
        "materials": week,
        "materials_in_all": sum(week),
        "materials_missing": missing,
        "materials_given": float(not any(missing)),
    }


def own_spawn_work(given: Given, out: Results) -> Results:
    """Hours, cooking and money of making spawn."""
    found = {**lab_hours(given, out), **cooking(given, out), **materials(given, out)}
    # the steamer is hot for the bags in any case: what spawn adds is all but the charge for the highest kW
    steaming = out["own_spawn.steamed"] * out["steamer_in_use.place_cost"]
    places = float(out["steamer_in_use.bags_per_run"])
    to_fruit = over(places, 1 + out["own_spawn.places_per_bag"])
    work = found["hours_a_week"] * out["farm.labour_rate"]
    bills = given["own_spawn.culture_cost"] + given["own_spawn.consumables"]
    goods = found["materials_in_all"] + found["cooking_cost"] + steaming
    bags = out["spawn.bags_inoculated_a_week"] if out["spawn.spawn_per_bag"] else 0.0
    year = (goods + work) * given["farm.weeks_worked"] + bills
    found |= {
        "fruiting_places": to_fruit,
        "spawn_places": places - to_fruit,
        "steaming_cost": steaming,
        "work_cost": work,
        "yearly_bills": bills,
        "goods_cost": goods,
        "cost_a_year": year,
        "cost_per_weight": over(year, out["spawn.spawn_a_week"] * given["farm.weeks_worked"]),
        "cost_per_bag_inoculated": over(year, bags * given["farm.weeks_worked"]),
    }
    return {f"own_spawn_work.{name}": value for name, value in found.items()}


def spawn_supply(given: Given, out: Results) -> Results:
    """What the book takes its spawn from: the invoice or the lab."""
    bought = {
        "cost_per_bag_inoculated": out["spawn.cost_per_bag_inoculated"],
        "dry_spawn_per_bag": out["spawn.dry_spawn_per_bag"],
        "hours_a_week": 0.0,
        "mix_a_week": 0.0,
        "lead_weeks": given["spawn.lead_time"],
    }
    made = {
        "cost_per_bag_inoculated": out["own_spawn_work.cost_per_bag_inoculated"],
        "dry_spawn_per_bag": out["own_spawn_way.dry_spawn_per_bag"],
        "hours_a_week": out["own_spawn_work.hours_a_week"],
        "mix_a_week": out["own_spawn.mix_a_week"],
        "lead_weeks": out["own_spawn.lead_weeks"],
    }
    return {f"spawn_supply.{name}": value for name, value in (made if is_made(given) else bought).items()}
