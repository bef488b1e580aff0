"""Twin of the incubation room and the fruiting room: bags come in by the steam load and stand so many days."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, nothing_left, over, same, whole_up

__all__ = ["fruiting_room", "incubation_room"]

DAYS_IN_A_WEEK = 7


def places_there(given: Given, room: str) -> dict[str, float]:
    """Places of a room: as typed, or counted from its floor."""
    floor = float(given[f"{room}.floor"])
    shelf_area = floor * given[f"{room}.racked"] * given[f"{room}.shelves"]
    counted = shelf_area * given[f"{room}.density"]
    by_floor = same(given[f"{room}.places_given"], "worked out from the floor")
    places = float(counted) if by_floor else float(given[f"{room}.own_places"])
    return {
        "shelf_area": shelf_area,
        "worked_places": counted,
        "floor_density": over(counted, floor),
        "places": places,
        "places_told": places if places > 0 else 0.0,
        "known": float(places > 0),
    }


def places_wanted(loads_a_week: float, entering: float, days: float, beside: float) -> dict[str, float]:
    """Places taken on average, and while most loads stand there at once; something stands beside them all week."""
    loads = whole_up(loads_a_week)
    each = over(entering, loads)
    present = loads * whole_up(days) / DAYS_IN_A_WEEK
    most = whole_up(present)
    fewer_days = (most - present) * DAYS_IN_A_WEEK
    return {
        "taken": entering * days / DAYS_IN_A_WEEK + beside,
        "loads": loads,
        "whole_days": whole_up(days),
        "per_load": each,
        "share_at_peak": 1 - (most - present) if loads else 0.0,
        "other_days": most - present if loads else 0.0,
        "by_day": (most * each + beside) - (most - present if loads else 0.0) * each,
        "by_load": present * each + beside,
        "loads_present": present,
        "peak_loads": most,
        "at_peak": most * each + beside,
        "days_at_peak": DAYS_IN_A_WEEK - fewer_days if loads else 0.0,
    }


def held_against(there: dict[str, float], wanted: dict[str, float]) -> dict[str, float]:
    """The places wanted beside the places there; of a room not known nothing is said."""
    places, known = there["places"], bool(there["known"])
    return {
        "use": over(wanted["taken"], places),
        "peak_use": over(wanted["at_peak"], places),
        "to_spare": places - wanted["at_peak"] if known else 0.0,
        "days_add_up": nothing_left(wanted["by_day"] - wanted["by_load"], wanted["by_day"], wanted["by_load"]),
        "enough": float(not known or wanted["taken"] <= places),
        "enough_at_peak": float(not known or wanted["at_peak"] <= places),
    }


def own_spawn_places(given: Given, out: Results) -> float:
    """Places of own spawn while it runs, plates aside: started in a week, times the weeks that each stands."""
    if not out["spawn_source.made"]:
        return 0.0
    standing = 0.0
    for row in range(3):
        if out["own_spawn_way.used_here"][row]:
            standing += float(out["own_spawn.started"][row]) * float(given["own_spawn.run_days"][row]) / DAYS_IN_A_WEEK
    return standing


def incubation_room(given: Given, out: Results) -> Results:
    """The room in which the bags run through, own spawn between them."""
    spawn = own_spawn_places(given, out)
    days = float(given["crop.spawn_run_days"])
    there = places_there(given, "incubation_room")
    entering = float(out["spawn.bags_inoculated_a_week"])
    wanted = places_wanted(float(out["steamer_in_use.loads_a_week"]), entering, days, spawn)
    started = [
        float(out["own_spawn.started"][row]) * float(out["own_spawn_way.used_here"][row]) if row < 3 else 0.0
        for row in range(4)
    ]
    bagged = [float(out["own_spawn_way.used_here"][row]) if row < 3 else 0.0 for row in range(4)]
    own = {"spawn_places": spawn, "spawn_started": started, "bagged": bagged}
    found: Results = {**there, **wanted, **held_against(there, wanted), **own}
    return {f"incubation_room.{name}": value for name, value in found.items()}


def fruiting_room(given: Given, out: Results) -> Results:
    """The room in which the bags are picked."""
    there = places_there(given, "fruiting_room")
    entering, days = float(out["harvest.live_a_week"]), float(out["harvest.days_place_taken"])
    wanted = places_wanted(float(out["steamer_in_use.loads_a_week"]), entering, days, 0.0)
    found = {**there, **wanted, **held_against(there, wanted)}
    return {f"fruiting_room.{name}": value for name, value in found.items()}
