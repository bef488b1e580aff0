"""Social insurance and tax on each more of profit."""

from __future__ import annotations

from typing import Final

from farmbook.calc import tax
from tests.calc.published import Published

RULE: Final = "15.3 percent of 92.35 percent of the net; the rate seen at occapa.com, the rest from memory"
WORKED: Final = "worked by hand: 10,000 of profit, income tax of 22 percent, half of the insurance deducted"

ROWS: Final = (
    Published(
        tax.social_on_each_more,
        RULE,
        "of each more of net",
        "arithmetic",
        "14.12955 percent",
        {"rate": "15.3 percent", "share": "92.35 percent"},
    ),
    Published(
        tax.tax_on_each_more,
        WORKED,
        "insurance of 1,413 and 22 percent of 9,293.50: 3,457.57 of 10,000",
        "arithmetic",
        "34.5757 percent",
        {"tax_rate": "22 percent", "social": "14.13 percent", "deducted": "50 percent"},
    ),
)
