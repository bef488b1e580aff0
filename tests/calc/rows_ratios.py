"""Coverage and ratios in print."""

from __future__ import annotations

from typing import Final

from farmbook.calc import ratios
from tests.calc.published import Published

PER_WORTH: Final = "an extension text on debt to equity, a copy; helpinghands-online.com"
REAL_ESTATE: Final = "real-estate finance text, debt service coverage"
DEFINITION: Final = (
    "capacity: income + other income + depreciation + term interest - living - tax, over principal and interest; "
    "Farm Credit Services of America, Measures of financial performance, and FFSC 2019, Measuring repayment capacity"
)
FARM: Final = "a farm of round figures: income 21,000, depreciation 9,000, interest 2,900, tax 3,500, living 24,000"

ROWS: Final = (
    Published(
        ratios.share_owed,
        PER_WORTH,
        "78.6 cents of debt for each 1.00 of net worth, as debt over assets",
        "copy",
        "44.0 percent",
        {"debt": "78.6 money", "equity": "100 money"},
    ),
    Published(
        ratios.share_owed,
        PER_WORTH,
        "the same, as net worth over assets: the other part of it",
        "arithmetic",
        "56.0 percent",
        {"debt": "100 money", "equity": "78.6 money"},
    ),
    Published(
        ratios.coverage,
        f"{REAL_ESTATE}, a copy; knowingpains.com",
        "operating income of 120,000 over debt service of 100,000",
        "copy",
        "1.20",
        {"money": "120,000 money", "payments": "100,000 money"},
    ),
    Published(
        ratios.coverage,
        f"{REAL_ESTATE}; propertylogy.com",
        "100,000 over 30,000",
        "seen",
        "3.33",
        {"money": "100,000 money", "payments": "30,000 money"},
    ),
    Published(
        ratios.earned_before_owning,
        DEFINITION,
        FARM,
        "arithmetic",
        "32,900 money",
        {"income": "21,000 money", "depreciation": "9,000 money", "interest": "2,900 money"},
    ),
    Published(
        ratios.repayment_capacity,
        DEFINITION,
        f"{FARM}, and 500 from elsewhere",
        "arithmetic",
        "5,900 money",
        {"earned": "32,900 money", "other_income": "500 money", "living": "24,000 money", "tax": "3,500 money"},
    ),
    Published(
        ratios.coverage,
        DEFINITION,
        f"{FARM}: 5,400 left for payments of 8,765",
        "arithmetic",
        "0.62",
        {"money": "5,400 money", "payments": "8,765 money"},
    ),
    Published(
        ratios.return_earned,
        "return on assets: income + interest - unpaid labour and management; University of Illinois farmdoc, ratios",
        "the same farm, 15,000 of unpaid work",
        "arithmetic",
        "8,900 money",
        {"income": "21,000 money", "interest": "2,900 money", "unpaid_work": "15,000 money"},
    ),
)
