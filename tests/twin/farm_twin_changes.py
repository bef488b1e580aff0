"""Twin of what a change is worth: the whole farm worked out once more for each, and the ten set in order."""

from __future__ import annotations

from typing import Any

import numpy as np

from tests.twin.farm_twin import worked
from tests.twin.farm_twin_change_ranks import SIZES
from tests.twin.farm_twin_ground import Given, Results, over

__all__ = ["changes"]

HALF_A_CENT = 0.005
HARDLY = 0.005
"""Bags over a limit, of the bags filled, that are none."""
EFFICIENCY = "biological efficiency"


def with_efficiency(given: Given, out: Results, by_flush: Any) -> Given:
    """The farm with these efficiencies typed for the recipe chosen, however the yield was given."""
    flushes, chosen = np.asarray(by_flush, dtype=float), np.asarray(out["recipe.chosen"], dtype=float)
    typed = np.array(given["recipe.efficiency_given"], dtype=float)
    for row, flag in enumerate(chosen):
        if flag:
            typed[row] = flushes / chosen.sum()
    more = {"recipe.efficiency_given": typed, "recipe.efficiency_given_typed": typed, "crop.yield_given": EFFICIENCY}
    return {**given, **more}


def scaled(given: Given, names: tuple[str, ...], more: float) -> dict[str, Any]:
    """Some numbers moved by the same share."""
    return {name: np.asarray(given[name], dtype=float) * (1 + more) for name in names}


def with_losses(given: Given, out: Results, more: float) -> Given:
    """Every loss, while a bag that lives gives what it gave."""
    steaming = ("crop.loss_at_steaming", "vessel.loss_at_steaming", "recipe.loss_in_spawn_run", "spawn.extra_loss")
    later = ("crop.loss_before_first_pick", "crop.loss_between_flushes", "crop.never_fruits")
    return with_efficiency({**given, **scaled(given, (*steaming, *later), more)}, out, out["crop.efficiency"])


def with_weight(given: Given, out: Results, more: float) -> Given:
    """All flushes by one share."""
    share = over(more, float(out["crop.picked_per_filled"]))
    return with_efficiency(given, out, np.asarray(out["crop.efficiency"]) * (1 + share))


def with_energy(given: Given, out: Results, more: float) -> Given:
    """Prices and bill; a sum of all bills grows by what energy costs more."""
    names = ("energy.electricity_price", "energy.demand_charge", "energy.gas_price", "energy.propane_price")
    in_all = float(given["bills.in_all"]) + float(out["bills.energy_cost"]) * more
    return {**given, **scaled(given, (*names, "bills.energy"), more), "bills.in_all": in_all}


def changed(given: Given, out: Results, what: str, more: float) -> Given:
    """The farm with one thing changed."""
    plain = {
        "price": ("customer.price",),
        "bags": ("farm.bags_filled_a_week",),
        "pay": ("farm.wage", "picking.piece_rate"),
        "spawn": ("spawn.price", "spawn.own_cost"),
        "unsold": ("customer.unsold",),
    }
    if what in plain:
        return {**given, **scaled(given, plain[what], more)}
    if what == "weeks":
        return {**given, "farm.weeks_worked": float(given["farm.weeks_worked"]) + more}
    return {"losses": with_losses, "weight": with_weight, "energy": with_energy}[what](given, out, more)


def judged(given: Given, farm: Given, now: Results, then: Results) -> dict[str, float]:
    """One change beside the farm as it is."""
    bags, known = float(given["farm.bags_filled_a_week"]), float(now["limits.many"]) > 0
    over_now = max(0.0, bags - float(now["limits.first"])) if known else 0.0
    over_then = max(0.0, float(farm["farm.bags_filled_a_week"]) - float(then["limits.first"])) if known else 0.0
    gain = float(then["year.profit"]) - float(now["year.profit"])
    passes = over_then > over_now + bags * HARDLY
    return {
        "gain": gain,
        "cents": gain * 100,
        "over": over_then,
        "over_now": over_now,
        "passes": float(passes),
        "limit": float(then["limits.first_name"]),
        "ranked": float(gain >= HALF_A_CENT and not passes),
    }


def own_farm(given: Given, out: Results) -> Given:
    """The farm with all changes of the grower's own."""
    more = {what: float(given[f"own_change.{what}"]) for what in SIZES}
    farm = with_losses(given, out, more["losses"])
    share = over(more["weight"], float(out["crop.picked_per_filled"]))
    farm = with_efficiency(farm, out, np.asarray(out["crop.efficiency"]) * (1 + share))
    for what in ("price", "bags", "weeks", "unsold", "pay", "energy", "spawn"):
        farm = changed(farm, out, what, more[what])
    return farm


def papers(now: Results, farm: Given, then: Results, dearer: float) -> Given:
    """Bills and loss in value as they would come: moved by what is worked out; nothing is owned more or less."""
    energy = float(then["bills.all_worked_energy"]) - float(now["bills.all_worked_energy"]) * (1 + dearer)
    rest = sum(float(then[f"bills.{name}"]) - float(now[f"bills.{name}"]) for name in ("water", "upkeep"))
    typed = farm["capital.own_loss"] if farm["capital.own_loss_given"] else now["capital.usual_loss"]
    return {
        **farm,
        "bills.energy": float(farm["bills.energy"]) + energy,
        "bills.in_all": float(farm["bills.in_all"]) + energy + rest,
        "capital.own_loss": typed,
        "capital.own_loss_given": 1.0,
    }


def changes(given: Given, now: Results) -> tuple[dict[str, Results], Results]:
    """Ten changes, each a farm of its own: all lines of each, and what is said of it."""
    farms = {f"{what}_change": changed(given, now, what, float(given[f"change.{what}"])) for what in SIZES}
    farms["own_change_year"] = own_farm(given, now)
    dearer = {"energy_change": float(given["change.energy"]), "own_change_year": float(given["own_change.energy"])}
    found: dict[str, Results] = {}
    told: Results = own_sizes(given)
    for name, farm in farms.items():
        found[name] = dict(worked(papers(now, farm, worked(farm), dearer.get(name, 0.0))))
        told |= {f"{name}.{line}": value for line, value in judged(given, farm, now, found[name]).items()}
    return found, told


def own_sizes(given: Given) -> Results:
    """How many sizes of the grower's own are not 0."""
    typed = {what: float(float(given[f"own_change.{what}"]) != 0) for what in SIZES}
    parts = {"growing": ("weight", "losses", "bags"), "costs": ("pay", "energy", "spawn")}
    parts["selling"] = ("price", "unsold", "weeks")
    found: Results = {
        f"own_change_year.typed_{part}": sum(typed[what] for what in whats) for part, whats in parts.items()
    }
    return found | {"own_change_year.typed": sum(typed.values())}
