"""Twin of the bag, and of mixing and filling: one bag, one mixer batch, one steam load, one week."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, agree, chosen_rows, over, same, spread, whole_up

__all__ = ["bags", "mixing"]

COLD_WATER_KILOGRAMS_IN_A_LITRE = 0.99821


def bags(given: Given, out: Results) -> Results:
    """One bag of every recipe, and of the chosen one."""
    chosen, fill = chosen_rows(given), float(given["bag.wet_fill"])
    packaging = given["bag.bag_price"] + given["bag.tie_price"]
    dry, ingredients = [], []
    for mix in range(len(given["recipe.name"])):
        dry.append(fill * out["recipe.dry_part"][mix])
        ingredients.append(fill * out["recipe.mix_cost_per_wet"][mix])
    named = [name != "" for name in given["recipe.name"]]
    materials = [cost + packaging if use else 0.0 for cost, use in zip(ingredients, named, strict=True)]
    solid, water = (
        sum(dry[mix] for mix in chosen),
        fill * sum(out["recipe.moisture_reached"][mix] for mix in chosen),
    )
    in_it = sum(ingredients[mix] for mix in chosen)
    by_hand = same(given["bag.counted"], "one figure")
    counted = float(given["bag.own_material_cost"]) if by_hand else in_it + packaging
    found = {
        "scale_weight": fill + given["bag.bag_mass"] / 1000,
        "dry_mass_by_recipe": dry,
        "ingredient_cost_by_recipe": ingredients,
        "material_cost_by_recipe": materials,
        "cost_above_chosen": [
            cost - in_it - packaging if use else 0.0 for cost, use in zip(materials, named, strict=True)
        ],
        "dry_mass": solid,
        "water_mass": water,
        "ingredient_cost": in_it,
        "packaging_cost": packaging,
        "worked_material_cost": in_it + packaging,
        "material_cost": counted,
        "material_cost_a_week": counted * given["farm.bags_filled_a_week"],
        "bag_gap": over(solid + water - fill, fill),
        "bag_adds_up": float(agree(solid + water, fill)),
    }
    return {f"bag.{name}": value for name, value in found.items()}


def weighing_lists(given: Given, out: Results) -> Results:
    """What goes on the scale of each ingredient, as delivered."""
    delivered, dry = out["recipe.as_delivered"], out["bag.dry_mass_by_recipe"]
    rows, mixes = range(len(given["ingredient.name"])), range(len(given["recipe.name"]))
    batch = [given["mixing.batch_mass"] * out["recipe.dry_part"][mix] for mix in mixes]
    load = out["steamer_in_use.bags_per_run"]
    return {
        "delivered_per_bag": spread([[delivered[row][mix] * dry[mix] for mix in mixes] for row in rows]),
        "delivered_per_load": spread([[delivered[row][mix] * dry[mix] * load for mix in mixes] for row in rows]),
        "delivered_per_batch": spread([[delivered[row][mix] * batch[mix] for mix in mixes] for row in rows]),
        "dry_per_batch": batch,
    }


def water_lists(given: Given, out: Results, batch: list[float]) -> Results:
    """What goes in by the hose, and how full the mixer gets."""
    room, given_room = float(given["mixing.mixer_volume"]), bool(given["mixing.mixer_volume_given"])
    found: dict[str, list[float]] = {}
    for mix, dry in enumerate(out["bag.dry_mass_by_recipe"]):
        water = max(0.0, out["recipe.water_to_add"][mix])
        cubic_metres = out["recipe.mix_volume"][mix] * batch[mix] / 1000
        filled = over(cubic_metres, room) if given_room else 0.0
        row = {
            "water_per_bag": water * dry,
            "water_per_load": water * dry * out["steamer_in_use.bags_per_run"],
            "water_per_batch": water * batch[mix],
            "water_volume_per_batch": water * batch[mix] / COLD_WATER_KILOGRAMS_IN_A_LITRE,
            "volume_per_batch": cubic_metres,
            "mixer_filled_to": filled,
            "batch_too_big": float(filled > 1),
        }
        for name, value in row.items():
            found.setdefault(name, []).append(value)
    return {**found, "chosen_water_per_batch": sum(found["water_volume_per_batch"][mix] for mix in chosen_rows(given))}


def batches(given: Given, out: Results) -> Results:
    """Batches in a load, and the work of mixing and filling."""
    fill, batch = float(given["bag.wet_fill"]), float(given["mixing.batch_mass"])
    load = float(out["steamer_in_use.bags_per_run"])
    hours = over(1, given["mixing.bags_per_hour"])
    whole = whole_up(over(fill * load, batch))
    return {
        "wet_per_load": fill * load,
        "bags_per_batch": over(batch, fill),
        "batches_per_load": over(fill * load, batch),
        "whole_batches_per_load": whole,
        "even_batch": over(fill * load, whole),
        "hours_per_bag": hours,
        "hours_per_load": load * hours,
        "hours_a_week": given["farm.bags_filled_a_week"] * hours,
        "mix_and_fill_cost": hours * out["farm.labour_rate"],
    }


def week_of_ingredients(given: Given, out: Results) -> Results:
    """What a week's bags of the chosen recipe take from the store."""
    found: dict[str, list[float]] = {"delivered_per_week": [], "volume_per_week": [], "ingredient_bill_per_week": []}
    heap = given["farm.bags_filled_a_week"] * given["bag.wet_fill"] + out["spawn_supply.mix_a_week"]
    for row in range(len(given["ingredient.name"])):
        kilograms = 0.0
        for mix in chosen_rows(given):
            kilograms += heap * out["recipe.dry_part"][mix] * out["recipe.as_delivered"][row][mix]
        found["delivered_per_week"].append(kilograms)
        found["volume_per_week"].append(over(kilograms, given["ingredient.bulk_density"][row]))
        found["ingredient_bill_per_week"].append(kilograms * given["ingredient.price"][row])
    return found


def mixing(given: Given, out: Results) -> Results:
    """The mixing floor."""
    lists = weighing_lists(given, out)
    bags = given["farm.bags_filled_a_week"] * given["bag.wet_fill"]
    found = {
        "wet_per_week": bags + out["spawn_supply.mix_a_week"],
        **lists,
        **water_lists(given, out, lists["dry_per_batch"]),
        **batches(given, out),
        **week_of_ingredients(given, out),
    }
    found["batch_fits"] = float(not any(found["batch_too_big"]))
    return {f"mixing.{name}": value for name, value in found.items()}
