"""Twin of the bags that a vessel must save with their crop, and of the farm with the steamer that it does not use."""

from __future__ import annotations

from tests.twin.farm_twin_flushes import CLOSE
from tests.twin.farm_twin_ground import Given, Results, over, same

__all__ = ["steamer_gap", "steamer_whole"]


def in_the_vessel(given: Given) -> bool:
    """Whether the farm steams under pressure."""
    return same(given["steamer.kind"], "pressure vessel")


def steamer_gap(given: Given, out: Results) -> Results:
    """Bags of a year that burst less often, and what must then be saved in the spawn run, each with its crop."""
    bags = given["farm.bags_filled_a_week"] * given["farm.weeks_worked"]
    burst_less = bags * given["crop.loss_at_steaming"] - bags * given["vessel.loss_at_steaming"]
    at_the_door = float(burst_less * out["crop_forgone.at_steaming"])
    whole, each = float(out["vessel_year.good_bags"]), float(out["crop_forgone.in_spawn_run"])
    extra = float(out["vessel_year.yearly_cost"]) - float(out["cabinet_year.yearly_cost"])
    most = whole * float(out["crop.chosen_loss_in_spawn_run"]) * each
    found = {
        "saved_at_steaming": at_the_door,
        "left_to_save": extra - at_the_door,
        "gap": over(extra - at_the_door, whole * each),
        "most_to_save": most,
        "beyond": float(not in_the_vessel(given) and extra - at_the_door > most),
    }
    return {f"steamer_gap.{name}": value for name, value in found.items()}


def number_of_answer(both: bool, clear: bool, vessel: bool) -> float:
    """1 not compared, 2 too close, 3 the cabinet, 4 the vessel."""
    if not both:
        return 1.0
    if not clear:
        return 2.0
    return 4.0 if vessel else 3.0


def steamer_whole(given: Given, out: Results) -> Results:
    """The farm as it is beside the farm with the other steamer, the return wanted on the money in each taken off."""
    used = "vessel" if in_the_vessel(given) else "cabinet"
    wears = over(float(given[f"{used}.price"]) - float(given[f"{used}.salvage"]), float(given[f"{used}.life"]))
    wanted = float(out[f"{used}_year.owning_cost"]) - wears
    now = float(out["as_it_is.profit"]) - wanted
    other = float(out["other_steamer_year.profit"]) - float(out["other_steamer_year.return_wanted"])
    better = other > now
    takings = float(out["other_steamer_year.net_takings"] if better else out["as_it_is.net_takings"])
    apart = over(abs(other - now), abs(takings))
    runs = out["cabinet_run.does_a_load"] == 1 and out["vessel_run.does_a_load"] == 1
    both = bool(runs and out["steamer_choice.good_either_way"] == 1)
    vessel = better is not in_the_vessel(given)
    number = number_of_answer(both, apart > CLOSE, vessel)
    bags, other_bags = float(out["as_it_is.bags"]), float(out["other_steamer_year.bags"])
    found = {
        "return_now": wanted,
        "now_leaves": now,
        "other_leaves": other,
        "more": other - now,
        "better": float(better),
        "between": abs(other - now),
        "better_takings": takings,
        "apart": apart,
        "clear": float(apart > CLOSE),
        "both_work": float(both),
        "vessel_better": float(vessel),
        "answer_number": number,
        "says_otherwise": float(
            both and out["steamer_choice.both_fit"] == 1 and number != float(out["steamer_choice.answer"])
        ),
        "other_bags": float(abs(other_bags - bags) > CLOSE * bags),
    }
    return {f"steamer_whole.{name}": value for name, value in found.items()}
