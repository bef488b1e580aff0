"""Twin of the farm's plan, the recipes with their checks, and the supplement: a hundred kilograms of dry mix."""

from __future__ import annotations

from typing import Any

from tests.twin.farm_twin_ground import Given, Results, agree, chosen_rows, over, same, spread, whole_up

__all__ = ["plan", "recipe_checks", "recipes", "supplement"]

PROTEIN_IN_NITROGEN = 6.25


def plan(given: Given, out: Results) -> Results:
    """The farm's hour of work, its loads and its bags."""
    pay = given["farm.wage"]
    bags = given["farm.bags_filled_a_week"]
    return {
        "farm.labour_rate": pay + pay * given["farm.payroll_extra"],
        "farm.bags_filled_a_year": bags * given["farm.weeks_worked"],
        "farm.is_new": float(same(given["farm.stage"], "new farm")),
        "farm.usual_load": whole_up(bags / 2),
        "farm.bags_in_a_load": given["farm.bags_per_load"] if given["farm.bags_per_load_given"] else whole_up(bags / 2),
    }


def protein_of(given: Given, row: int) -> tuple[float, float]:
    """Protein per kilogram of dry matter by the tag, and the one to count."""
    by_tag = over(given["ingredient.tag_protein"][row], given["ingredient.dry_matter"][row])
    if given["ingredient.protein_given"][row]:
        return by_tag, float(given["ingredient.protein"][row])
    return by_tag, by_tag


def nitrogen_of(given: Given, row: int) -> float:
    """Kilograms of nitrogen in a kilogram of dry matter."""
    if given["ingredient.nitrogen_tested_given"][row]:
        return float(given["ingredient.nitrogen_tested"][row])
    return protein_of(given, row)[1] / PROTEIN_IN_NITROGEN


def ingredients(given: Given) -> Results:
    """What is known of each ingredient by itself; of one whose dry matter is not known, no water is known either."""
    rows = range(len(given["ingredient.name"]))
    dry, price, density = (given[f"ingredient.{name}"] for name in ("dry_matter", "price", "bulk_density"))
    return {
        "recipe.water_as_delivered": [1 - dry[row] if dry[row] > 0 else 0 for row in rows],
        "recipe.tag_protein_in_dry": [protein_of(given, row)[0] for row in rows],
        "recipe.protein_counted": [protein_of(given, row)[1] for row in rows],
        "recipe.nitrogen": [nitrogen_of(given, row) for row in rows],
        "recipe.price_per_dry": [over(price[row], dry[row]) for row in rows],
        "recipe.price_by_volume": [price[row] * density[row] for row in rows],
    }


def weighed_out(given: Given, mix: int) -> dict[str, list[float]]:
    """A hundred kilograms of one dry mix: kilograms dry, delivered and of water, money and litres by ingredient."""
    parts = [float(row[mix]) for row in given["recipe.parts"]]
    dry = [100 * over(part, sum(parts)) for part in parts]
    delivered = [over(kilograms, given["ingredient.dry_matter"][row]) for row, kilograms in enumerate(dry)]
    water = [kilograms - dry[row] if kilograms > 0 else 0.0 for row, kilograms in enumerate(delivered)]
    money = [kilograms * given["ingredient.price"][row] for row, kilograms in enumerate(delivered)]
    cubic_metres = [over(kilograms, given["ingredient.bulk_density"][row]) for row, kilograms in enumerate(delivered)]
    litres = [1000 * each for each in cubic_metres]
    return {"dry": dry, "delivered": delivered, "water": water, "money": money, "litres": litres}


def by_ingredient(mixes: list[dict[str, list[float]]], what: str, rows: int) -> Any:
    """A table of one column for each recipe, for one kilogram of dry mix."""
    return spread([[mix[what][row] / 100 for mix in mixes] for row in range(rows)])


def water_lines(given: Given, mixes: list[dict[str, list[float]]]) -> dict[str, list[float]]:
    """The water of a hundred kilograms of each dry mix, brought to one kilogram."""
    found: dict[str, list[float]] = {}
    for place, mix in enumerate(mixes):
        moisture = float(given["recipe.target_moisture"][place])
        dry, delivered = sum(mix["dry"]), sum(mix["delivered"])
        wet = over(dry, 1 - moisture)
        brought, wanted = sum(mix["water"]), wet - dry
        as_it_comes = over(brought, delivered)
        reached = max(moisture, as_it_comes)
        row = {
            "parts_total": sum(float(each[place]) for each in given["recipe.parts"]),
            "dry_total": dry / 100,
            "dry_part": 1 - reached if given["recipe.name"][place] else 0.0,
            "wet_total": wet / 100,
            "delivered_total": delivered / 100,
            "water_in_ingredients": brought / 100,
            "water_wanted": wanted / 100,
            "water_to_add": (wanted - brought) / 100,
            "water_brought": over(brought, wanted),
            "moisture_brought": as_it_comes,
            "moisture_reached": reached,
        }
        for name, value in row.items():
            found.setdefault(f"recipe.{name}", []).append(value)
    return found


def wet_mix(given: Given, mix: dict[str, list[float]], place: int) -> float:
    """Kilograms that a hundred kilograms of dry mix weigh at the moisture aimed at, or as it comes if that is more."""
    as_it_comes = over(sum(mix["water"]), sum(mix["delivered"]))
    return over(100, 1 - max(float(given["recipe.target_moisture"][place]), as_it_comes))


def worth_lines(given: Given, mixes: list[dict[str, list[float]]]) -> dict[str, list[float]]:
    """Nitrogen, carbon, room and money of each mix."""
    nitrogen = [nitrogen_of(given, row) for row in range(len(given["ingredient.name"]))]
    found: dict[str, list[float]] = {}
    for place, mix in enumerate(mixes):
        of_nitrogen = sum(dry * share for dry, share in zip(mix["dry"], nitrogen, strict=True))
        of_carbon = sum(dry * share for dry, share in zip(mix["dry"], given["ingredient.carbon"], strict=True))
        row = {
            "mix_nitrogen": of_nitrogen / 100,
            "mix_carbon": of_carbon / 100,
            "mix_carbon_to_nitrogen": over(of_carbon, of_nitrogen),
            "mix_volume": sum(mix["litres"]) / 100,
            "mix_cost_per_dry": sum(mix["money"]) / 100,
            "mix_cost_per_wet": over(sum(mix["money"]), wet_mix(given, mix, place)),
        }
        for name, value in row.items():
            found.setdefault(f"recipe.{name}", []).append(value)
    return found


def chosen_lines(given: Given, out: Results) -> Results:
    """The figures of the recipe chosen; nothing where none is found, and two of a name are added up."""
    chosen = chosen_rows(given)
    names = {
        "moisture": "moisture_reached",
        "nitrogen_share": "mix_nitrogen",
        "carbon_share": "mix_carbon",
        "carbon_to_nitrogen": "mix_carbon_to_nitrogen",
        "ingredient_cost_per_dry": "mix_cost_per_dry",
        "ingredient_cost_per_wet": "mix_cost_per_wet",
    }
    every = {**given, **out}
    found = {f"recipe.{name}": sum(float(every[f"recipe.{of}"][mix]) for mix in chosen) for name, of in names.items()}
    shares = [sum(float(row[mix]) for mix in chosen) for row in out["recipe.dry_share"]]
    flags = [1.0 if mix in chosen else 0.0 for mix in range(len(given["recipe.name"]))]
    return {**found, "recipe.chosen_dry_share": shares, "recipe.chosen": flags}


def recipes(given: Given, out: Results) -> Results:
    """Ingredients, then every recipe, then the one chosen."""
    rows = len(given["ingredient.name"])
    mixes = [weighed_out(given, mix) for mix in range(len(given["recipe.name"]))]
    found = {
        **ingredients(given),
        "recipe.dry_share": by_ingredient(mixes, "dry", rows),
        "recipe.as_delivered": by_ingredient(mixes, "delivered", rows),
        "recipe.cost_in_mix": by_ingredient(mixes, "money", rows),
        "recipe.volume_in_mix": by_ingredient(mixes, "litres", rows),
        **water_lines(given, mixes),
        **worth_lines(given, mixes),
    }
    return {**found, **chosen_lines(given, found)}


def missing_lines(given: Given, out: Results) -> dict[str, list[float]]:
    """Which ingredients that are used lack a figure."""
    names = ("parts_in_recipes", "nitrogen_figures", "nitrogen_missing", "carbon_missing")
    found: dict[str, list[float]] = {name: [] for name in names}
    for row in range(len(given["ingredient.name"])):
        parts = sum(float(part) for part in given["recipe.parts"][row])
        figures = sum(
            bool(given[f"ingredient.{name}_given"][row]) for name in ("nitrogen_tested", "protein", "tag_protein")
        )
        bare = out["recipe.nitrogen"][row] > 0 and given["ingredient.carbon"][row] == 0
        found["parts_in_recipes"].append(parts)
        found["nitrogen_figures"].append(float(figures))
        found["nitrogen_missing"].append(float(parts > 0 and figures == 0))
        found["carbon_missing"].append(float(parts > 0 and bare))
    return found


def mix_lines(given: Given, out: Results) -> dict[str, list[float]]:
    """Which recipes are empty, too wet, or do not weigh out."""
    found: dict[str, list[float]] = {"no_parts": [], "too_wet": [], "mix_gap": [], "mix_is_off": []}
    for mix, name in enumerate(given["recipe.name"]):
        in_use = name != "" and out["recipe.parts_total"][mix] > 0
        weighed = out["recipe.delivered_total"][mix] + out["recipe.water_to_add"][mix]
        wanted = out["recipe.wet_total"][mix]
        brought, need = out["recipe.water_in_ingredients"][mix], out["recipe.water_wanted"][mix]
        found["no_parts"].append(float(name != "" and out["recipe.parts_total"][mix] == 0))
        found["too_wet"].append(float(in_use and brought > need and not agree(brought, need)))
        found["mix_gap"].append(over(weighed, wanted) - 1 if in_use else 0.0)
        found["mix_is_off"].append(float(in_use and not agree(weighed, wanted)))
    return found


def name_lines(given: Given) -> Results:
    """Parts that stand where no name is, and recipes of nearly 100 parts."""
    typed, rows, mixes = given["recipe.parts_typed"], given["ingredient.name"], given["recipe.name"]
    named = [[float(part) if mixes[mix] else 0.0 for mix, part in enumerate(row)] for row in typed]
    return {
        "parts_typed": [[float(part) for part in row] for row in typed],
        "parts_of_named_recipes": named,
        "nameless_ingredient": [float(not name and sum(named[row]) > 0) for row, name in enumerate(rows)],
        "nameless_recipe": [
            float(not name and sum(float(row[mix]) for row in typed) > 0) for mix, name in enumerate(mixes)
        ],
    }


def recipe_checks(given: Given, out: Results) -> Results:
    """Whether the recipes add up."""
    found: dict[str, Any] = {**missing_lines(given, out), **mix_lines(given, out), **name_lines(given)}
    found["uneven"] = [float(90 <= sums <= 110 and not agree(sums, 100)) for sums in out["recipe.parts_total"]]
    number = len(chosen_rows(given))
    verdicts = {
        "recipes_chosen": float(number),
        "chosen_is_found": float(number == 1),
        "parts_have_names": float(not any(found["nameless_ingredient"] + found["nameless_recipe"])),
        "parts_add_up": float(not any(found["uneven"])),
        "parts_are_given": float(not any(found["no_parts"])),
        "mix_adds_up": float(not any(found["mix_is_off"])),
        "dry_enough": float(not any(found["too_wet"])),
        "nitrogen_is_known": float(not any(found["nitrogen_missing"])),
        "carbon_is_known": float(not any(found["carbon_missing"])),
    }
    return {f"recipe_checks.{name}": value for name, value in {**found, **verdicts}.items()}


def supplement(given: Given, out: Results) -> Results:
    """The cross of two ingredients for a wanted nitrogen."""
    names = given["ingredient.name"]
    lean = [float(same(name, given["supplement.base"])) for name in names]
    rich = [float(same(name, given["supplement.rich"])) for name in names]
    both = sum(lean) > 0 and sum(rich) > 0
    poor = sum(is_it * n for is_it, n in zip(lean, out["recipe.nitrogen"], strict=True)) if both else 0.0
    strong = sum(is_it * n for is_it, n in zip(rich, out["recipe.nitrogen"], strict=True)) if both else 0.0
    wanted = float(given["supplement.wanted"])
    mixable = min(poor, strong) <= wanted <= max(poor, strong)
    share = over(wanted - poor, strong - poor) if both and mixable else 0.0
    return {
        "supplement.is_base": lean,
        "supplement.is_rich": rich,
        "supplement.bases_found": sum(lean),
        "supplement.rich_found": sum(rich),
        "supplement.both_found": float(both),
        "supplement.base_nitrogen": poor,
        "supplement.rich_nitrogen": strong,
        "supplement.in_reach": wanted if mixable or not both else poor,
        "supplement.share": share,
        "supplement.base_is_found": float(sum(lean) == (given["supplement.base"] != "")),
        "supplement.rich_is_found": float(sum(rich) == (given["supplement.rich"] != "")),
        "supplement.can_be_mixed": float(mixable or not both),
    }
