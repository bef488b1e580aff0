"""Works that figures and formulas rest on: what each is, where in it the fact stands, and how the fact is known."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from farmbook.errors import ModelFault

HowKnown = Literal[
    "read", "read in a copy", "computed with a reference library", "from memory", "by definition", "no source"
]


@dataclass(frozen=True)
class Source:
    """One cited work. `key` is the word that lines, inputs and constants cite it by."""

    key: str
    title: str
    author: str
    year: int | None
    place: str
    how_known: HowKnown


ARITHMETIC: Final = Source(
    key="arithmetic",
    title="arithmetic",
    author="",
    year=None,
    place="follows from the definitions of the quantities",
    how_known="by definition",
)
COMMON_PRACTICE: Final = Source(
    key="common_practice",
    title="common practice, no source",
    author="",
    year=None,
    place="what growers commonly do or state; replace it by the farm's own figure",
    how_known="no source",
)

# Units, water, steam and air
NIST_SP_811: Final = Source(
    key="nist_sp_811",
    title="Guide for the Use of the International System of Units, NIST Special Publication 811",
    author="A. Thompson and B. N. Taylor",
    year=2008,
    place="appendix B.8, conversion factors",
    how_known="from memory",
)
IAPWS_R7_97: Final = Source(
    key="iapws_r7_97",
    title="Release R7-97(2012) on the Industrial Formulation 1997 for water and steam",
    author="International Association for the Properties of Water and Steam",
    year=2012,
    place="region 4, equations 29 to 31 and table 34; heat of evaporation at 20 degC from regions 1 and 2",
    how_known="computed with a reference library",
)
STEAM_LINES: Final = Source(
    key="steam_lines",
    title="Curve and line through the heat content of water and saturated steam of IAPWS R7-97, 1 to 130 degC",
    author="worked out for farmbook",
    year=None,
    place="line for steam within 1 kJ/kg of the release from 88 to 127 degC; curve for water within 0.04 kJ/kg from 1 to 130 degC",
    how_known="computed with a reference library",
)
STANDARD_ATMOSPHERE_1976: Final = Source(
    key="standard_atmosphere_1976",
    title="US Standard Atmosphere, 1976",
    author="NOAA, NASA and US Air Force",
    year=1976,
    place="troposphere; summary read at scipp.ucsc.edu/outreach/balloon/atmos",
    how_known="read",
)

# Heat
WOOD_HANDBOOK: Final = Source(
    key="wood_handbook",
    title="Wood Handbook, FPL-GTR-190, chapter 4",
    author="S. V. Glass and S. L. Zelinka",
    year=2010,
    place="heat capacity of oven-dry wood, about 280 to 420 K; read at chemics.readthedocs.io/en/latest/api/wood.html",
    how_known="read in a copy",
)
SIMPSON_TENWOLDE_1999: Final = Source(
    key="simpson_tenwolde_1999",
    title="Wood Handbook, FPL-GTR-113, chapter 3",
    author="W. Simpson and A. TenWolde",
    year=1999,
    place="above fibre saturation heat capacities add by weight; quoted at firewords.net/definitions/specific_heat.htm",
    how_known="read in a copy",
)
MATERIAL_PROPERTIES: Final = Source(
    key="material_properties",
    title="Table of heat capacities of materials",
    author="material-properties.org",
    year=None,
    place="stainless steel and polypropylene; material-properties.org/heat-capacity-of-materials",
    how_known="read",
)
HEAT_CONDUCTION: Final = Source(
    key="heat_conduction",
    title="Fundamentals of Heat and Mass Transfer",
    author="F. P. Incropera and D. P. DeWitt",
    year=None,
    place="transient conduction, first term of the series for the slab and the cylinder and their product",
    how_known="from memory",
)
EIA_UNITS: Final = Source(
    key="eia_units",
    title="Monthly Energy Review, appendix A, British thermal unit conversion factors",
    author="US Energy Information Administration",
    year=None,
    place="heat content of petroleum products and natural gas; values read on the page About Btu, the table from memory",
    how_known="read in a copy",
)
NATIONAL_ELECTRICAL_CODE: Final = Source(
    key="national_electrical_code",
    title="National Electrical Code, NFPA 70",
    author="National Fire Protection Association",
    year=None,
    place="branch circuits and feeders: a continuous load counts at 125 percent",
    how_known="from memory",
)

# Cooking
LETHAL_RATE: Final = Source(
    key="lethal_rate",
    title="Thermobacteriology in Food Processing, second edition",
    author="C. R. Stumbo",
    year=1973,
    place="lethal rate, ten to the power of the difference over z, and its sum over time",
    how_known="from memory",
)
VAN_DOORNMALEN_2009: Final = Source(
    key="van_doornmalen_2009",
    title="Temperature dependence of F-, D- and z-values used in steam sterilization processes",
    author="J. P. C. M. van Doornmalen and K. Kopinga",
    year=2009,
    place="J. Appl. Microbiol., doi 10.1111/j.1365-2672.2009.04290.x, abstract; the title is from memory",
    how_known="read in a copy",
)

# Recipe
NITROGEN_IN_PROTEIN: Final = Source(
    key="nitrogen_in_protein",
    title="Factors for Converting Percentages of Nitrogen in Foods and Feeds into Percentages of Proteins, Circular 183",
    author="D. B. Jones, US Department of Agriculture",
    year=1931,
    place="proteins taken to hold 16 percent of nitrogen, hence 6.25; feed tables and tags keep to it",
    how_known="from memory",
)
ALABAMA_BY_PRODUCT_FEEDS: Final = Source(
    key="alabama_by_product_feeds",
    title="By-Product Feeds Quick Reference Guide",
    author="Alabama Cooperative Extension System",
    year=None,
    place="tables 1 and 2; aces.edu/blog/topics/beef/by-product-feeds-quick-reference-guide",
    how_known="read",
)
WOOD_CHIP_2020: Final = Source(
    key="wood_chip_2020",
    title="Fuel and material utilization of a waste shiitake mushroom bed derived from hardwood chips I",
    author="Journal of Wood Science",
    year=2020,
    place="doi 10.1186/s10086-020-01935-7, table 3: wood chip 0.16 % nitrogen, 48.8 % carbon of dry mass",
    how_known="read",
)
COMPOST_MIXTURES: Final = Source(
    key="compost_mixtures",
    title="Calculations for compost mixtures",
    author="T. Richard and N. Trautmann, Cornell Waste Management Institute",
    year=1996,
    place="moisture, carbon and nitrogen of a mix add by mass; compost.css.cornell.edu",
    how_known="read",
)

# Crop and spawn
BIOLOGICAL_EFFICIENCY: Final = Source(
    key="biological_efficiency",
    title="Mushrooms: Cultivation, Nutritional Value, Medicinal Effect, and Environmental Impact",
    author="S. T. Chang and P. G. Miles",
    year=2004,
    place="fresh mushrooms over dry substrate, in percent",
    how_known="from memory",
)
ROYSE_2002: Final = Source(
    key="royse_2002",
    title="Influence of spawn rate and commercial delayed release nutrient levels on Pleurotus cornucopiae",
    author="D. J. Royse",
    year=2002,
    place="Appl. Microbiol. Biotechnol. 58:527, abstract: 3.75 to 5 % of wet weight was best; the title is from memory",
    how_known="read",
)
SARE_FNE13_786: Final = Source(
    key="sare_fne13_786",
    title="Farmer grant report FNE13-786",
    author="Sustainable Agriculture Research and Education, US Department of Agriculture",
    year=2013,
    place="days of picking and price in a trial of oyster mushrooms",
    how_known="read",
)

# Prices, pay and power
EIA_ELECTRIC_POWER_MONTHLY: Final = Source(
    key="eia_electric_power_monthly",
    title="Electric Power Monthly, table 5.6.A, April 2025",
    author="US Energy Information Administration",
    year=2025,
    place="eia.gov/electricity/monthly",
    how_known="read",
)
EIA_PROPANE: Final = Source(
    key="eia_propane",
    title="Heating Oil and Propane Update, November 2025",
    author="US Energy Information Administration",
    year=2025,
    place="residential propane price",
    how_known="read",
)
DEMAND_CHARGE_SURVEY: Final = Source(
    key="demand_charge_survey",
    title="Identifying Potential Markets for Behind-the-Meter Battery Energy Storage: A Survey of U.S. Demand Charges",
    author="National Renewable Energy Laboratory and Clean Energy Group",
    year=2017,
    place="NREL/BR-6A20-68963, abstract: over a quarter of commercial customers can meet more than $15/kW",
    how_known="read",
)

# Worth
ANNUITY: Final = Source(
    key="annuity",
    title="The Theory of Interest, second edition",
    author="S. G. Kellison",
    year=1991,
    place="level payments at the end of each period",
    how_known="from memory",
)
NET_PRESENT_VALUE: Final = Source(
    key="net_present_value",
    title="Principles of Corporate Finance",
    author="R. A. Brealey, S. C. Myers and F. Allen",
    year=None,
    place="net present value: today's flow is not discounted, unlike the NPV of spreadsheets",
    how_known="from memory",
)
EQUIVALENT_ANNUAL_COST: Final = Source(
    key="equivalent_annual_cost",
    title="Engineering Economy",
    author="L. T. Blank and A. J. Tarquin",
    year=None,
    place="section 6.2, capital recovery: (P - S) A/P + S i; a problem of it read in a copy, the book from memory",
    how_known="read in a copy",
)
USDA_FARM_LABOR: Final = Source(
    key="usda_farm_labor",
    title="Farm Labor",
    author="USDA National Agricultural Statistics Service",
    year=2025,
    place="April 2025: field workers 18.58 and all hired farm workers 19.52 USD an hour; a place to start from",
    how_known="read in a copy",
)
LITTLE_2008: Final = Source(
    key="little_2008",
    title="Little's Law, chapter 5 of Building Intuition: Insights from Basic Operations Management Models and Principles",
    author="J. D. C. Little and S. C. Graves",
    year=2008,
    place="L = lambda W, and the example of the wine rack; as quoted at length in a copy",
    how_known="read in a copy",
)
MACKAY_2009: Final = Source(
    key="mackay_2009",
    title="Sustainable Energy - without the hot air",
    author="D. J. C. MacKay",
    year=2009,
    place="chapter E: heat lost by conduction and with the air, 1.2 kJ for each cubic metre and degree; energy bought is "
    "heat over the coefficient of performance",
    how_known="read",
)
PARTIAL_BUDGET: Final = Source(
    key="partial_budget",
    title="Partial budgeting, fact sheet 3.761",
    author="Colorado State University Extension",
    year=None,
    place="ext.colostate.edu/PUBS/FARMMGT/03761.html",
    how_known="read",
)
FARM_MANAGEMENT: Final = Source(
    key="farm_management",
    title="Farm Management",
    author="R. D. Kay, W. M. Edwards and P. A. Duffy",
    year=None,
    place="break-even, payback and enterprise budgets",
    how_known="from memory",
)
FARM_RATIOS: Final = Source(
    key="farm_ratios",
    title="Financial Guidelines for Agriculture",
    author="Farm Financial Standards Council",
    year=None,
    place="capital debt repayment capacity and margin, term debt coverage, ratios; as told at ffsc.org and ag.purdue.edu",
    how_known="read",
)
SOCIAL_INSURANCE: Final = Source(
    key="social_insurance",
    title="Self-employment tax",
    author="a practice of accountants, on its page",
    year=None,
    place="15.3% read at occapa.com; of 92.35% of the net, half of it deducted before income tax: from memory",
    how_known="from memory",
)
PRODUCE_LIMITS: Final = Source(
    key="produce_limits",
    title="FSMA inflation adjusted cut offs",
    author="U.S. Food and Drug Administration",
    year=2022,
    place="21 CFR 112.4 and 112.5; limits of 2019 to 2021, worked out from the factor 1.1698 of its row of $1 million",
    how_known="read in a copy",
)

ALL: Final[tuple[Source, ...]] = tuple(value for value in list(vars().values()) if isinstance(value, Source))
"""Every source above, in the order written."""

_BY_KEY: Final = {source.key: source for source in ALL}


def source_of(key: str) -> Source:
    """The source cited by this key; raises ModelFault where there is none."""
    if key not in _BY_KEY:
        raise ModelFault(f"no source `{key}` in the list of sources")
    return _BY_KEY[key]
