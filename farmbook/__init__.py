"""farmbook writes live spreadsheet workbooks for the economics of an oyster-mushroom farm."""

from __future__ import annotations

__version__ = "0.1.0"
