"""Twin of owning and running either steamer for a year, and of the two side by side."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, over, same

__all__ = ["cabinet_year", "level_payment", "steamer_choice", "vessel_year"]

KNOWN_TO = 0.1


def level_payment(rate: float, life: float) -> tuple[float, float, float]:
    """Worth now of 1 at the end of a life, an equal share of each year, and the level payment for each 1 laid out."""
    at_end = 1 / (1 + rate) ** life
    equal = over(1, life)
    return at_end, equal, over(rate, 1 - at_end) if rate else equal


def bag_lost_at_steaming(given: Given, out: Results) -> float:
    """What was spent on filling it, and taking it out."""
    filled = out["bag.material_cost"] + out["mixing.mix_and_fill_cost"]
    return float(filled + over(out["farm.labour_rate"], given["growing_cost.culling_rate"]))


def one_year(given: Given, out: Results, place: str, lost: float) -> Results:
    """A year with one steamer, for all bags that the farm fills."""
    rate, life = float(given["steamer.yearly_return"]), float(given[f"{place}.life"])
    at_end, equal, payment = level_payment(rate, life)
    price, salvage = given[f"{place}.price"], given[f"{place}.salvage"]
    owning = (price - salvage) * payment + salvage * rate
    loads = out[f"{place}_run.loads_a_week"] * given["farm.weeks_worked"]
    running = loads * out[f"{place}.cost_per_run"]
    bags = given["farm.bags_filled_a_week"] * given["farm.weeks_worked"]
    lost_cost = bags * lost * bag_lost_at_steaming(given, out)
    year = owning + running + given[f"{place}.upkeep"]
    good = bags - bags * lost
    found = {
        "end_of_life": at_end,
        "equal_share": equal,
        "payment_factor": payment,
        "owning_cost": owning,
        "loads_a_year": loads,
        "running_cost": running,
        "work_a_year": loads * out[f"{place}.labour_hours_per_run"],
        "yearly_cost": year,
        "lost": lost,
        "lost_cost": lost_cost,
        "good_bags": good,
        "cost_per_good_bag": over(year + lost_cost, good),
        "salvage_fits": float(salvage <= price),
    }
    return {f"{place}_year.{name}": value for name, value in found.items()}


def cabinet_year(given: Given, out: Results) -> Results:
    """A year with the cabinet."""
    return one_year(given, out, "cabinet", float(given["crop.loss_at_steaming"]))


def vessel_year(given: Given, out: Results) -> Results:
    """A year with the pressure vessel."""
    return one_year(given, out, "vessel", float(given["vessel.loss_at_steaming"]))


def answer(both_fit: bool, clear: bool, vessel: float, cabinet: float) -> float:
    """1 not compared, 2 too close, 3 the cabinet, 4 the vessel."""
    if not both_fit:
        return 1.0
    if not clear:
        return 2.0
    return 4.0 if vessel < cabinet else 3.0


def cooking_pays(given: Given, needed: float, possible: float) -> float:
    """1 as it stands; 2 it can and 3 it cannot with the cabinet in use; 4 with the vessel in use nobody can tell."""
    if needed <= 0:
        return 1.0
    if same(given["steamer.kind"], "pressure vessel"):
        return 4.0
    return 3.0 if needed > possible else 2.0


def paid_by_bags(given: Given, out: Results, extra: float) -> Results:
    """Bags that burst less often are saved at the steamer's door; the rest of the cost must come from the spawn run."""
    bags = given["farm.bags_filled_a_week"] * given["farm.weeks_worked"]
    burst_less = bags * given["crop.loss_at_steaming"] - bags * given["vessel.loss_at_steaming"]
    at_the_door = burst_less * out["lost_bags.cost_at_steaming"]
    whole = bags - bags * given["vessel.loss_at_steaming"]
    each, lost_later = out["lost_bags.cost_in_spawn_run"], whole * out["crop.chosen_loss_in_spawn_run"]
    return {
        "typed_gap": given["crop.loss_at_steaming"] - given["vessel.loss_at_steaming"],
        "saved_at_steaming": at_the_door,
        "left_to_save": extra - at_the_door,
        "break_even_gap": over(extra - at_the_door, whole * each),
        "most_to_save": lost_later * each,
        "saving_in_words": cooking_pays(given, extra - at_the_door, lost_later * each),
    }


def steamer_choice(given: Given, out: Results) -> Results:
    """The two steamers side by side."""
    extra = out["vessel_year.yearly_cost"] - out["cabinet_year.yearly_cost"]
    vessel, cabinet = out["vessel_year.cost_per_good_bag"], out["cabinet_year.cost_per_good_bag"]
    good = out["cabinet_year.good_bags"] > 0 and out["vessel_year.good_bags"] > 0
    dearer = max(vessel, cabinet)
    apart = over(abs(vessel - cabinet), dearer) if good else 0.0
    both = out["cabinet_run.fits"] == 1 and out["vessel_run.fits"] == 1 and good
    state = answer(both, apart >= KNOWN_TO, vessel, cabinet)
    found = {
        "extra_cost": extra,
        **paid_by_bags(given, out, extra),
        "good_either_way": float(good),
        "good_bag_difference": vessel - cabinet if good else 0.0,
        "dearer": dearer,
        "apart": apart,
        "clear": float(apart >= KNOWN_TO),
        "vessel_cheaper": float(good and vessel < cabinet),
        "both_fit": float(both),
        "answer": state,
        "verdict": state,
    }
    return {f"steamer_choice.{name}": value for name, value in found.items()}
