"""Twin of three decisions: an hour that is missing, a bag that is lost, a customer who would take more for less."""

from __future__ import annotations

from tests.twin.farm_twin_ground import ROUNDING, Given, Results, over

__all__ = ["decisions"]

MONTHS = 12
STEPS = ("at_steaming", "in_spawn_run", "before_first_pick")
HARDLY_ANY = 0.10
"""A farm with no more than this share of its bags to spare is full."""
AT_STEAMING = ("mixing", "steamer")
IN_SPAWN_RUN = ("cooling", "bench", "incubation")
IN_FRUITING = ("fruiting",)
"""Stages that a bag has gone through when it is lost."""


def stands_full(out: Results) -> bool:
    """Whether the farm fills about all that its narrowest stage lets through."""
    return bool(out["limits.many"] > 0 and out["limits.spare"] <= HARDLY_ANY)


def missing_hour(given: Given, out: Results) -> dict[str, float]:
    """What an hour more would bring, what it costs as overtime, and what the hours missing cost."""
    a_bag, missing = float(out["hours.growing_with_a_bag"]), float(out["hours.missing"])
    price = float(out["customer_year.next_one"] if out["hours.enough"] else out["customer_year.last_one"])
    crop = (price - float(out["one_more.grown_in_money"])) * float(out["crop.taken_per_filled"])
    leaves = crop - float(out["one_more.bag_in_money"])
    an_hour = over(leaves, a_bag) + float(out["hours.hour_in_money"])
    saved = min(missing, max(0.0, a_bag * float(given["farm.bags_filled_a_week"])))
    return {
        "price": price,
        "bag_leaves": leaves,
        "brings": an_hour,
        "missing": saved,
        "limited": float(stands_full(out) and not holds_back(out, "labour")),
        "to_spare": float(out["hours.not_explained"] > out["hours.by_the_hour"] * HARDLY_ANY),
        "overtime": float(out["farm.labour_rate"]) * (1 + float(given["hours.overtime_extra"])),
        "missing_cost": saved * float(given["farm.weeks_worked"]) * max(0.0, an_hour),
    }


def holds_back(out: Results, *stages: str) -> bool:
    """Whether one of these stages lets no more through than the narrowest."""
    first = out["limits.first"]
    return any(out[f"{stage}_stage.known"] and out[f"{stage}_stage.capacity"] <= first for stage in stages)


def places_wasted(out: Results) -> dict[str, float]:
    """Money that a bag put in the place of a lost one would have left, at each of three steps."""
    full = stands_full(out)
    steaming = full and holds_back(out, *AT_STEAMING)
    incubation = full and holds_back(out, *AT_STEAMING, *IN_SPAWN_RUN)
    fruiting = full and holds_back(out, *AT_STEAMING, *IN_SPAWN_RUN, *IN_FRUITING)
    apart = float(out["farm.labour_rate"]) - float(out["hours.hour_in_money"])
    leaves = float(out["one_more.bag_leaves"]) - float(out["hours.growing_with_a_bag"]) * apart
    spent = {step: float(out[f"lost_bags.cost_{step}"]) for step in STEPS}
    whole = 1 - float(out["crop.loss_steamed"])
    alive = 1 - float(out["crop.chosen_loss_in_spawn_run"])
    worth = {
        "at_steaming": over(leaves + spent["at_steaming"], whole),
        "in_spawn_run": over(over(leaves, out["crop.inoculated_per_filled"]) + spent["in_spawn_run"], alive),
        "before_first_pick": over(
            over(leaves, out["crop.live_per_filled"]) + spent["before_first_pick"], out["crop.first_pick_per_live"]
        ),
    }
    wasted = dict(zip(STEPS, (steaming, incubation, fruiting), strict=True))
    return {
        "full": float(full),
        "until_steaming": float(steaming),
        "until_incubation": float(incubation),
        "until_fruiting": float(fruiting),
        "leaves": leaves,
        "leaves_inoculated": over(leaves, out["crop.inoculated_per_filled"]),
        "leaves_live": over(leaves, out["crop.live_per_filled"]),
        "worth_after_steaming": worth["at_steaming"],
        "worth_after_spawn_run": worth["in_spawn_run"],
        "worth_at_first_pick": worth["before_first_pick"],
    } | {f"forgone_{step}": max(0.0, worth[step] - spent[step]) if wasted[step] else 0.0 for step in STEPS}


def crop_forgone(given: Given, out: Results) -> dict[str, float]:
    """What a lost bag costs with the crop that its place would have given."""
    found = places_wasted(out)
    forgone = {}
    for step in STEPS:
        found[step] = float(out[f"lost_bags.cost_{step}"]) + found[f"forgone_{step}"]
        forgone[step] = float(out[f"lost_bags.lost_{step}"]) * found[f"forgone_{step}"]
    year = sum(forgone.values()) * float(given["farm.weeks_worked"])
    return found | {
        "forgone_a_week": sum(forgone.values()),
        "forgone_later": forgone["in_spawn_run"] + forgone["before_first_pick"],
        "bill_a_year": float(out["lost_bags.bill_a_year"]) + year,
    }


def room_to_grow(given: Given, out: Results) -> dict[str, float]:
    """Kilograms a year that the farm could grow beside what it plans, sales aside; it may have no limit but sales."""
    can = float(out["limits.second"] if out["limits.customers_limit"] else out["limits.first"])
    bags = max(0.0, can - float(given["farm.bags_filled_a_week"])) * float(given["farm.weeks_worked"])
    return {
        "without_limit": float(out["limits.many"] <= (1 if out["customer_stage.known"] else 0)),
        "stages_can": can,
        "could_grow": bags * float(out["crop.taken_per_filled"]),
    }


def kilograms_from(out: Results, growth: dict[str, float], by_month: list[float], row: int) -> dict[str, float]:
    """Where the kilograms of an offer come from: what is left over in its months, bags more, and other customers."""
    wanted = sum(by_month)
    left_over = sum(min(pair) for pair in zip(by_month, out["customer_months.homeless"], strict=True))
    of_bags = wanted - left_over if out["crop.taken_per_filled"] > 0 else 0.0
    from_bags = of_bags if growth["without_limit"] else min(of_bags, growth["could_grow"])
    others = float(out["customer_year.taken_in_all"]) - float(out["customer_year.taken"][row])
    from_others = min(wanted - left_over - from_bags, others)
    return {
        "wanted": wanted,
        "from_left_over": left_over,
        "wanted_from_bags": of_bags,
        "from_bags": from_bags,
        "others_take": others,
        "from_others": from_others,
        "delivered": left_over + from_bags + from_others,
    }


def an_offer(given: Given, out: Results, growth: dict[str, float], row: int) -> Results:
    """One customer would take so much more if all of it cost so much less."""
    less, last = float(given["customer.less"][row]), float(out["customer_year.last_one"])
    a_month = float(given["customer.more"][row]) * float(given["farm.weeks_worked"]) / MONTHS
    anyway = out["customer_months.still_takes"][row]
    offered = [float(share) * a_month for share in given["customer.season"][row]]
    by_month = [max(0.0, more - less_needed) for more, less_needed in zip(offered, anyway, strict=True)]
    left_over = [min(pair) for pair in zip(by_month, out["customer_months.homeless"], strict=True)]
    source = kilograms_from(out, growth, by_month, row)
    sold, now, more = float(out["customer_year.sold"][row]), float(out["customers.brings"][row]), source["delivered"]
    of_price = float(out["floor_price.share_kept_of_price"][row])
    bags_cost = source["from_bags"] * float(out["one_more.to_fill_in_money"])
    brings = now - less * float(out["floor_price.share_kept"][row])
    found = {
        "now": now,
        "brings": brings,
        "added": more * brings,
        "bags_cost": bags_cost,
        "given_up": sold * less * of_price + source["from_others"] * last,
        "at_present_price": more * now - bags_cost - source["from_others"] * last,
        "sold_with_more": sold + more * float(out["customers.share_sold"][row]),
    }
    months = {"more_in_month": by_month, "left_in_month": left_over}
    comes_to = what_it_comes_to(found, more, of_price)
    del found["now"]
    return {**source, **found, **comes_to, **months}


def what_it_comes_to(offer: dict[str, float], more: float, of_price: float) -> dict[str, float]:
    """What an offer changes in a year, and how much off the price would leave all as it was."""
    pays = more > 0 and offer["at_present_price"] > ROUNDING * more * offer["now"] and of_price > 0
    return {
        "change": offer["added"] - offer["bags_cost"] - offer["given_up"],
        "pays_at_all": float(pays),
        "most_off": over(offer["at_present_price"], offer["sold_with_more"] * of_price) if pays else 0.0,
    }


def decisions(given: Given, out: Results) -> Results:
    """The hour, the lost bag, and every customer's offer."""
    growth = room_to_grow(given, out)
    offers = [an_offer(given, out, growth, row) for row in range(len(given["customer.name"]))]
    parts: dict[str, Results] = {
        "missing_hour": {**missing_hour(given, out)},
        "crop_forgone": {**crop_forgone(given, out)},
        "volume_offer": {**growth, **{name: [offer[name] for offer in offers] for name in offers[0]}},
    }
    limiting = {
        name.replace("_stage.known", "_widening.limiting"): float(holds_back(out, name.removesuffix("_stage.known")))
        for name in out
        if name.endswith("_stage.known")
    }
    return {f"{part}.{name}": value for part, found in parts.items() for name, value in found.items()} | limiting
