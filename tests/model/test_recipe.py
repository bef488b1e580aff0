"""Recipes, bags and mixing against cases worked by hand, and every check proved by breaking it."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from farmbook.expr.axis import Axis
from farmbook.interpret.kinds import check_kinds
from farmbook.interpret.numbers import Array
from farmbook.model.axes import INGREDIENT, RECIPE
from farmbook.model.cost.mixing import Mixing
from farmbook.model.heat.steaming import VESSEL, Steaming
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.mix.recipe_checks import RecipeChecks
from farmbook.model.mix.supplement import Supplement
from farmbook.model.place.farm_plan import Farm
from farmbook.sections.declare import Input
from farmbook.sections.model import Model
from tests.model.helpers import evaluate, systems_agree, with_used

OWN = (Farm, Recipe, RecipeChecks, Supplement, Bag, Mixing)
SECTIONS = with_used(*OWN)
KG_IN_LB = 0.45359237
LB_PER_FT3 = KG_IN_LB / 0.3048**3

NAMES: dict[Axis, list[str]] = {INGREDIENT: ["Sawdust", "Bran", "Gypsum", ""], RECIPE: ["Lean", "Rich", ""]}
GIVEN: dict[Input, Any] = {
    Farm.bags_filled_a_week: 400,
    Farm.bags_per_load: 500,
    Farm.wage: 20,
    Farm.payroll_extra: 0.10,
    Recipe.chosen_recipe: "Lean",
    Recipe.parts: [[90, 160, 0], [9, 38, 0], [1, 2, 0], [0, 0, 0]],
    Recipe.target_moisture: [0.60, 0.50, 0.60],
    Recipe.dry_matter: [0.50, 0.90, 1.00, None],
    Recipe.nitrogen_tested: [0.002, None, 0, None],
    Recipe.tag_protein: [None, 0.16875, None, None],
    Recipe.carbon: [0.49, 0.45, 0, 0],
    Recipe.price: [0.05, 0.30, 0.50, None],
    Recipe.bulk_density: [250, 200, 1000, 320],
    Bag.wet_fill: 2.5,
    Bag.bag_price: 0.30,
    Bag.tie_price: 0.02,
    Bag.bag_mass: 25,
    Mixing.batch_mass: 200,
    Mixing.mixer_volume: 1.0,
    Mixing.bags_per_hour: 100,
}


def farm(
    system: str = "metric", changes: dict[Input, Any] | None = None, recipes: list[str] | None = None
) -> dict[str, Array]:
    """The farm of these tests with a few inputs changed."""
    names = NAMES | ({RECIPE: recipes} if recipes else {})
    return evaluate(SECTIONS, system, GIVEN | (changes or {}), names)


def test_kinds_agree() -> None:
    check_kinds(Model(SECTIONS).lines)


def test_both_unit_systems_give_the_same_farm() -> None:
    assert systems_agree(SECTIONS, GIVEN, NAMES) == []


def test_lean_recipe_by_hand() -> None:
    """90, 9 and 1 parts: 1.8, 0.1 and 0.01 as delivered; 0.9 + 0.01 of water comes in of 1.5 wanted."""
    found = farm()
    assert found["recipe.dry_share"][:, 0] == pytest.approx([0.90, 0.09, 0.01, 0])
    assert found["recipe.as_delivered"][:, 0] == pytest.approx([1.8, 0.1, 0.01, 0])
    assert found["recipe.delivered_total"][0] == pytest.approx(1.91)
    assert found["recipe.wet_total"][0] == pytest.approx(2.5)
    assert found["recipe.water_in_ingredients"][0] == pytest.approx(0.91)
    assert found["recipe.water_to_add"][0] == pytest.approx(0.59)
    assert found["recipe.water_brought"][0] == pytest.approx(0.91 / 1.5)
    assert found["recipe.moisture_reached"][0] == pytest.approx(0.60)
    # 0.9 x 0.2% + 0.09 x 3%; the tag's 16.875% is 18.75% of dry matter, over 6.25 is 3%
    assert found["recipe.nitrogen"] == pytest.approx([0.002, 0.03, 0, 0])
    assert found["recipe.mix_nitrogen"][0] == pytest.approx(0.0045)
    assert found["recipe.mix_carbon"][0] == pytest.approx(0.4815)
    assert found["recipe.mix_carbon_to_nitrogen"][0] == pytest.approx(107)
    # 1.8 x 0.05 + 0.1 x 0.30 + 0.01 x 0.50
    assert found["recipe.mix_cost_per_dry"][0] == pytest.approx(0.125)
    assert found["recipe.mix_cost_per_wet"][0] == pytest.approx(0.05)
    # 1.8/250 + 0.1/200 + 0.01/1000 cubic metres
    assert found["recipe.mix_volume"][0] == pytest.approx(7.71)
    assert found["recipe.price_per_dry"] == pytest.approx([0.10, 1 / 3, 0.50, 0])
    assert found["recipe.price_by_volume"] == pytest.approx([12.5, 60, 500, 0])


def test_rich_recipe_by_hand_with_parts_that_are_not_percent() -> None:
    """160, 38 and 2 parts are 80, 19 and 1%; at 50% moisture the water wanted equals the dry mass."""
    found = farm()
    assert found["recipe.dry_share"][:, 1] == pytest.approx([0.80, 0.19, 0.01, 0])
    assert found["recipe.water_wanted"][1] == pytest.approx(1.0)
    assert found["recipe.water_to_add"][1] == pytest.approx(1.0 - 0.8 - 0.19 / 9)
    assert found["recipe.mix_nitrogen"][1] == pytest.approx(0.8 * 0.002 + 0.19 * 0.03)


@pytest.mark.parametrize(("chosen", "column"), [("Lean", 0), ("Rich", 1), ("rICH", 1)])
def test_chosen_recipe_supplies_the_single_values(chosen: str, column: int) -> None:
    found = farm(changes={Recipe.chosen_recipe: chosen})
    pairs = {
        "recipe.moisture": "recipe.moisture_reached",
        "recipe.nitrogen_share": "recipe.mix_nitrogen",
        "recipe.carbon_share": "recipe.mix_carbon",
        "recipe.carbon_to_nitrogen": "recipe.mix_carbon_to_nitrogen",
        "recipe.ingredient_cost_per_dry": "recipe.mix_cost_per_dry",
        "recipe.ingredient_cost_per_wet": "recipe.mix_cost_per_wet",
        "bag.dry_mass": "bag.dry_mass_by_recipe",
        "bag.ingredient_cost": "bag.ingredient_cost_by_recipe",
        "bag.material_cost": "bag.material_cost_by_recipe",
    }
    for single, table in pairs.items():
        assert found[single] == pytest.approx(found[table][column]), single
        assert found[table][0] != pytest.approx(found[table][1]), f"{table} cannot tell the recipes apart"
    assert found["recipe.chosen_dry_share"] == pytest.approx(found["recipe.dry_share"][:, column])


def test_bag_by_hand() -> None:
    found = farm()
    assert found["bag.dry_mass"] == pytest.approx(1.0)
    assert found["bag.water_mass"] == pytest.approx(1.5)
    assert found["bag.scale_weight"] == pytest.approx(2.525)
    assert found["bag.packaging_cost"] == pytest.approx(0.32)
    assert found["bag.material_cost"] == pytest.approx(0.445)
    assert found["bag.material_cost_a_week"] == pytest.approx(178)
    # rich: 1.25 of dry mix at 1.6 x 0.05 + 0.19/0.9 x 0.30 + 0.01 x 0.50
    rich = 1.25 * (0.08 + 0.19 / 3 + 0.005)
    assert found["bag.material_cost_by_recipe"] == pytest.approx([0.445, rich + 0.32, 0])
    assert found["bag.cost_above_chosen"] == pytest.approx([0, rich - 0.125, 0])


def test_mixing_by_hand() -> None:
    found = farm()
    assert found["mixing.delivered_per_bag"][:, 0] == pytest.approx([1.8, 0.1, 0.01, 0])
    assert found["mixing.delivered_per_load"][:, 0] == pytest.approx([900, 50, 5, 0])
    assert found["mixing.delivered_per_batch"][:, 0] == pytest.approx([144, 8, 0.8, 0])
    assert found["mixing.water_per_bag"][0] == pytest.approx(0.59)
    assert found["mixing.water_per_load"][0] == pytest.approx(295)
    assert found["mixing.water_per_batch"][0] == pytest.approx(47.2)
    assert found["mixing.water_volume_per_batch"][0] == pytest.approx(47.28, abs=0.01)
    assert found["mixing.volume_per_batch"][0] == pytest.approx(0.6168)
    assert found["mixing.mixer_filled_to"][0] == pytest.approx(0.6168)
    assert found["mixing.bags_per_batch"] == pytest.approx(80)
    assert found["mixing.batches_per_load"] == pytest.approx(6.25)
    assert found["mixing.whole_batches_per_load"] == 7
    assert found["mixing.even_batch"] == pytest.approx(1250 / 7)
    assert found["mixing.hours_per_bag"] == pytest.approx(0.01)
    assert found["mixing.hours_per_load"] == pytest.approx(5)
    assert found["mixing.hours_a_week"] == pytest.approx(4)
    assert found["mixing.mix_and_fill_cost"] == pytest.approx(0.22)
    assert found["mixing.delivered_per_week"] == pytest.approx([720, 40, 4, 0])
    assert found["mixing.volume_per_week"] == pytest.approx([2.88, 0.2, 0.004, 0])
    assert found["mixing.ingredient_bill_per_week"] == pytest.approx([36, 12, 2, 0])


def test_us_farm_by_hand() -> None:
    """Sawdust alone at $55 a ton, half dry, 20 lb/ft3; 5-lb bags at 60%; batches of 400 lb."""
    changes: dict[Input, Any] = {
        Recipe.parts: [[1], [0]],
        Recipe.target_moisture: [0.60],
        Recipe.dry_matter: [0.50, 0.90],
        Recipe.nitrogen_tested: [0.002, 0],
        Recipe.tag_protein: [None, None],
        Recipe.carbon: [0.49, 0],
        Recipe.price: [55 / (2000 * KG_IN_LB), 0],
        Recipe.bulk_density: [20 * LB_PER_FT3, 320],
        Bag.wet_fill: 5 * KG_IN_LB,
        Mixing.batch_mass: 400 * KG_IN_LB,
    }
    found = evaluate(SECTIONS, "us", GIVEN | changes, {INGREDIENT: ["Sawdust", ""], RECIPE: ["Lean"]})
    assert found["ingredient.price_used"][0] == pytest.approx(0.0275)
    assert found["bag.dry_mass"] == pytest.approx(2)
    assert found["bag.water_mass"] == pytest.approx(3)
    assert found["bag.ingredient_cost"] == pytest.approx(4 * 0.0275)
    assert found["bag.bag_mass_used"] == pytest.approx(25 / 28.349523125)
    assert found["bag.scale_weight"] == pytest.approx(5 + 25 / 453.59237)
    assert found["mixing.delivered_per_batch"][0, 0] == pytest.approx(320)
    assert found["mixing.water_per_batch"][0] == pytest.approx(80)
    # a gallon of cold water weighs 8.33 lb
    assert found["mixing.water_volume_per_batch"][0] == pytest.approx(80 / 8.33, abs=0.005)
    assert found["mixing.volume_per_batch"][0] == pytest.approx(16)
    assert found["recipe.mix_volume"][0] == pytest.approx(0.1)
    assert found["recipe.price_by_volume"][0] == pytest.approx(0.55)


def test_nitrogen_takes_the_best_figure_there_is() -> None:
    """A test wins over protein on dry matter, which wins over the tag: 4%, 12.5% / 6.25, and 9% / 0.9 / 6.25."""
    changes: dict[Input, Any] = {
        Recipe.dry_matter: [0.9, 0.9, 0.9, 0.9],
        Recipe.nitrogen_tested: [0.04, None, None, 0.04],
        Recipe.protein: [0.125, 0.125, None, None],
        Recipe.tag_protein: [0.09, 0.09, 0.09, None],
    }
    assert farm(changes=changes)["recipe.nitrogen"] == pytest.approx([0.04, 0.02, 0.016, 0])


def test_spare_rows_count_for_nothing() -> None:
    """Parts typed beside an empty name change no mix, and an empty recipe stays at zero."""
    plain, filled = farm(), farm(changes={Recipe.parts: [[90, 160, 7], [9, 38, 0], [1, 2, 0], [50, 50, 5]]})
    for name in ("recipe.mix_cost_per_dry", "recipe.water_to_add", "mixing.volume_per_batch"):
        assert filled[name] == pytest.approx(plain[name])
    across = [line.name for line in Model(SECTIONS).lines if line.axes == (RECIPE,) and line.kind == "worked"]
    told = "recipe_checks.nameless_recipe"
    assert {name: filled[name][2] for name in across} == {**dict.fromkeys(across, 0), told: 1}
    assert list(filled["recipe_checks.nameless_ingredient"]) == [0, 0, 0, 1]


def test_ingredients_too_wet_are_flagged_and_not_clipped() -> None:
    """At 45% wanted, 0.818 of water for 1 of dry mix against 0.821 that comes in: the mix ends at 0.821 / 1.821."""
    found = farm(changes={Recipe.target_moisture: [0.60, 0.45, 0.60]})
    comes_in = 0.8 + 0.19 / 9
    assert found["recipe.water_to_add"][1] == pytest.approx(0.45 / 0.55 - comes_in)
    assert found["recipe.water_to_add"][1] < 0
    assert found["recipe.moisture_reached"][1] == pytest.approx(comes_in / (1 + comes_in))
    assert list(found["recipe_checks.too_wet"]) == [0, 1, 0]


@pytest.mark.parametrize("system", ["metric", "us"])
def test_a_mix_too_wet_is_carried_on_as_wet_as_it_is(system: str) -> None:
    """Sawdust with 60% of water in it, aimed at 50%: nothing can be added or taken out, and a 2.5-kg bag is 1 kg dry.

    At 0.05 for each kilogram delivered the bag costs 0.125; a batch of 200 kg is 200 kg of that sawdust.
    """
    changes: dict[Input, Any] = {
        Recipe.parts: [[1, 1, 0], [0, 0, 0], [0, 0, 0], [0, 0, 0]],
        Recipe.dry_matter: [0.4, 0.9, 1, None],
        Recipe.target_moisture: [0.5, 0.7, 0.6],
    }
    found = farm(system, changes)
    mass = 1 if system == "metric" else KG_IN_LB
    assert found["recipe.moisture_brought"][:2] == pytest.approx([0.6, 0.6])
    assert found["recipe.moisture_reached"][:2] == pytest.approx([0.6, 0.7])
    assert found["recipe.dry_part"][:2] == pytest.approx([0.4, 0.3])
    assert found["recipe.moisture"] == pytest.approx(0.6)
    assert found["bag.dry_mass"] * mass == pytest.approx(1.0)
    assert found["bag.water_mass"] * mass == pytest.approx(1.5)
    assert found["bag.ingredient_cost"] == pytest.approx(0.125)
    assert found["recipe.mix_cost_per_wet"][0] / mass == pytest.approx(0.05)
    assert found["mixing.delivered_per_batch"][0, 0] * mass == pytest.approx(200)
    assert found["mixing.delivered_per_bag"][0, 0] * mass == pytest.approx(2.5)
    assert list(found["mixing.water_per_bag"][:1]) == list(found["mixing.water_per_batch"][:1]) == [0]
    assert found["recipe_checks.dry_enough"] == 0
    assert found["recipe_checks.mix_adds_up"] == found["bag.bag_adds_up"] == 1


@pytest.mark.parametrize(("moisture", "dry"), [(0.57, 0.43), (0.59, 0.41), (0.60, 0.40), (0.63, 0.37)])
def test_a_mix_that_needs_no_water_raises_no_alert(moisture: float, dry: float) -> None:
    """Sawdust delivered at just the moisture wanted: rounding must not read as too wet."""
    changes: dict[Input, Any] = {Recipe.target_moisture: [moisture] * 3, Recipe.dry_matter: [dry, 1, 1, None]}
    found = farm(changes=changes | {Recipe.parts: [[1, 3, 0], [0, 0, 0], [0, 0, 0], [0, 0, 0]]})
    assert found["recipe.water_to_add"][:2] == pytest.approx([0, 0], abs=1e-12)
    assert found["recipe_checks.dry_enough"] == 1


def test_whole_batches_survive_unit_conversion() -> None:
    """500 bags of 2.25 kg are nine batches of 125 kg; in pounds the quotient is a hair above nine, never ten."""
    changes: dict[Input, Any] = {Bag.wet_fill: 2.25, Mixing.batch_mass: 125}
    found = farm("us", changes)
    assert found["mixing.batches_per_load"] > 9
    for system in ("metric", "us"):
        assert farm(system, changes)["mixing.whole_batches_per_load"] == 9


def test_supplement_for_a_wanted_nitrogen() -> None:
    """From 0.2% and 3% to 0.9%: 0.7 of 2.8 points, so a quarter; 25% of 3% and 75% of 0.2% is 0.9% again."""
    trial: dict[Input, Any] = {Supplement.base: "sawdust", Supplement.rich: "bran", Supplement.wanted: 0.009}
    assert farm(changes=trial)["supplement.share"] == pytest.approx(0.25)
    assert farm(changes={Supplement.base: "sawdust"})["supplement.share"] == 0


@pytest.mark.parametrize("wanted", [0.001, 0.05])
def test_a_supplement_that_cannot_do_it_has_no_share(wanted: float) -> None:
    """Two ingredients of 0.2% and 3% make neither 0.1% nor 5%: a share below none or above all would mean nothing."""
    trial: dict[Input, Any] = {Supplement.base: "sawdust", Supplement.rich: "bran", Supplement.wanted: wanted}
    assert farm(changes=trial)["supplement.share"] == 0
    assert farm(changes=trial)["supplement.can_be_mixed"] == 0
    assert next(line for line in Model(SECTIONS).lines if line.name == "supplement.share").zero_is_none


def test_masses_balance_on_random_recipes() -> None:
    """Ingredients and water weigh the wet fill and cost the sum of their bills, added up ingredient by ingredient."""
    for seed in range(5):
        random = np.random.default_rng(seed)
        dry, price = random.uniform(0.4, 1, 4), random.uniform(0.02, 0.7, 4)
        parts, moisture = random.uniform(0, 60, (4, 3)), random.uniform(0.55, 0.7, 3)
        changes: dict[Input, Any] = {
            Recipe.dry_matter: dry,
            Recipe.price: price,
            Recipe.parts: parts,
            Recipe.target_moisture: moisture,
        }
        found = evaluate(SECTIONS, "us", GIVEN | changes, {INGREDIENT: list("abcd"), RECIPE: ["Lean", "Rich", "Third"]})
        for recipe in range(3):
            weighed, bill = 0.0, 0.0
            for row in range(4):
                in_bag = 2.5 * (1 - moisture[recipe]) * parts[row, recipe] / sum(parts[:, recipe]) / dry[row]
                weighed += in_bag
                bill += in_bag * price[row]
            water = found["mixing.water_per_bag"][recipe] * KG_IN_LB
            assert weighed + water == pytest.approx(2.5)
            assert found["bag.ingredient_cost_by_recipe"][recipe] == pytest.approx(bill)


CHECKS = [declared.dotted for section in OWN for declared in section.declared if hasattr(declared, "says")]

BREAKS: list[tuple[str, dict[Input, Any], list[str] | None, set[str]]] = [
    (
        "the chosen recipe is not on the list",
        {Recipe.chosen_recipe: "Middling"},
        None,
        {"recipe_checks.chosen_is_found", "bag.bag_adds_up"},
    ),
    ("no recipe is chosen", {Recipe.chosen_recipe: ""}, None, {"recipe_checks.chosen_is_found", "bag.bag_adds_up"}),
    ("two recipes share a name", {}, ["Lean", "lean", ""], {"recipe_checks.chosen_is_found", "bag.bag_adds_up"}),
    (
        "a recipe has no parts",
        {Recipe.parts: [[90, 0, 0], [9, 0, 0], [1, 0, 0], [0, 0, 0]]},
        None,
        {"recipe_checks.parts_are_given"},
    ),
    ("dry matter is missing", {Recipe.dry_matter: [0.5, 0.9, None, None]}, None, {"recipe_checks.mix_adds_up"}),
    (
        "ingredients are too wet",
        {Recipe.target_moisture: [0.60, 0.45, 0.60]},
        None,
        {"recipe_checks.dry_enough"},
    ),
    ("nitrogen is missing", {Recipe.tag_protein: None}, None, {"recipe_checks.nitrogen_is_known"}),
    ("carbon is missing", {Recipe.carbon: [0, 0.45, 0, 0]}, None, {"recipe_checks.carbon_is_known"}),
    (
        "a name is cleared",
        {Recipe.parts: [[90, 160, 0], [10, 38, 0], [0, 2, 0], [1, 0, 0]]},
        None,
        {"recipe_checks.parts_have_names"},
    ),
    (
        "a part is mistyped",
        {Recipe.parts: [[90, 160, 0], [1, 38, 0], [0, 2, 0], [0, 0, 0]]},
        None,
        {"recipe_checks.parts_add_up"},
    ),
    ("the mixer is too small", {Mixing.mixer_volume: 0.6}, None, {"mixing.batch_fits"}),
    ("the lean one is unknown", {Supplement.base: "straw"}, None, {"supplement.base_is_found"}),
    ("the rich one is unknown", {Supplement.rich: "straw"}, None, {"supplement.rich_is_found"}),
    (
        "the nitrogen wanted is out of reach",
        {Supplement.base: "sawdust", Supplement.rich: "bran", Supplement.wanted: 0.05},
        None,
        {"supplement.can_be_mixed"},
    ),
]


def test_every_check_is_broken_by_some_case() -> None:
    assert set().union(*(fired for *_, fired in BREAKS)) == set(CHECKS)


@pytest.mark.parametrize("system", ["metric", "us"])
def test_all_checks_pass_on_a_sound_farm(system: str) -> None:
    found = farm(system)
    assert {name: float(found[name]) for name in CHECKS} == dict.fromkeys(CHECKS, 1.0)


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize(
    ("changes", "recipes", "fired"), [case[1:] for case in BREAKS], ids=[case[0] for case in BREAKS]
)
def test_a_broken_farm_fires_its_check_and_no_other(
    system: str, changes: dict[Input, Any], recipes: list[str] | None, fired: set[str]
) -> None:
    found = farm(system, changes, recipes)
    assert {name for name in CHECKS if found[name] == 0} == fired


@pytest.mark.parametrize("system", ["metric", "us"])
def test_a_steam_load_is_that_of_the_steamer_in_use(system: str) -> None:
    """A vessel of 80 bags beside a cabinet of 500: the lists are for 80 of 2.5 kg, one batch of 200."""
    found = farm(system, {Steaming.kind: VESSEL, VesselHeat.bags_per_run: 80})
    to_metric = KG_IN_LB if system == "us" else 1
    assert found["mixing.delivered_per_load"][:, 0] * to_metric == pytest.approx([144, 8, 0.8, 0])
    assert found["mixing.water_per_load"][0] * to_metric == pytest.approx(47.2)
    assert found["mixing.wet_per_load"] * to_metric == pytest.approx(200)
    assert found["mixing.whole_batches_per_load"] == 1
    assert found["mixing.hours_per_load"] == pytest.approx(0.8)


def test_mixing_on_the_floor_needs_no_mixer() -> None:
    found = farm(changes={Mixing.mixer_volume: None, Mixing.batch_mass: 5000})
    assert found["mixing.batch_fits"] == 1
