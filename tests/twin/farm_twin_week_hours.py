"""Twin of the week's hours: the tasks of a typical week, dealt out by what is filled, opened, dumped and picked."""

from __future__ import annotations

from tests.twin.farm_twin_calendar import Calendar
from tests.twin.farm_twin_ground import Given, Results, over
from tests.twin.farm_twin_week_steps import changed

__all__ = ["week_hours"]


def rates(given: Given, out: Results) -> dict[str, float]:
    """Hours for a bag filled, opened and dumped, and for a kilogram picked."""
    clearing = float(out["clearing_work.hours_a_week"]) - float(given["hours.washing_hours"])
    harvesting = float(out["picking_work.hours_a_week"]) + float(out["packing_work.hours_a_week"])
    harvesting -= float(out["hours.by_the_piece"])
    elsewhere = float(out["hours.fixed"]) + float(out["opening_work.hours_a_week"]) + clearing + harvesting
    return {
        "for_a_bag": over(float(out["hours.by_the_hour"]) - elsewhere, given["farm.bags_filled_a_week"]),
        "clearing_that_grows": clearing,
        "picking_and_packing": harvesting,
        "for_a_weight": over(harvesting, out["harvest.picked_a_week"]),
        "for_opening": over(1, given["growing_cost.opening_rate"]),
        "for_dumping": over(out["crop.standing_at_end"], given["growing_cost.clearing_rate"]),
    }


def week_hours(given: Given, out: Results, when: Calendar) -> Results:
    """Hours that each week takes, and hours hired for it."""
    rate = rates(given, out)
    filling = [
        bags * rate["for_a_bag"] + weight * rate["for_a_weight"]
        for bags, weight in zip(out["filling.filled"], out["picks.picked"], strict=True)
    ]
    opening = [
        opened * rate["for_opening"] + dumped * rate["for_dumping"]
        for opened, dumped in zip(out["in_process.opened"], out["in_process.dumped"], strict=True)
    ]
    roster = [float(week >= float(out["start_up.rostered_from"])) for week in when.numbers]
    steady = [float(out["hours.fixed"]) * there for there in roster]
    hired = [
        max(float(out["hours.hired"]) * there + more, 0.0)
        for there, more in zip(roster, changed(given, when, "more_hours"), strict=True)
    ]
    found = {
        **rate,
        "with_filling": filling,
        "with_opening": opening,
        "needed": [sum(each) for each in zip(steady, filling, opening, strict=True)],
        "hired": hired,
    }
    return {f"week_hours.{name}": value for name, value in found.items()}
