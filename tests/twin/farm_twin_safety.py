"""Twin of what the plan says of safety, and of the tests of sales."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, same
from tests.twin.farm_twin_year import safety_paid, steamer_used

__all__ = ["safety", "sales_tests"]


def safety(given: Given, out: Results) -> Results:
    """Four dangers: where each is, and what is done against it."""
    boiler = same(given["safety.boiler"], "there is one") or same(given["safety.boiler"], "boiler")
    pressure = boiler or steamer_used(given) == "vessel"
    paid = float(given["safety.inspection"]) > 0 and float(given["safety.insurance"]) > 0
    shut_in = any(same(given["safety.walk_in"], word) for word in ("walk-in without", "no release"))
    breathing = float(out["incubation_room.taken"]) > 0
    alarm = any(same(given["safety.co2_alarm"], word) for word in ("alarm outside the door", "yes"))
    hired = float(out["hours.hired"]) > 0 or bool(out["picking.by_piece"])
    pickers = hired and float(out["picking.pick_hours"]) > 0
    fine = {
        "pressure_paid_for": paid or not pressure,
        "way_out": not shut_in,
        "alarm_there": alarm or not breathing,
        "pickers_protected": float(given["safety.respirators"]) > 0 or not pickers,
    }
    seen = {"under_pressure": pressure, "breathing": breathing, "hired_pickers": pickers}
    found = {f"safety.{name}": float(value) for name, value in {**fine, **seen}.items()}
    still = float(sum(not value for value in fine.values()))
    steam = float(not fine["pressure_paid_for"]) + float(shut_in)
    return {**found, "safety.steam_open": steam, "safety.left_open": still, "safety_costs.yearly": safety_paid(given)}


def sales_tests(given: Given, out: Results) -> Results:
    """Two tests against limits that are typed."""
    on = any(same(given["safety.tests"], word) for word in ("two limits, as typed", "produce rule"))
    typed = bool(given["safety.produce_given"])
    produce = float(given["safety.produce"]) if typed else float(out["customer_year.takings_in_all"])
    food = float(given["safety.food"]) if given["safety.food_given"] else produce
    covered = on and produce > float(given["safety.covered_above"])
    mostly_direct = float(given["safety.direct"]) > float(given["safety.least_direct"])
    exempt = on and food < float(given["safety.exempt_below"]) and mostly_direct
    found = {
        "turned_on": on,
        "produce_tested": produce,
        "food_tested": food,
        "covered": covered,
        "exempt": exempt,
        "below_the_limit": not covered,
        "within_the_exemption": exempt or not covered,
    }
    return {f"sales_tests.{name}": float(value) for name, value in found.items()}
