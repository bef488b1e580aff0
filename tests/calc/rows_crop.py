"""Composition, mixes and biological efficiency in print."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from farmbook.calc import crop, mixing
from tests.calc import chains
from tests.calc.published import Published

FUELS: Final = "Miles and others 1996, Alkali Deposits, table of fuels; trmiles.com/alkali/fuelsc2.html"
HANDOUT: Final = "How to calculate the carbon-to-nitrogen ratio of your compost mix; docslib.org/doc/12269573"
CORNELL: Final = "Cornell composting moisture page, a copy; jerrysplantsonline.com"
MIXED: Final = "red oak by Miles, feeds by NASEM, carbon of feeds by the ash rule; worked out with numpy"
DRY_MASS: Final = "the dry mass is inferred: a round 500 g"

_DRIED: Final = (
    # as received, moisture, on dry mass, all in percent
    ("red-oak sawdust, carbon", "44.24", "11.45", "49.96"),
    ("red-oak sawdust, hydrogen", "5.24", "11.45", "5.92"),
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
    Published(
        chains.weight_of_water,
        "pound of water in a US gallon, as handbooks round it",
        "cold water",
        "memory",
        "8.33 lb_water",
        {"volume": "1 gal"},
    ),
    Published(
        mixing.nitrogen_from_protein,
        "Jones 1931, US Department of Agriculture circular 183",
        "what 6.25 stands for: protein with 16 percent of nitrogen",
        "memory",
        "16 percent",
        {"protein": "100 percent"},
        within="1e-9",
        because="exact",
    ),
    *(
        Published(
            chains.content_dried,
            FUELS,
            what,
            "seen",
            f"{dry} percent",
            {"content": f"{received} percent", "moisture": f"{moisture} percent"},
        )
        for what, received, moisture, dry in _DRIED
    ),
    Published(
        chains.content_dried,
        FUELS,
        "fir mill waste, carbon",
        "seen",
        "51.23 percent",
        {"content": "18.95 percent", "moisture": "63.00 percent"},
        within="0.02",
        because="18.95 as received is rounded: by 0.014 on dry mass",
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
        "Girmay and others 2016, AMB Express 6:87",
        "cotton seed",
        "memory",
        "197.9 percent",
        {"picked": "989.45 g_picked", "dry_mass": "500 g_dry"},
    ),
)
