"""Twin of the recipes side by side: a hundred bags inoculated with each are followed to the market."""

from __future__ import annotations

from tests.twin.farm_twin_flushes import CLOSE
from tests.twin.farm_twin_ground import ROUNDING, Given, Results, chosen_rows, over, same, spread

__all__ = ["recipe_beside", "recipe_choice", "recipe_turn", "recipes_by_bag", "tried_rows"]

FLUSHES = 4
MINUTES = 60
HUNDRED = 100.0


def mixes(given: Given) -> range:
    """The places of all recipes, spare ones too."""
    return range(len(given["recipe.name"]))


def other_rows(given: Given) -> list[int]:
    """The recipes that bear the name to set beside, the chosen one left out."""
    wanted, chosen = given["mix.other_recipe"], chosen_rows(given)
    return [mix for mix in mixes(given) if same(given["recipe.name"][mix], wanted) and mix not in chosen]


def tried_rows(given: Given) -> list[int]:
    """The one recipe that is set beside; the chosen one where none is."""
    others = other_rows(given)
    return others if len(others) == 1 else chosen_rows(given)


def recipe_beside(given: Given, out: Results) -> Results:
    """Which recipe is set beside the one in use."""
    others, tried = other_rows(given), tried_rows(given)
    named = given["mix.other_recipe"] != ""
    return {
        "recipe_beside.is_other": [float(mix in others) for mix in mixes(given)],
        "recipe_beside.others_found": float(len(others)),
        "recipe_beside.named": float(len(others) == 1),
        "recipe_beside.tried": [float(mix in tried) for mix in mixes(given)],
        "recipe_beside.other_is_found": float(len(others) == 1 or (not named and not others)),
    }


def losses(given: Given, out: Results) -> dict[str, list[float]]:
    """Share of the bags of each recipe that the spawn run loses."""
    typed, chosen = [float(each) for each in out["crop.loss_of_each_recipe"]], chosen_rows(given)
    of_chosen = sum(typed[mix] for mix in chosen)
    apart = [each - of_chosen for each in typed]
    from_share = [min(1.0, max(0.0, float(out["crop.loss_from_share"]) + each)) for each in apart]
    counts = from_share if same(given["crop.losses_given"], "in one share") else typed
    named = [given["recipe.name"][mix] != "" for mix in mixes(given)]
    return {
        "loss_apart": apart,
        "loss_from_share": from_share,
        "loss": [counts[mix] if named[mix] else 0.0 for mix in mixes(given)],
    }


def yields(given: Given, out: Results) -> Results:
    """What a bag of each recipe gives, by efficiency and in kilograms."""
    chosen, kept = chosen_rows(given), [flush for flush in range(FLUSHES) if out["crop.flush_kept"][flush]]
    typed, counted = given["recipe.efficiency_given"], out["crop.efficiency_by_recipe"]
    in_all = sum(float(typed[mix][flush]) for mix in chosen for flush in kept)
    moved = float(out["crop.efficiency_in_all"]) / in_all if in_all else 1.0
    table = [
        [float(counted[mix][flush]) if mix in chosen else float(typed[mix][flush]) * moved for flush in range(FLUSHES)]
        for mix in mixes(given)
    ]
    reaching, dry = out["crop.reaching"], out["bag.dry_mass_by_recipe"]
    borne = [sum(row[flush] * float(reaching[flush]) for flush in kept) for row in table]
    picked = [borne[mix] * float(dry[mix]) for mix in mixes(given)]
    return {
        "typed_in_all": in_all,
        "counted_over_typed": moved,
        "efficiency": spread(table),
        "claim": [sum(row[flush] for flush in kept) for row in table],
        "borne": borne,
        "picked": picked,
        "taken": [each * float(out["flushes.taken_per_picked"]) for each in picked],
    }


def money_of_work(given: Given, out: Results) -> dict[str, float]:
    """What the minutes of a bag cost in money, whichever its recipe, and its steam, spawn and rooms."""
    hour = float(out["hours.hour_in_money"])
    rates = ("culling", "shelving", "opening", "clearing")
    if float(out["farm.labour_rate"]) == 0:
        hour = 0.0
    each = {rate: over(hour, given[f"growing_cost.{rate}_rate"]) for rate in rates}
    end = float(out["crop.standing_at_end"])
    minutes = float(out["one_more.starting_hours"]) + float(out["one_more.spawn_hours"])
    burst = each["culling"] * float(out["crop.loss_steamed"])
    run = float(out["one_more.spawn_goods"]) + each["shelving"] + float(out["growing_cost.incubation_room_cost"])
    leaving = end * each["clearing"] + (1 - end) * each["culling"]
    return {
        "cull": each["culling"],
        "burst_bags": burst,
        "steam_and_work": float(out["one_more.steam_goods"]) + minutes * hour / MINUTES + burst,
        "run_cost": run,
        "later": float(out["growing_cost.fruiting_room_cost"]) + each["opening"] + leaving,
        "value": float(out["customer_year.last_one"]) - float(out["one_more.grown_in_money"]),
    }


def of_a_hundred(given: Given, out: Results, found: Results, mix: int) -> dict[str, float]:
    """A hundred bags inoculated with one recipe; nothing of a spare one."""
    names = ("materials", "spent", "live_leaves", "living", "leaves", "leaves_live", "leaves_a_day")
    if given["recipe.name"][mix] == "":
        return dict.fromkeys(names, 0.0)
    materials = float(out["bag.material_cost"]) + float(out["bag.cost_above_chosen"][mix])
    filled = over(materials + found["steam_and_work"], out["crop.inoculated_per_filled"])
    spent = filled + found["run_cost"]
    lost = HUNDRED * found["loss"][mix]
    live = found["taken"][mix] * found["value"] - found["later"]
    money = (HUNDRED - lost) * live - lost * found["cull"] - HUNDRED * spent
    days = (HUNDRED - lost) * float(out["harvest.days_place_taken"])
    each = (money / HUNDRED, over(money, HUNDRED - lost), over(money, days))
    return dict(zip(names, (materials, spent, live, (HUNDRED - lost) / HUNDRED, *each), strict=True))


def recipes_by_bag(given: Given, out: Results) -> Results:
    """Every recipe: what a bag inoculated leaves, and a place for each day."""
    found: Results = {**losses(given, out), **yields(given, out), **money_of_work(given, out)}
    rows = [of_a_hundred(given, out, found, mix) for mix in mixes(given)]
    found |= {name: [row[name] for row in rows] for name in rows[0]}
    places_limit = out["fruiting_stage.known"] and out["fruiting_stage.capacity"] <= out["limits.first"]
    found["counts"] = 2.0 if places_limit else 1.0
    return {f"recipes.{name}": value for name, value in found.items()}


def side_by_side(given: Given, out: Results) -> dict[str, float]:
    """The two recipes, by the bag and by the place."""
    rows = {"now": chosen_rows(given), "other": tried_rows(given)}
    found = {}
    for which, places in rows.items():
        for name in ("leaves", "leaves_a_day", "taken"):
            found[f"{which}_{name}"] = sum(float(out[f"recipes.{name}"][mix]) for mix in places)
    by_bag, by_day = (found[f"other_{name}"] > found[f"now_{name}"] for name in ("leaves", "leaves_a_day"))
    found["now_gives"] = found.pop("now_taken")
    return found | {
        "ahead_by_bag": float(by_bag),
        "ahead_by_day": float(by_day),
        "ahead": float(by_day if out["recipes.counts"] == 2 else by_bag),
        "other_is_richer": float(found.pop("other_taken") > found["now_gives"]),
    }


def loss_that_turns(rich: dict[str, float], lean: float, cull: float, *, two: bool) -> dict[str, float]:
    """Of a hundred bags of the richer recipe, how many may be lost until the leaner leaves as much."""
    saved = rich["live_leaves"] + cull
    hundred = HUNDRED * (rich["live_leaves"] - rich["spent"] - lean)
    at = over(hundred, saved) / HUNDRED if two else 0.0
    turns = saved > 0 and ROUNDING < at < 1 - ROUNDING
    return {
        "rich_saved": saved,
        "turn_loss": at,
        "loss_turns": float(turns),
        "wins_at_any_loss": float(rich["leaves"] > lean and not turns),
    }


def yield_that_turns(out: Results, rich: dict[str, float], lean: float, *, two: bool) -> dict[str, float]:
    """The weight at which a bag of the richer recipe leaves as much as the leaner."""
    value, cull = float(out["recipes.value"]), float(out["recipes.cull"])
    must_leave = over(lean + rich["spent"] + rich["loss"] * cull, rich["living"])
    must_give = over(must_leave + float(out["recipes.later"]), value)
    turns = two and value > 0 and rich["living"] > 0 and rich["taken"] > 0 and must_give > 0
    may_fall = 1 - must_give / rich["taken"] if turns else 0.0
    return {
        "must_leave": must_leave,
        "must_give": must_give,
        "yield_turns": float(turns),
        "may_fall": may_fall,
        "further": abs(may_fall),
    }


def recipe_turn(given: Given, out: Results) -> Results:
    """What would turn the choice between the two recipes, by the bag."""
    both = side_by_side(given, out)
    places = tried_rows(given) if both["other_is_richer"] else chosen_rows(given)
    names = ("live_leaves", "spent", "loss", "living", "taken", "leaves")
    rich = {name: sum(float(out[f"recipes.{name}"][mix]) for mix in places) for name in names}
    two = len(other_rows(given)) == 1
    lean = both["now_leaves"] if both["other_is_richer"] else both["other_leaves"]
    found: Results = {
        **both,
        "richer": [float(mix in places) for mix in mixes(given)],
        "lean_leaves": lean,
        "rich_live": rich["live_leaves"],
        "rich_spent": rich["spent"],
        "rich_loss": rich["loss"],
        "rich_living": rich["living"],
        "rich_gives": rich["taken"],
        "rich_leaves": rich["leaves"],
        **loss_that_turns(rich, lean, float(out["recipes.cull"]), two=two),
        **yield_that_turns(out, rich, lean, two=two),
    }
    return {f"recipe_turn.{name}": value for name, value in found.items()}


def recipe_choice(given: Given, out: Results) -> Results:
    """The recipe in use beside the other, each as a whole farm."""
    now, other = (
        {name: float(out[f"{way}.{name}"]) for name in ("bags", "profit", "net_takings")}
        for way in ("as_it_is", "other_recipe_year")
    )
    better, worse = (other, now) if other["profit"] > now["profit"] else (now, other)
    apart = over(better["profit"] - worse["profit"], abs(better["net_takings"]))
    found = {
        "more": other["profit"] - now["profit"],
        "better": float(better is other),
        "between": better["profit"] - worse["profit"],
        "better_takings": better["net_takings"],
        "apart": apart,
        "clear": float(apart > CLOSE),
        "better_profit": better["profit"],
        "worse_profit": worse["profit"],
        "better_bags": better["bags"],
        "worse_bags": worse["bags"],
        "says_otherwise": float(
            out["recipe_beside.named"] == 1 and bool(out["recipe_turn.ahead"]) is not (better is other)
        ),
    }
    return {f"recipe_choice.{name}": value for name, value in found.items()}
