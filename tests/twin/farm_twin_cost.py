"""Twin of what growing costs and what lost bags cost: a thousand bags are followed, and the money laid out on each."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, nothing_left, over, same

__all__ = ["equipment_cost", "growing_cost", "lost_bags"]

COHORT = 1000.0
DAYS_IN_A_WEEK = 7


def for_one_bag(given: Given, out: Results) -> dict[str, float]:
    """Money for one bag of each sort of work and room."""
    hour = out["farm.labour_rate"]
    found = {
        f"{name}_cost": over(hour, given[f"growing_cost.{name}_rate"])
        for name in ("shelving", "opening", "clearing", "culling")
    }
    weeks_of_run = given["crop.spawn_run_days"] / DAYS_IN_A_WEEK
    weeks_of_place = out["harvest.days_place_taken"] / DAYS_IN_A_WEEK
    found["incubation_room_cost"] = given["growing_cost.incubation_room_rate"] * weeks_of_run
    found["fruiting_room_cost"] = given["growing_cost.fruiting_room_rate"] * weeks_of_place
    return found


def carried(cost: float, lost: float, taking_out: float) -> float:
    """Cost of each bag left, of a thousand that have each cost so much, when a share is lost and must be taken out."""
    money = COHORT * cost + COHORT * lost * taking_out
    return over(money, COHORT - COHORT * lost)


def of_bags_left(cost: float, left: float) -> float:
    """A cost that bags carry; there is none where no bag is left to carry it."""
    return cost if left > 0 else 0.0


def stage_by_stage(given: Given, out: Results, one: dict[str, float]) -> dict[str, float]:
    """Cost carried by each bag through the five stages."""
    cull = one["culling_cost"]
    filled = out["bag.material_cost"] + out["mixing.mix_and_fill_cost"]
    steamed = filled + out["steamer_in_use.cost_per_bag"]
    left = carried(steamed, out["crop.loss_steamed"], cull)
    spawn = out["spawn_supply.cost_per_bag_inoculated"]
    inoculation = spawn + out["spawn.inoculation_cost"]
    run = one["shelving_cost"] + one["incubation_room_cost"]
    whole, growing = out["crop.inoculated_per_filled"], out["crop.live_per_filled"]
    inoculated = of_bags_left(left + inoculation, whole)
    entered = of_bags_left(inoculated + run, whole)
    alive = carried(entered, out["crop.chosen_loss_in_spawn_run"], cull)
    end = out["crop.standing_at_end"]
    leaving = (COHORT * end * one["clearing_cost"] + (COHORT - COHORT * end) * cull) / COHORT
    fruiting = one["opening_cost"] + one["fruiting_room_cost"] + leaving
    return {
        "filled_cost": filled,
        "cost_through_steaming": steamed,
        "cost_after_steaming": left,
        "inoculation_added": inoculation,
        "cost_after_inoculation": inoculated,
        "spawn_run_added": run,
        "cost_through_spawn_run": entered,
        "cost_after_spawn_run": alive,
        "leaving_cost": leaving,
        "fruiting_added": fruiting,
        "grown_cost_per_live": of_bags_left(alive + fruiting, growing),
    }


def cohort_money(given: Given, out: Results, one: dict[str, float], stages: dict[str, float]) -> dict[str, float]:
    """Money laid out on a thousand bags filled at each stage, with no bag carrying another."""
    whole = COHORT - COHORT * out["crop.loss_steamed"]
    alive = whole - whole * out["crop.chosen_loss_in_spawn_run"]
    at_the_end = alive * out["crop.standing_at_end"]
    cull = one["culling_cost"]
    return {
        "filled": COHORT * stages["filled_cost"],
        "steaming": COHORT * out["steamer_in_use.cost_per_bag"] + (COHORT - whole) * cull,
        "inoculation": whole * stages["inoculation_added"],
        "spawn_run": whole * stages["spawn_run_added"] + (whole - alive) * cull,
        "fruiting": alive * (one["opening_cost"] + one["fruiting_room_cost"])
        + at_the_end * one["clearing_cost"]
        + (alive - at_the_end) * cull,
    }


def growing_cost(given: Given, out: Results) -> Results:
    """Cost by stage, carried and spent."""
    one = for_one_bag(given, out)
    stages = stage_by_stage(given, out, one)
    money = cohort_money(given, out, one, stages)
    spent = sum(money.values()) / COHORT
    grown = stages["grown_cost_per_live"] * out["crop.live_per_filled"]
    # with no bag left there is no bag to carry the cost, and nothing to compare
    carried = spent if out["crop.live_per_filled"] else 0.0
    found = {
        **one,
        **stages,
        "grown_cost_per_filled": grown,
        "cost_per_picked": over(grown, out["crop.picked_per_filled"]),
        "cost_per_packed": over(grown, out["crop.packed_per_filled"]),
        "cost_per_taken": over(grown, out["crop.taken_per_filled"]),
        **{f"{stage}_spent": each / COHORT for stage, each in money.items() if stage != "filled"},
        **{f"{stage}_share": over(each / COHORT, spent) for stage, each in money.items()},
        "spent_per_filled": spent,
        "spent_carried": carried,
        "cost_adds_up": nothing_left(grown - carried, *(each / COHORT for each in money.values())),
    }
    return {f"growing_cost.{name}": value for name, value in found.items()}


def bags_lost_a_week(given: Given, out: Results) -> dict[str, float]:
    """Bags lost at each step, counted down from the bags filled in a week."""
    filled = given["farm.bags_filled_a_week"]
    whole = filled - filled * out["crop.loss_steamed"]
    alive = whole - whole * out["crop.chosen_loss_in_spawn_run"]
    picked_once = alive - alive * given["crop.loss_before_first_pick"]
    return {
        "lost_at_steaming": filled - whole,
        "lost_in_spawn_run": whole - alive,
        "lost_before_first_pick": alive - picked_once,
        "lost_between_flushes": picked_once - alive * out["crop.standing_at_end"],
        "cleared": alive * out["crop.standing_at_end"],
    }


def cost_of_a_lost_bag(out: Results) -> dict[str, float]:
    """What was spent on a bag up to its loss, and taking it out."""
    cost = {name: out[f"growing_cost.{name}"] for name in ("culling_cost", "opening_cost", "fruiting_room_cost")}
    steamed = out["growing_cost.cost_through_steaming"]
    in_run = steamed + out["growing_cost.inoculation_added"] + out["growing_cost.spawn_run_added"]
    opened = in_run + cost["opening_cost"] + cost["fruiting_room_cost"]
    return {
        "spent_in_spawn_run": in_run,
        "spent_by_opening": opened,
        "cost_at_steaming": steamed + cost["culling_cost"],
        "cost_in_spawn_run": in_run + cost["culling_cost"],
        "cost_before_first_pick": opened + cost["culling_cost"],
        "cost_between_flushes": cost["culling_cost"],
    }


def lost_bags(given: Given, out: Results) -> Results:
    """What the bags lost in a week cost, and whether that and the good bags are all the money."""
    bags, cost = bags_lost_a_week(given, out), cost_of_a_lost_bag(out)
    bills = {
        "steaming_bill": bags["lost_at_steaming"] * cost["cost_at_steaming"],
        "spawn_run_bill": bags["lost_in_spawn_run"] * cost["cost_in_spawn_run"],
        "first_pick_bill": bags["lost_before_first_pick"] * cost["cost_before_first_pick"],
        "flush_bill": bags["lost_between_flushes"] * cost["cost_between_flushes"],
    }
    week = sum(bills.values())
    spent = out["growing_cost.spent_per_filled"] * given["farm.bags_filled_a_week"]
    alive = given["farm.bags_filled_a_week"] - bags["lost_at_steaming"] - bags["lost_in_spawn_run"]
    cleared = alive * out["crop.standing_at_end"] * out["growing_cost.clearing_cost"]
    good = (alive - bags["lost_before_first_pick"]) * cost["spent_by_opening"] + cleared
    found = {
        **bags,
        **cost,
        **bills,
        "lost_or_cleared": sum(bags.values()),
        "bags_add_up": nothing_left(sum(bags.values()) - given["farm.bags_filled_a_week"], *bags.values()),
        "bill_a_week": week,
        "bill_a_year": week * given["farm.weeks_worked"],
        "spent_a_week": spent,
        "share_of_cost": over(week, spent),
        "spent_on_good_bags": good,
        "spent_on_either": week + good,
        "bags_make_up_the_cost": nothing_left(week + good - spent, *bills.values(), good, spent),
    }
    return {f"lost_bags.{name}": value for name, value in found.items()}


def equipment_cost(given: Given, out: Results) -> Results:
    """The grown crop of a year, with what steamer and lab cost a year without being run."""
    used = "vessel" if same(given["steamer.kind"], "pressure vessel") else "cabinet"
    steamer = out[f"{used}_year.owning_cost"] + given[f"{used}.upkeep"]
    lab = out["make_or_buy.owning"] + given["make_or_buy.upkeep"] if out["spawn_source.made"] else 0.0
    bags = given["farm.bags_filled_a_week"] * given["farm.weeks_worked"]
    money = bags * out["growing_cost.grown_cost_per_filled"] + steamer + lab
    alive = bags * out["crop.live_per_filled"]
    found = {
        "steamer": steamer,
        "lab": lab,
        "in_all": steamer + lab,
        "live_a_year": alive,
        "owned_per_live": over(steamer + lab, alive),
        "owned_per_taken": over(steamer + lab, bags * out["crop.taken_per_filled"]),
        "cost_per_filled": of_bags_left(over(money, bags), out["harvest.live_a_week"]),
        "cost_per_live": over(money, alive),
        "cost_per_taken": over(money, bags * out["crop.taken_per_filled"]),
    }
    return {f"equipment_cost.{name}": value for name, value in found.items()}
