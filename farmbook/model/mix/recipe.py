"""Recipes side by side: what each mix holds, how much water it takes, what it costs."""

from __future__ import annotations

from farmbook.calc import mixing
from farmbook.expr.functions import all_of, maximum, ratio, same_text, total, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.axes import INGREDIENT, RECIPE
from farmbook.sections.declare import line, member, names, number
from farmbook.sections.section import Section
from farmbook.sources import (
    ALABAMA_BY_PRODUCT_FEEDS,
    ARITHMETIC,
    COMMON_PRACTICE,
    COMPOST_MIXTURES,
    NITROGEN_IN_PROTEIN,
    WOOD_CHIP_2020,
)

__all__ = ["Recipe"]

MATRIX = (INGREDIENT, RECIPE)


class Recipe(Section):
    """Ingredients, and up to four mixes of them by parts of dry mass."""

    title = "Ingredients and recipes"
    table = "mix"

    ingredients = names(INGREDIENT, "Ingredient", how="One row for each thing you buy for the mix; water is not one.")
    recipes = names(RECIPE, "Recipe", how="A short name for each mix you use or think of trying.")
    chosen_recipe = member(RECIPE, "Recipe chosen", how="The mix that the rest of the book is worked out for.")
    parts = number(
        "Parts of dry mix",
        unit="1",
        usual=(0, 100),
        hard=(0, 1e6),
        default=0,
        axes=MATRIX,
        how="By dry mass. Parts out of 100 are easiest, but any parts will do: they are brought to 100% here.",
        source=COMMON_PRACTICE,
        decided=True,
        note="0 where the recipe does without the ingredient.",
    )
    target_moisture = number(
        "Moisture aimed at",
        unit="kg_water/kg_wet",
        usual=(0.57, 0.65),
        hard=(0.2, 0.9),
        default=0.60,
        axes=(RECIPE,),
        how="Water out of all that is weighed. Weigh a handful of the mix, dry it to a steady weight, weigh again.",
        source=COMMON_PRACTICE,
        note="57 to 65% for steamed sawdust. Not on dry weight: 150% of dry weight is 60% here.",
    )
    dry_matter = number(
        "Dry matter as delivered",
        unit="kg_dry/kg_wet",
        usual=(0.45, 0.98),
        hard=(0.05, 1),
        default=0.88,
        axes=(INGREDIENT,),
        how="Weigh 100 g, dry overnight at 105 degC (or by microwave to a steady weight), weigh again.",
        source=ALABAMA_BY_PRODUCT_FEEDS,
        note="Green sawdust 45 to 70%, pellets 94%, hulls and bran 88 to 90%, gypsum and lime 98%.",
    )
    nitrogen_tested = number(
        "Nitrogen in dry matter, tested",
        unit="kg_nitrogen/kg_dry",
        usual=(0, 0.03),
        hard=(0, 0.4),
        axes=(INGREDIENT,),
        optional=True,
        how="Laboratory test, or a published table. Leave it empty where you have only the protein.",
        source=WOOD_CHIP_2020,
        note="Hardwood sawdust 0.08 to 0.3%. Type 0 for gypsum and lime. It wins over the protein figures.",
    )
    protein = number(
        "Crude protein in dry matter",
        unit="kg_protein/kg_dry",
        usual=(0.02, 0.20),
        hard=(0, 1),
        axes=(INGREDIENT,),
        optional=True,
        how="Feed tables give it on dry matter.",
        source=ALABAMA_BY_PRODUCT_FEEDS,
        note="Soybean hulls 12%, rice bran 14%, wheat middlings 18%, cottonseed hulls 4%.",
    )
    tag_protein = number(
        "Crude protein on the feed tag",
        unit="kg_protein/kg_wet",
        usual=(0.02, 0.20),
        hard=(0, 1),
        axes=(INGREDIENT,),
        optional=True,
        how="As printed on the sack: on the weight as delivered, so a little less than on dry matter.",
        source=COMMON_PRACTICE,
        note="Used only where neither figure on dry matter is filled in.",
    )
    carbon = number(
        "Carbon in dry matter",
        unit="kg_carbon/kg_dry",
        usual=(0, 0.50),
        hard=(0, 0.9),
        default=0,
        axes=(INGREDIENT,),
        how="A published table: sawdust 49%, bran 45%, soybean hulls 44%, rice hulls 40%.",
        source=WOOD_CHIP_2020,
        note="Leave 0 for gypsum and for lime: the carbon of a mineral feeds nothing.",
    )
    price = number(
        "Price as delivered",
        unit="money/kg_wet",
        usual=(0.02, 0.70),
        hard=(0, 1000),
        default=0.25,
        axes=(INGREDIENT,),
        how="Invoice with the freight, over the weight delivered. Bought by volume: weigh a bucket of it first.",
        source=COMMON_PRACTICE,
    )
    bulk_density = number(
        "Bulk density as delivered",
        unit="kg_wet/m3",
        usual=(95, 1150),
        hard=(10, 5000),
        default=320,
        axes=(INGREDIENT,),
        how="Fill a bucket of known size without pressing, and weigh it.",
        source=COMMON_PRACTICE,
        note="The default is green sawdust. Loose hulls 100 to 190, bran 180 to 250, pellets 640, gypsum 880 kg/m3.",
    )

    # Each ingredient

    @line("Water in it as delivered", unit="kg_water/kg_wet", axes=(INGREDIENT,), source=ARITHMETIC)
    def water_as_delivered(self) -> Expr:
        """All that is not dry matter; you pay for it by weight and need not add it."""
        return where(self.dry_matter > 0, mixing.water_share(self.dry_matter), 0)

    @line("Protein in dry matter, by the feed tag", unit="kg_protein/kg_dry", axes=(INGREDIENT,), source=ARITHMETIC)
    def tag_protein_in_dry(self) -> Expr:
        """The tag counts the water in the sack; without it the same protein is a larger share."""
        return mixing.content_of_dry(self.tag_protein, self.dry_matter)

    @line("Protein counted", unit="kg_protein/kg_dry", axes=(INGREDIENT,))
    def protein_counted(self) -> Expr:
        """The figure on dry matter if there is one, else the one from the tag."""
        return where(self.given(self.protein), self.protein, self.tag_protein_in_dry)

    @line("Nitrogen counted", unit="kg_nitrogen/kg_dry", axes=(INGREDIENT,), source=NITROGEN_IN_PROTEIN)
    def nitrogen(self) -> Expr:
        """The tested figure if there is one, else protein over 6.25."""
        protein_nitrogen = mixing.nitrogen_from_protein(self.protein_counted)
        return where(self.given(self.nitrogen_tested), self.nitrogen_tested, protein_nitrogen)

    @line("Price of its dry matter", unit="money/kg_dry", axes=(INGREDIENT,))
    def price_per_dry(self) -> Expr:
        """The fair way to compare a wet ingredient with a dry one."""
        return ratio(self.price, self.dry_matter)

    @line("Price by volume", unit="money/m3", axes=(INGREDIENT,))
    def price_by_volume(self) -> Expr:
        """To hold against an invoice by the load or by the yard; a cubic yard is 27 cubic feet."""
        return self.price * self.bulk_density

    # Each ingredient in each recipe

    @line("Share of dry mix", unit="share", axes=MATRIX)
    def dry_share(self) -> Expr:
        """The parts brought to 100%."""
        return ratio(self.parts, self.parts_total)

    @line("To weigh out as delivered, on dry mix", unit="kg_wet/kg_dry", axes=MATRIX, source=ARITHMETIC)
    def as_delivered(self) -> Expr:
        """What goes on the scale for 100 of dry mix: the wetter the ingredient, the more of it."""
        return mixing.mass_as_delivered(self.dry_share, self.dry_matter)

    @line("Cost in the dry mix", unit="money/kg_dry", axes=MATRIX)
    def cost_in_mix(self) -> Expr:
        """Which ingredient the money goes into."""
        return self.as_delivered * self.price

    @line("Volume as delivered, on dry mix", unit="L/kg_dry", axes=MATRIX)
    def volume_in_mix(self) -> Expr:
        """Loose, before it is wetted."""
        return ratio(self.as_delivered, self.bulk_density)

    # Each recipe

    @line("Recipe is the chosen one", unit="flag", axes=(RECIPE,))
    def chosen(self) -> Expr:
        """Capital and small letters count as the same."""
        return all_of(self.recipe_in_use, same_text(self.recipes, self.chosen_recipe))

    @line("Parts in all ingredients", unit="count", axes=(RECIPE,))
    def parts_total(self) -> Expr:
        """100 if you think in percent, but it need not be."""
        return total(self.parts, INGREDIENT)

    @line("Dry mix in all", unit="share", axes=(RECIPE,))
    def dry_total(self) -> Expr:
        """100%, or nothing while the recipe has no parts."""
        return total(self.dry_share, INGREDIENT)

    @line("Wet mix aimed at, on dry mix", unit="kg_wet/kg_dry", axes=(RECIPE,), source=ARITHMETIC)
    def wet_total(self) -> Expr:
        """What 100 of dry mix weighs once it is at the moisture aimed at."""
        return ratio(self.dry_total, mixing.dry_share(self.target_moisture))

    @line("All ingredients as delivered, on dry mix", unit="kg_wet/kg_dry", axes=(RECIPE,))
    def delivered_total(self) -> Expr:
        """What is weighed out in all before water is added."""
        return total(self.as_delivered, INGREDIENT)

    @line("Water that comes in, on dry mix", unit="kg_water/kg_dry", axes=(RECIPE,), source=ARITHMETIC)
    def water_in_ingredients(self) -> Expr:
        """With the ingredients, for 100 of dry mix. A wet week at the sawmill raises it: measure the sawdust often."""
        return total(self.as_delivered * self.water_as_delivered, INGREDIENT)

    @line("Water wanted in the mix, on dry mix", unit="kg_water/kg_dry", axes=(RECIPE,), source=ARITHMETIC)
    def water_wanted(self) -> Expr:
        """For 100 of dry mix, to reach the moisture aimed at."""
        return self.wet_total * self.target_moisture

    @line("Water to add, on dry mix", unit="kg_water/kg_dry", axes=(RECIPE,), source=ARITHMETIC)
    def water_to_add(self) -> Expr:
        """Below zero, the ingredients are too wet already: this much would have to be dried out of them."""
        return mixing.water_to_add(self.water_wanted, self.water_in_ingredients)

    @line("Water that comes in, of the water wanted", unit="share", axes=(RECIPE,))
    def water_brought(self) -> Expr:
        """Above 100%, the mix cannot come down to the moisture aimed at."""
        return ratio(self.water_in_ingredients, self.water_wanted)

    @line("Moisture before water is added", unit="kg_water/kg_wet", axes=(RECIPE,), source=COMPOST_MIXTURES)
    def moisture_brought(self) -> Expr:
        """Of all ingredients together, as delivered."""
        return mixing.moisture(self.water_in_ingredients, self.delivered_total)

    @line("Moisture that results", unit="kg_water/kg_wet", axes=(RECIPE,))
    def moisture_reached(self) -> Expr:
        """The moisture aimed at, or more where the ingredients bring it: water can be added but not taken out."""
        return maximum(self.target_moisture, self.moisture_brought)

    @line("Dry share of the wet mix", unit="kg_dry/kg_wet", axes=(RECIPE,), source=ARITHMETIC)
    def dry_part(self) -> Expr:
        """What is left of the finished mix, at the moisture that results, without its water."""
        return where(self.recipe_in_use, mixing.dry_share(self.moisture_reached), 0)

    @line("Nitrogen in the dry mix", unit="kg_nitrogen/kg_dry", axes=(RECIPE,), source=COMPOST_MIXTURES)
    def mix_nitrogen(self) -> Expr:
        """A richer mix feeds a heavier flush up to a point; beyond it more bags spoil and the yield falls."""
        return total(mixing.weighted_content(self.dry_share, self.nitrogen), INGREDIENT)

    @line("Carbon in the dry mix", unit="kg_carbon/kg_dry", axes=(RECIPE,), source=COMPOST_MIXTURES)
    def mix_carbon(self) -> Expr:
        """Minerals count as far as you typed carbon for them."""
        return total(mixing.weighted_content(self.dry_share, self.carbon), INGREDIENT)

    @line(
        "Carbon to nitrogen", unit="kg_carbon/kg_nitrogen", axes=(RECIPE,), source=COMPOST_MIXTURES, zero_is_none=True
    )
    def mix_carbon_to_nitrogen(self) -> Expr:
        """C:N as growers quote it, by weight: 48 means 48 of carbon to 1 of nitrogen. None where there is no nitrogen."""
        return mixing.carbon_to_nitrogen(self.mix_carbon, self.mix_nitrogen)

    @line("Bulk volume of the dry mix", unit="L/kg_dry", axes=(RECIPE,))
    def mix_volume(self) -> Expr:
        """All ingredients loose, as they lie before wetting; the wetted mix settles to 0.6 to 0.8 of it."""
        return total(self.volume_in_mix, INGREDIENT)

    @line("Cost of the dry mix", unit="money/kg_dry", axes=(RECIPE,))
    def mix_cost_per_dry(self) -> Expr:
        """Ingredients only; water costs nothing here. Compare recipes by this, not by the cost of wet mix."""
        return total(self.cost_in_mix, INGREDIENT)

    @line("Cost of the wet mix", unit="money/kg_wet", axes=(RECIPE,))
    def mix_cost_per_wet(self) -> Expr:
        """What is in the bag, at the moisture that results."""
        return self.mix_cost_per_dry * self.dry_part

    # The chosen recipe

    @line("Share of each ingredient, chosen recipe", unit="share", axes=(INGREDIENT,))
    def chosen_dry_share(self) -> Expr:
        """By dry mass."""
        return total(self.dry_share * self.chosen, RECIPE)

    @line("Moisture of the mix, chosen recipe", unit="kg_water/kg_wet")
    def moisture(self) -> Expr:
        """The moisture that results, which the bags, the steam load and the yield are worked out with."""
        return total(self.moisture_reached * self.chosen, RECIPE)

    @line("Nitrogen in the dry mix, chosen recipe", unit="kg_nitrogen/kg_dry")
    def nitrogen_share(self) -> Expr:
        """To hold against your losses and your yield, not as a target by itself."""
        return total(self.mix_nitrogen * self.chosen, RECIPE)

    @line("Carbon in the dry mix, chosen recipe", unit="kg_carbon/kg_dry")
    def carbon_share(self) -> Expr:
        """Minerals count as far as you typed carbon for them."""
        return total(self.mix_carbon * self.chosen, RECIPE)

    @line("Carbon to nitrogen, chosen recipe", unit="kg_carbon/kg_nitrogen", zero_is_none=True)
    def carbon_to_nitrogen(self) -> Expr:
        """By weight."""
        return total(self.mix_carbon_to_nitrogen * self.chosen, RECIPE)

    @line("Cost of the dry mix, chosen recipe", unit="money/kg_dry")
    def ingredient_cost_per_dry(self) -> Expr:
        """Ingredients only."""
        return total(self.mix_cost_per_dry * self.chosen, RECIPE)

    @line("Cost of the wet mix, chosen recipe", unit="money/kg_wet")
    def ingredient_cost_per_wet(self) -> Expr:
        """What is in the bag, at the moisture that results."""
        return total(self.mix_cost_per_wet * self.chosen, RECIPE)

    @property
    def recipe_in_use(self) -> Expr:
        """1 where the recipe has a name."""
        return self.model.axes[RECIPE].present

    @line("Recipe: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "The mix costs ",
            figure(self.ingredient_cost_per_wet, 3),
            " and is ",
            figure(self.moisture, 0, named=False),
            " water. Of its dry weight, ",
            figure(self.nitrogen_share, 2, named=False),
            " is nitrogen.",
        )
