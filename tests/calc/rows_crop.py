"""Composition, mixes and biological efficiency in print."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from farmbook.calc import crop, mixing
from tests.calc import chains
from tests.calc.published import Published

NASEM: Final = "NASEM 2021, Nutrient Requirements of Dairy Cattle, feed library; protein read, nitrogen worked out"
ALABAMA: Final = "Alabama Extension, By-Product Feeds, table 1; protein read, nitrogen worked out"
FUELS: Final = "Miles and others 1996, Alkali Deposits, table of fuels; trmiles.com/alkali/fuelsc2.html"
HANDOUT: Final = "How to calculate the carbon-to-nitrogen ratio of your compost mix; docslib.org/doc/12269573"
CORNELL: Final = "Cornell composting moisture page, a copy; jerrysplantsonline.com"
MIXED: Final = "red oak by Miles, feeds by NASEM, carbon of feeds by the ash rule; worked out with numpy"
FROM_UNROUNDED: Final = "printed from figures not rounded to the as-received ones in print"
DRY_MASS: Final = "the dry mass is inferred: a round 500 g"

_PROTEIN: Final = (
    (NASEM, "soybean hulls", "11.88", "1.9008"),
    (NASEM, "wheat bran", "17.403", "2.7845"),
    (NASEM, "oat hulls", "5.014", "0.8022"),
    (NASEM, "cottonseed hulls", "6.975", "1.1160"),
    (NASEM, "wheat straw", "4.497", "0.7195"),
    (NASEM, "rice hulls", "3.688", "0.5901"),
    (NASEM, "corn cobs", "2.969", "0.4750"),
    (NASEM, "soybean meal", "52.644", "8.4230"),
    (NASEM, "cottonseed meal", "46.686", "7.4698"),
    (NASEM, "dry brewers grains", "25.330", "4.0528"),
    (ALABAMA, "soybean hulls", "12", "1.92"),
    (ALABAMA, "cottonseed hulls", "4", "0.64"),
    (ALABAMA, "rice bran", "14", "2.24"),
    (ALABAMA, "peanut hulls", "8", "1.28"),
    (ALABAMA, "wheat middlings", "18", "2.88"),
)

_DRIED: Final = (
    # as received, moisture, on dry mass, all in percent
    ("red-oak sawdust, carbon", "44.24", "11.45", "49.96"),
    ("red-oak sawdust, hydrogen", "5.24", "11.45", "5.92"),
    ("fir mill waste, carbon", "18.95", "63.00", "51.23"),
    ("fir mill waste, ash", "0.15", "63.00", "0.41"),
)

_KITCHEN: Final = {
    "parts": ("50 lb_dry", "10 lb_dry", "2 lb_dry"),
    "carbon": ("40 percent", "10 percent", "25 percent"),
    "nitrogen": ("1 percent", "1 percent", "1 percent"),
}
_WITH_BRAN: Final = {
    "parts": ("0.80 kg_dry", "0.20 kg_dry"),
    "carbon": ("49.96 percent", "52.51 percent"),
    "nitrogen": ("0.03 percent", "2.7845 percent"),
}
_WITH_HULLS: Final = {
    "parts": ("0.50 kg_dry", "0.50 kg_dry"),
    "carbon": ("49.96 percent", "52.678 percent"),
    "nitrogen": ("0.03 percent", "1.9008 percent"),
}


def _mixed(given: Mapping[str, tuple[str, ...]], content: str) -> dict[str, tuple[str, ...]]:
    return {"shares": tuple(text.partition(" ")[0] for text in given["parts"]), content: given[content]}


ROWS: Final = (
    *(
        Published(
            mixing.nitrogen_from_protein,
            source,
            feed,
            "arithmetic",
            f"{nitrogen} percent",
            {"protein": f"{protein} percent"},
        )
        for source, feed, protein, nitrogen in _PROTEIN
    ),
    *(
        Published(
            chains.content_dried,
            FUELS,
            what,
            "seen",
            f"{dry} percent",
            {"content": f"{received} percent", "moisture": f"{moisture} percent"},
            within="0.015",
            because=FROM_UNROUNDED,
        )
        for what, received, moisture, dry in _DRIED
    ),
    Published(
        chains.moisture_by_drying,
        CORNELL,
        "10 g of grass dry to 2.3 g",
        "copy",
        "77 percent",
        {"wet": "10 g_wet", "dry": "2.3 g_dry"},
        within="1e-9",
        because="exact",
    ),
    Published(
        chains.second_amount,
        CORNELL,
        "leaves for 10 kg of grass",
        "copy",
        "6.8 kg_wet",
        {"first": "10 kg_wet", "first_moisture": "77 percent", "second_moisture": "35 percent", "goal": "60 percent"},
    ),
    Published(
        chains.mix_carbon,
        HANDOUT,
        "hay, scraps and coffee grounds",
        "seen",
        "21.5 lb_carbon",
        {name: _KITCHEN[name] for name in ("parts", "carbon")},
    ),
    Published(
        chains.mix_nitrogen,
        HANDOUT,
        "hay, scraps and coffee grounds",
        "seen",
        "0.62 lb_nitrogen",
        {name: _KITCHEN[name] for name in ("parts", "nitrogen")},
    ),
    Published(
        chains.mix_carbon_to_nitrogen,
        HANDOUT,
        "hay, scraps and coffee grounds",
        "seen",
        "34.7 kg_carbon/kg_nitrogen",
        _KITCHEN,
    ),
    *(
        row
        for what, given, carbon, nitrogen, quotient in (
            ("80 % red oak, 20 % wheat bran", _WITH_BRAN, "50.470", "0.5809", "86.88"),
            ("half red oak, half soybean hulls", _WITH_HULLS, "51.319", "0.9654", "53.16"),
        )
        for row in (
            Published(chains.mix_carbon_share, MIXED, what, "library", f"{carbon} percent", _mixed(given, "carbon")),
            Published(
                chains.mix_nitrogen_share, MIXED, what, "library", f"{nitrogen} percent", _mixed(given, "nitrogen")
            ),
            Published(
                chains.mix_carbon_to_nitrogen, MIXED, what, "library", f"{quotient} kg_carbon/kg_nitrogen", given
            ),
        )
    ),
    Published(
        chains.mix_nitrogen_share,
        MIXED,
        "half sawdust of 0.24 % nitrogen, half soybean hulls",
        "library",
        "1.0704 percent",
        {"shares": ("0.50", "0.50"), "nitrogen": ("0.24 percent", "1.9008 percent")},
    ),
    Published(
        crop.biological_efficiency,
        "Khan and others 2021, Asian Food Sci. J. 30250",
        f"sawdust with poultry manure; {DRY_MASS}",
        "seen",
        "77.68 percent",
        {"picked": "388.40 g_picked", "dry_mass": "500.0 g_dry"},
    ),
    Published(
        crop.biological_efficiency,
        "SIF 2023 8, doi 10.48130/SIF-2023-0007",
        "wood flakes with bagasse 80/20, 13.54 g a kilogram",
        "seen",
        "1.35 percent",
        {"picked": "13.54 g_picked", "dry_mass": "1 kg_dry"},
    ),
    Published(
        crop.biological_efficiency,
        "Shah, Ashraf and Ishtiaq 2004, Pak. J. Nutr. 3:158",
        "sawdust",
        "memory",
        "64.69 percent",
        {"picked": "646.9 g_picked", "dry_mass": "1 kg_dry"},
    ),
    Published(
        crop.biological_efficiency,
        "Girmay and others 2016, AMB Express 6:87",
        "cotton seed",
        "memory",
        "197.9 percent",
        {"picked": "989.45 g_picked", "dry_mass": "500 g_dry"},
    ),
)
